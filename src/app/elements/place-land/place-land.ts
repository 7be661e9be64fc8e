/** The Land place: the list of all that is drawn, or the shape in progress, or the chosen thing, or one of its pages. */
import { html, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { SiteFeature } from '../../../site/types.ts';
import {
  cannotFinish,
  finishShape,
  giveUp,
  putCornerAgain,
  takeCornerBack,
  takeTool,
} from '../../actions/land-draw.ts';
import { recheck } from '../../actions/land-recheck.ts';
import { choose, openPage, setLand } from '../../actions/land-state.ts';
import { deleteChosen } from '../../actions/land-tools.ts';
import type { LandPage } from '../../land-state.ts';
import { draws } from '../../map/drawing/sketch.ts';
import type { AppState } from '../../state.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import '../land-card/land-card.ts';
import '../land-draft/land-draft.ts';
import '../land-files/land-files.ts';
import '../land-guide/land-guide.ts';
import '../land-import/land-import.ts';
import '../land-issues/land-issues.ts';
import '../land-kinds/land-kinds.ts';
import '../land-list/land-list.ts';
import '../land-new/land-new.ts';
import '../land-numbers/land-numbers.ts';
import '../land-settings/land-settings.ts';
import '../land-tour/land-tour.ts';
import '../page/page.ts';
import { landKey } from './land-keys.ts';
import { landStyle } from './land-style.ts';

@customElement('mp-place-land')
export class PlaceLand extends StoreElement {
  static override styles = [shared, landStyle];
  #soon = 0 as unknown as ReturnType<typeof setTimeout>;
  readonly #onKey = (event: KeyboardEvent) => landKey(this.store, event);

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('keydown', this.#onKey, true);
    addEventListener('dragover', this.#onDrag);
    addEventListener('drop', this.#onDrop);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('keydown', this.#onKey, true);
    removeEventListener('dragover', this.#onDrag);
    removeEventListener('drop', this.#onDrop);
    clearTimeout(this.#soon);
  }

  protected override watches() {
    return ['site', 'selection', 'land', 'words', 'issues'] as const;
  }

  /** Another page starts at its top. */
  protected override changed(state: AppState, before: AppState): void {
    const same =
      state.selection === before.selection &&
      state.land.page === before.land.page &&
      state.land.tool?.does === before.land.tool?.does;
    if (state.siteId !== before.siteId && state.plan === null) this.#otherSite();
    if (state.site !== before.site) this.#recheckLater();
    if (!same) this.updateComplete.then(() => this.renderRoot.querySelector('mp-page')?.toTop());
  }

  protected override render() {
    const { land, site } = this.state;
    if (land.tool) return this.#draft();
    const chosen = this.#chosen();
    if (chosen) return this.#card(chosen);
    if (!site && land.page !== 'new' && land.page !== 'files')
      return html`<mp-page><h1>${this.words.land.title}</h1></mp-page>`;
    return this.#page(land.page);
  }

  /** Another site was opened: what was in the hand belongs to the old one. */
  #otherSite(): void {
    setLand(this.store, {
      tool: null,
      corners: [],
      takenBack: [],
      corner: null,
      trouble: null,
      offers: [],
      preview: [],
    });
  }

  #recheckLater(): void {
    clearTimeout(this.#soon);
    this.#soon = setTimeout(() => void recheck(this.store), 600);
  }

  /** Entries not used and warnings, as the button says. */
  #count(): number {
    const { issues, site } = this.state;
    const kept = site?.kept?.length ?? 0;
    const errors = issues.filter(({ severity }) => severity === 'error').length;
    return Math.max(kept, errors) + issues.filter(({ severity }) => severity === 'warning').length;
  }

  /** A file dropped anywhere is looked at as one to bring in. */
  readonly #onDrag = (event: DragEvent): void => {
    if (event.dataTransfer?.types.includes('Files')) event.preventDefault();
  };

  readonly #onDrop = async (event: DragEvent): Promise<void> => {
    const file = event.dataTransfer?.files[0];
    if (event.defaultPrevented || !file || !this.state.site) return;
    event.preventDefault();
    openPage(this.store, 'import');
    await this.updateComplete;
    await this.renderRoot.querySelector('mp-land-import')?.begin(file);
  };

  #chosen(): SiteFeature | null {
    const { selection, site } = this.state;
    if (selection?.of !== 'feature' && selection?.of !== 'post') return null;
    return site?.features.find(({ id }) => id === selection.id) ?? null;
  }

  #draft() {
    const { land } = this.words;
    const { tool, corners, takenBack } = this.state.land;
    const points = draws(tool) === 'point';
    const why = points || draws(tool) === null ? null : cannotFinish(this.store);
    return html`<mp-page>
      <mp-land-draft></mp-land-draft>
      ${why && corners.length > 0 ? html`<p class="small" id="why-not">${why}</p>` : null}
      ${
        points
          ? html`<button slot="foot" class="filled" data-do="done" @click=${() => takeTool(this.store, null)}>${land.done}</button>`
          : draws(tool)
            ? html`<button
                  slot="foot"
                  class="filled"
                  data-do="finish"
                  aria-disabled=${why !== null}
                  @click=${() => finishShape(this.store)}
                >
                  ${land.finish}
                </button>
                ${
                  takenBack.length > 0 && corners.length === 0
                    ? html`<button slot="foot" data-do="again" @click=${() => putCornerAgain(this.store)}>${land.putAgain}</button>`
                    : html`<button
                        slot="foot"
                        data-do="back"
                        ?disabled=${corners.length === 0}
                        @click=${() => takeCornerBack(this.store)}
                      >
                        ${land.takeBack}
                      </button>`
                }`
            : null
      }
      ${points ? null : html`<button slot="foot" data-do="cancel" @click=${() => giveUp(this.store)}>${land.giveUp}</button>`}
    </mp-page>`;
  }

  #card(chosen: SiteFeature) {
    const { land } = this.words;
    return html`<mp-page>
      <mp-land-card .feature=${chosen}></mp-land-card>
      <button slot="foot" class="filled" data-do="done" @click=${() => choose(this.store, null)}>${land.done}</button>
      <button slot="foot" data-do="delete" @click=${() => deleteChosen(this.store)}>${land.delete}</button>
    </mp-page>`;
  }

  #page(page: LandPage): TemplateResult {
    if (page === 'list') return this.#list();
    const { land } = this.words;
    const inside = pageParts[page]();
    return html`<mp-page>
      <h1>${page === 'numbers' ? land.numbers.title : land.pages[page]}</h1>
      ${inside}
      <button slot="foot" class=${hasItsOwnStep.has(page) ? '' : 'filled'} data-do="list" @click=${() => openPage(this.store, 'list')}>
        ${land.back}
      </button>
    </mp-page>`;
  }

  #list() {
    const { land } = this.words;
    const { features } = this.state.site!;
    const empty = features.length === 0;
    const guided = this.state.land.guide;
    return html`<mp-page>
      <h1>${land.title}</h1>
      ${empty ? null : html`<p class="small">${land.count(features.length)}</p>`}
      <mp-land-tour></mp-land-tour>
      ${guided ? html`<mp-land-guide></mp-land-guide>` : null}
      <nav style="margin-top:12px" class="two" aria-label=${land.pagesLabel}>
        ${(['numbers', 'import', 'settings', 'files', 'new', 'issues'] as const).map(
          (page) =>
            html`<button data-page=${page} @click=${() => openPage(this.store, page)}>${page === 'issues' ? land.issuesPage(this.#count()) : land.pages[page]}</button>`,
        )}
      </nav>
      ${
        empty
          ? guided
            ? null
            : html`<p style="margin-top:14px">${land.nothingYet}</p>`
          : html`<mp-land-list style="display:block;margin-top:12px"></mp-land-list>`
      }
      ${
        empty && !guided
          ? html`<button
              slot="foot"
              class="filled"
              data-do="draw-grass"
              @click=${() => takeTool(this.store, { does: 'draw', kind: 'short-grass' })}
            >
              ${land.drawShortGrass}
            </button>`
          : null
      }
      <button
        slot="foot"
        class=${empty || guided || this.state.land.tour !== null ? '' : 'filled'}
        data-do="draw"
        @click=${() => openPage(this.store, 'kinds')}
      >
        ${land.drawMore}
      </button>
    </mp-page>`;
  }
}

/** Pages with a step of their own have that filled, and the way back plain. */
const hasItsOwnStep: ReadonlySet<LandPage> = new Set(['kinds', 'new', 'import', 'files']);

const pageParts: Readonly<Record<Exclude<LandPage, 'list'>, () => TemplateResult>> = {
  kinds: () => html`<mp-land-kinds></mp-land-kinds>`,
  numbers: () => html`<mp-land-numbers></mp-land-numbers>`,
  settings: () => html`<mp-land-settings></mp-land-settings>`,
  issues: () => html`<mp-land-issues></mp-land-issues>`,
  import: () => html`<mp-land-import></mp-land-import>`,
  new: () => html`<mp-land-new></mp-land-new>`,
  files: () => html`<mp-land-files></mp-land-files>`,
};
