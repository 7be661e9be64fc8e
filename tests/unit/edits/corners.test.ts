import { describe, expect, it } from 'vitest';
import { addVertex } from '../../../src/edits/add-vertex.ts';
import { cornerAt } from '../../../src/edits/chains.ts';
import { deleteVertex } from '../../../src/edits/delete-vertex.ts';
import { moveFeatures } from '../../../src/edits/move-feature.ts';
import { movePost } from '../../../src/edits/move-post.ts';
import { moveVertex } from '../../../src/edits/move-vertex.ts';
import type { Site } from '../../../src/site/types.ts';
import { areaOf, box, coordinates, done, find, land, thing, why } from './make.ts';

const site = land();
/** Woods' corner at the upper end of the border it shares with the meadow. */
const shared = cornerAt(find(site, 'woods').geometry, [-80.996, 41.004])!;

describe('moving a corner', () => {
  it('takes the neighbor along, and both keep one border', () => {
    const edit = moveVertex(site, 'woods', shared, [-80.99512345678, 41.0045]);
    const next = done(edit);
    expect(coordinates(next, 'woods')).toEqual([
      [
        [-81, 41],
        [-80.996, 41],
        [-80.9951235, 41.0045],
        [-81, 41.004],
        [-81, 41],
      ],
    ]);
    expect(coordinates(next, 'meadow')).toEqual([
      [
        [-80.996, 41],
        [-80.992, 41],
        [-80.992, 41.004],
        [-80.9951235, 41.0045],
        [-80.996, 41],
      ],
    ]);
    expect(edit).toMatchObject({ sentence: 'Moved a corner of Woods “Long Spinney” with its neighbor' });
    expect(next.readFrom).toBeUndefined();
    expect(site.readFrom).toBeDefined();
  });

  it('leaves the neighbor when sharing is off', () => {
    const next = done(moveVertex(site, 'woods', shared, [-80.995, 41.0045], { shared: false }));
    expect(find(next, 'meadow')).toBe(find(site, 'meadow'));
  });

  it('moves the first corner of an outline with its closing position', () => {
    const next = done(moveVertex(site, 'woods', { chain: 0, corner: 0 }, [-81.001, 41]));
    expect(coordinates(next, 'woods')).toEqual([
      [
        [-81.001, 41],
        [-80.996, 41],
        [-80.996, 41.004],
        [-81, 41.004],
        [-81.001, 41],
      ],
    ]);
  });

  it('is refused with the place when an outline would cross itself, the neighbor’s too', () => {
    expect(why(moveVertex(site, 'woods', { chain: 0, corner: 0 }, [-80.995, 41.002]))).toMatch(
      /crosses itself near 41\.00\d+, -80\.99\d+.*Move one of the corners/,
    );
    expect(why(moveVertex(site, 'woods', shared, [-80.9915, 41.0025]))).toMatch(/^Meadow meadow crosses itself/);
  });

  it('is refused off the map and far away', () => {
    expect(why(moveVertex(site, 'path', { chain: 0, corner: 0 }, [-81, 86]))).toMatch(/85 degrees from the equator/);
    expect(why(moveVertex(site, 'path', { chain: 0, corner: 0 }, [179.999, 41]))).toMatch(/180 degree meridian/);
    expect(why(moveVertex(site, 'path', { chain: 0, corner: 0 }, [Number.NaN, 41]))).toMatch(/not two numbers/);
    expect(why(movePost(site, 'p1', [-79, 41]))).toMatch(/a site may span 1/);
  });

  it('throws when the corner is not there', () => {
    expect(() => moveVertex(site, 'woods', { chain: 0, corner: 9 }, [0, 0])).toThrow(/no such corner/);
    expect(() => moveVertex(site, 'nobody', shared, [0, 0])).toThrow(/no such feature: nobody/);
  });
});

describe('adding a corner', () => {
  it('puts it after the given one, into the neighbor’s border too', () => {
    const next = done(addVertex(site, 'woods', { chain: 0, corner: 1 }, [-80.9961, 41.002]));
    expect(coordinates(next, 'woods')).toEqual([
      [
        [-81, 41],
        [-80.996, 41],
        [-80.9961, 41.002],
        [-80.996, 41.004],
        [-81, 41.004],
        [-81, 41],
      ],
    ]);
    expect(coordinates(next, 'meadow')).toEqual([
      [
        [-80.996, 41],
        [-80.992, 41],
        [-80.992, 41.004],
        [-80.996, 41.004],
        [-80.9961, 41.002],
        [-80.996, 41],
      ],
    ]);
    const alone = done(addVertex(site, 'woods', { chain: 0, corner: 1 }, [-80.9961, 41.002], { shared: false }));
    expect(find(alone, 'meadow')).toBe(find(site, 'meadow'));
  });

  it('closes the ring after its last corner, and says no at the end of a line or on a corner', () => {
    const next = done(addVertex(site, 'woods', { chain: 0, corner: 3 }, [-81.001, 41.002]));
    expect(coordinates(next, 'woods')).toEqual([
      [
        [-81, 41],
        [-80.996, 41],
        [-80.996, 41.004],
        [-81, 41.004],
        [-81.001, 41.002],
        [-81, 41],
      ],
    ]);
    expect(why(addVertex(site, 'path', { chain: 0, corner: 2 }, [-80, 41]))).toMatch(/ends at that corner/);
    expect(why(addVertex(site, 'path', { chain: 0, corner: 0 }, [-81, 40.999]))).toMatch(/already has a corner there/);
  });
});

