/** Line icons of the slips: always beside their word. */
import { html, svg, type TemplateResult } from 'lit';

const icon = (path: string): TemplateResult =>
  html`<svg viewBox="0 0 20 20" aria-hidden="true">${svg`<path d=${path}></path>`}</svg>`;

export const undoIcon = icon('M7 4 L3 8 L7 12 M3 8 H12 A5 5 0 0 1 12 17 H9');
export const redoIcon = icon('M13 4 L17 8 L13 12 M17 8 H8 A5 5 0 0 0 8 17 H11');
export const keyIcon = icon('M3 3 H8 V8 H3 Z M3 12 H8 V17 H3 Z M11 5.5 H17 M11 14.5 H17');
