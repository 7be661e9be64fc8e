import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { birdById, birdGuides, isBird } from '../../../src/birds/index.ts';
import { inch } from '../../../src/birds/make.ts';
import { sourceByKey } from '../../../src/birds/sources.ts';
import { identifyNest, keyAgrees } from '../../../src/visits/key.ts';
import type { Evidence } from '../../../src/visits/key-clues.ts';
import { keyRows } from '../../../src/visits/key-table.ts';
import { cups, eggColors, eggPatterns, eggSizes, materials } from '../../../src/visits/visit.ts';

const nothing: Evidence = {
  region: 'eastern-north-america',
  material: [],
  cup: null,
  eggColor: null,
  eggPattern: null,
  eggSize: null,
  eggCount: null,
  hole: null,
};
const ask = (change: Partial<Evidence>) => identifyNest({ ...nothing, ...change });
const round = (width: number) => ({ width, height: width, shape: 'round' as const });

describe('clear cases', () => {
  test.each<[string, string[], Partial<Evidence>]>([
    [
      'bluebird',
      ['eastern-bluebird'],
      { material: ['grass'], cup: 'neat-cup', eggColor: 'blue', eggPattern: 'plain', eggCount: 5 },
    ],
    [
      'bluebird of needles',
      ['eastern-bluebird'],
      {
        material: ['pine-needles'],
        cup: 'neat-cup',
        eggColor: 'pale-blue',
        eggPattern: 'plain',
        eggSize: 'medium',
        hole: round(inch(1.5)),
      },
    ],
    [
      'swallow',
      ['tree-swallow'],
      { material: ['grass', 'feathers'], cup: 'neat-cup', eggColor: 'white', eggPattern: 'plain' },
    ],
    [
      'wren',
      ['house-wren'],
      { material: ['twigs'], cup: 'deep-cup-at-back', eggColor: 'white', eggPattern: 'fine-speckles' },
    ],
    [
      'sparrow',
      ['house-sparrow'],
      { material: ['grass', 'litter', 'feathers'], cup: 'dome', eggColor: 'grey-white', eggPattern: 'blotches' },
    ],
    [
      'starling',
      ['european-starling'],
      { material: ['straw', 'grass'], cup: 'flat', eggColor: 'blue-green', eggPattern: 'plain', eggSize: 'large' },
    ],
    [
      'duck',
      ['wood-duck'],
      { material: ['own-down', 'shavings'], eggColor: 'white', eggPattern: 'plain', eggSize: 'large', eggCount: 12 },
    ],
    [
      'warbler',
      ['prothonotary-warbler'],
      { material: ['moss', 'leaves', 'rootlets'], cup: 'neat-cup', eggColor: 'cream', eggPattern: 'blotches' },
    ],
    [
      'crested flycatcher',
      ['great-crested-flycatcher'],
      { material: ['leaves', 'hair', 'snake-skin'], eggColor: 'cream', eggPattern: 'streaks' },
    ],
    [
      'two chickadees nobody can tell apart',
      ['black-capped-chickadee', 'carolina-chickadee'],
      {
        material: ['moss', 'plant-down', 'hair'],
        cup: 'neat-cup',
        eggColor: 'white',
        eggPattern: 'spots',
        eggSize: 'small',
      },
    ],
    ['mouse', ['mouse'], { material: ['shredded-grass', 'droppings'], cup: 'closed-ball' }],
    [
      'ash-throated in the west',
      ['ash-throated-flycatcher'],
      {
        region: 'western-north-america',
        material: ['leaves', 'hair', 'snake-skin'],
        eggColor: 'cream',
        eggPattern: 'streaks',
      },
    ],
    [
      'pied flycatcher in Europe',
      ['pied-flycatcher'],
      { region: 'europe', material: ['leaves', 'bark'], cup: 'neat-cup', eggColor: 'pale-blue', eggPattern: 'plain' },
    ],
  ])('%s', (_, birds, evidence) => {
    const answer = ask(evidence);
    expect(answer.sentence).toMatch(/^Likely /);
    expect([answer.verdict, answer.likely]).toEqual(['likely', birds]);
  });
  test('a 1 1/2 in hole tells the western bluebirds apart, a larger one does not', () => {
    const evidence: Partial<Evidence> = {
      region: 'western-north-america',
      material: ['grass'],
      cup: 'neat-cup',
      eggColor: 'blue',
      eggPattern: 'plain',
    };
    expect(ask({ ...evidence, hole: round(inch(1.5)) }).likely).toEqual(['western-bluebird']);
    expect(ask({ ...evidence, hole: round(inch(1.5625)) }).likely).toEqual(['western-bluebird', 'mountain-bluebird']);
  });
});

