/** The card of a box, top to bottom: name and score, who else, weakest, what decides, afternoon sun, facing, sources. */
import { html } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { bearing } from '../../../geometry/point.ts';
import type { PostCard as Card, PlannedBox } from '../../../plan-types.ts';
import { birdName } from '../../bird-name.ts';
import { wasAborted } from '../../engine/client.ts';
import type { SkyView } from '../../engine/sky-view.ts';
import { compass, degrees } from '../../format.ts';
import { isWeak } from '../../map/box-look.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import '../facing-rose/facing-rose.ts';
import '../reason-rows/reason-rows.ts';
import '../score-disc/score-disc.ts';
import '../source-foot/source-foot.ts';
import '../sun-strip/sun-strip.ts';
import { alsoWords, weakestWords } from './card-words.ts';
import { postCardStyle } from './post-card-style.ts';

/** Between two views of the sky under the hand, ms (ours): each takes the worker as long as several scores. */
const between = 80;

@customElement('mp-post-card')
export class PostCard extends StoreElement {
  static override styles = [shared, postCardStyle];

  @property({ attribute: false }) box: PlannedBox | null = null;
  @state() private view: SkyView | null = null;
  #asked: PlannedBox | null = null;
  #looking = false;

  protected override watches() {
    return ['words', 'units'] as const;
  }

  /** The spade's part is fetched with the first card, not with the app. */
  protected override firstUpdated(): void {
    void import('../post-mount/post-mount.ts');
  }

  protected override willUpdate(): void {
    if (this.box && this.box !== this.#asked) void this.#look(this.box);
  }

  protected override render() {
    const { box } = this;
    if (!box) return null;
    const { card } = box;
    return html`${this.#head(box)} ${this.#weakest(card)}
      <mp-reason-rows .card=${card}></mp-reason-rows>
      ${this.#flags(card)} ${this.#sun(card)} ${this.#facing(box)}
      <mp-post-mount .box=${box}></mp-post-mount>
      <mp-source-foot .rows=${card.rows}></mp-source-foot>`;
  }

  #head(box: PlannedBox) {
    const { posts } = this.words;
    const score = Math.round(box.card.score);
    return html`<div class="head">
      <div>
        <div class="name">
          <h1>${posts.box(box.number)}</h1>
          <span class="sub">${birdName(box.bird)}</span>
        </div>
        <p class="small">${alsoWords(box.card, box.bird, posts)} ${this.#standing(box)}</p>
      </div>
      <mp-score-disc
        role="img"
        aria-label=${`${posts.score} ${score} ${posts.of100}`}
        .score=${score}
        .label=${String(score)}
        .facing=${box.card.facing.used}
        .weak=${isWeak(box)}
        .standing=${box.state === 'standing'}
      ></mp-score-disc>
    </div>`;
  }

