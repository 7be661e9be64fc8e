/** At the start, when a site's two copies differ: both with date and counts, each to be used or downloaded, none deleted. */
import { html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { showPage } from '../../actions/shelf-page.ts';
import { type Copy, countsOf, downloadCopy, takeCopy } from '../../actions/shelf-recovery.ts';
import type { AppState } from '../../state.ts';
import type { Finding } from '../../storage/compare-copies.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import '../page/page.ts';
import { stamp } from '../saved-word/when.ts';
import { libraryStyle } from '../site-library/library-style.ts';

const copies: readonly Copy[] = ['database', 'mirror'];

type Counts = Awaited<ReturnType<typeof countsOf>>;

@customElement('mp-recovery')
export class Recovery extends StoreElement {
  static override styles = [shared, libraryStyle];

  /** What each copy holds, by site and copy; filled in after the screen stands. */
  @state() private counts: ReadonlyMap<string, Counts> = new Map();

  protected override watches() {
    return ['keeping', 'words'] as const;
  }

  protected override changed(now: AppState, before: AppState): void {
    if (now.keeping.findings !== before.keeping.findings) void this.#count();
  }

  protected override firstUpdated(): void {
    void this.#count();
    this.renderRoot.querySelector<HTMLElement>('h1')?.focus();
  }

  protected override render() {
    const { recovery } = this.words.library;
    return html`<mp-page>
      <h1 tabindex="-1">${recovery.title}</h1>
      <p>${recovery.lead}</p>
      ${this.state.keeping.findings.map((finding) => this.#finding(finding))}
      <button slot="foot" @click=${() => showPage(this.store, 'closed')}>${recovery.later}</button>
    </mp-page>`;
  }

  #finding(finding: Finding) {
    const { recovery } = this.words.library;
    return html`<section data-site=${finding.site}>
      <h2>${finding.name}</h2>
      <p class="wash">${recovery.trouble[finding.trouble]}</p>
      <div class="copies">${copies.map((copy) => this.#copy(finding, copy))}</div>
    </section>`;
  }

  #copy(finding: Finding, copy: Copy) {
    const { recovery } = this.words.library;
    const found = finding[copy];
    const counts = this.counts.get(`${copy} ${finding.site}`);
    const other = finding[copies.find((one) => one !== copy)!];
    const newer = other !== null && found !== null && found.rev > other.rev;
    if (!found)
      return html`<div data-copy=${copy}>
        <h3>${recovery[copy]}</h3>
        <p>${recovery.nothing}</p>
      </div>`;
    return html`<div data-copy=${copy}>
      <h3>${recovery[copy]}</h3>
      <p>${recovery.holds(stamp(found.saved), found.rev, found.count)}</p>
      ${counts ? html`<p>${recovery.things(counts.things, counts.posts)}</p>` : null}
      <div class="acts">
        ${
          finding.trouble === 'newer-schema'
            ? null
            : html`<button class=${newer ? 'filled' : ''} @click=${() => takeCopy(this.store, finding, copy)}>${recovery.take(recovery[copy])}</button>`
        }
        <button class="text" @click=${() => downloadCopy(this.store, finding, copy)}>
          ${recovery.download(recovery[copy])}
        </button>
      </div>
    </div>`;
  }

  async #count(): Promise<void> {
    const counts = new Map(this.counts);
    for (const { site } of this.state.keeping.findings)
      for (const copy of copies) counts.set(`${copy} ${site}`, await countsOf(this.store, site, copy));
    this.counts = counts;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-recovery': Recovery;
  }
}