describe('unsure, photograph and ask', () => {
  test.each<[string, Partial<Evidence>, RegExp]>([
    ['nothing seen', {}, /nothing known fits/],
    ['material alone', { material: ['moss'] }, /one kind of clue is not enough/],
    ['eggs alone', { eggColor: 'blue', eggPattern: 'plain' }, /nest was not looked at/],
    [
      'moss with blue eggs',
      { material: ['moss', 'hair'], cup: 'neat-cup', eggColor: 'blue', eggPattern: 'plain' },
      /disagree|different birds/,
    ],
    [
      'twigs with plain blue eggs',
      { material: ['twigs'], cup: 'deep-cup-at-back', eggColor: 'blue', eggPattern: 'plain' },
      /disagree|different birds/,
    ],
    [
      'dome with blue eggs',
      { material: ['grass', 'litter'], cup: 'dome', eggColor: 'blue', eggPattern: 'plain' },
      /disagree|different birds/,
    ],
    [
      'grass cup with white eggs: bluebird or early swallow',
      { material: ['grass'], cup: 'neat-cup', eggColor: 'white', eggPattern: 'plain' },
      /too close|different birds/,
    ],
    [
      'blue eggs with streaks',
      { material: ['grass'], cup: 'neat-cup', eggColor: 'blue', eggPattern: 'streaks' },
      /disagree/,
    ],
    [
      'a ball with eggs',
      { material: ['shredded-grass'], cup: 'closed-ball', eggColor: 'blue', eggPattern: 'plain' },
      /nothing known fits/,
    ],
  ])('%s', (_, evidence, why) => {
    const answer = ask(evidence);
    expect(answer.verdict).toBe('unsure');
    expect(answer.likely).toEqual([]);
    expect(answer.sentence).toMatch(why);
    expect(answer.sentence).toContain('photograph it and ask');
  });
});

describe('never forces a species', () => {
  const any = fc.record({
    region: fc.constantFrom('eastern-north-america' as const, 'western-north-america' as const, 'europe' as const),
    material: fc.uniqueArray(fc.constantFrom(...materials), { maxLength: 4 }),
    cup: fc.constantFrom(null, ...cups),
    eggColor: fc.constantFrom(null, ...eggColors),
    eggPattern: fc.constantFrom(null, ...eggPatterns),
    eggSize: fc.constantFrom(null, ...eggSizes),
    eggCount: fc.constantFrom(null, 1, 5, 12, 30),
    hole: fc.constantFrom(null, round(25), round(inch(1.5)), round(inch(3))),
  });
  test('a likely bird lives in the region, fits the hole, and no clue speaks hard against it', () => {
    fc.assert(
      fc.property(any, (evidence) => {
        const answer = identifyNest(evidence);
        expect(answer.verdict === 'likely').toBe(answer.likely.length > 0);
        for (const id of answer.likely.filter(isBird)) {
          expect(birdById(id).regions).toContain(evidence.region);
          expect(evidence.material.length + Number(evidence.cup !== null)).toBeGreaterThan(0);
          expect(evidence.eggColor !== null || evidence.eggPattern !== null).toBe(true);
          const row = keyRows.find((one) => one.id === id)!;
          if (evidence.eggColor) expect([...row.colors, ...(row.rareColors ?? [])]).toContain(evidence.eggColor);
          if (evidence.eggPattern) expect(row.patterns).toContain(evidence.eggPattern);
        }
      }),
      { seed: 3, numRuns: 1500 },
    );
  });
  test('the order of the materials does not matter', () => {
    fc.assert(
      fc.property(
        any,
        (evidence) =>
          identifyNest(evidence).sentence.length ===
          identifyNest({ ...evidence, material: [...evidence.material].reverse() }).sentence.length,
      ),
      { seed: 4, numRuns: 200 },
    );
  });
  test('for removal it must be this bird alone', () => {
    const sparrow: Evidence = {
      ...nothing,
      material: ['litter'],
      cup: 'dome',
      eggColor: 'grey-white',
      eggPattern: 'blotches',
    };
    expect(keyAgrees('house-sparrow', sparrow)).toBe(true);
    expect(keyAgrees('european-starling', sparrow)).toBe(false);
    expect(keyAgrees('house-sparrow', { ...sparrow, eggColor: 'blue' })).toBe(false);
  });
});

describe('the table', () => {
  test('has every bird of the guides, once, with a known source and something to tell it by', () => {
    expect(
      keyRows
        .map((row) => row.id)
        .filter(isBird)
        .sort(),
    ).toEqual(birdGuides.map((bird) => bird.id).sort());
    expect(new Set(keyRows.map((row) => row.id)).size).toBe(keyRows.length);
    for (const row of keyRows) {
      expect(row.tell).not.toBe('');
      for (const key of row.source) sourceByKey(key);
    }
  });
});
