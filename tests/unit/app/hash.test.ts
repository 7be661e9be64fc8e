import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readHash, writeHash } from '../../../src/app/hash.ts';
import { places } from '../../../src/app/state.ts';

describe('the address', () => {
  it('opens a box', () => {
    expect(readHash('#site=yard&place=posts&box=17')).toEqual({
      site: 'yard',
      place: 'posts',
      selection: { of: 'box', number: 17 },
    });
  });

  it.each(['', '#', '#box=0', '#box=-3', '#box=1.5', '#box=x', '#place=nowhere', '#%%%'])(
    'makes nothing of %s',
    (hash) => {
      expect(readHash(hash)).toEqual({ site: null, place: null, selection: null });
    },
  );

  it('reads back what it wrote', () => {
    const word = fc.string({ minLength: 1 });
    const selection = fc.oneof(
      fc.constant(null),
      fc.record({ of: fc.constant('box' as const), number: fc.integer({ min: 1, max: 999 }) }),
      fc.record({ of: fc.constant('post' as const), id: word }),
      fc.record({ of: fc.constant('feature' as const), id: word }),
    );
    const state = fc.record({ site: fc.option(word), place: fc.option(fc.constantFrom(...places)), selection });
    fc.assert(
      fc.property(state, (s) => {
        expect(readHash(writeHash(s))).toEqual(s);
      }),
      { seed: 7, numRuns: 300 },
    );
  });
});
