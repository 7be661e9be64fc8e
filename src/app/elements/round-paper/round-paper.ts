/** A paper sheet typed in: a table with one row a box, Enter goes down, what was read stands beside. */
import { css, html } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { dayOrNull } from '../../../visits/days.ts';
import type { Visit } from '../../../visits/visit.ts';
import { visitWords } from '../../actions/round.ts';
import { nowOf, roundOf, today } from '../../actions/round-view.ts';
import { say } from '../../actions/say.ts';
import { keepVisits, setObserver, undoVisit } from '../../actions/visit-log.ts';
import { oddVisits } from '../../actions/visit-odd.ts';
import type { Stop } from '../../field/field-round.ts';
import { localTime } from '../../field/local-time.ts';
import { readPaperRow } from '../../field/paper-row.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import '../page/page.ts';
import { roundStyle } from '../place-round/round-style.ts';
import { knownOf } from '../visit-choices/visit-known.ts';
import { paperVisits, type Typed } from './paper-visits.ts';

const nothing: Typed = { seen: '', time: '' };

@customElement('mp-round-paper')
export class RoundPaper extends StoreElement {
  static override styles = [
    shared,
    roundStyle,
    css`
      :host {
        display: block;
      }
      .head {
        display: grid;
        grid-template-columns: 1fr 1fr;
        gap: 8px;
        margin: 8px 0;
      }
      .head label {
        min-width: 0;
      }
      .head input {
        box-sizing: border-box;
        width: 100%;
        font-weight: 400;
      }
      table {
        width: 100%;
        border-collapse: collapse;
      }
      caption {
        text-align: left;
      }
      th {
        text-align: left;
        font: 700 0.875rem / 1.2 var(--serif);
        border-bottom: var(--rule) solid var(--ink);
        padding: 4px;
      }
      td {
        border-bottom: 1px solid var(--ring);
        padding: 3px 4px;
        vertical-align: middle;
      }
      td input {
        width: 74px;
        padding: 4px 8px;
        font: 600 1rem / 1 var(--sans);
      }
      td input.time {
        width: 68px;
        font-weight: 400;
      }
      td input[aria-invalid="true"] {
        border-color: var(--rust);
        background: var(--rust-wash);
      }
      th[scope="row"] {
        border: 0;
        font-size: 1.05rem;
        border-bottom: 1px solid var(--ring);
      }
      .reads {
        font-weight: 600;
      }
      .wrap {
        overflow-x: auto;
      }
      /* In sight from every row. */
      .keep {
        position: sticky;
        bottom: 0;
        z-index: 1;
        padding: 8px 0;
        background: var(--paper);
        border-top: 1px solid var(--line);
      }
      .keep button {
        flex: 1;
      }
    `,
  ];

  @state() private typed: ReadonlyMap<string, Typed> = new Map();
  @state() private date = today();

  protected override watches() {
    return ['round', 'plan', 'words'] as const;
  }

  protected override render() {
    const round = roundOf(this.state);
    const { paperEntry: words } = this.words.round;
    return html`<h1>${words.title}</h1>
      <p class="small">${words.how}</p>
      <div class="head">
        <label
          >${words.walker}<input
            autocomplete="name"
            .value=${this.state.round.observer}
            @change=${(event: Event) => void setObserver(this.store, (event.target as HTMLInputElement).value.trim())}
        /></label>
        <label
          >${words.date}<input type="date" .value=${this.date} @change=${(event: Event) => (this.date = (event.target as HTMLInputElement).value)}
        /></label>
      </div>
      <div class="wrap">
        <table>
          <caption class="unseen">
            ${words.title}
          </caption>
          <thead>
            <tr>
              <th scope="col">${words.box}</th>
              <th scope="col">${words.before}</th>
              <th scope="col">${words.entry}</th>
              <th scope="col">${words.time}</th>
            </tr>
          </thead>
          <tbody>
            ${(round?.stops ?? []).map((stop) => this.#row(stop))}
          </tbody>
        </table>
      </div>
      ${this.#foot()}`;
  }

