/** A visit being noted: state, counts, bird, trouble with its cautions, and behind one fold nest, deeds, note and photo. */
import { html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { Offer } from '../../../visits/actions.ts';
import { dayWords } from '../../../visits/days.ts';
import { type ActionTaken, type Trouble, troubles } from '../../../visits/visit.ts';
import { changeDraft, draftedVisit, keepDraft } from '../../actions/round.ts';
import { keepPhoto } from '../../actions/round-photo.ts';
import { nowOf, roundOf, today } from '../../actions/round-view.ts';
import { setRound } from '../../actions/visit-log.ts';
import { oddVisits } from '../../actions/visit-odd.ts';
import { birdName } from '../../bird-name.ts';
import type { Stop } from '../../field/field-round.ts';
import { doneChoices, draftBird, holeOf, lawRegion, offersFor } from '../../field/offers.ts';
import { toggled, type VisitDraft } from '../../field/visit-draft.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import '../page/page.ts';
import { roundStyle } from '../place-round/round-style.ts';
import { chooseState } from '../visit-choices/choose-state.ts';
import { knownOf } from '../visit-choices/visit-known.ts';
import '../visit-choices/visit-choices.ts';
import './clue-choices.ts';
import './count-keys.ts';
import { ageChoices } from './age-choices.ts';
import { formStyle } from './form-style.ts';
import { nestClues } from './nest-clues.ts';

@customElement('mp-visit-form')
export class VisitForm extends StoreElement {
  static override styles = [shared, roundStyle, formStyle];

  @state() private changing = false;

  protected override watches() {
    return ['round', 'words', 'selection'] as const;
  }

  protected override render() {
    const { draft } = this.state.round;
    const stop = roundOf(this.state)?.stops.find((one) => one.post === draft?.post);
    if (!draft || !stop) return null;
    const { visit, pages: _pages, box } = { ...this.words.round };
    const offers = offersFor(
      draft,
      lawRegion(this.state.site?.settings.region ?? ''),
      holeOf(stop.bird, draft.otherHole),
    );
    return html`<mp-page>
      <div class="head">
        <h1>${box(draft.number)}: ${visit.states[draft.state]}</h1>
        <button class="text" aria-expanded=${this.changing} @click=${() => (this.changing = !this.changing)}>
          ${visit.change}
        </button>
      </div>
      ${draft.corrects ? html`<p class="wash">${visit.corrects(dayWords(draft.corrects.date), draft.corrects.observer)}</p>` : null}
      ${this.changing ? this.#states(draft, stop) : null} ${this.#before(stop)} ${this.#counts(draft)}
      ${this.#bird(draft, stop)} ${this.#trouble(draft)} ${this.#offers(draft, offers)} ${this.#odd()}
      <details>
        <summary>${visit.more}</summary>
        ${draft.state === 'empty' ? null : nestClues(draft, this.words, this.#change)} ${this.#done(draft, offers)}
        ${this.#dead(draft)} ${this.#note(draft)} ${this.#photo(draft)} ${this.#when(draft)}
      </details>
      <button slot="foot" @click=${() => setRound(this.store, { draft: null })}>${visit.cancel}</button>
      <button slot="foot" class="filled keep" @click=${() => void keepDraft(this.store)}>${visit.keep}</button>
    </mp-page>`;
  }

  readonly #change = (change: Partial<VisitDraft>): void => changeDraft(this.store, change);

  #states(draft: VisitDraft, stop: Stop) {
    return html`<mp-visit-choices
      whole
      .chosen=${draft.state}
      @mp-state=${(event: CustomEvent) => {
        this.changing = false;
        chooseState(this.store, stop, event.detail);
      }}
    ></mp-visit-choices>`;
  }

  #before(stop: Stop) {
    const known = knownOf(nowOf(this.state).get(stop.post) ?? null, this.state);
    return html`<p>${known.seen} ${known.care ? html`<span class="weak">${known.care}</span>` : null}</p>
      ${known.closed ? html`<p class="wash" role="alert">${known.closed}</p>` : null}`;
  }

  #counts(draft: VisitDraft) {
    const { visit } = this.words.round;
    const keys = (label: string, count: number | null, set: (count: number | null) => void) =>
      html`<mp-count-keys
        .label=${label}
        .count=${count}
        .clear=${visit.clear}
        .none=${visit.notCounted}
        @mp-count=${(event: CustomEvent<number | null>) => set(event.detail)}
      ></mp-count-keys>`;
    if (draft.state === 'eggs')
      return keys(visit.howManyEggs, draft.eggCount, (eggCount) => this.#change({ eggCount }));
    if (draft.state === 'fledged') return keys(visit.howManyYoung, draft.young, (young) => this.#change({ young }));
    if (draft.state !== 'young') return null;
    return html`${keys(visit.howManyYoung, draft.young, (young) => this.#change({ young }))}
      ${ageChoices(draft, this.words, this.#change)}
      <details class="inner">
        <summary>${visit.eggsBeside}${draft.eggCount === null ? '' : `: ${draft.eggCount}`}</summary>
        ${keys(visit.eggsBeside, draft.eggCount, (eggCount) => this.#change({ eggCount }))}
      </details>`;
  }

  #bird(draft: VisitDraft, stop: Stop) {
    if (draft.state === 'empty') return null;
    const { visit } = this.words.round;
    const last = nowOf(this.state).get(stop.post)?.nest?.bird ?? null;
    const likely = [...new Set([draft.bird, last, stop.bird].filter((id) => id !== null))].slice(0, 3);
    return html`<section>
      <h2>${visit.bird}</h2>
      <div class="choices">
        <button aria-pressed=${draft.bird === null} @click=${() => this.#change({ bird: null, secondLook: false })}>
          ${visit.birdUnknown}
        </button>
        ${likely.map(
          (id) =>
            html`<button
              aria-pressed=${draft.bird === id}
              data-bird=${id}
              @click=${() => this.#change({ bird: id, secondLook: false })}
            >
              ${birdName(id)}
            </button>`,
        )}
        <button class="text" @click=${() => setRound(this.store, { asking: true })}>${visit.openKey}</button>
      </div>
    </section>`;
  }

  #trouble(draft: VisitDraft) {
    const { visit } = this.words.round;
    return html`<mp-clue-choices
      class="trouble"
      .label=${visit.trouble}
      .options=${troubles}
      .chosen=${draft.trouble}
      .words=${visit.troubles}
      @mp-choose=${(e: CustomEvent<Trouble>) => this.#change({ trouble: toggled(draft.trouble, e.detail) })}
    ></mp-clue-choices>`;
  }

  /** Nothing is said where nothing need be done. */
  #offers(draft: VisitDraft, offers: readonly Offer[]) {
    const { visit } = this.words.round;
    const said = offers.filter((offer) => offer.cautions.length > 0);
    if (said.length === 0) return null;
    return html`<section>
      <h2>${visit.offers}</h2>
      ${said.map(
        (offer) =>
          html`<div class="offer" data-offer=${offer.id}>
            <h3>${offer.title}</h3>
            <ul>
              ${offer.cautions.map((caution) => html`<li>${caution}</li>`)}
            </ul>
            ${this.#pest(draft, offer)}
            ${offer.law ? html`<details class="inner" ?open=${isPest(offer)}><summary>${visit.law}</summary><p class="small">${offer.law}</p></details>` : null}
            <p class="small">${visit.source(offer.sources)}</p>
          </div>`,
      )}
    </section>`;
  }

  #pest(draft: VisitDraft, offer: Offer) {
    const { visit } = this.words.round;
    const bird = draftBird(draft);
    if (offer.id === 'second-look' && bird)
      return html`<div class="buttons">
        <button @click=${() => setRound(this.store, { asking: true })}>${visit.openKey}</button>
        <button aria-pressed=${draft.secondLook} @click=${() => this.#change({ secondLook: !draft.secondLook })}>
          ${visit.secondLook(bird.name)}
        </button>
      </div>`;
    if (offer.id !== 'remove-pest-nest') return null;
    const done = draft.action.includes('pest-nest-removed');
    return html`<div class="buttons">
      <button aria-pressed=${done} @click=${() => this.#change({ action: toggled(draft.action, 'pest-nest-removed') })}>
        ${visit.removed}
      </button>
    </div>`;
  }

  /** What looks wrong is said, never forbidden. */
  #odd() {
    const visit = draftedVisit(this.state);
    if (!visit) return null;
    const issues = oddVisits(this.state, [visit]);
    if (issues.length === 0) return null;
    return html`<div class="wash odd" role="status">
      ${issues.map((issue) => html`<p><b>${this.words.round.visit.looksOdd}</b> ${issue.sentence} ${issue.fix}</p>`)}
    </div>`;
  }

  #done(draft: VisitDraft, offers: readonly Offer[]) {
    const { visit } = this.words.round;
    return html`<mp-clue-choices
      .label=${visit.action}
      .options=${doneChoices(draft, offers)}
      .chosen=${draft.action}
      .words=${visit.actions}
      @mp-choose=${(e: CustomEvent<ActionTaken>) => this.#change({ action: toggled(draft.action, e.detail) })}
    ></mp-clue-choices>`;
  }

  #dead(draft: VisitDraft) {
    const set = (text: string) => this.#change({ dead: Math.max(0, Math.floor(Number(text) || 0)) });
    return html`<label
      >${this.words.round.visit.dead}
      <input
        type="number"
        inputmode="numeric"
        min="0"
        max="60"
        .value=${String(draft.dead)}
        @change=${(event: Event) => set((event.target as HTMLInputElement).value)}
    /></label>`;
  }

  #note(draft: VisitDraft) {
    const { visit } = this.words.round;
    return html`<label
      >${visit.note}
      <textarea
        rows="2"
        maxlength="2000"
        placeholder=${visit.notePlaceholder}
        .value=${draft.note}
        @input=${(event: Event) => this.#change({ note: (event.target as HTMLTextAreaElement).value })}
      ></textarea>
    </label>`;
  }

  #photo(draft: VisitDraft) {
    const { visit } = this.words.round;
    const take = (event: Event) => {
      const file = (event.target as HTMLInputElement).files?.[0];
      if (file) void keepPhoto(this.store, file);
    };
    return html`<label
        >${visit.photo}
        <input type="file" accept="image/*" capture="environment" @change=${take} />
      </label>
      ${draft.photo ? html`<p role="status">${visit.photoKept}</p>` : null}`;
  }

  #when(draft: VisitDraft) {
    const { visit } = this.words.round;
    const value = (event: Event) => (event.target as HTMLInputElement).value || null;
    return html`<div class="when">
      <label
        >${visit.date}
        <input
          type="date"
          .value=${draft.date ?? today()}
          @change=${(event: Event) => this.#change({ date: value(event), time: draft.time })}
      /></label>
      <label
        >${visit.time}
        <input
          type="time"
          .value=${draft.time ?? ''}
          @change=${(event: Event) => this.#change({ time: value(event), date: draft.date ?? today() })}
      /></label>
    </div>`;
  }
}

/** Whether a nest might be removed: then the law is not folded away. */
const isPest = (offer: Offer) => offer.id === 'second-look' || offer.id === 'remove-pest-nest';

declare global {
  interface HTMLElementTagNameMap {
    'mp-visit-form': VisitForm;
  }
}
