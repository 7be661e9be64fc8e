/** One box looked back on: its season drawn year by year, every nest with its dates, and what to do with sources. */
import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { sources } from '../../../birds/sources.ts';
import { gainWords } from '../../../plan/next-year.ts';
import type { Advice } from '../../../visits/advice.ts';
import { spanWords } from '../../../visits/days.ts';
import type { Nest } from '../../../visits/nests.ts';
import type { BoxReview } from '../../../visits/review.ts';
import { seasonWords } from '../../../visits/season-year.ts';
import { southOf, yearVisits } from '../../actions/season-review.ts';
import { birdName } from '../../bird-name.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { seasonStyle } from '../place-season/season-style.ts';
import { timelineOf } from '../season-timeline/timeline-shape.ts';
import '../season-timeline/season-timeline.ts';

@customElement('mp-season-box')
export class SeasonBox extends StoreElement {
  static override styles = [
    shared,
    seasonStyle,
    css`
      .key {
        display: flex;
        flex-wrap: wrap;
        gap: 4px 16px;
        margin-top: 4px;
      }
      .key i {
        display: inline-block;
        width: 22px;
        border: 1px solid var(--ink);
        margin-right: 6px;
        vertical-align: -2px;
      }
      .key .eggs {
        height: 9px;
        background: var(--sky-wash);
      }
      .key .young {
        height: 14px;
        background: var(--sky);
      }
      .key .unsure {
        height: 12px;
        border-style: dashed;
        background: repeating-linear-gradient(115deg, transparent 0 4px, var(--ink) 4px 5px);
      }
      mp-season-timeline {
        margin: 8px 0 4px;
      }
    `,
  ];

  protected override watches() {
    return ['season', 'words', 'plan'] as const;
  }

  protected override render() {
    const { trail, box: post } = this.state.season;
    const box = trail?.review.boxes.find((one) => one.post === post);
    const { season } = this.words;
    if (!box) return null;
    return html`<section>
        <h2>${season.adviceTitle}</h2>
        ${box.advice.map((one) => this.#advice(one, box))}
      </section>
      <section>
        <h2>${season.timeline}</h2>
        <div class="key small" aria-hidden="true">
          <span><i class="eggs"></i>${season.legend.laying}</span><span><i class="young"></i>${season.legend.young}</span
          ><span><i class="unsure"></i>${season.legend.unsure}</span>
        </div>
        ${box.seasons.length === 0 ? html`<p>${season.notLooked}</p>` : null}
        ${[...box.seasons].reverse().map((year) => this.#year(year, box))}
        <p class="small">${season.timelineHint}</p>
      </section>`;
  }

  #advice({ kind, sentence, sources: keys, wants }: Advice, box: BoxReview) {
    const { season } = this.words;
    const trail = this.state.season.trail!;
    const [move, pair] = [trail.moves[box.post], trail.pairs[box.post]];
    return html`<p><span class="act">${season.advice[kind]}</span> ${sentence}</p>
      ${kind === 'move' && wants === 'score' ? html`<p>${move ? season.moveTo(move.label, gainWords(move)) : season.noBetter}</p>` : null}
      ${kind === 'pair' && pair ? html`<p>${season.pairAt(pair.label)}</p>` : null}
      <p class="small">${season.source(keys.map((key) => titleOf(key, season.ours)))}</p>`;
  }

  #year(year: number, box: BoxReview) {
    const { season } = this.words;
    const visits = yearVisits(this.state).filter((one) => one.post === box.post);
    const nests = box.nests.filter((nest) => nest.year === year);
    const said = nests.map((nest) => this.#nest(nest));
    const south = southOf(this.state);
    const words = seasonWords(year, south);
    const label = `${words}: ${said.length > 0 ? said.join(' ') : season.looked}`;
    return html`<div class="section">
      <h3>${words}</h3>
      <mp-season-timeline .line=${timelineOf(year, nests, visits, south)} .label=${label}></mp-season-timeline>
      ${said.length > 0 ? said.map((one) => html`<p>${one}</p>`) : html`<p>${season.looked}</p>`}
    </div>`;
  }

  /** Such as "2026, nest 1, Eastern Bluebird: first egg Apr 12–14 · 5 eggs, 4 young · fledged." */
  #nest({ year, attempt, bird, clock, eggs, young, outcome, cause, fledged }: Nest): string {
    const { season } = this.words;
    const parts = [
      clock?.firstEgg && season.firstEgg(spanWords(clock.firstEgg)),
      clock?.hatch && (young ?? 0) > 0 && season.hatched(spanWords(clock.hatch)),
      season.counts(eggs, young),
      fledged && clock?.fledge && season.left(spanWords(clock.fledge)),
      cause ? `${season.outcome[outcome]} (${season.cause[cause]})` : season.outcome[outcome],
    ];
    const name = bird === null ? season.birdUnknown : birdName(bird);
    const when = seasonWords(year, southOf(this.state));
    return `${season.attempt(when, attempt, name)}: ${parts.filter(Boolean).join(' · ')}.`;
  }
}

/** "Title, publisher, year", each said once; a paper is named by its authors and year, which are its key. What is ours cites nobody. */
function titleOf(key: string, ours: string): string {
  if (key === 'ours') return ours;
  const source = sources.find((one) => one.key === key);
  if (!source) return key;
  const paper = /\d{4}$/.test(key) && !source.title.includes(key.split(' ')[0]!);
  const parts = [paper ? key : '', source.title, source.publisher, source.year ?? ''];
  return parts.filter((part, i) => part !== '' && !parts.some((other, j) => j < i && other.includes(part))).join(', ');
}
