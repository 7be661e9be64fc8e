/** The Round place: on a phone the walk, one box a screen; on a desktop the rounds as lists; visits noted on both. */
import { html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { lengthText } from '../../../criteria/units.ts';
import {
  arrive,
  followPlan,
  goToBox,
  goToNext,
  showPage,
  skipBox,
  startPosition,
  stopPosition,
} from '../../actions/round.ts';
import { nextOf, nowOf, roundOf, seenToday, targetOf, wayTo, withinOf } from '../../actions/round-view.ts';
import { goTo, setTheme } from '../../actions/select.ts';
import { openVisits, setRound } from '../../actions/visit-log.ts';
import type { Stop } from '../../field/field-round.ts';
import { type Awake, keepAwake } from '../../field/wake-lock.ts';
import type { RoundPage } from '../../round-state.ts';
import type { AppState } from '../../state.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import type { ThemeName } from '../../theme.ts';
import '../nest-key/nest-key.ts';
import '../page/page.ts';
import '../round-due/round-due.ts';
import '../round-list/round-list.ts';
import '../round-paper/round-paper.ts';
import '../round-ready/round-ready.ts';
import '../round-settings/round-settings.ts';
import '../round-share/round-share.ts';
import '../round-trouble/round-trouble.ts';
import '../round-way/round-way.ts';
import '../visit-choices/visit-choices.ts';
import { chooseState } from '../visit-choices/choose-state.ts';
import { knownOf } from '../visit-choices/visit-known.ts';
import '../visit-form/visit-form.ts';
import '../visit-history/visit-history.ts';
import { placeStyle } from './place-style.ts';
import { roundStyle } from './round-style.ts';

const pages: readonly RoundPage[] = ['list', 'due', 'paper', 'key', 'share', 'ready'];
const narrow = matchMedia('(max-width: 719px)');

@customElement('mp-place-round')
export class PlaceRound extends StoreElement {
  static override styles = [shared, roundStyle, placeStyle];

  @state() private phone = narrow.matches;
  #themeBefore: ThemeName | null = null;
  #awake: Awake | null = null;
  readonly #onWidth = () => {
    this.phone = narrow.matches;
  };

  protected override watches() {
    return ['round', 'plan', 'selection', 'words', 'siteId', 'site', 'engine', 'units'] as const;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    narrow.addEventListener('change', this.#onWidth);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    narrow.removeEventListener('change', this.#onWidth);
    stopPosition(this.store);
    this.#awake?.stop();
    this.#awake = null;
    setRound(this.store, { where: { at: 'off' }, awake: 'off', heading: null });
    if (this.#themeBefore && this.state.theme === 'sunlight') setTheme(this.store, this.#themeBefore);
  }

  protected override firstUpdated(): void {
    queueMicrotask(() => this.isConnected && this.#enter());
  }

  #enter(): void {
    if (this.phone && this.state.theme !== 'sunlight') {
      this.#themeBefore = this.state.theme;
      setTheme(this.store, 'sunlight');
    }
    if (this.phone) startPosition(this.store);
    this.#begin();
  }

  protected override changed(now: AppState, before: AppState): void {
    if (now.plan !== before.plan || now.siteId !== before.siteId || now.round.shared !== before.round.shared)
      this.#begin();
    else if (now.round.logState !== before.round.logState) this.#first();
  }

  /** Visits, the plan's hash, and on a phone the first box to go to. */
  #begin(): void {
    void openVisits(this.store).then(() => this.#first());
    void followPlan(this.store);
    this.#first();
  }

  #first(): void {
    if (!this.isConnected || !this.phone || this.state.round.page !== 'walk') return;
    if (this.state.round.logState !== 'reading' && !targetOf(this.state) && roundOf(this.state)) goToNext(this.store);
  }

  protected override willUpdate(): void {
    if (this.hasUpdated || this.store) this.toggleAttribute('full', this.phone && !this.#isWalk());
  }

  #isWalk(): boolean {
    const { page, draft, arrived } = this.state.round;
    return page === 'walk' && !draft && !arrived && roundOf(this.state) !== null && targetOf(this.state) !== null;
  }

  protected override render() {
    const round = roundOf(this.state);
    const { draft, asking, page } = this.state.round;
    if (!round) return this.#none();
    if (draft) return asking ? html`<mp-nest-key></mp-nest-key>` : html`<mp-visit-form></mp-visit-form>`;
    const target = targetOf(this.state);
    if (page === 'key') return html`<div class="stack">${this.#nav()}<mp-nest-key></mp-nest-key></div>`;
    if (page !== 'walk') return this.#page(page);
    if (!target) return this.phone ? this.#done() : this.#page('list');
    return this.phone && !this.state.round.arrived ? this.#walk(target) : this.#box(target);
  }

  #none() {
    const { round, shell } = this.words;
    const { engine } = this.state;
    return html`<mp-page>
      <h1>${round.title}</h1>
      <p>${engine.at === 'work' ? engine.what : round.none}</p>
      <button slot="foot" class="filled" @click=${() => goTo(this.store, 'posts')}>${round.choose}</button>
      <p class="unseen">${shell.places.round}</p>
    </mp-page>`;
  }

  #nav() {
    const { round } = this.words;
    const { page } = this.state.round;
    const open = page === 'walk' ? 'list' : page;
    return html`<nav aria-label=${round.pagesLabel}>
      ${pages.map(
        (one) =>
          html`<button aria-current=${open === one ? 'page' : 'false'} @click=${() => showPage(this.store, one)}>
            ${round.pages[one]}
          </button>`,
      )}
    </nav>`;
  }

  #page(page: RoundPage) {
    const inside = {
      walk: () => html``,
      list: () => this.#list(),
      due: () => html`<mp-round-due></mp-round-due>`,
      paper: () => html`<mp-round-paper></mp-round-paper>`,
      key: () => html``,
      share: () => html`<mp-round-share></mp-round-share>`,
      ready: () => html`<mp-round-ready></mp-round-ready>`,
    }[page];
    const next = nextOf(this.state, null);
    const { round } = this.words;
    const seen = seenToday(this.state).size > 0;
    return html`<mp-page>
      ${this.#nav()}<mp-round-trouble></mp-round-trouble>${inside()}
      ${
        // A sheet typed in has its own next step: to keep it.
        next && page !== 'paper'
          ? html`<button slot="foot" class="filled" @click=${() => goToBox(this.store, next.number)}>
              ${seen ? round.nextBox(next.number) : round.startRound(next.number)}
            </button>`
          : null
      }
    </mp-page>`;
  }

  #list() {
    const { round } = this.words;
    const { shared: given, awake } = this.state.round;
    return html`<h1>${round.title}</h1>
      ${given ? html`<p class="small">${round.sharedNote}</p>` : null}
      ${given && given.blur > 0 ? html`<p class="wash">${round.blurred(lengthText(given.blur, this.state.units))}</p>` : null}
      <mp-round-list></mp-round-list>
      <details ?hidden=${given !== null}>
        <summary>${round.settings}</summary>
        <mp-round-settings></mp-round-settings>
      </details>
      <label class="awake"
        ><input
          type="checkbox"
          .checked=${awake === 'on'}
          @change=${(event: Event) => this.#keepAwake((event.target as HTMLInputElement).checked)}
        />${round.awake}</label
      >
      ${awake === 'not-possible' || awake === 'refused' ? html`<p class="small">${round.awakeNot}</p>` : null}`;
  }

  #keepAwake(wanted: boolean): void {
    this.#awake ??= keepAwake((awake) => setRound(this.store, { awake }));
    void this.#awake.set(wanted);
  }

  /** One box a screen: band above the map, what is inside below, two buttons at the thumb. */
  #walk(target: Stop) {
    const { round } = this.words;
    return html`<mp-round-way></mp-round-way>
      <div class="panel">
        <mp-round-trouble></mp-round-trouble>
        ${this.#known(target)}
        <mp-visit-choices @mp-state=${(event: CustomEvent) => chooseState(this.store, target, event.detail)}></mp-visit-choices>
      </div>
      <div class="foot">
        <button @click=${() => skipBox(this.store)}>${round.skip}</button>
        <button class="filled" @click=${() => arrive(this.store, target)}>${round.atBox(target.number)}</button>
      </div>`;
  }

  #known(target: Stop) {
    const { round } = this.words;
    const known = knownOf(nowOf(this.state).get(target.post) ?? null, this.state);
    return html`<p><b class="what">${round.visit.what}</b> ${known.seen}</p>
      ${known.closed ? html`<p class="weak"><b>${round.care}</b> ${known.closed}</p>` : known.care ? html`<p class="weak"><b>${round.care}</b> ${known.care}</p>` : null}`;
  }

  /** The whole page of a box: the way, what is known, every state. */
  #box(target: Stop) {
    const { round } = this.words;
    return html`<mp-page>
      <mp-round-trouble></mp-round-trouble>
      ${this.phone ? html`<h1>${round.box(target.number)}</h1>` : html`<mp-round-way></mp-round-way>`} ${this.#doubt(target)}
      <section>
        ${this.#known(target)} ${this.#pair(target)}
        <mp-visit-choices
          whole
          @mp-state=${(event: CustomEvent) => chooseState(this.store, target, event.detail)}
        ></mp-visit-choices>
      </section>
      <mp-visit-history .post=${target.post}></mp-visit-history>
      <button slot="foot" @click=${() => this.#leave()}>${this.phone ? round.visit.back : round.backToList}</button>
      <button slot="foot" class=${this.phone ? '' : 'filled'} @click=${() => skipBox(this.store)}>${round.skip}</button>
    </mp-page>`;
  }

  #leave(): void {
    setRound(this.store, { arrived: null });
    if (!this.phone) showPage(this.store, 'list');
  }

  /** The device's position speaks against this box: said, not forbidden. */
  #doubt(target: Stop) {
    const way = wayTo(this.state, target);
    const { where } = this.state.round;
    if (!way || where.at !== 'fix' || way.within || way.metres < where.fix.accuracy + 30) return null;
    const { round } = this.words;
    const [nearest] = withinOf(this.state);
    return html`<div class="wash" role="status">
      <p>
        ${round.farOff(lengthText(way.metres, this.state.units), target.number)}
        ${nearest && nearest !== target.number ? round.otherBox(nearest) : ''}
      </p>
      ${
        nearest && nearest !== target.number
          ? html`<button class="text" @click=${() => goToBox(this.store, nearest)}>${round.goThere(nearest)}</button>`
          : null
      }
    </div>`;
  }

  #pair(target: Stop) {
    const other = this.state.plan?.boxes.find((box) => box.number === target.number)?.pairedWith;
    return other ? html`<p class="small">${this.words.round.pairHere(other)}</p>` : null;
  }

  #done() {
    const { round } = this.words;
    const count = roundOf(this.state)?.stops.length ?? 0;
    return html`<mp-page>
      ${this.#nav()}<mp-round-trouble></mp-round-trouble>
      <h1>${round.allSeen(count)}</h1>
      <p>${round.allSeenNext}</p>
      <button slot="foot" @click=${() => showPage(this.store, 'due')}>${round.pages.due}</button>
      <button slot="foot" class="filled" @click=${() => showPage(this.store, 'share')}>${round.share.sendVisits}</button>
    </mp-page>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-place-round': PlaceRound;
  }
}
