/** The double scale bar and the line that shows whether the printer kept the size. */

import type { Units } from '../site/types.ts';
import { group, type Item, line, path, rectangle, text } from './display.ts';
import { widthOf, wrap } from './measure.ts';
import { ratioWords, roundAtMost, scaleWords } from './scale-words.ts';
import { point, type Style } from './style.ts';

const foot = 0.3048;

/** Metres above and feet below one line, each in four parts; (x, y) is its left end, mm. Fits in `width`. */
export function scaleBar(x: number, y: number, width: number, scale: number, style: Style): Item {
  const metres = roundAtMost((width * scale) / 1000);
  const feet = roundAtMost((width * scale) / 1000 / foot);
  const items = [
    ...halfBar(x, y - 1.5, (metres * 1000) / scale),
    ...halfBar(x, y + 0.1, (feet * foot * 1000) / scale),
    ...figures(x, y - 2.2, (metres * 1000) / scale, metres, 'm', style),
    ...figures(x, y + 2.3 + style.small * point * 0.7, (feet * foot * 1000) / scale, feet, 'ft', style),
  ];
  return group(items, { tag: 'Figure', alt: `Scale bar: ${metres} meters and ${feet} feet at ${ratioWords(scale)}` });
}

/** Four parts, black and white by turns, 1.4 mm high; exactly `length` mm from outer edge to outer edge of its ink. */
function halfBar(x: number, y: number, length: number): Item[] {
  const part = length / 4;
  const box = { x, y, width: length, height: 1.4 };
  const black = [0, 2].map((i) => rectangle({ x: x + i * part, y, width: part, height: 1.4 }));
  const rim = 0.2;
  const inner = { x: x + rim / 2, y: y + rim / 2, width: box.width - rim, height: box.height - rim };
  return [
    path(black.flat(), { fill: '#000000' }),
    path(rectangle(inner), { stroke: { width: rim, color: '#000000' } }),
  ];
}

function figures(x: number, base: number, length: number, value: number, unit: string, style: Style): Item[] {
  const size = style.small;
  const roomy = length / 2 > widthOf(`${value} ${unit}`, size);
  return [
    text(x, base, '0', size),
    ...(roomy ? [text(x + length / 2, base, String(value / 2), size, { anchor: 'middle' })] : []),
    text(x + length, base, `${value} ${unit}`, size, { anchor: length > 60 ? 'end' : 'middle' }),
  ];
}

/** Length of the calibration line, mm: 100 with a tail to 4 inches. */
export const calibration = { metric: 100, inches: 101.6 } as const;

/** A line of 100 mm with a tail to 4 in, and what to do when it is not; (x, y) is its left end. */
export function calibrationLine(x: number, y: number, style: Style): Item {
  const tick = (at: number, up: number) => line(x + at, y - up, x + at, y + 1.2, 0.25);
  const size = style.small;
  const words = style.variant === 'large-print' ? 'Not 100 mm? Print at 100 %.' : calibrationWords;
  const items: Item[] = [
    line(x, y, x + calibration.inches, y, 0.25),
    tick(0, 1.2),
    tick(calibration.metric, 1.2),
    tick(calibration.inches, 1.2),
    ...wrap(words, calibration.inches, size).map((row, i) =>
      text(x, y + 1.8 + (i + 0.75) * style.smallLine, row, size),
    ),
    text(x + calibration.metric - 1.5, y - 1, '100 mm', size, { anchor: 'end' }),
    text(x + calibration.inches + 1, y + 0.9, '4 in', size),
  ];
  return group(items, { tag: 'Figure', alt: 'Calibration line, 100 millimeters with a tail to 4 inches' });
}

const calibrationWords = 'This line is 100 mm (tail to 4 in). If yours is not, print at 100 %, “actual size”.';

/** "1:2,400 · 1 in = 200 ft". */
export function scaleLine(scale: number, units: Units): string {
  return `${ratioWords(scale)} · ${scaleWords(scale, units)}`;
}
