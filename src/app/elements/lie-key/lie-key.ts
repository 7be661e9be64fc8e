/** What the lie of the land shows: for which bird, and the five steps of its score. */
import { css, html } from 'lit';
import { customElement } from 'lit/decorators.js';
import { birdGuides } from '../../../birds/index.ts';
import { lieBirdOf, setLieBird } from '../../actions/lie.ts';
import { birdName } from '../../bird-name.ts';
import { lieSteps } from '../../map/overlays/lie-steps.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';
import { themes } from '../../theme.ts';

@customElement('mp-lie-key')
export class LieKey extends StoreElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
        padding: 8px 12px 10px;
      }
      label {
        display: block;
        font: italic 400 0.9375rem / 1.3 var(--serif);
      }
      select {
        display: block;
        width: 100%;
        min-height: 44px;
        border: var(--rule) solid var(--ink);
        border-radius: 5px;
        background: var(--raised);
        padding: 0 8px;
        font-family: var(--sans);
      }
      ol {
        display: grid;
        grid-template-columns: repeat(5, 1fr);
        margin-top: 8px;
      }
      li {
        text-align: center;
        font-size: 0.75rem;
      }
      .step {
        display: block;
        height: 18px;
        border: 1px solid var(--ink);
        border-right-width: 0;
      }
      li:last-child .step {
        border-right-width: 1px;
      }
      .small {
        line-height: 1.25;
        margin-top: 4px;
      }
    `,
  ];

  protected override watches() {
    return ['words', 'theme', 'site', 'posts', 'plan'] as const;
  }

  protected override render() {
    const { site, theme, posts } = this.state;
    if (!site) return null;
    const { lie } = this.words.posts;
    const chosen = lieBirdOf(this.state);
    const wanted = site.settings.wanted.map(({ bird }) => bird);
    const others = birdGuides.filter(
      (bird) => !bird.pest && bird.regions.some((r) => r === site.settings.region) && !wanted.includes(bird.id),
    );
    const coarse = posts.lie?.of !== site || posts.lie.scores.coarse > 1;
    return html`<label
        >${lie.label}
        <select @change=${({ target }: Event) => setLieBird(this.store, (target as HTMLSelectElement).value)}>
          ${[...wanted, ...others.map(({ id }) => id)].map(
            (id) => html`<option value=${id} ?selected=${id === chosen}>${birdName(id)}</option>`,
          )}
        </select>
      </label>
      <ol aria-label=${lie.scores}>
        ${lieSteps(themes[theme]).map(
          ({ from, to, color }) =>
            html`<li><span class="step" style=${`background:${color}`}></span>${lie.step(from, to)}</li>`,
        )}
      </ol>
      <p class="small" role="status">${site.features.length === 0 ? lie.nothing : coarse ? lie.coarse : lie.none}</p>`;
  }
}
