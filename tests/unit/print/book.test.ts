import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chooseScale, detailScales, makeBook, overlapShare } from '../../../src/print/book.ts';
import { spread } from '../../../src/print/spread.ts';
import { invented } from './fixture.ts';

const window = { width: 190, height: 140, room: () => 5.5 };

describe('map book', () => {
  test('every number lies in exactly one body, whatever the size of the plan', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 120 }),
        fc.integer({ min: 20, max: 400 }),
        fc.constantFrom(600, 1200, 2400, 5000),
        (boxes, gap, scale) => {
          const { plan } = invented({ boxes, gap, land: false });
          const book = makeBook(plan.boxes, window, 'us', scale);
          const numbers = book.frames.flatMap((frame) => frame.numbers).sort((a, b) => a - b);
          expect(numbers).toEqual(plan.boxes.map((box) => box.number));
        },
      ),
      { seed: 3, numRuns: 60 },
    );
  });

  test('every box is inside its own window, and neighbors share a tenth of it', () => {
    const { plan } = invented({ boxes: 60, land: false });
    const book = makeBook(plan.boxes, window, 'us', 2400);
    for (const frame of book.frames)
      for (const number of frame.numbers) {
        const { at } = plan.boxes.find((box) => box.number === number)!;
        expect(Math.abs(at.x - frame.centre.x)).toBeLessThan(book.across / 2);
        expect(Math.abs(at.y - frame.centre.y)).toBeLessThan(book.down / 2);
      }
    const [a, b] = book.frames.filter((frame) => frame.row === book.frames[0]!.row);
    expect((book.across - (b!.centre.x - a!.centre.x)) / book.across).toBeCloseTo(overlapShare, 6);
    expect(overlapShare).toBeGreaterThanOrEqual(0.05);
    expect(overlapShare).toBeLessThanOrEqual(0.1);
  });

  test('a pair is never torn apart', () => {
    for (const gap of [60, 75, 90, 118, 140]) {
      const { plan } = invented({ boxes: 50, gap, land: false });
      const book = makeBook(plan.boxes, window, 'us', 1200);
      const sheet = (n: number) => book.frames.find((frame) => frame.numbers.includes(n))!.sheet;
      expect(sheet(3)).toBe(sheet(4));
    }
  });

  test('the chosen scale is a round one and keeps numbers apart without pushing single boxes', () => {
    for (const units of ['us', 'metric'] as const)
      for (const gap of [40, 60, 118, 300]) {
        const { plan } = invented({ boxes: 40, gap, land: false });
        const scale = chooseScale(plan.boxes, window, units);
        expect(detailScales[units]).toContain(scale);
        const spots = plan.boxes.map(({ at }) => [(at.x * 1000) / scale, (at.y * 1000) / scale] as const);
        const placed = spread(
          spots,
          plan.boxes.map(() => 5.5),
        );
        plan.boxes.forEach((box, i) => {
          if (box.pairedWith !== null) return;
          expect(
            Math.hypot(placed[i]![0] - spots[i]![0], placed[i]![1] - spots[i]![1]),
            `${units} ${gap} 1:${scale}`,
          ).toBeLessThan(3.01);
        });
      }
  });

  test('a yard is drawn as large as it fits on one sheet', () => {
    const { plan } = invented({ boxes: 2, gap: 30, land: false });
    expect(chooseScale(plan.boxes, window, 'us')).toBe(600);
    expect(chooseScale(plan.boxes, window, 'metric')).toBe(500);
  });

  test('no boxes, no sheets; an odd scale is the caller’s to ask', () => {
    expect(makeBook([], window, 'us', null).frames).toEqual([]);
  });
});

describe('spread', () => {
  test('discs never touch and stay where they are when they need not move', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 60 })), { maxLength: 12 }),
        (spots) => {
          const placed = spread(
            spots,
            spots.map(() => 4),
          );
          for (let i = 0; i < placed.length; i++)
            for (let j = i + 1; j < placed.length; j++)
              expect(Math.hypot(placed[i]![0] - placed[j]![0], placed[i]![1] - placed[j]![1])).toBeGreaterThan(7.95);
        },
      ),
      { seed: 9, numRuns: 100 },
    );
    expect(
      spread(
        [
          [0, 0],
          [20, 0],
        ],
        [4, 4],
      ),
    ).toEqual([
      [0, 0],
      [20, 0],
    ]);
  });

  test('ten boxes on one spot fan out', () => {
    const placed = spread(
      Array.from({ length: 10 }, () => [50, 50] as const),
      Array<number>(10).fill(5),
    );
    const gaps = placed.flatMap((a, i) => placed.slice(i + 1).map((b) => Math.hypot(a[0] - b[0], a[1] - b[1])));
    expect(Math.min(...gaps)).toBeGreaterThan(9.9);
  });
});