describe('deleting a corner', () => {
  it('never goes below three corners or two ends', () => {
    const triangle = thing(
      'tri',
      'crop',
      areaOf([
        [-81, 41.01],
        [-80.99, 41.01],
        [-80.99, 41.02],
        [-81, 41.01],
      ]),
    );
    expect(why(deleteVertex(land([triangle]), 'tri', { chain: 0, corner: 1 }))).toMatch(
      /Crop tri needs at least 3 corners/,
    );
    const once = done(deleteVertex(site, 'path', { chain: 0, corner: 1 }));
    expect(why(deleteVertex(once, 'path', { chain: 0, corner: 1 }))).toMatch(/needs its 2 ends/);
    expect(coordinates(done(deleteVertex(site, 'path', { chain: 0, corner: 0 })), 'path')).toHaveLength(2);
  });

  it('takes it from the neighbor where both sides of it are shared, and not at the end of the common border', () => {
    const withMiddle = done(addVertex(site, 'woods', { chain: 0, corner: 1 }, [-80.9961, 41.002]));
    const back = done(
      deleteVertex(withMiddle, 'meadow', cornerAt(find(withMiddle, 'meadow').geometry, [-80.9961, 41.002])!),
    );
    expect(coordinates(back, 'woods')).toEqual(coordinates(site, 'woods'));
    expect(coordinates(back, 'meadow')).toEqual(coordinates(site, 'meadow'));
    const end = done(deleteVertex(site, 'woods', shared));
    expect(find(end, 'meadow')).toBe(find(site, 'meadow'));
  });

  it('is refused when what is left crosses itself', () => {
    const dented = thing(
      'dent',
      'crop',
      areaOf([
        [-81, 41.01],
        [-80.996, 41.01],
        [-80.996, 41.014],
        [-80.998, 41.011],
        [-81, 41.014],
        [-81, 41.01],
      ]),
    );
    const start = land([dented]);
    expect(why(deleteVertex(start, 'dent', { chain: 0, corner: 1 }))).toMatch(/^Crop dent crosses itself near 41\.01/);
    expect(why(deleteVertex(start, 'dent', { chain: 0, corner: 3 }))).toBe('');
  });
});

describe('moving whole things', () => {
  it('moves all of a MultiPolygon, holes too, to 7 decimals', () => {
    const parts = thing('two', 'crop', {
      type: 'MultiPolygon',
      coordinates: [[box(0, 10, 4, 4), box(1, 11, 1, 1).toReversed()], [box(6, 10, 2, 2)]],
    });
    const next = done(moveFeatures(land([parts]), ['two', 'p1'], [0.00012345678, -0.0001]));
    const [[outline, hole], [second]] = coordinates(next, 'two') as number[][][][];
    expect([outline![0], hole![0], second![0]]).toEqual([
      [-80.9998765, 41.0099],
      [-80.9988765, 41.0109],
      [-80.9938765, 41.0099],
    ]);
    expect(coordinates(next, 'p1')).toEqual([-80.9938765, 41.0019]);
  });

  it('keeps the height of a position, drops a stale bounding box', () => {
    const high = {
      ...thing('tree', 'tree', { type: 'Point', coordinates: [-81, 41, 320] }),
      extra: { bbox: [-81, 41, -81, 41], mine: 1 },
    };
    const start = { ...site, extra: { bbox: [-81, 41, -80.9, 41.1], other: 2 }, features: [...site.features, high] };
    const next = done(moveFeatures(start, ['tree'], [0.001, 0]));
    expect(coordinates(next, 'tree')).toEqual([-80.999, 41, 320]);
    expect(find(next, 'tree').extra).toEqual({ mine: 1 });
    expect(next.extra).toEqual({ other: 2 });
    expect(coordinates(done(movePost(start, 'tree', [-80.998, 41])), 'tree')).toEqual([-80.998, 41, 320]);
  });

  it('takes the corners of neighbors along where borders are shared', () => {
    const left = thing('left', 'crop', { type: 'Polygon', coordinates: [box(0, 10, 4, 4)] });
    const right = thing('right', 'meadow', { type: 'Polygon', coordinates: [box(4, 10, 4, 4)] });
    const start = land([left, right]);
    const step: [number, number] = [-0.001, 0.0005];
    const alone = done(moveFeatures(start, ['left'], step));
    expect(coordinates(alone, 'right')).toEqual(coordinates(start, 'right'));
    const both = moveFeatures(start, ['left'], step, { shared: true });
    const next = done(both);
    expect('sentence' in both && both.sentence).toMatch(/^Moved Crop left with the border of Meadow right/);
    const ring = (of: Site, id: string) => (coordinates(of, id) as number[][][])[0]!.map((p) => p.join());
    const shared = ring(start, 'left').filter((p) => ring(start, 'right').includes(p));
    expect(new Set(shared).size).toBe(2);
    const now = ring(next, 'left').filter((p) => ring(next, 'right').includes(p));
    expect(new Set(now).size).toBe(2);
    expect(ring(next, 'right').filter((p) => ring(start, 'right').includes(p)).length).toBeGreaterThanOrEqual(2);
  });

  it('refuses when nothing that has a place is chosen', () => {
    const unplaced = { ...site, features: [...site.features, thing('nowhere', 'tree', null)] };
    expect(why(moveFeatures(unplaced, ['nowhere'], [0.001, 0]))).toMatch(/Nothing that has a place/);
    expect(coordinates(done(movePost(unplaced, 'nowhere', [-80.99, 41])), 'nowhere')).toEqual([-80.99, 41]);
  });
});
