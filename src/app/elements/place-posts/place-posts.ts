/** The Posts place: the list of boxes, the card of the chosen one, and the pages behind them. */
import { html, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { lengthText } from '../../../criteria/units.ts';
import type { LeftOut, Plan, PlannedBox } from '../../../plan-types.ts';
import { setLock } from '../../actions/lock.ts';
import { findNudge, takeNudge } from '../../actions/nudge.ts';
import { replan } from '../../actions/plan.ts';
import { openPostsPage, setPosts } from '../../actions/posts-state.ts';
import { goTo, select } from '../../actions/select.ts';
import { compass } from '../../format.ts';
import { onlyHandMoved } from '../../only-hand-moved.ts';
import type { PostsPage } from '../../posts-state.ts';
import { shownBox, shownPlan } from '../../shown-plan.ts';
import type { AppState } from '../../state.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import '../box-list/box-list.ts';
import '../page/page.ts';
import '../posts-binding/posts-binding.ts';
import '../post-card/post-card.ts';
import '../post-left-out/post-left-out.ts';
import { placePostsStyle } from './place-posts-style.ts';

/** Pages behind the list, each fetched when it is first opened. */
const pages: Readonly<
  Record<Exclude<PostsPage, 'list'>, { load: () => Promise<unknown>; inside: () => TemplateResult }>
> = {
  why: { load: () => import('../posts-why/posts-why.ts'), inside: () => html`<mp-posts-why></mp-posts-why>` },
  choose: {
    load: () => import('../posts-choose/posts-choose.ts'),
    inside: () => html`<mp-posts-choose></mp-posts-choose>`,
  },
  compare: {
    load: () => import('../posts-compare/posts-compare.ts'),
    inside: () => html`<mp-posts-compare></mp-posts-compare>`,
  },
  kept: { load: () => import('../posts-kept/posts-kept.ts'), inside: () => html`<mp-posts-kept></mp-posts-kept>` },
  numbers: {
    load: () => import('../posts-numbers/posts-numbers.ts'),
    inside: () => html`<mp-posts-numbers></mp-posts-numbers>`,
  },
  left: { load: () => import('../posts-left/posts-left.ts'), inside: () => html`<mp-posts-left></mp-posts-left>` },
};

/** Pages about the whole plan: choosing a box or a place leaves them. */
const ofThePlan: ReadonlySet<PostsPage> = new Set(['choose', 'kept', 'numbers', 'left']);

@customElement('mp-place-posts')
export class PlacePosts extends StoreElement {
  static override styles = [shared, placePostsStyle];

  protected override watches() {
    return ['plan', 'selection', 'words', 'site', 'engine', 'posts', 'units'] as const;
  }

  protected override ignores(state: AppState, before: AppState): boolean {
    return onlyHandMoved(state, before);
  }

  /** Under the hand the card is drawn once a picture. */
  protected override async scheduleUpdate(): Promise<void> {
    if (this.hasUpdated && this.state.posts.hand) await new Promise(requestAnimationFrame);
    super.scheduleUpdate();
  }

  protected override changed(state: AppState, before: AppState): void {
    if (state.selection !== before.selection) {
      if (ofThePlan.has(state.posts.page)) openPostsPage(this.store, 'list');
      this.#toTop();
    }
    if (state.posts.page !== before.posts.page) this.#toTop();
    void findNudge(this.store);
  }

  protected override firstUpdated(): void {
    void findNudge(this.store);
  }

  #toTop(): void {
    this.updateComplete.then(() => this.renderRoot.querySelector('mp-page')?.toTop());
  }

  protected override render() {
    const { posts, selection, plan } = this.state;
    if (posts.page !== 'list' && this.state.site) return this.#page(posts.page);
    const box = shownBox(this.state);
    if (plan && box) return this.#card(shownPlan(this.state) ?? plan, box);
    const left = selection?.of === 'post' ? plan?.leftOut.find((l) => l.post === selection.id) : null;
    if (left) return this.#left(left);
    return plan && plan.boxes.length > 0 ? this.#list(plan) : this.#empty(plan);
  }

  #page(page: Exclude<PostsPage, 'list'>) {
    const { posts } = this.words;
    void pages[page].load();
    const back = shownBox(this.state) ? posts.backToCard : posts.back;
    // A page with a step of its own has that filled, and the way back plain.
    const plain = page === 'choose' || page === 'kept';
    return html`<mp-page>
      ${pages[page].inside()}
      <button slot="foot" class=${plain ? '' : 'filled'} data-do="list" @click=${() => openPostsPage(this.store, 'list')}>${back}</button>
    </mp-page>`;
  }

  #card(plan: Plan, box: PlannedBox) {
    const { posts } = this.words;
    const at = plan.boxes.indexOf(box);
    const next = plan.boxes[(at + 1) % plan.boxes.length] ?? box;
    return html`<mp-page>
      <nav class="ways" aria-label=${posts.listTitle}>
        <button class="text" data-do="all" @click=${() => select(this.store, null)}>${posts.back}</button>
        <button class="text" data-do="compare" @click=${() => this.#compare(next)}>${posts.compare.open}</button>
        <button class="text" data-do="next" @click=${() => this.#show(next)}>${posts.next(next.number)}</button>
      </nav>
      <mp-post-card .box=${box}></mp-post-card>
      ${this.#nudge(box, next)}
      <button slot="foot" class="short" data-do="why" @click=${() => openPostsPage(this.store, 'why')}>${posts.whyHere}</button>
      ${box.state === 'standing' ? null : this.#lock(box)}
    </mp-page>`;
  }

  #lock(box: PlannedBox) {
    const { posts } = this.words;
    const locked = box.locked === true;
    return html`<button
      slot="foot"
      class="short"
      data-do="lock"
      aria-pressed=${locked}
      @click=${() => setLock(this.store, box, !locked)}
    >
      ${locked ? posts.unlock : posts.lock}
    </button>`;
  }

  /** The best next step: the better place near, with its gain; else the next box. */
  #nudge(box: PlannedBox, next: PlannedBox) {
    const words = this.words.posts;
    const { nudge } = this.state.posts;
    const best = nudge?.post === box.post ? nudge.best : null;
    if (!best)
      return html`<button slot="foot" class="filled" data-do="next" @click=${() => this.#show(next)}>
        ${this.words.posts.next(next.number)}
      </button>`;
    const way = lengthText(best.metres, this.state.units);
    return html`<button
      slot="foot"
      class="filled"
      data-do="nudge"
      aria-keyshortcuts="N"
      title=${words.nudgeHint}
      @click=${() => takeNudge(this.store)}
    >
      ${words.nudge(way, compass(best.bearing), Math.round(best.score) - Math.round(best.score - best.gain))}
    </button>`;
  }

  #left(left: LeftOut) {
    const { posts } = this.words;
    return html`<mp-page>
      <mp-post-left-out .left=${left}></mp-post-left-out>
      <button slot="foot" class="filled" data-do="all" @click=${() => select(this.store, null)}>${posts.back}</button>
      <button slot="foot" data-do="left" @click=${() => this.#leftPage()}>${posts.left.back}</button>
    </mp-page>`;
  }

  #leftPage(): void {
    select(this.store, null);
    // The page follows the choice, which leaves every page about the whole plan.
    queueMicrotask(() => openPostsPage(this.store, 'left'));
  }

  /** A sketch still being worked on is not one whose proof nobody wants. */
  #proof({ proof }: Plan): string {
    const underWay = proof.state === 'not-proven' && this.state.engine.at === 'work';
    return underWay ? this.words.posts.beingProven : proof.sentence;
  }

  #list(plan: Plan) {
    const { posts } = this.words;
    const weakest = [...plan.boxes].sort((a, b) => a.card.score - b.card.score)[0] as PlannedBox;
    const open = (page: PostsPage) => () => openPostsPage(this.store, page);
    return html`<mp-page>
      <h1>${posts.chosen(plan.boxes.length, plan.sites)}</h1>
      <p class="small proof">${this.#proof(plan)} ${this.#matters(plan)}</p>
      <mp-posts-binding></mp-posts-binding>
      ${plan.issues.map((issue) => html`<p class="wash">${issue.sentence} ${issue.fix}</p>`)}
      <nav class="pages" aria-label=${posts.listTitle}>
        <button class="text" data-do="left" @click=${open('left')}>${posts.left.open(plan.leftOut.length)}</button>
        <button class="text" data-do="numbers" @click=${open('numbers')}>${posts.numbers.open}</button>
      </nav>
      <mp-box-list></mp-box-list>
      <button slot="foot" class="filled weakest" data-do="weakest" @click=${() => this.#show(weakest)}>
        ${posts.weakestBox(weakest.number)}
      </button>
      <button slot="foot" class="short" data-do="choose" @click=${open('choose')}>${posts.chooseTitle}</button>
      <button slot="foot" class="short" data-do="kept" @click=${open('kept')}>${posts.kept.title}</button>
    </mp-page>`;
  }

  /** The weights this plan hangs on most. */
  #matters({ sureness, boxes }: Plan): string {
    const { posts } = this.words;
    if (!sureness) return '';
    const titles = new Map(
      boxes.flatMap((box) => box.card.rows.map((row) => [row.id as string, row.title.toLowerCase()])),
    );
    const named = sureness.matters.map(({ criterion }) => titles.get(criterion) ?? criterion);
    return named.length > 0 ? posts.matters(named.join(', ')) : posts.mattersNone;
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
      <button slot="foot" data-do="choose" @click=${() => openPostsPage(this.store, 'choose')}>${posts.chooseTitle}</button>
    </mp-page>`;
  }

  #show(box: PlannedBox): void {
    select(this.store, { of: 'box', number: box.number });
  }

  #compare(next: PlannedBox): void {
    const { other } = this.state.posts;
    setPosts(this.store, { page: 'compare', other: other ?? next.number });
  }
}
