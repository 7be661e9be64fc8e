import { describe, expect, it } from 'vitest';
import type { Spot } from '../../../src/print/clip.ts';
import type { Item, PathItem } from '../../../src/print/display.ts';
import { textsOf } from '../../../src/print/display.ts';
import { makeSheets } from '../../../src/print/make-sheets.ts';
import { sideBySide } from '../../../src/print/side-by-side.ts';
import { sheetToSvg } from '../../../src/print/to-svg.ts';
import { walkerLine } from '../../../src/print/walker-line.ts';
import { inputOf } from './fixture.ts';

const pathsOf = (items: readonly Item[]): PathItem[] =>
  items.flatMap((one) => (one.item === 'path' ? [one] : one.item === 'group' ? pathsOf(one.items) : []));

/** How a line looks to a copier: dashes and widths, no color. */
const copied = (item: Item) => JSON.stringify({ ...(item as PathItem).stroke, color: 0 });

const lineOf = (walker: number) => {
  const ends = [
    [0, 0],
    [50, 0],
  ] as const;
  return walkerLine(ends, walker) as PathItem[];
};

describe('several walkers on paper', () => {
  const sheets = makeSheets(inputOf({ boxes: 24, rounds: 3 }, { sheets: ['index', 'check'] }));
  const [index] = sheets;

  it.each([1, 2, 3])('draws the line of walker %i on the map and in the key', (walker) => {
    const [wanted] = lineOf(walker).map(copied);
    const dash = lineOf(walker)[0]!.stroke!.dash;
    const drawn = pathsOf(index!.items).filter((one) => one.stroke?.color === lineOf(walker)[0]!.stroke!.color);
    expect(drawn.filter((one) => copied(one) === wanted).length).toBeGreaterThan(3);
    const words = textsOf(index!.items).map((one) => one.text);
    expect(words.filter((one) => one.startsWith(`walker ${walker}: boxes `))).toHaveLength(1);
    if (dash) expect(sheetToSvg(index!)).toContain(`stroke-dasharray="${dash.map((n) => +n.toFixed(3)).join(' ')}"`);
  });

  it('names the walker on each check sheet and shows the line', () => {
    const checks = sheets.filter((one) => one.kind === 'check');
    expect(checks.map((one) => textsOf(one.items).some((t) => t.text === 'on the maps:'))).toEqual([true, true, true]);
    expect(checks.map((one) => one.title)).toEqual(
      [1, 2, 3].map((walker) => expect.stringContaining(`walker ${walker}, part 1`)),
    );
  });

  it('leaves a single round without names', () => {
    const [only] = makeSheets(inputOf({ boxes: 8 }, { sheets: ['index'] }));
    const words = textsOf(only!.items).map((one) => one.text);
    expect(words).toContain('round, the way to walk');
    expect(words.filter((one) => one.startsWith('walker'))).toEqual([]);
  });

  it('tells twelve walkers apart in black and white', () => {
    const looks = Array.from({ length: 12 }, (_, i) =>
      lineOf(i + 1)
        .map(copied)
        .join(),
    );
    expect(new Set(looks).size).toBe(12);
  });
});

describe('sideBySide', () => {
  const straight: Spot[] = [
    [0, 10],
    [80, 10],
  ];
  const back: Spot[] = [...straight].reverse();

  it('parts lines on one way, whichever way they are walked', () => {
    for (const second of [straight, back]) {
      const [a, b] = sideBySide([
        { walker: 1, pieces: [straight] },
        { walker: 2, pieces: [second] },
      ]);
      const middle = (pieces: readonly (readonly Spot[])[]) => pieces[0]![Math.floor(pieces[0]!.length / 2)]![1];
      expect(Math.abs(middle(a!.pieces) - middle(b!.pieces))).toBeCloseTo(1.1, 3);
    }
  });

  it('leaves a line alone where it runs alone', () => {
    const far: Spot[] = [
      [0, 10],
      [40, 10],
      [40, 60],
    ];
    const [a, b] = sideBySide([
      { walker: 1, pieces: [straight] },
      { walker: 2, pieces: [far] },
    ]);
    expect(a!.pieces[0]!.filter(([x]) => x > 46).every(([, y]) => y === 10)).toBe(true);
    expect(b!.pieces[0]!.filter(([, y]) => y > 16).every(([x]) => x === 40)).toBe(true);
    expect(sideBySide([{ walker: 1, pieces: [straight] }])[0]!.pieces[0]).toBe(straight);
  });
});
