/** The Season place: the year's look back, one box, next year's draft, and visits in and out. */
import { css, html, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { seasonWords } from '../../../visits/season-year.ts';
import { draftYear, takeDraft, tickedChanges } from '../../actions/season-draft.ts';
import {
  chooseYear,
  endInvented,
  inventSeason,
  leaveBox,
  lookAtBox,
  review,
  reviewWhenStale,
  seasonVisits,
  seasonYears,
  showSeasonPage,
  showsInvented,
  southOf,
  yearVisits,
} from '../../actions/season-review.ts';
import { goTo } from '../../actions/select.ts';
import { openVisits } from '../../actions/visit-log.ts';
import type { AppState } from '../../state.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import type { Page } from '../page/page.ts';
import '../page/page.ts';
import '../season-box/season-box.ts';
import '../season-boxes/season-boxes.ts';
import '../season-draft/season-draft.ts';
import '../season-files/season-files.ts';
import '../season-told/season-told.ts';
import '../season-totals/season-totals.ts';
import { seasonStyle } from './season-style.ts';

@customElement('mp-place-season')
export class PlaceSeason extends StoreElement {
  static override styles = [
    shared,
    seasonStyle,
    css`
      :host {
        display: flex;
        min-height: 0;
      }
      mp-page {
        flex: 1;
        min-width: 0;
      }
      .years {
        display: flex;
        flex-wrap: wrap;
        gap: 4px;
        margin-top: 10px;
      }
      .years button[aria-pressed="true"] {
        box-shadow: inset 0 -4px 0 var(--rust);
      }
      .invented {
        margin-top: 10px;
      }
      .empty {
        margin-top: 8px;
        font-size: 1rem;
        line-height: 1.45;
      }
      .ways {
        display: grid;
        gap: 8px;
        margin-top: 16px;
        justify-items: start;
      }
    `,
  ];

  protected override watches() {
    return ['season', 'words', 'plan', 'planOf', 'site', 'siteId', 'engine', 'round', 'selection'] as const;
  }

  protected override changed(state: AppState, before: AppState): void {
    if (state.selection !== before.selection && state.selection?.of === 'box') this.#pressed(state.selection.number);
    if (state.season.page !== before.season.page || state.season.box !== before.season.box)
      this.renderRoot.querySelector<Page>('mp-page')?.toTop();
  }

  /** A box pressed on the map, or in the map's own list of boxes. */
  #pressed(number: number): void {
    const box = this.state.plan?.boxes.find((one) => one.number === number);
    if (box && this.state.season.trail && this.state.season.box !== box.post) lookAtBox(this.store, box.post, number);
  }

  protected override updated(): void {
    void openVisits(this.store);
    reviewWhenStale(this.store);
  }

  protected override render() {
    const { season } = this.words;
    const { plan, season: at } = this.state;
    if (at.page === 'files') return this.#files();
    if (seasonVisits(this.state).length === 0) return this.#empty();
    if (!plan || plan.boxes.length === 0) return this.#noPlan();
    if (at.trouble !== null)
      return this.#page(
        season.reviewTitle,
        html`<p class="wash" role="alert">${season.trouble(at.trouble)}</p>`,
        html`<button slot="foot" class="filled" @click=${() => review(this.store)}>${season.again}</button>`,
      );
    if (!at.trail) return this.#page(season.reviewTitle, html`<p role="status">${season.working}</p>`, null);
    if (at.page === 'box') return this.#box();
    return at.page === 'draft' ? this.#draft() : this.#review();
  }

  #page(title: string, body: unknown, foot: unknown): TemplateResult {
    return html`<mp-page><h1>${title}</h1>${this.#stamp()}${body}${foot}</mp-page>`;
  }

  #stamp() {
    if (!showsInvented(this.state)) return null;
    const { season } = this.words;
    return html`<p class="invented"><span class="stamp">${season.invented}</span></p>
      <p class="small">${season.inventedNote}</p>`;
  }

  #review() {
    const { season } = this.words;
    const { trail, working } = this.state.season;
    const counted = yearVisits(this.state).length;
    const years = trail!.review.years.map((one) => seasonWords(one, southOf(this.state)));
    const changes = tickedChanges(this.state).length;
    return this.#page(
      season.reviewTitle,
      html`<p class="sub">${season.sub(years, counted)}</p>
        ${this.#years()}
        <p class="small" role="status">${working ? season.stale : ''}</p>
        <mp-season-totals></mp-season-totals>
        <mp-season-told></mp-season-told>
        <p class="small section">${season.onMapHint}</p>
        <mp-season-boxes></mp-season-boxes>
        ${
          showsInvented(this.state)
            ? html`<p class="section">
                <button class="text" @click=${() => endInvented(this.store)}>${season.inventedEnd}</button>
              </p>`
            : null
        }`,
      html`<button
          slot="foot"
          class="filled"
          ?disabled=${working || changes === 0}
          @click=${() => showSeasonPage(this.store, 'draft')}
        >
          ${season.draft(seasonWords(draftYear(this.state), southOf(this.state)))}
        </button>
        <button slot="foot" @click=${() => showSeasonPage(this.store, 'files')}>${season.toFiles}</button>`,
    );
  }

  #years() {
    const { season } = this.words;
    const years = seasonYears(this.state);
    if (years.length < 2) return null;
    const { year } = this.state.season;
    return html`<div class="years" role="group" aria-label=${season.yearLabel}>
      ${[null, ...years].map(
        (one) =>
          html`<button aria-pressed=${year === one} @click=${() => chooseYear(this.store, one)}>
            ${one === null ? season.allYears : seasonWords(one, southOf(this.state))}
          </button>`,
      )}
    </div>`;
  }

  #box() {
    const { season } = this.words;
    const { trail, box: post } = this.state.season;
    const box = trail!.review.boxes.find((one) => one.post === post);
    const planned = this.state.plan?.boxes.some((one) => one.post === post);
    return this.#page(
      season.box(box?.number ?? null, post ?? ''),
      html`${planned ? null : html`<p class="sub">${season.former}</p>`}
        <p>${box?.sentence ?? ''}</p>
        <mp-season-box></mp-season-box>`,
      html`<button slot="foot" @click=${() => leaveBox(this.store)}>${season.back}</button>`,
    );
  }

  #draft() {
    const { season } = this.words;
    const count = tickedChanges(this.state).length;
    return this.#page(
      season.draftTitle(seasonWords(draftYear(this.state), southOf(this.state))),
      html`<p class="sub">${season.draftSub(count)}</p>
        <mp-season-draft></mp-season-draft>`,
      html`<button slot="foot" class="filled" ?disabled=${count === 0} @click=${() => takeDraft(this.store)}>
          ${count === 0 ? season.draftNothing : season.draftTake(count)}
        </button>
        <button slot="foot" @click=${() => showSeasonPage(this.store, 'review')}>${season.cancel}</button>`,
    );
  }

  #files() {
    const { season } = this.words;
    return this.#page(
      season.filesTitle,
      html`<mp-season-files></mp-season-files>`,
      html`<button slot="foot" @click=${() => showSeasonPage(this.store, 'review')}>${season.cancel}</button>`,
    );
  }

  #noPlan() {
    const { season } = this.words;
    if (this.state.engine.at === 'work')
      return this.#page(season.title, html`<p role="status">${season.working}</p>`, null);
    return this.#page(
      season.title,
      html`<p class="empty">${season.emptyPlan}</p>`,
      html`<button slot="foot" class="filled" @click=${() => goTo(this.store, 'posts')}>${season.toPosts}</button>`,
    );
  }

  #empty() {
    const { season } = this.words;
    const ready = (this.state.plan?.boxes.length ?? 0) > 0;
    return this.#page(
      season.title,
      html`<p class="empty">${season.empty}</p>
        <div class="ways">
          <button @click=${() => showSeasonPage(this.store, 'files')}>${season.bringIn}</button>
          <button data-do="invent" ?disabled=${!ready} @click=${() => inventSeason(this.store)}>${season.tryInvented}</button>
          ${ready ? null : html`<p class="small">${season.emptyPlan}</p>`}
        </div>`,
      html`<button slot="foot" class="filled" @click=${() => goTo(this.store, 'round')}>${season.toRound}</button>`,
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-place-season': PlaceSeason;
  }
}
