/** A QR code as one path on white, with its quiet zone: readable in every theme. */
import { html } from 'lit';
import { encode } from 'uqr';

/** Longest text drawn: above it the modules get too small for a phone's screen (ours). */
export const mostForScreen = 900;

export function qrPicture(text: string, label: string) {
  const { data, size } = encode(text, { ecc: 'M', border: 4 });
  const path = data.flatMap((row, y) => row.map((dark, x) => (dark ? `M${x} ${y}h1v1h-1z` : ''))).join('');
  return html`<svg viewBox=${`0 0 ${size} ${size}`} role="img" aria-label=${label} shape-rendering="crispEdges">
    <rect width=${size} height=${size} fill="#fff"></rect>
    <path d=${path} fill="#000"></path>
  </svg>`;
}
