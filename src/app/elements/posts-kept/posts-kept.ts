/** Plans kept by name: score, sites, meters and minutes beside those of the plan on the screen, and what differs. */
import { css, html } from 'lit';
import { customElement, query } from 'lit/decorators.js';
import type { Plan } from '../../../plan-types.ts';
import { dropKept, keepPlan, takeKept } from '../../actions/kept-plans.ts';
import { length } from '../../format.ts';
import type { KeptPlan } from '../../posts-state.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';

@customElement('mp-posts-kept')
export class PostsKept extends StoreElement {
  static override styles = [
    shared,
    css`
      table {
        width: 100%;
        border-collapse: collapse;
        margin: 10px 0;
      }
      th,
      td {
        padding: 5px 2px;
        border-bottom: 1px solid var(--ring);
        text-align: right;
      }
      th:first-child {
        text-align: left;
      }
      form {
        display: flex;
        gap: 8px;
        align-items: end;
        margin-top: 10px;
      }
      label {
        flex: 1;
      }
      input {
        display: block;
        width: 100%;
        min-height: 44px;
        padding: 0 10px;
        border: var(--rule) solid var(--ink);
        border-radius: 5px;
        background: var(--raised);
      }
      section {
        margin-top: 14px;
      }
    `,
  ];

  @query('input') private name!: HTMLInputElement;

  protected override watches() {
    return ['plan', 'posts', 'words', 'units', 'site'] as const;
  }

  protected override render() {
    const { plan, posts } = this.state;
    const { kept } = this.words.posts;
    if (!plan) return html`<p>${this.words.posts.noPlan}</p>`;
    return html`<h1>${kept.title}</h1>
      <p class="small">${kept.about}</p>
      <form @submit=${this.#keep}>
        <label>${kept.name}<input name="plan-name" maxlength="60" autocomplete="off" .value=${kept.usual(posts.kept.length + 1)} /></label>
        <button type="submit" data-do="keep">${kept.keep}</button>
      </form>
      <table>
        <thead>
          <tr>
            <th scope="col">${kept.plan}</th>
            <th scope="col">${this.words.posts.score}</th>
            <th scope="col">${kept.sites}</th>
            <th scope="col">${kept.walk}</th>
            <th scope="col">${kept.minutes}</th>
          </tr>
        </thead>
        <tbody>
          ${this.#row(kept.now, plan)} ${posts.kept.map(({ name, plan: one }) => this.#row(name, one))}
        </tbody>
      </table>
      ${posts.kept.map((one) => this.#differs(one, plan))}`;
  }

  #row(name: string, plan: Plan) {
    const metres = plan.rounds.reduce((sum, round) => sum + round.metres, 0);
    const minutes = plan.rounds.reduce((sum, round) => sum + round.minutes, 0);
    return html`<tr>
      <th scope="row">${name}</th>
      <td class="number">${Math.round(plan.proof.value)}</td>
      <td class="number">${plan.sites}</td>
      <td>${length(metres, this.state.units)}</td>
      <td>${Math.round(minutes)}</td>
    </tr>`;
  }

  #differs(one: KeptPlan, now: Plan) {
    const { kept } = this.words.posts;
    const here = new Set(now.boxes.map((box) => box.post));
    const there = new Set(one.plan.boxes.map((box) => box.post));
    const onlyNow = now.boxes.filter((box) => !there.has(box.post)).map((box) => box.number);
    const onlyThen = one.plan.boxes.filter((box) => !here.has(box.post)).map((box) => box.number);
    return html`<section data-kept=${one.name}>
      <h2>${one.name}</h2>
      <p>${onlyNow.length + onlyThen.length === 0 ? kept.same : kept.differs(onlyNow.join(', '), onlyThen.join(', '))}</p>
      <button data-do="take" @click=${() => takeKept(this.store, one)}>${kept.take}</button>
      <button class="text" data-do="drop" @click=${() => dropKept(this.store, one)}>${kept.drop}</button>
    </section>`;
  }

  readonly #keep = (event: Event): void => {
    event.preventDefault();
    keepPlan(this.store, this.name.value);
  };
}