  #row(stop: Stop) {
    const { paperEntry: words } = this.words.round;
    const given = this.typed.get(stop.post) ?? nothing;
    const { row, wrong } = readPaperRow(given.seen);
    const known = knownOf(nowOf(this.state).get(stop.post) ?? null, this.state);
    const reads = row ? this.#reads(stop, given) : wrong === null ? '' : words.wrong(wrong);
    return html`<tr>
      <th scope="row">${stop.number}</th>
      <td class="small" id=${`row-${stop.number}`}>
        ${reads === '' ? known.seen : html`<span class="reads ${wrong === null ? '' : 'weak'}">${reads}</span>`}
      </td>
      <td>
        <input
          class="seen"
          autocapitalize="none"
          autocomplete="off"
          spellcheck="false"
          aria-label=${words.rowLabel(stop.number)}
          aria-describedby=${`row-${stop.number}`}
          aria-invalid=${wrong !== null}
          .value=${given.seen}
          @input=${(event: Event) => this.#type(stop.post, { ...given, seen: (event.target as HTMLInputElement).value })}
          @keydown=${this.#keys}
        />
      </td>
      <td>
        <input
          class="time"
          inputmode="numeric"
          placeholder="HH:MM"
          aria-label=${words.timeLabel(stop.number)}
          .value=${given.time}
          @change=${(event: Event) => this.#type(stop.post, { ...given, time: clockText((event.target as HTMLInputElement).value) })}
          @keydown=${this.#keys}
        />
      </td>
    </tr>`;
  }

  #reads(stop: Stop, given: Typed): string {
    const [visit] = this.#visits([stop], new Map([[stop.post, given]]));
    if (!visit) return '';
    const trouble = visit.trouble.map((one) => this.words.round.visit.troubles[one]);
    return [visitWords(visit, this.words), ...trouble].join(', ');
  }

  #visits(stops: readonly Stop[], typed: ReadonlyMap<string, Typed>): readonly Visit[] {
    const { observer, device } = this.state.round;
    return paperVisits(stops, typed, nowOf(this.state), {
      date: this.date,
      observer,
      device,
      now: localTime(new Date()),
      newId: () => `v-${crypto.randomUUID()}`,
    });
  }

  #foot() {
    const { paperEntry: words } = this.words.round;
    const count = [...this.typed.values()].filter((one) => readPaperRow(one.seen).row).length;
    const unread = [...this.typed.values()].some((one) => readPaperRow(one.seen).wrong !== null);
    const badDate = dayOrNull(this.date) === null;
    return html`<div class="buttons keep">
        <button class="filled" ?disabled=${count === 0 || badDate || unread} @click=${() => void this.#keep()}>
          ${words.keep(count)}
        </button>
      </div>
      ${badDate ? null : this.#odd()} ${unread ? html`<p class="weak" role="status">${words.fix}</p>` : null}
      ${badDate ? html`<p class="weak" role="status">${words.badDate}</p>` : null}`;
  }

  /** What looks wrong with the rows typed so far: a wrong day would be wrong in every one, so each thing is said once. */
  #odd() {
    const issues = oddVisits(this.state, this.#visits(roundOf(this.state)?.stops ?? [], this.typed));
    const once = issues.filter((one, i) => issues.findIndex((other) => other.id === one.id) === i);
    if (once.length === 0) return null;
    const { visit, paperEntry } = this.words.round;
    const rows = (id: string) => issues.filter((one) => one.id === id).length;
    return html`<div class="wash odd" role="status">
      ${once.map(
        ({ id, sentence, fix }) =>
          html`<p><b>${visit.looksOdd}</b> ${sentence} ${fix} ${rows(id) > 1 ? paperEntry.alsoRows(rows(id) - 1) : ''}</p>`,
      )}
    </div>`;
  }

  #type(post: string, typed: Typed): void {
    this.typed = new Map(this.typed).set(post, typed);
  }

  /** Enter and the arrows go from row to row in the same column. */
  readonly #keys = (event: KeyboardEvent): void => {
    const by = { Enter: 1, ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (!by) return;
    event.preventDefault();
    const input = event.target as HTMLInputElement;
    input.dispatchEvent(new Event('change'));
    const column = [...this.renderRoot.querySelectorAll<HTMLInputElement>(`td input.${input.className}`)];
    const next = column[column.indexOf(input) + by];
    if (next) {
      next.focus();
      next.select();
    } else if (by > 0) this.renderRoot.querySelector<HTMLButtonElement>('button.filled')?.focus();
  };

  async #keep(): Promise<void> {
    const visits = this.#visits(roundOf(this.state)?.stops ?? [], this.typed);
    const kept = await keepVisits(this.store, visits);
    this.typed = new Map();
    const { paperEntry: words } = this.words.round;
    const sentence = kept ? words.kept(visits.length) : words.keptNot(visits.length);
    say(this.store, 'undo', sentence, { word: words.undo, run: () => void this.#undo(visits) });
  }

  async #undo(visits: readonly Visit[]): Promise<void> {
    for (const visit of visits) await undoVisit(this.store, visit);
  }
}

/** "905", "9:05" and "9.05" are all five past nine; anything else stays as typed for the check to name. */
export function clockText(text: string): string {
  const found = /^\s*(\d{1,2})[:.h]?(\d{2})\s*$/.exec(text);
  return found ? `${found[1]!.padStart(2, '0')}:${found[2]}` : text.trim();
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-round-paper': RoundPaper;
  }
}
