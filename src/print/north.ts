/** North: the true arrow, and the needle with its model, day and yearly change when they are known. */
import type { Declination } from '../sky/declination.ts';
import { polar } from './disc.ts';
import { group, type Item, path, text } from './display.ts';
import { wrap } from './measure.ts';
import { point, type Style } from './style.ts';

/** The needle as the caller knows it; null prints true north alone. */
export type Needle = Pick<Declination, 'degrees' | 'yearly' | 'model' | 'date'>;

/** Height of the arrow with its letter, mm. */
const arrowHeight = 20;

/** Arrow at the left, words beside it, in a box `width` mm wide with its top left corner at (x, y). Returns the height used. */
export function northArrow(
  x: number,
  y: number,
  width: number,
  needle: Needle | null,
  style: Style,
): { item: Item; height: number } {
  const foot = y + arrowHeight;
  const middle = x + 6;
  const items: Item[] = [
    path(['M', middle, y + 5, 'L', middle - 1.7, y + 11, 'L', middle + 1.7, y + 11, 'Z'], { fill: '#000000' }),
    path(['M', middle, foot, 'L', middle, y + 10], { stroke: { width: 0.5, color: '#000000' } }),
    text(middle, y + 4, 'N', Math.max(style.head, 12), { face: 'serifBold', anchor: 'middle' }),
    ...(needle ? needleItems(middle, foot, needle.degrees) : []),
  ];
  const left = x + 16;
  const rows = marginWords(needle, style).flatMap((words) => wrap(words, width - 16, style.small));
  const top = y + style.small * point * 0.75;
  items.push(...rows.map((row, i) => text(left, top + i * style.smallLine, row, style.small)));
  const height = Math.max(arrowHeight, rows.length * style.smallLine) + 2;
  return { item: group(items, { tag: 'Figure', alt: northWords(needle).join(' ') }), height };
}

/** The needle's arrow: half a head, on its own side; drawn at least 4° off so that it can be seen, the figure says the truth. */
function needleItems(x: number, foot: number, degrees: number): Item[] {
  const shown = Math.sign(degrees || 1) * Math.max(4, Math.min(60, Math.abs(degrees)));
  const tip = polar(x, foot, shown, 13);
  const neck = polar(x, foot, shown, 9.5);
  const side = polar(neck[0], neck[1], shown + 90 * Math.sign(shown), 1.3);
  return [
    path(['M', x, foot, 'L', ...tip], { stroke: { width: 0.35, color: '#000000' } }),
    path(['M', ...tip, 'L', ...side, 'L', ...neck, 'Z'], { fill: '#ffffff', stroke: { width: 0.3, color: '#000000' } }),
  ];
}

/** Beside large letters there is room for the sum alone; the key page says the rest. */
function marginWords(needle: Needle | null, { variant }: Style): string[] {
  if (variant !== 'large-print') return northWords(needle);
  return needle ? [addWords(needle.degrees)] : ['True north.'];
}

/** Sentences for the margin. */
export function northWords(needle: Needle | null): string[] {
  if (!needle) return ['The sheet’s top is true north.', 'How far the needle is off is not known here.'];
  const off = side(needle.degrees);
  const drift = Math.abs(needle.yearly * 60);
  const way = needle.yearly >= 0 ? 'east' : 'west';
  const moves = drift < 0.5 ? 'steady' : `moves ${Math.round(drift)}′ a year to the ${way}`;
  return [
    'The sheet’s top is true north.',
    `Needle ${off}, ${moves}.`,
    `${needle.model}, ${needle.date}.`,
    addWords(needle.degrees),
  ];
}

function side(degrees: number): string {
  const size = Math.abs(degrees).toFixed(1);
  return size === '0.0' ? 'points to true north' : `points ${size}° ${degrees > 0 ? 'east' : 'west'} of true`;
}

/** How to get from map to compass. */
function addWords(degrees: number): string {
  const whole = Math.round(Math.abs(degrees));
  if (whole === 0) return 'Compass and map agree.';
  return `Compass = true ${degrees > 0 ? '−' : '+'} ${whole}°.`;
}
