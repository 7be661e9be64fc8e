/** Nothing that matters is cut off: every line of every card, every bird's name on the check sheet; the index names large land alone. */
import { describe, expect, it } from 'vitest';
import { birdGuides } from '../../../src/birds/index.ts';
import { shortCare } from '../../../src/print/box-facts.ts';
import { mountCautions } from '../../../src/print/cautions.ts';
import { facingWords } from '../../../src/print/compass.ts';
import { type Sheet, textsOf } from '../../../src/print/display.ts';
import type { SheetOptions } from '../../../src/print/input.ts';
import { thingsOf } from '../../../src/print/land-things.ts';
import { makeSheets } from '../../../src/print/make-sheets.ts';
import { widthOf } from '../../../src/print/measure.ts';
import { inputOf } from './fixture.ts';

const papers = ['letter', 'a4'] as const;
const orientations = ['landscape', 'portrait'] as const;
const variants = ['standard', 'ink-saver', 'large-print'] as const;
const all = papers.flatMap((paper) =>
  orientations.flatMap((orientation) => variants.map((variant) => ({ paper, orientation, variant }))),
);

/** Words of a sheet, broken lines joined. */
const words = (sheets: readonly Sheet[]): string =>
  sheets.flatMap((sheet) => textsOf(sheet.items).map((one) => one.text)).join(' ');

const longest = birdGuides.reduce((a, b) => (b.name.length > a.name.length ? b : a));

/** Every box for the bird with the longest name there is. */
function withLongest(options: Partial<SheetOptions>) {
  const input = inputOf({ boxes: 9 }, options);
  return { ...input, plan: { ...input.plan, boxes: input.plan.boxes.map((box) => ({ ...box, bird: longest.id })) } };
}

describe('box cards', () => {
  it.each(all)('say every caution once a new box: $paper $orientation $variant', (look) => {
    const input = inputOf({ boxes: 9 }, { ...look, sheets: ['cards'] });
    const sheets = makeSheets(input);
    const fresh = input.plan.boxes.filter((box) => box.state === 'new').length;
    expect(fresh).toBeGreaterThan(0);
    const said = words(sheets);
    const times = (sentence: string) => said.split(sentence).length - 1;
    // In large print they stand once on the page of what all boxes share, and in short on each card.
    const large = look.variant === 'large-print';
    for (const { sentence } of mountCautions) expect(times(sentence)).toBe(large ? 1 : fresh);
    if (large) expect(times(shortCare)).toBe(fresh);
    expect(sheets.flatMap((sheet) => sheet.numbers).sort((a, b) => a - b)).toEqual(
      input.plan.boxes.map((box) => box.number).sort((a, b) => a - b),
    );
    for (const { safe, items } of sheets)
      for (const { y } of textsOf(items)) expect(y).toBeLessThan(safe.y + safe.height + 0.01);
  });

  it('have as many on a page as was asked for, or fewer', () => {
    const pages = (cardsPerPage: 2 | 4) =>
      makeSheets(inputOf({ boxes: 8 }, { sheets: ['cards'], cardsPerPage })).length;
    expect(pages(2)).toBe(4);
    expect([2, 4, 8]).toContain(pages(4));
  });
});

describe('check sheets', () => {
  it.each(all)('write the longest bird’s name out: $paper $orientation $variant', (look) => {
    const input = withLongest({ ...look, sheets: ['check'] });
    const fronts = makeSheets(input).filter((sheet) => sheet.kind === 'check');
    const said = words(fronts).replace(/, /g, ' ');
    expect(said.split(longest.name).length - 1).toBe(input.plan.boxes.length);
    for (const box of input.plan.boxes) expect(said).toContain(facingWords(box, input.stamp.declination));
  });
});

describe('the index', () => {
  it('names large land and starts alone where it shows the detail sheets', () => {
    const input = inputOf({ boxes: 40 }, { sheets: ['index', 'details'] });
    const [index] = makeSheets(input);
    const mm = 1000 / index!.scale!;
    const named = new Set(
      textsOf(index!.items)
        .filter((one) => one.halo && one.face.startsWith('serif'))
        .map((one) => one.text),
    );
    const things = thingsOf(input.site, input.frame).filter((thing) => thing.name !== '');
    const small = things.filter(({ kind, areas, min, max }) => {
      const box = (max.x - min.x) * mm * (max.y - min.y) * mm;
      return kind !== 'trailhead' && (areas.length === 0 || box < 300);
    });
    expect(small.length).toBeGreaterThan(0);
    for (const { name } of small) expect(named).not.toContain(name);
  });
});

describe('the key at twelve walkers', () => {
  const lying = all.filter(({ orientation }) => orientation === 'landscape');
  it.each(lying)('has room for all land and every walker: $paper $variant', ({ paper, variant }) => {
    const look = { paper, orientation: 'landscape', variant, sheets: ['index', 'details'] } as const;
    const input = inputOf({ boxes: 96, rounds: 12 }, look);
    const keys = makeSheets(input).filter((sheet) => sheet.id === (variant === 'large-print' ? 'key' : 'index'));
    const said = textsOf(keys.flatMap((sheet) => sheet.items)).map((one) => one.text);
    expect(said.filter((one) => /^and \d+ more$/.test(one))).toEqual([]);
    for (const { walker, boxes } of input.plan.rounds) expect(said).toContain(`${walker}: ${boxes[0]}–${boxes.at(-1)}`);
    expect(said).toContain('landmark');
  });

  it('names each walker in full where they are few', () => {
    const [index] = makeSheets(inputOf({ boxes: 12, rounds: 3 }, { sheets: ['index'] }));
    expect(textsOf(index!.items).map((one) => one.text)).toContain('walker 2: boxes 5–8');
  });
});

it.each(all)('a landowner’s page goes on upon one more at most: $paper $orientation $variant', (look) => {
  const sheets = makeSheets(inputOf({ boxes: 9 }, { ...look, sheets: ['landowner'] }));
  expect(sheets).toHaveLength(look.variant === 'large-print' ? 2 : 1);
  const said = words(sheets);
  for (const step of ['811 in the US', 'Stand where the tapes meet', 'Write the date here', 'Weakest point'])
    expect(said.split(step).length - 1).toBe(1);
  for (const { safe, items } of sheets)
    for (const { x, y, text, size, face, anchor, halo } of textsOf(items)) {
      expect(y).toBeLessThan(safe.y + safe.height + 0.01);
      // Half a millimeter: `paragraph` allows for its bold opening by a rule of thumb, and the safe box ends well inside the paper.
      if (!anchor && !halo) expect(x + widthOf(text.trimEnd(), size, face)).toBeLessThan(safe.x + safe.width + 0.5);
    }
});
