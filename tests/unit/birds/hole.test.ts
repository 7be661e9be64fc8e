import { describe, expect, test } from 'vitest';
import { curveAt } from '../../../src/birds/curve.ts';
import type { HoleSize } from '../../../src/birds/guide.ts';
import { admits, holeText } from '../../../src/birds/hole.ts';
import { birdById, birdsOf } from '../../../src/birds/index.ts';
import { foot, inch, yard } from '../../../src/birds/make.ts';

const round = (width: number): HoleSize => ({ width, height: width, shape: 'round' });

describe('lengths', () => {
  test.each([
    [inch(1.5), 38.1],
    [inch(1.5625), 39.6875],
    [inch(1.125), 28.575],
    [inch(18), 457.2],
    [foot(50), 15.24],
    [foot(100), 30.48],
    [foot(200), 60.96],
    [foot(600), 182.88],
    [foot(650), 198.12],
    [yard(50), 45.72],
    [yard(100), 91.44],
    [yard(300), 274.32],
  ])('%d is exactly %d', (made, exact) => expect(made).toBe(exact));
});

describe('writing a hole', () => {
  test.each([
    ['eastern-bluebird', '1 1/2 in', '38 mm'],
    ['mountain-bluebird', '1 9/16 in', '40 mm'],
    ['black-capped-chickadee', '1 1/8 in', '29 mm'],
    ['american-kestrel', '3 in', '76 mm'],
    ['wood-duck', '4 × 3 in oval', '102 × 76 mm oval'],
    ['purple-martin', '2 1/8 in', '54 mm'],
    ['great-tit', '1 1/8 in', '28 mm'],
  ])('%s', (id, us, metric) => {
    expect(holeText(birdById(id).box.hole, 'us')).toBe(us);
    expect(holeText(birdById(id).box.hole, 'metric')).toBe(metric);
  });
  test('a crescent, less than an inch, and rounding up to a whole inch', () => {
    expect(holeText({ width: inch(3), height: inch(1.1875), shape: 'crescent' }, 'us')).toBe('3 × 1 3/16 in crescent');
    expect(holeText(round(inch(0.875)), 'us')).toBe('7/8 in');
    expect(holeText(round(25.3), 'us')).toBe('1 in');
  });
});

describe('what a hole lets in', () => {
  const let_in = (hole: HoleSize) =>
    birdsOf('eastern-north-america', { pests: true })
      .filter((bird) => admits(hole, bird))
      .map((bird) => bird.id);
  test('1 1/8 in lets chickadees and wrens in, keeps House Sparrows out (USFWS)', () => {
    expect(let_in(round(inch(1.125)))).toEqual(['house-wren', 'black-capped-chickadee', 'carolina-chickadee']);
  });
  test('1 1/2 in lets bluebirds and sparrows in, starlings not', () => {
    const birds = let_in(round(inch(1.5)));
    expect(birds).toContain('eastern-bluebird');
    expect(birds).toContain('house-sparrow');
    expect(birds).not.toContain('european-starling');
    expect(admits(round(inch(1.5)), birdById('mountain-bluebird'))).toBe(false);
    expect(admits(round(38), birdById('eastern-bluebird'))).toBe(true);
  });
  test('a martin crescent keeps starlings out, sparrows not for certain', () => {
    const crescent: HoleSize = { width: inch(3), height: inch(1.1875), shape: 'crescent' };
    expect(admits(crescent, birdById('european-starling'))).toBe(false);
    expect(admits(crescent, birdById('house-sparrow'))).toBe(true);
  });
  test('a duck oval needs both lengths', () => {
    expect(admits({ width: 102, height: 76, shape: 'oval' }, birdById('wood-duck'))).toBe(true);
    expect(admits(round(inch(3)), birdById('wood-duck'))).toBe(false);
  });
  test('a wider hole never shuts a bird out', () => {
    for (const bird of birdsOf('western-north-america', { pests: true })) {
      let open = false;
      for (let width = 15; width < 130; width++) {
        const now = admits(round(width), bird);
        expect(open && !now).toBe(false);
        open = now;
      }
      expect(open).toBe(true);
    }
  });
});

describe('reading a curve', () => {
  const curve = [
    [10, 0],
    [20, 1],
    [40, 0.5],
  ] as const;
  test.each([
    [-5, 0],
    [10, 0],
    [15, 0.5],
    [20, 1],
    [30, 0.75],
    [40, 0.5],
    [Number.POSITIVE_INFINITY, 0.5],
    [Number.NEGATIVE_INFINITY, 0],
  ])('at %d', (raw, score) => expect(curveAt(curve, raw)).toBeCloseTo(score, 12));
  test('NaN and an empty curve are mistakes', () => {
    expect(() => curveAt(curve, Number.NaN)).toThrow(/no score/);
    expect(() => curveAt([], 1)).toThrow(/no score/);
  });
});
