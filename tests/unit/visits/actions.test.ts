import { describe, expect, test } from 'vitest';
import type { BirdGuide } from '../../../src/birds/guide.ts';
import { birdById, birdGuides } from '../../../src/birds/index.ts';
import { regions } from '../../../src/birds/regions.ts';
import { sourceByKey } from '../../../src/birds/sources.ts';
import { mayEverBeRemoved, offeredActions, type Situation } from '../../../src/visits/actions.ts';
import { lawOf } from '../../../src/visits/law.ts';
import { troubles, visitStates } from '../../../src/visits/visit.ts';

const base: Situation = {
  region: 'eastern-north-america',
  bird: null,
  keyAgrees: true,
  secondLook: true,
  state: 'eggs',
  trouble: [],
};
const ids = (change: Partial<Situation>) => offeredActions({ ...base, ...change }).map((offer) => offer.id);
const every: [string, BirdGuide | null][] = [
  ...birdGuides.map((bird): [string, BirdGuide] => [bird.id, bird]),
  ['unknown', null],
];

describe('removal', () => {
  test('only for House Sparrow and European Starling, only in North America, in every state and trouble', () => {
    for (const { id: region } of regions) {
      for (const [name, bird] of every) {
        for (const state of visitStates) {
          const offered = ids({ region, bird, state, trouble: troubles }).includes('remove-pest-nest');
          const may =
            region !== 'europe' &&
            ['house-sparrow', 'european-starling'].includes(name) &&
            ['building', 'eggs', 'young'].includes(state);
          expect(offered, `${name} ${region} ${state}`).toBe(may);
        }
      }
    }
  });
  test.each([
    [false, false],
    [false, true],
    [true, false],
  ])('not before the key agrees (%s) and a second look (%s)', (keyAgrees, secondLook) => {
    const offered = ids({ bird: birdById('house-sparrow'), keyAgrees, secondLook });
    expect(offered).toContain('second-look');
    expect(offered).not.toContain('remove-pest-nest');
  });
  test('comes with cautions and the law', () => {
    const [offer] = offeredActions({ ...base, bird: birdById('european-starling') });
    expect(offer!.law).toMatch(/Migratory Bird Treaty Act.*check them first/);
    expect(offer!.cautions.join(' ')).toMatch(/any doubt, leave it/);
    expect(offer!.sources).toContain('FWS2002');
  });
  test('the same sparrow is a protected bird in Europe', () => {
    expect(mayEverBeRemoved(birdById('house-sparrow'), 'europe')).toBe(false);
    expect(ids({ region: 'europe', bird: birdById('house-sparrow-europe') })).toEqual(['leave-alone']);
    expect(lawOf.europe.sentence).toMatch(/House Sparrow and Starling too/);
  });
});

describe('other offers', () => {
  test('a native nest is left alone, an unknown one photographed', () => {
    expect(ids({ bird: birdById('house-wren') })).toEqual(['leave-alone']);
    expect(ids({ bird: null })).toEqual(['photograph-and-ask', 'leave-alone']);
  });
  test('mouse nests: never dry, never over an active nest', () => {
    const [offer] = offeredActions({ ...base, state: 'empty', trouble: ['mice'] });
    expect(offer!.id).toBe('clean-mouse-nest');
    expect(offer!.cautions.join(' ')).toMatch(/hantavirus.*bleach/);
    expect(ids({ state: 'young', trouble: ['mice'], bird: birdById('house-wren') })).not.toContain('clean-mouse-nest');
  });
  test('a guard is never called predator-proof', () => {
    const text = JSON.stringify(offeredActions({ ...base, trouble: ['predator-sign'] }));
    expect(text).toContain('6.7 %');
    expect(text).not.toMatch(/predator-?proof|safe from/i);
  });
  test('old nests are cleaned only when finished; nothing to do is said', () => {
    expect(ids({ state: 'fledged' })).toContain('clean-after-brood');
    expect(ids({ state: 'young', bird: birdById('house-wren') })).not.toContain('clean-after-brood');
    expect(ids({ state: 'empty' })).toEqual(['leave-alone']);
  });
  test('wasps are warned of', () => {
    expect(JSON.stringify(offeredActions({ ...base, trouble: ['wasps'] }))).toMatch(/step back.*allergic/);
  });
  test('every source is a known one', () => {
    for (const [, bird] of every) {
      for (const state of visitStates) {
        for (const offer of offeredActions({ ...base, bird, state, trouble: troubles })) {
          expect(offer.sources.length).toBeGreaterThan(0);
          for (const key of offer.sources) sourceByKey(key);
        }
      }
    }
  });
});
