/** What the walker's device knows of a box and of its pictures: the hole that rules birds out, and the photos that are really here. */
import { describe, expect, it } from 'vitest';
import { evidenceOf, holeOf, offersFor } from '../../../src/app/field/offers.ts';
import { pictureFacts } from '../../../src/app/field/picture-facts.ts';
import { startDraft } from '../../../src/app/field/visit-draft.ts';
import type { GroundPicture } from '../../../src/app/picture-state.ts';
import type { PictureShelf } from '../../../src/app/storage/picture-shelf.ts';
import { identifyNest, keyAgrees } from '../../../src/visits/key.ts';

const draft = {
  ...startDraft('p1', 1, 'eggs', null),
  material: ['grass', 'straw'] as const,
  cup: 'flat' as const,
  eggColor: 'blue-green' as const,
  eggPattern: 'plain' as const,
  eggSize: 'large' as const,
  eggCount: 5,
};
const region = 'eastern-north-america' as const;

describe('the hole of a box in the nest key', () => {
  it('is that of the bird the box was planned for', () => {
    expect(holeOf('eastern-bluebird', false)).toMatchObject({ width: 38.1, shape: 'round' });
    expect(holeOf('no-such-bird', false)).toBeNull();
    expect(holeOf(null, false)).toBeNull();
  });
  // FWS and the dimension tables: a starling needs 1 5/8 in or more, so a bluebird's 1 1/2 in keeps it out.
  it('keeps the starling out of a bluebird box, and lets it in again when the walker sees another hole', () => {
    const planned = identifyNest(evidenceOf(draft, region, holeOf('eastern-bluebird', false)));
    expect(planned.keptOut).toContain('European Starling');
    expect(planned.likely).not.toContain('european-starling');
    const other = identifyNest(evidenceOf(draft, region, holeOf('eastern-bluebird', true)));
    expect(other.keptOut).toEqual([]);
    expect(other.likely).toEqual(['european-starling']);
  });
  it('so that no removal is offered for a bird that cannot have come in', () => {
    const named = { ...draft, bird: 'european-starling', secondLook: true };
    const ids = (otherHole: boolean) =>
      offersFor({ ...named, otherHole }, region, holeOf('eastern-bluebird', otherHole)).map(({ id }) => id);
    expect(keyAgrees('european-starling', evidenceOf(draft, region, holeOf('eastern-bluebird', false)))).toBe(false);
    expect(ids(false)).not.toContain('remove-pest-nest');
    expect(ids(true)).toContain('remove-pest-nest');
  });
});

describe('the photos under the drawing', () => {
  const common = { credit: '', opacity: 1, shown: true };
  const placed = (id: string, shown = true): GroundPicture => ({
    ...common,
    kind: 'placed',
    id,
    name: id,
    shown,
    width: 10,
    height: 10,
    corners: [
      [0, 1],
      [1, 1],
      [1, 0],
      [0, 0],
    ],
    ties: [],
    fitting: 'affine',
  });
  const shelf = {
    bytes: async (id: string) => (id === 'gone' ? null : new Blob(['12345'])),
  } as unknown as PictureShelf;
  const source = { host: 'tiles.example' } as never;

  it('are counted where their bytes are, and told where they are not', async () => {
    const list: GroundPicture[] = [
      placed('a'),
      placed('b'),
      placed('gone'),
      placed('hidden', false),
      { ...common, kind: 'served', id: 's', name: 's', source, agreed: true },
      { ...common, kind: 'served', id: 't', name: 't', source, agreed: false },
      { ...common, kind: 'tiles', id: 'u', name: 'park.pmtiles', leastZoom: 1, mostZoom: 2, bounds: [0, 0, 1, 1] },
    ];
    expect(await pictureFacts(list, shelf)).toEqual({
      kept: 2,
      bytes: 10,
      lost: 1,
      servers: ['tiles.example'],
      files: ['park.pmtiles'],
    });
  });
  it('are none for a site that is only drawn; a shelf that cannot be read counts as lost', async () => {
    expect(await pictureFacts([], shelf)).toEqual({ kept: 0, bytes: 0, lost: 0, servers: [], files: [] });
    const broken = { bytes: () => Promise.reject(new Error('no database')) } as unknown as PictureShelf;
    expect((await pictureFacts([placed('a')], broken)).lost).toBe(1);
  });
});
