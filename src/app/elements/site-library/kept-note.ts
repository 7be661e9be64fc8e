/** Where sites are kept and how safe that is, said plainly. */
import { html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { when } from '../saved-word/when.ts';
import { libraryStyle } from './library-style.ts';

@customElement('mp-kept-note')
export class KeptNote extends StoreElement {
  static override styles = [shared, libraryStyle];

  protected override watches() {
    return ['keeping', 'words', 'site'] as const;
  }

  protected override render() {
    const { library } = this.words;
    const { keeping, site } = this.state;
    if (keeping.where === 'window')
      return html`<section>
        <h2>${library.keptWhere}</h2>
        <p class="wash">${library.windowOnly(keeping.why ?? '')}</p>
      </section>`;
    const copy = keeping.secondCopy === null ? library.secondCopy : library.noSecondCopy(keeping.secondCopy);
    const exported =
      keeping.exported === null
        ? library.neverExported
        : library.exported(when(keeping.exported, Date.now(), this.words));
    return html`<section>
      <h2>${library.keptWhere}</h2>
      <p>${library.lasting} ${copy}</p>
      <p>${keeping.promised ? library.promised : library.notPromised}</p>
      ${site ? html`<p>${site.settings.name}: ${exported}.</p>` : null}
    </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-kept-note': KeptNote;
  }
}
