/** The Posts place: the list of boxes, or the card of the chosen one. */
import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { LeftOut, Plan, PlannedBox } from '../../../plan-types.ts';
import { replan } from '../../actions/plan.ts';
import { goTo, select } from '../../actions/select.ts';
import { boxByNumber } from '../../map/box-look.ts';
import type { AppState } from '../../state.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import '../box-list/box-list.ts';
import '../page/page.ts';
import '../post-card/post-card.ts';
import '../post-left-out/post-left-out.ts';

/** Rows of the left-out list shown at once. */
const shown = 30;

@customElement('mp-place-posts')
export class PlacePosts extends StoreElement {
  static override styles = [
    shared,
    css`
      .proof {
        margin: 4px 0 10px;
      }
      details {
        margin-top: 14px;
      }
      summary {
        font: 700 0.969rem / 1.25 var(--serif);
        cursor: pointer;
        min-height: 44px;
        padding: 10px 0;
      }
      details li {
        padding: 4px 0;
        border-bottom: 1px solid var(--ring);
      }
      .empty {
        font-size: 1rem;
        line-height: 1.45;
      }
    `,
  ];

  protected override watches() {
    return ['plan', 'selection', 'words', 'site', 'engine'] as const;
  }

  protected override changed(state: AppState, before: AppState): void {
    if (state.selection !== before.selection)
      this.updateComplete.then(() => this.renderRoot.querySelector('mp-page')?.toTop());
  }

  protected override render() {
    const { plan, selection } = this.state;
    const box = boxByNumber(plan, selection?.of === 'box' ? selection.number : null);
    if (plan && box) return this.#card(plan, box);
    const left = selection?.of === 'post' ? plan?.leftOut.find((l) => l.post === selection.id) : null;
    if (left) return this.#left(left);
    return plan && plan.boxes.length > 0 ? this.#list(plan) : this.#empty(plan);
  }

  #card(plan: Plan, box: PlannedBox) {
    const { posts } = this.words;
    const at = plan.boxes.indexOf(box);
    const next = plan.boxes[(at + 1) % plan.boxes.length] ?? box;
    return html`<mp-page>
      <mp-post-card .box=${box}></mp-post-card>
      <button slot="foot" class="filled" @click=${() => this.#show(next)}>${posts.next(next.number)}</button>
      <button slot="foot" @click=${() => select(this.store, null)}>${posts.back}</button>
    </mp-page>`;
  }

  #left(left: LeftOut) {
    const { posts } = this.words;
    return html`<mp-page>
      <mp-post-left-out .left=${left}></mp-post-left-out>
      <button slot="foot" class="filled" @click=${() => select(this.store, null)}>${posts.back}</button>
    </mp-page>`;
  }

  #list(plan: Plan) {
    const { posts } = this.words;
    const weakest = [...plan.boxes].sort((a, b) => a.card.score - b.card.score)[0] as PlannedBox;
    return html`<mp-page>
      <h1>${posts.chosen(plan.boxes.length, plan.sites)}</h1>
      <p class="small proof">${plan.proof.sentence}</p>
      ${plan.issues.map((issue) => html`<p class="wash">${issue.sentence} ${issue.fix}</p>`)}
      <mp-box-list></mp-box-list>
      ${this.#leftOut(plan)}
      <button slot="foot" class="filled" @click=${() => this.#show(weakest)}>
        ${posts.weakestBox(weakest.number, Math.round(weakest.card.score))}
      </button>
      <button slot="foot" ?disabled=${this.state.engine.at === 'work'} @click=${() => replan(this.store)}>
        ${posts.chooseAgain}
      </button>
    </mp-page>`;
  }

  #leftOut(plan: Plan) {
    const { posts } = this.words;
    if (plan.leftOut.length === 0) return null;
    const best = [...plan.leftOut].sort((a, b) => (b.score ?? -1) - (a.score ?? -1));
    return html`<details>
      <summary>${posts.leftOutTitle(best.length)}</summary>
      <ul class="small">
        ${best.slice(0, shown).map((left) => html`<li>${left.sentence}</li>`)}
        ${best.length > shown ? html`<li>${posts.leftOutMore(best.length - shown)}</li>` : null}
      </ul>
    </details>`;
  }

  #empty(plan: Plan | null) {
    const { posts } = this.words;
    const { engine, site } = this.state;
    if (!site) return html`<mp-page></mp-page>`;
    if (engine.at === 'work')
      return html`<mp-page><h1>${posts.title}</h1><p class="empty">${posts.choosing} …</p></mp-page>`;
    const why = plan?.issues.map((issue) => html`<p class="wash">${issue.sentence} ${issue.fix}</p>`);
    return html`<mp-page>
      <h1>${posts.title}</h1>
      <p class="empty">${plan ? posts.none : posts.noPlan}</p>
      ${why}
      <button slot="foot" class="filled" @click=${() => (plan ? goTo(this.store, 'land') : replan(this.store))}>
        ${plan ? posts.drawLand : posts.choose}
      </button>
    </mp-page>`;
  }

  #show(box: PlannedBox): void {
    select(this.store, { of: 'box', number: box.number });
  }
}
