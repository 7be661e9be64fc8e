/** A share with its interval, drawn from 0 to 1: the thick part is where it may truly lie. */
import { html, svg } from 'lit';
import type { Share } from '../../../visits/review.ts';

/** Width of the drawing in its own units. */
const wide = 200;

/** Hidden from screen readers: the words beside it say the same. Nothing is drawn when there was nothing to count. */
export function shareLine({ share, interval }: Share) {
  if (share === null || interval === null) return null;
  const x = (value: number) => (6 + value * (wide - 12)).toFixed(1);
  return html`<svg class="interval" viewBox="0 0 ${wide} 16" preserveAspectRatio="xMinYMid" aria-hidden="true">
    ${svg`<path class="base" d="M6 8H${wide - 6}M6 4v8M${wide / 2} 5v6M${wide - 6} 4v8" fill="none" />
      <path class="span" d="M${x(interval.low)} 8H${x(interval.high)}" />
      <circle cx=${x(share)} cy="8" r="5" />`}
  </svg>`;
}
