/** The trail's season in figures: sites used, year by year, birds, failures by cause. */
import { html } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { BirdReview, SeasonReview } from '../../../visits/review.ts';
import { seasonWords } from '../../../visits/season-year.ts';
import { shareWords } from '../../../visits/share-words.ts';
import { southOf } from '../../actions/season-review.ts';
import { birdName } from '../../bird-name.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { seasonStyle } from '../place-season/season-style.ts';
import { shareLine } from './share-line.ts';

@customElement('mp-season-totals')
export class SeasonTotals extends StoreElement {
  static override styles = [shared, seasonStyle];

  protected override watches() {
    return ['season', 'words'] as const;
  }

  protected override render() {
    const review = this.state.season.trail?.review;
    if (!review) return null;
    const { season } = this.words;
    return html`<section>
        <h2>${season.used}</h2>
        <p data-used>${shareWords(review.occupancy, season.sites)}</p>
        ${shareLine(review.occupancy)}
        <p class="small">${season.usedNote}</p>
      </section>
      ${review.byYear.length > 1 ? this.#years(review) : null}
      <section>
        <h2>${season.birds}</h2>
        <div class="rows">${review.birds.map((bird) => this.#bird(bird))}</div>
      </section>
      ${this.#failures(review)}`;
  }

  #years({ byYear }: SeasonReview) {
    const { season } = this.words;
    const south = southOf(this.state);
    return html`<section>
      <h2>${season.byYear}</h2>
      <div class="rows">
        ${byYear.map(
          ({ year, occupancy, success }) => html`<div class="line">
            <span>${seasonWords(year, south)}</span>
            <div>
              ${shareWords(occupancy, season.usedIn)} ${shareLine(occupancy)} ${shareWords(success, season.fledgedOf)}
              ${shareLine(success)}
            </div>
          </div>`,
        )}
      </div>
    </section>`;
  }

  #bird({ bird, nests, eggs, fledged, success, period }: BirdReview) {
    const { season } = this.words;
    const percent = (share: number) => Math.round(share * 100);
    return html`<div class="line">
      <span>${bird === 'unknown' ? season.birdUnknown : birdName(bird)}</span>
      <div>
        ${season.birdLine(nests, eggs, fledged)}
        <p>${season.success(shareWords(success, season.nests))}</p>
        ${shareLine(success)}
        ${
          period
            ? html`<p class="small">
                ${season.survival(percent(period.share), percent(period.low), percent(period.high), period.days)}
              </p>`
            : null
        }
      </div>
    </div>`;
  }

  #failures({ causes }: SeasonReview) {
    const { season } = this.words;
    const rows = Object.entries(causes).sort(([, a], [, b]) => b - a);
    return html`<section>
      <h2>${season.failures}</h2>
      ${rows.length === 0 ? html`<p>${season.noFailures}</p>` : null}
      <ul>
        ${rows.map(
          ([cause, count]) =>
            html`<li><span class="number">${count}</span> ${season.cause[cause as keyof typeof season.cause]}</li>`,
        )}
      </ul>
    </section>`;
  }
}
