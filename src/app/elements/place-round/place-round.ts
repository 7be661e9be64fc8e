/** The Round place. */
import { html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import '../page/page.ts';

@customElement('mp-place-round')
export class PlaceRound extends StoreElement {
  static override styles = [shared];

  protected override render() {
    return html`<mp-page><h1>${this.words.round.title}</h1></mp-page>`;
  }
}
