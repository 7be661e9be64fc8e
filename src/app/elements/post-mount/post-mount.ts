/** What the person with the spade needs of a box: two tapes to find the place, height and hole, pole and guard. The words are those of the printed cards. */
import { css, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { PlannedBox } from '../../../plan-types.ts';
import { mountFacts } from '../../../print/box-facts.ts';
import { thingsOf } from '../../../print/land-things.ts';
import { type Mark, marksOf } from '../../../print/landmarks.ts';
import type { Site } from '../../../site/types.ts';
import { frameOf } from '../../map/frame.ts';
import { StoreElement } from '../../store-element.ts';
import { shared } from '../../styles/shared.ts';

const marks = new WeakMap<Site, readonly Mark[]>();

/** What a tape can start from on a site, worked out once. */
function marksOn(site: Site): readonly Mark[] {
  const frame = frameOf(site);
  const found = marks.get(site) ?? (frame ? marksOf(thingsOf(site, frame)) : []);
  marks.set(site, found);
  return found;
}

@customElement('mp-post-mount')
export class PostMount extends StoreElement {
  static override styles = [
    shared,
    css`
      :host {
        display: block;
        margin-top: 14px;
      }
      dl {
        margin: 4px 0 0;
      }
      div {
        display: grid;
        grid-template-columns: 4.2em 1fr;
        gap: 8px;
        padding: 3px 0;
      }
      dt {
        font: 700 0.875rem / 1.35 var(--serif);
      }
      dd {
        margin: 0;
      }
    `,
  ];

  @property({ attribute: false }) box: PlannedBox | null = null;

  protected override watches() {
    return ['words', 'units', 'planOf'] as const;
  }

  protected override render() {
    const { box } = this;
    const { planOf, plan, units } = this.state;
    if (!box || !planOf || !plan) return null;
    const facts = mountFacts({ units, plan, declination: null }, box, marksOn(planOf));
    return html`<h2>${this.words.posts.mount}</h2>
      <dl class="small">
        ${facts.map(({ label, words }) => html`<div data-fact=${label}><dt>${label}</dt><dd>${words}</dd></div>`)}
      </dl>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-post-mount': PostMount;
  }
}
