import { describe, expect, it } from 'vitest';
import * as read from '../../../src/site/properties.ts';
import type { Kind } from '../../../src/site/types.ts';

const of = (kind: Kind, properties: Record<string, unknown> = {}) => ({ kind, properties });

describe('property readers', () => {
  it('give the documented defaults', () => {
    const heights: [Kind, number][] = [
      ['woods', 18],
      ['brush', 2.5],
      ['building', 6],
      ['tree', 10],
      ['hedge', 2],
      ['meadow', 0],
      ['path', 0],
    ];
    for (const [kind, metres] of heights) expect(read.heightOf(of(kind)), kind).toBe(metres);
    expect(read.crownOf(of('tree'))).toBe(3);
    expect([read.hedgeWidth(of('hedge')), read.hedgeHeight(of('hedge'))]).toEqual([2, 2]);
    expect([read.isSprayed(of('crop')), read.isGrazed(of('crop')), read.isInLeaf(of('tree'))]).toEqual([
      false,
      false,
      true,
    ]);
    const post = of('post');
    expect(read.postState(post)).toBe('candidate');
    const nulls = [read.postBird, read.postNumber, read.postFacing, read.postHoleHeight, read.postPair, read.nameOf];
    expect(nulls.map((reader) => reader(post))).toEqual([null, null, null, null, null, null]);
  });

  it('give what the file says', () => {
    const post = of('post', {
      state: 'fixed',
      bird: 'tree-swallow',
      number: 7,
      facing: 360,
      holeHeight: 1.5,
      pair: 12,
      name: ' By the oak ',
    });
    expect(read.postState(post)).toBe('fixed');
    expect(read.postBird(post)).toBe('tree-swallow');
    expect([read.postNumber(post), read.postFacing(post), read.postHoleHeight(post)]).toEqual([7, 0, 1.5]);
    expect([read.postPair(post), read.nameOf(post)]).toEqual(['12', 'By the oak']);
    expect(read.heightOf(of('building', { height: 0 }))).toBe(0);
    expect([read.isSprayed(of('crop', { sprayed: true })), read.isInLeaf(of('tree', { leafOn: false }))]).toEqual([
      true,
      false,
    ]);
  });

  it.each(['tall', -1, 1e9, Number.NaN, true, {}, [], null, undefined])('height %s counts as not given', (height) => {
    expect(read.heightOf(of('woods', { height }))).toBe(18);
  });

  it('do not read what another kind would have, nor what an object inherits', () => {
    expect(read.heightOf(of('water', { height: 5 }))).toBe(0);
    expect(read.postFacing(of('tree', { facing: 90 }))).toBeNull();
    expect(read.nameOf(of('tree', Object.create({ name: 'inherited' }) as Record<string, unknown>))).toBeNull();
  });
});
