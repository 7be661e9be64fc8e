/** Plans kept by name: score, sites, meters and minutes beside those of the plan on the screen, and what differs, in words and on the map. */
import { css, html } from 'lit';
import { customElement, query } from 'lit/decorators.js';
import { differences } from '../../../plan/kept.ts';
import type { Plan } from '../../../plan-types.ts';
import type { KeptPlan } from '../../../site/kept-plan.ts';
import { dropKept, keepPlan, takeKept } from '../../actions/kept-plans.ts';
import { setPosts } from '../../actions/posts-state.ts';
import { capital } from '../../capital.ts';
import { length } from '../../format.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { planTableStyle } from './plan-table-style.ts';

/** Box numbers written out before "and 7 more". */
const written = 12;

@customElement('mp-posts-kept')
export class PostsKept extends StoreElement {
  static override styles = [
    shared,
    planTableStyle,
    css`
      *,
      *::before,
      *::after {
        box-sizing: border-box;
      }
      form {
        display: flex;
        gap: 8px;
        align-items: end;
        margin-top: 10px;
      }
      label {
        flex: 1;
        min-width: 0;
      }
      input {
        display: block;
        width: 100%;
        min-height: 44px;
        padding: 0 10px;
        border: var(--rule) solid var(--ink);
        border-radius: 5px;
        background: var(--raised);
        font-size: max(1rem, 16px);
      }
      form button {
        white-space: nowrap;
      }
      section {
        margin-top: 14px;
      }
      .acts {
        display: flex;
        flex-wrap: wrap;
        gap: 8px;
        margin-top: 6px;
      }
      button[aria-pressed="true"] {
        border-color: var(--sky);
        background: var(--sky-wash);
      }
      .hint {
        margin-top: 16px;
      }
      @media (max-width: 719px) {
        input {
          min-height: 56px;
        }
      }
    `,
  ];

  @query('input') private name!: HTMLInputElement;

  protected override watches() {
    return ['plan', 'planOf', 'posts', 'words', 'units', 'site', 'engine'] as const;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    setPosts(this.store, { beside: null });
  }

  protected override render() {
    const { plan, site, planOf, engine } = this.state;
    const { kept } = this.words.posts;
    if (!plan || !site) return html`<p>${this.words.posts.noPlan}</p>`;
    const { plans } = site.settings;
    // What stands on the screen meanwhile is a sketch, or not proven yet.
    const ready = planOf === site && engine.at !== 'work';
    return html`<h1>${kept.title}</h1>
      <p class="small">${kept.about}</p>
      <form @submit=${this.#keep}>
        <label>${kept.name}<input name="plan-name" maxlength="60" autocomplete="off" .value=${this.#usualName(plans)} /></label>
        <button type="submit" data-do="keep" ?disabled=${!ready}>${kept.keep}</button>
      </form>
      ${ready ? null : html`<p class="small" role="status">${engine.at === 'work' ? kept.busy : kept.stale}</p>`}
      ${plans.length === 0 ? null : this.#table(plans, plan)} ${plans.map((one) => this.#one(one, plan))}
      ${plans.length === 0 ? null : html`<p class="small hint">${kept.takeHint}</p>`}`;
  }

  /** The first "Plan 3" that is free. */
  #usualName(plans: readonly KeptPlan[]): string {
    const { kept } = this.words.posts;
    const taken = new Set(plans.map(({ name }) => name));
    let count = plans.length + 1;
    while (taken.has(kept.usual(count))) count++;
    return kept.usual(count);
  }

  #table(plans: readonly KeptPlan[], plan: Plan) {
    const { posts } = this.words;
    const { kept } = posts;
    const metres = plan.rounds.reduce((sum, round) => sum + round.metres, 0);
    const minutes = plan.rounds.reduce((sum, round) => sum + round.minutes, 0);
    const now = { name: kept.now, score: plan.proof.value, sites: plan.sites, metres, minutes };
    const heads = [kept.plan, capital(posts.score), kept.sites, kept.walk, kept.minutes];
    return html`<table>
      <thead>
        <tr>
          ${heads.map((head) => html`<th scope="col">${head}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${[now, ...plans].map(
          (one) =>
            html`<tr>
              <th scope="row">${one.name}</th>
              <td class="number">${Math.round(one.score)}</td>
              <td class="number">${one.sites}</td>
              <td>${length(one.metres, this.state.units)}</td>
              <td>${Math.round(one.minutes)}</td>
            </tr>`,
        )}
      </tbody>
    </table>`;
  }

  #one(one: KeptPlan, now: Plan) {
    const { kept } = this.words.posts;
    const shown = this.state.posts.beside === one.name;
    return html`<section data-kept=${one.name}>
      <h2>${one.name}</h2>
      <p class="differs">${this.#differs(one, now)}</p>
      ${shown ? html`<p class="small">${kept.key}</p>` : null}
      <div class="acts">
        <button data-do="take" @click=${() => takeKept(this.store, one.name)}>${kept.take}</button>
        <button
          data-do="show"
          aria-pressed=${shown}
          @click=${() => setPosts(this.store, { beside: shown ? null : one.name })}
        >
          ${shown ? kept.shown : kept.show}
        </button>
        <button class="text" data-do="drop" @click=${() => dropKept(this.store, one.name)}>${kept.drop}</button>
      </div>
    </section>`;
  }

  #differs(one: KeptPlan, now: Plan): string {
    const { kept } = this.words.posts;
    const { onlyKept, onlyNow, renumbered } = differences(one, now.boxes);
    if (onlyKept.length + onlyNow.length === 0) return renumbered === 0 ? kept.same : kept.sameOtherNumbers(renumbered);
    return [
      onlyNow.length > 0 ? kept.onlyNow(onlyNow.length, this.#numbers(onlyNow)) : '',
      onlyKept.length > 0 ? kept.onlyKept(onlyKept.length, this.#numbers(onlyKept)) : '',
    ]
      .filter(Boolean)
      .join(' ');
  }

  #numbers(boxes: readonly { readonly number: number }[]): string {
    const first = boxes.slice(0, written).map(({ number }) => number);
    const rest = boxes.length - first.length;
    return rest > 0 ? `${first.join(', ')} ${this.words.posts.kept.more(rest)}` : first.join(', ');
  }

  readonly #keep = (event: Event): void => {
    event.preventDefault();
    keepPlan(this.store, this.name.value);
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-posts-kept': PostsKept;
  }
}
