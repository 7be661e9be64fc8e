/** Holes: how they are written, and what fits through. */

import type { BirdGuide, Figure, HoleSize } from './guide.ts';

/** Millimetres a printed size may be off: a 38 mm hole is a 1 1/2 in hole (38.1 mm). Ours. */
const printed = 0.5;
/** Millimetres a bird may squeeze in a crescent beyond its round hole: errs toward letting a pest in. Ours. */
const squeeze = 2;

const fractions = [
  '',
  '1/16',
  '1/8',
  '3/16',
  '1/4',
  '5/16',
  '3/8',
  '7/16',
  '1/2',
  '9/16',
  '5/8',
  '11/16',
  '3/4',
  '13/16',
  '7/8',
  '15/16',
];

/** Inches to the nearest sixteenth, such as `1 1/2`. */
export function inchText(millimetres: number): string {
  const sixteenths = Math.round((millimetres / 25.4) * 16);
  const whole = Math.floor(sixteenths / 16);
  const part = fractions[sixteenths % 16]!;
  if (part === '') return String(whole);
  return whole === 0 ? part : `${whole} ${part}`;
}

/** A hole as people write it: `1 1/2 in`, `38 mm`, `4 × 3 in oval`, `76 × 30 mm crescent`. */
export function holeText(hole: Figure<HoleSize> | HoleSize, units: 'us' | 'metric'): string {
  const size = 'value' in hole ? hole.value : hole;
  const write = units === 'us' ? inchText : (length: number) => String(Math.round(length));
  const unit = units === 'us' ? 'in' : 'mm';
  if (size.shape === 'round') return `${write(size.width)} ${unit}`;
  return `${write(size.width)} × ${write(size.height)} ${unit} ${size.shape}`;
}

/** The smallest size known to let this bird in: the low end of the range when the sources give one (widths in mm). */
function smallest(bird: BirdGuide): { width: number; height: number } {
  const { value, range } = bird.box.hole;
  const least = range ? Math.min(range[0], value.width) : value.width;
  return { width: least, height: value.height * (least / value.width) };
}

/** Whether this bird fits through the hole, by size alone. 1 1/8 in (28.6 mm) keeps the House Sparrow out (USFWS). */
export function admits(hole: HoleSize, bird: BirdGuide): boolean {
  const need = smallest(bird);
  const slack = hole.shape === 'crescent' ? squeeze : printed;
  return hole.width + slack >= need.width && hole.height + slack >= need.height;
}