  #standing(box: PlannedBox): string {
    const { posts } = this.words;
    return [
      box.state === 'standing' ? posts.standing : box.locked ? posts.lockedHere : '',
      box.pairedWith === null ? '' : posts.pairedWith(box.pairedWith),
      this.#sure(box),
    ]
      .filter(Boolean)
      .join(' ');
  }

  #sure({ sureness }: PlannedBox): string {
    const { posts } = this.words;
    const draws = this.state.plan?.sureness?.draws;
    if (sureness === null) return '';
    return draws ? posts.staysOf(Math.round(sureness * draws), draws) : posts.stays(Math.round(sureness * 100));
  }

  #weakest(card: Card) {
    const { posts } = this.words;
    const weakest = weakestWords(card, posts);
    const { hand } = this.state.posts;
    const where = hand?.post === card.post ? hand.forbidden : null;
    return html`${where ? html`<p class="wash"><strong>${posts.standsWhereNot}</strong> ${where}.</p>` : null}
    ${card.refused.map((why) => html`<p class="wash"><strong>${posts.refused}</strong> ${why}</p>`)}
    ${weakest ? html`<p class="wash"><strong>${posts.weakest}</strong> ${weakest}</p>` : this.#strong(card)}
    ${this.#judged(card)}`;
  }

  /** A score rests on what could be judged: said where that is not all. */
  #judged({ judged }: Card) {
    const percent = Math.floor(100 * judged);
    return percent < 99 ? html`<p class="small">${this.words.posts.judged(percent)}</p>` : null;
  }

  /** Said only where something was judged. */
  #strong({ weakest }: Card) {
    return weakest.length > 0 ? html`<p class="strong">${this.words.posts.nothingWeak}</p>` : null;
  }

  #flags({ flags }: Card) {
    const { posts } = this.words;
    if (flags.length === 0) return null;
    return html`<section class="flags">
      <h2>${posts.flags}</h2>
      <ul class="small">
        ${flags.map((sentence) => html`<li>${sentence}</li>`)}
      </ul>
    </section>`;
  }

  #sun({ sun }: Card) {
    const { posts } = this.words;
    const [first, ...more] = sun.help;
    return html`<section>
      <div class="line">
        <h2>${posts.sun}</h2>
        <span class="grade ${sun.grade}">${posts.sunGrade(posts.grades[sun.grade], sun.hours.toFixed(1))}</span>
      </div>
      <mp-sun-strip
        .view=${this.view}
        .label=${`${this.view?.southern ? posts.sunStripSouth : posts.sunStrip}. ${sun.sentence}`}
      ></mp-sun-strip>
      <p class="small">${posts.sunLegend} ${first ?? ''}</p>
      ${
        more.length > 0
          ? html`<details class="small">
              <summary>${posts.sunMore(more.length)}</summary>
              ${more.map((help) => html`<p>${help}</p>`)}
            </details>`
          : null
      }
    </section>`;
  }

  #facing(box: PlannedBox) {
    const { posts } = this.words;
    const { facing, rows } = box.card;
    const storm = this.state.site?.settings.stormFrom ?? null;
    const perch = rows.find((row) => row.id === 'perch')?.at;
    const perchAt = perch?.shape === 'place' ? bearing(box.at, perch.at) : null;
    const { magnetic } = facing;
    return html`<section class="facing">
      <mp-facing-rose
        .from=${facing.from}
        .to=${facing.to}
        .used=${facing.used}
        .storm=${storm}
        .perch=${perchAt}
        .label=${posts.rose(degrees(facing.used), degrees(facing.from), degrees(facing.to))}
      ></mp-facing-rose>
      <div>
        <h2>${posts.faces(degrees(facing.used), facing.word)}</h2>
        <p>${posts.band(degrees(facing.from), degrees(facing.to))}</p>
        <p class="small">
          ${magnetic ? posts.compassIs(degrees(magnetic.degrees), magnetic.model) : posts.noCompass}
          ${storm === null ? posts.noStorm : posts.storms(compass(storm))}
          ${perchAt === null ? '' : posts.perchAt(degrees(perchAt))}
        </p>
      </div>
    </section>`;
  }

  /** One question at a time, the newest next: under the hand the sun follows, with pauses for the scores to pass. */
  async #look(box: PlannedBox): Promise<void> {
    if (this.#asked?.post !== box.post) this.view = null;
    this.#asked = box;
    if (this.#looking) return;
    this.#looking = true;
    try {
      for (let at: PlannedBox | null = box; at; at = this.#asked === at ? null : this.#asked) {
        const view = await this.#viewOf(at);
        if (this.#asked?.post === at.post) this.view = view;
        if (this.state.posts.hand) await new Promise((done) => setTimeout(done, between));
      }
    } catch (error) {
      if (!wasAborted(error)) console.warn(error);
    } finally {
      this.#looking = false;
    }
  }

  async #viewOf({ at, holeHeight, bird }: PlannedBox): Promise<SkyView | null> {
    const site = this.state.planOf;
    return site ? this.store.engine.call('skyView', { site, x: at.x, y: at.y, eye: holeHeight, bird }) : null;
  }
}
