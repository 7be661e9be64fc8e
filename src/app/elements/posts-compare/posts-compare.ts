/** Two boxes side by side: score, reasons, afternoon sun, facing, and who else would live there. */
import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { PlannedBox } from '../../../plan-types.ts';
import { setPosts } from '../../actions/posts-state.ts';
import { birdName } from '../../bird-name.ts';
import { capital } from '../../capital.ts';
import { degrees } from '../../format.ts';
import { boxByNumber, isWeak } from '../../map/box-look.ts';
import { shownBox } from '../../shown-plan.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import '../score-disc/score-disc.ts';

/** Points of 100 from which one is called the better (ours: less is within what the land's drawing can carry). */
const clear = 3;

@customElement('mp-posts-compare')
export class PostsCompare extends StoreElement {
  static override styles = [
    shared,
    css`
      *,
      *::before,
      *::after {
        box-sizing: border-box;
      }
      table {
        width: 100%;
        border-collapse: collapse;
        margin-top: 10px;
      }
      th,
      td {
        padding: 5px 2px;
        overflow-wrap: anywhere;
        border-bottom: 1px solid var(--ring);
        text-align: right;
        vertical-align: middle;
        line-height: 1.2;
      }
      th[scope="row"] {
        text-align: left;
        font-weight: 400;
      }
      thead th {
        font: 700 0.969rem / 1.2 var(--serif);
      }
      .better {
        font-weight: 700;
        text-decoration: underline;
        text-underline-offset: 3px;
        text-decoration-color: var(--sky);
      }
      label {
        display: block;
        margin-top: 8px;
      }
      select {
        width: 100%;
        min-height: 44px;
        border: var(--rule) solid var(--ink);
        border-radius: 5px;
        background: var(--raised);
        padding: 0 8px;
      }
      mp-score-disc {
        padding: 8px;
      }
    `,
  ];

  protected override watches() {
    return ['plan', 'selection', 'words', 'posts'] as const;
  }

  protected override render() {
    const { plan, posts } = this.state;
    const { compare, why } = this.words.posts;
    const one = shownBox(this.state);
    const other = boxByNumber(plan, posts.other);
    if (!plan || !one) return html`<p>${why.noBox}</p>`;
    return html`<h1>${compare.title(one.number)}</h1>
      <label
        >${compare.with}
        <select data-other @change=${this.#choose}>
          ${plan.boxes
            .filter((box) => box.number !== one.number)
            .map(
              (box) =>
                html`<option value=${box.number} ?selected=${box.number === other?.number}>
                  ${compare.option(box.number, birdName(box.bird), Math.round(box.card.score))}
                </option>`,
            )}
        </select></label
      >
      ${other && other.number !== one.number ? this.#table(one, other) : null}`;
  }

  #table(one: PlannedBox, other: PlannedBox) {
    const { posts } = this.words;
    const both = [one, other] as const;
    const sun = both.map((box) => box.card.sun.hours);
    return html`<table>
      <thead>
        <tr>
          <td></td>
          ${both.map((box) => html`<th scope="col">${this.#disc(box)}${posts.box(box.number)}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${this.#row(
          capital(posts.score),
          both.map((box) => box.card.score),
        )}
        ${one.card.rows.map(({ id, title }) => {
          const scores = both.map((box) => box.card.rows.find((row) => row.id === id && row.weight > 0)?.score ?? null);
          // What neither is judged by tells them not apart.
          if (scores.every((score) => score === null)) return null;
          return this.#row(
            title,
            scores.map((score) => (score === null ? null : score * 100)),
          );
        })}
        ${this.#words(
          posts.compare.sunHours,
          sun.map((hours) => posts.compare.hours(hours.toFixed(1))),
        )}
        ${this.#words(
          posts.facing,
          both.map((box) => degrees(box.card.facing.used)),
        )}
        ${this.#words(
          posts.compare.sure,
          both.map((box) => (box.sureness === null ? '–' : `${Math.round(box.sureness * 100)} %`)),
        )}
        ${this.#words(
          posts.compare.who,
          both.map((box) => birdName(box.bird)),
        )}
        ${this.#words(
          posts.compare.also,
          both.map((box) => this.#also(box)),
        )}
      </tbody>
    </table>`;
  }

  #disc(box: PlannedBox) {
    return html`<mp-score-disc
        size="34"
        .score=${box.card.score}
        .facing=${box.card.facing.used}
        .label=${String(box.number)}
        .weak=${isWeak(box)}
        .standing=${box.state === 'standing'}
      ></mp-score-disc
      ><br />`;
  }

  /** The clearly better of two figures is underlined and bold. */
  #row(title: string, values: readonly (number | null)[]) {
    const [a = null, b = null] = values;
    const lead = a === null || b === null ? 0 : Math.round(a) - Math.round(b);
    return html`<tr>
      <th scope="row">${title}</th>
      ${values.map((value, i) => {
        const better = (i === 0 ? lead : -lead) >= clear;
        return html`<td class="number ${better ? 'better' : ''}">${value === null ? '–' : Math.round(value)}</td>`;
      })}
    </tr>`;
  }

  #words(title: string, values: readonly string[]) {
    return html`<tr>
      <th scope="row">${title}</th>
      ${values.map((value) => html`<td>${value}</td>`)}
    </tr>`;
  }

  #also({ card, bird }: PlannedBox): string {
    const first = card.who.find((who) => who.bird !== bird);
    return first ? `${first.name} ${Math.round(first.score)}` : '–';
  }

  readonly #choose = ({ target }: Event): void => {
    setPosts(this.store, { other: Number((target as HTMLSelectElement).value) });
  };
}
