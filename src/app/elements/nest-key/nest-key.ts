/** The nest-and-egg key: what is seen leads to likely birds and what tells them apart, or to "photograph and ask". */
import { css, html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { holeText } from '../../../birds/hole.ts';
import { type Candidate, identifyNest, type KeyAnswer } from '../../../visits/key.ts';
import { changeDraft } from '../../actions/round.ts';
import { roundOf } from '../../actions/round-view.ts';
import { setRound } from '../../actions/visit-log.ts';
import { birdName } from '../../bird-name.ts';
import { evidenceOf, holeOf, lawRegion } from '../../field/offers.ts';
import { startDraft, type VisitDraft } from '../../field/visit-draft.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import '../page/page.ts';
import { roundStyle } from '../place-round/round-style.ts';
import { nestClues } from '../visit-form/nest-clues.ts';

/** Competing answers shown. */
const shown = 4;

@customElement('mp-nest-key')
export class NestKey extends StoreElement {
  static override styles = [
    shared,
    roundStyle,
    css`
      :host {
        display: block;
        height: 100%;
        min-height: 0;
      }
      .verdict {
        border-left: 4px solid var(--sky);
        background: var(--sky-wash);
        padding: 8px 12px;
        margin-top: 14px;
        position: sticky;
        top: -8px;
        z-index: 1;
      }
      .verdict.unsure {
        border-color: var(--rust);
        background: var(--rust-wash);
      }
      .candidate {
        padding: 10px 0;
        border-bottom: 1px solid var(--ring);
      }
      dl {
        display: grid;
        grid-template-columns: auto 1fr;
        gap: 2px 8px;
        margin: 4px 0;
      }
      dt {
        font-weight: 600;
      }
      dd {
        margin: 0;
      }
      @media (max-width: 719px) {
        button[slot="foot"] {
          min-height: 64px;
        }
      }
    `,
  ];

  /** Clues of the key on its own; with an open draft its clues are used. */
  @state() private loose: VisitDraft = startDraft('', 0, 'eggs', null);

  protected override watches() {
    return ['round', 'words', 'site', 'plan', 'units'] as const;
  }

  get #draft(): VisitDraft {
    return this.#over ? (this.state.round.draft ?? this.loose) : this.loose;
  }

  /** Whether the key was opened for a visit. */
  get #over(): boolean {
    return this.state.round.asking && this.state.round.draft !== null;
  }

  protected override render() {
    const { key } = this.words.round;
    const draft = this.#draft;
    const evidence = evidenceOf(draft, lawRegion(this.state.site?.settings.region ?? ''), this.#hole(draft));
    const asked =
      evidence.material.length > 0 || evidence.cup || evidence.eggColor || evidence.eggPattern || evidence.eggSize;
    const answer = identifyNest(evidence);
    return html`<mp-page>
      <h1>${key.title}</h1>
      <p>${key.intro}</p>
      ${asked ? this.#verdict(answer) : null} ${nestClues(draft, this.words, this.#change)}
      ${this.#holeLine(draft)}
      ${asked ? this.#candidates(answer) : null} ${this.#foot(answer)}
    </mp-page>`;
  }

  /** The bird the box was planned for; null for the key on its own. */
  get #planned(): string | null {
    const { draft } = this.state.round;
    return (this.#over && roundOf(this.state)?.stops.find((stop) => stop.post === draft?.post)?.bird) || null;
  }

  #hole({ otherHole }: VisitDraft) {
    return holeOf(this.#planned, otherHole);
  }

  /** The hole rules birds out, so the walker is told which one is meant, and can say that it is another. */
  #holeLine({ otherHole }: VisitDraft) {
    const planned = this.#planned;
    const hole = holeOf(planned, false);
    if (planned === null || hole === null) return null;
    const { key } = this.words.round;
    return html`<section>
      <h2>${key.holeTitle}</h2>
      <p>${key.hole(holeText(hole, this.state.units), birdName(planned))}</p>
      <div class="choices">
        <button aria-pressed=${otherHole} data-do="other-hole" @click=${() => this.#change({ otherHole: !otherHole })}>
          ${key.otherHole}
        </button>
      </div>
    </section>`;
  }

  readonly #change = (change: Partial<VisitDraft>): void => {
    if (this.#over) changeDraft(this.store, { ...change, secondLook: false });
    else this.loose = { ...this.loose, ...change };
  };

  #verdict(answer: KeyAnswer) {
    const { key } = this.words.round;
    const unsure = answer.verdict === 'unsure';
    return html`<div class="verdict ${unsure ? 'unsure' : ''}" role="status">
      <p><b>${answer.sentence}</b></p>
      ${unsure ? html`<p>${key.unsureDo}</p>` : null}
    </div>`;
  }

  #candidates({ ranked, keptOut, likely }: KeyAnswer) {
    const { key } = this.words.round;
    const first = ranked.filter((one) => likely.includes(one.id));
    const rest = ranked.filter((one) => !likely.includes(one.id)).slice(0, shown);
    return html`<section>
        ${first.length > 0 ? html`<h2>${key.likely}</h2>` : null} ${first.map((one) => this.#candidate(one))}
        ${rest.length > 0 ? html`<h2>${key.also}</h2>` : null} ${rest.map((one) => this.#candidate(one))}
      </section>
      ${keptOut.length > 0 ? html`<p class="small">${key.keptOut(keptOut.join(', '))}</p>` : null}`;
  }

  #candidate(one: Candidate) {
    const { key } = this.words.round;
    const row = (word: string, list: readonly string[]) =>
      list.length > 0 ? html`<dt>${word}</dt><dd>${list.join('; ')}</dd>` : null;
    return html`<div class="candidate" data-bird=${one.id}>
      <h3>${one.name}</h3>
      <dl>${row(key.for, one.reasons)}${row(key.against, one.against)}${row(key.tells, [one.tell])}</dl>
      ${one.id === 'mouse' ? html`<p class="wash">${key.mouse}</p>` : null}
      <p class="small">${key.source(one.sources)}</p>
    </div>`;
  }

  #foot({ likely }: KeyAnswer) {
    const { key, visit } = this.words.round;
    if (!this.#over)
      return html`<button slot="foot" @click=${() => (this.loose = startDraft('', 0, 'eggs', null))}>${key.clear}</button>`;
    const birds = likely.filter((id) => id !== 'mouse');
    return html`<button slot="foot" @click=${() => setRound(this.store, { asking: false })}>${visit.back}</button>
      ${birds.map(
        (id) =>
          html`<button slot="foot" class="filled" @click=${() => this.#note({ bird: id })}>${key.take(birdName(id))}</button>`,
      )}
      ${birds.length === 0 ? this.#unsure() : null}`;
  }

  #unsure() {
    const { action } = this.#draft;
    const asked = action.includes('asked') ? action : [...action, 'asked' as const];
    return html`<button slot="foot" class="filled" @click=${() => this.#note({ bird: null, action: asked })}>
      ${this.words.round.key.takeUnsure}
    </button>`;
  }

  #note(change: Partial<VisitDraft>): void {
    changeDraft(this.store, change);
    setRound(this.store, { asking: false });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-nest-key': NestKey;
  }
}
