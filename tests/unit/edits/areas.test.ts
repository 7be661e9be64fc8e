import { area, booleanPointInPolygon, length as lineLength } from '@turf/turf';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bufferLine } from '../../../src/edits/buffer-line.ts';
import { chainsOf } from '../../../src/edits/chains.ts';
import { addCircle } from '../../../src/edits/circle.ts';
import { cutHole, cutOut } from '../../../src/edits/cut-hole.ts';
import { fillHole } from '../../../src/edits/fill-hole.ts';
import { mergeAreas } from '../../../src/edits/merge-areas.ts';
import { reshape } from '../../../src/edits/reshape.ts';
import { simplify } from '../../../src/edits/simplify.ts';
import { splitArea } from '../../../src/edits/split-area.ts';
import { squareBuilding } from '../../../src/edits/square-building.ts';
import { readSite } from '../../../src/site/read.ts';
import type { LonLat, Site, SiteGeometry } from '../../../src/site/types.ts';
import { writeSite } from '../../../src/site/write.ts';
import { areaOf, box, coordinates, done, find, land, thing, why } from './make.ts';

const site = land();
const size = (one: Site, id: string) => area(find(one, id).geometry as SiteGeometry & { type: 'Polygon' });
const at = (x: number, y: number): LonLat => [Number((-81 + x / 1000).toFixed(7)), Number((41 + y / 1000).toFixed(7))];

/** Nothing an edit makes may need a repair when it is read again. */
function opensClean(one: Site): void {
  const { issues } = readSite(writeSite(one), 'x');
  expect(issues.filter(({ severity }) => severity === 'error' || severity === 'repaired')).toEqual([]);
}

describe('splitting an area', () => {
  it('cuts it in two that add up, the larger keeping the id, and gives the neighbor the new corner', () => {
    const next = done(splitArea(site, 'woods', [at(-1, 1), at(5, 1)]));
    opensClean(next);
    expect(size(next, 'woods') + size(next, 'woods-1')).toBeCloseTo(size(site, 'woods'), 3);
    expect(size(next, 'woods')).toBeGreaterThan(size(next, 'woods-1'));
    expect(find(next, 'woods-1').properties).toEqual(find(site, 'woods').properties);
    expect(coordinates(next, 'woods-1')).toEqual(
      [[at(0, 1), at(0, 0), at(4, 0), at(4, 1), at(0, 1)]].map((ring) => expect.arrayContaining(ring)),
    );
    expect(coordinates(next, 'meadow')).toEqual([expect.arrayContaining([at(4, 1)])]);
    expect(size(next, 'meadow')).toBeCloseTo(size(site, 'meadow'), 6);
  });

  it('takes a line snapped to the border, and one that bends inside', () => {
    const snapped = done(splitArea(site, 'woods', [at(0, 0), at(2, 3), at(4, 4)]));
    opensClean(snapped);
    expect(size(snapped, 'woods') + size(snapped, 'woods-1')).toBeCloseTo(size(site, 'woods'), 3);
    expect(find(snapped, 'meadow')).toBe(find(site, 'meadow'));
    const edge = done(splitArea(site, 'woods', [at(1, 0), at(1.5, 2), at(1, 4)]));
    opensClean(edge);
    expect(size(edge, 'woods') + size(edge, 'woods-1')).toBeCloseTo(size(site, 'woods'), 3);
  });

  it('cuts through a hole and through several lobes', () => {
    const ring = thing('ring', 'crop', areaOf(box(0, 10, 6, 6), box(2, 12, 2, 2).toReversed()));
    const halves = done(splitArea(land([ring]), 'ring', [at(3, 9), at(3, 17)]));
    opensClean(halves);
    expect(size(halves, 'ring') + size(halves, 'ring-1')).toBeCloseTo(size(land([ring]), 'ring'), 3);
    const comb = thing(
      'comb',
      'crop',
      areaOf([
        at(0, 10),
        at(5, 10),
        at(5, 14),
        at(4, 14),
        at(4, 11),
        at(3, 11),
        at(3, 14),
        at(2, 14),
        at(2, 11),
        at(1, 11),
        at(1, 14),
        at(0, 14),
        at(0, 10),
      ]),
    );
    const start = land([comb]);
    const teeth = splitArea(start, 'comb', [at(-1, 12), at(6, 13)]);
    expect(teeth).toMatchObject({ sentence: 'Split Crop comb into 4 areas' });
    opensClean(done(teeth));
    const sum = ['comb', 'comb-1', 'comb-2', 'comb-3'].reduce((total, id) => total + size(done(teeth), id), 0);
    expect(sum).toBeCloseTo(size(start, 'comb'), 3);
  });

  it('refuses a line that does not run through', () => {
    for (const line of [
      [at(1, 1), at(3, 3)],
      [at(-1, 1), at(2, 2)],
      [at(-2, -2), at(6, -2)],
      [at(0, 0), at(4, 0)],
      [at(-1, 0), at(5, 0)],
    ]) {
      expect(why(splitArea(site, 'woods', line)), JSON.stringify(line)).toMatch(
        /does not run through Woods “Long Spinney”/,
      );
    }
    expect(why(splitArea(site, 'path', [at(0, 0), at(1, 1)]))).toMatch(/is no area/);
  });

  it('random lines: pieces always add up and open clean', () => {
    const number = fc.integer({ min: -20_000, max: 60_000 }).map((n) => n / 10_000);
    const line = fc
      .array(fc.tuple(number, number), { minLength: 2, maxLength: 4 })
      .map((list) => list.map(([x, y]) => at(x, y)));
    let splits = 0;
    fc.assert(
      fc.property(line, (drawn) => {
        const edit = splitArea(site, 'woods', drawn);
        if ('refused' in edit) return;
        splits++;
        opensClean(edit.site);
        const pieces = edit.site.features.filter(({ kind }) => kind === 'woods');
        const sum = pieces.reduce((total, { id }) => total + size(edit.site, id), 0);
        // A new corner is rounded to 0.5 cm across; on a 444 m edge that is at most 1.2 m² of 149,000 m², for each of up to six ends.
        expect(Math.abs(sum / size(site, 'woods') - 1)).toBeLessThan(5e-5);
      }),
      { numRuns: 300, seed: 11 },
    );
    expect(splits).toBeGreaterThan(50);
  });
});

describe('merging areas', () => {
  it('gives back what a split cut', () => {
    const split = done(splitArea(site, 'woods', [at(-1, 1), at(5, 2)]));
    const edit = mergeAreas(split, ['woods', 'woods-1']);
    opensClean(done(edit));
    expect(size(done(edit), 'woods')).toBeCloseTo(size(site, 'woods'), 3);
    expect(done(edit).features.map(({ id }) => id)).not.toContain('woods-1');
  });

  it('keeps the first one’s kind, and refuses what does not touch', () => {
    const next = done(mergeAreas(site, ['meadow', 'woods']));
    expect(find(next, 'meadow').kind).toBe('meadow');
    expect(size(next, 'meadow')).toBeCloseTo(size(site, 'meadow') + size(site, 'woods'), 3);
    expect(chainsOf(find(next, 'meadow').geometry)).toHaveLength(1);
    const far = land([thing('far', 'meadow', areaOf(box(20, 0, 1, 1)))]);
    expect(why(mergeAreas(far, ['meadow', 'far']))).toMatch(/Meadow meadow and Meadow far do not touch/);
    expect(why(mergeAreas(site, ['meadow']))).toMatch(/two or more/);
    expect(why(mergeAreas(site, ['meadow', 'path']))).toMatch(/Path path is no area/);
  });
});

describe('holes', () => {
  it('cuts one inside, and refuses one across or outside', () => {
    const next = done(cutHole(site, 'woods', [at(1, 1), at(2, 1), at(2, 2), at(1, 2)]));
    opensClean(next);
    expect(chainsOf(find(next, 'woods').geometry)).toHaveLength(2);
    expect(size(site, 'woods') / size(next, 'woods')).toBeCloseTo(16 / 15, 4);
    expect(why(cutHole(site, 'woods', [at(3, 1), at(5, 1), at(5, 2)]))).toMatch(
      /outside it near|crosses the outline near/,
    );
    expect(why(cutHole(site, 'woods', [at(5, 1), at(6, 1), at(6, 2)]))).toMatch(/lies outside/);
    expect(why(cutHole(next, 'woods', [at(1.5, 1.5), at(3, 1.5), at(3, 3)]))).toMatch(/overlap/);
    expect(why(cutHole(site, 'woods', [at(1, 1), at(2, 1)]))).toMatch(/at least 3 corners/);
  });

  it('fills one again, and refuses to fill an outline', () => {
    const next = done(cutHole(site, 'woods', [at(1, 1), at(2, 1), at(2, 2), at(1, 2)]));
    expect(coordinates(done(fillHole(next, 'woods', 1)), 'woods')).toEqual(coordinates(site, 'woods'));
    expect(why(fillHole(next, 'woods', 0))).toMatch(/is no hole/);
    expect(why(fillHole(next, 'path', 0))).toMatch(/is no area/);
  });

  it('finds the right part of several', () => {
    const two = thing('two', 'crop', { type: 'MultiPolygon', coordinates: [[box(0, 10, 4, 4)], [box(6, 10, 4, 4)]] });
    const next = done(cutHole(land([two]), 'two', [at(7, 11), at(8, 11), at(8, 12)]));
    expect((coordinates(next, 'two') as unknown[][]).map((part) => part.length)).toEqual([1, 2]);
    expect(why(cutHole(land([two]), 'two', [at(3, 11), at(7, 11), at(7, 12)]))).toMatch(/inside one part/);
  });

  it('takes a lawn out of the woods, so that it is no longer hidden', () => {
    const start = { ...site, features: [...site.features, thing('lawn', 'short-grass', areaOf(box(1, 1, 1, 1)))] };
    expect(readSite(writeSite({ ...start, readFrom: undefined }), 'x').issues.map(({ id }) => id)).toEqual([
      'area-hidden',
    ]);
    const next = done(cutOut(start, 'woods', 'lawn'));
    expect(readSite(writeSite(next), 'x').issues).toEqual([]);
    expect(why(cutOut(start, 'lawn', 'woods'))).toMatch(/covers all of Short grass lawn/);
  });
});

describe('reshaping', () => {
  it('replaces the shorter way round an outline', () => {
    const next = done(reshape(site, 'woods', [at(0, 4), at(2, 5), at(4, 4)]));
    opensClean(next);
    expect(size(next, 'woods') / size(site, 'woods')).toBeCloseTo(18 / 16, 3);
    const dent = done(reshape(site, 'woods', [at(3, 4), at(2, 3), at(1, 4)]));
    opensClean(dent);
    expect(size(dent, 'woods') / size(site, 'woods')).toBeCloseTo(15 / 16, 3);
    expect(chainsOf(find(dent, 'woods').geometry)[0]?.corners).toHaveLength(7);
  });

  it('takes the neighbor along where the stretch is shared', () => {
    const line = [at(4, 1), at(4.5, 2), at(4, 4)];
    const next = done(reshape(site, 'woods', line));
    opensClean(next);
    expect(size(next, 'woods')).toBeGreaterThan(size(site, 'woods') * 1.03);
    expect(size(next, 'woods') + size(next, 'meadow')).toBeCloseTo(size(site, 'woods') + size(site, 'meadow'), 2);
    const alone = done(reshape(site, 'woods', line, { shared: false }));
    expect(find(alone, 'meadow')).toBe(find(site, 'meadow'));
  });

  it('replaces a stretch of a line, whichever way it is drawn', () => {
    const path = coordinates(site, 'path') as number[][];
    const [a, b] = [
      [-80.998, 40.999],
      [-80.994, 40.99875],
    ] as LonLat[];
    for (const drawn of [
      [a, at(4, -2), b],
      [b, at(4, -2), a],
    ] as LonLat[][]) {
      const line = coordinates(done(reshape(site, 'path', drawn)), 'path') as number[][];
      expect(line).toHaveLength(5);
      expect([line[0], line[2], line[4]]).toEqual([path[0], at(4, -2), path[2]]);
    }
  });

  it('refuses far ends, one place twice, and a crossing', () => {
    expect(why(reshape(site, 'woods', [at(0, 4), at(2, 9)]))).toMatch(/41\.0090, -80\.9980 is \d+ m from the border/);
    expect(why(reshape(site, 'woods', [at(0, 4), at(2, 5), at(0, 4)]))).toMatch(/same place/);
    expect(why(reshape(site, 'woods', [at(1, 4), at(2, -1), at(3, 4)]))).toMatch(/crosses itself/);
    expect(why(reshape(site, 'p1', [at(1, 4), at(2, -1)]))).toMatch(/has no border/);
  });
});

describe('simplifying', () => {
  const wave = Array.from({ length: 41 }, (_, i) => at(i / 10, 10 + (i % 2) * 0.005));
  const wavy = thing('wavy', 'crop', areaOf([at(4, 14), at(0, 14), ...wave, at(4, 14)]));

  it('drops corners less than the distance off, and keeps shared ones', () => {
    const start = land([wavy]);
    const next = done(simplify(start, 'wavy', 1));
    opensClean(next);
    expect(chainsOf(find(next, 'wavy').geometry)[0]!.corners.length).toBeLessThan(6);
    expect(Math.abs(size(next, 'wavy') / size(start, 'wavy') - 1)).toBeLessThan(0.01);
    const neighbour = thing('under', 'crop', areaOf([at(0, 9), at(4, 9), ...wave.toReversed(), at(0, 9)]));
    expect(why(simplify(land([wavy, neighbour]), 'wavy', 1))).toMatch(/No corner/);
    expect(why(simplify(land([wavy, neighbour]), 'wavy', 1, { shared: false }))).toBe('');
  });

  it('refuses when nothing goes, and never leaves fewer than three corners', () => {
    expect(why(simplify(site, 'woods', 1))).toMatch(/No corner of Woods/);
    expect(why(simplify(site, 'p1', 1))).toMatch(/no corners/);
    const huge = simplify(land([wavy]), 'wavy', 100_000);
    if (!('refused' in huge))
      expect(chainsOf(find(huge.site, 'wavy').geometry)[0]!.corners.length).toBeGreaterThanOrEqual(3);
    expect(() => simplify(site, 'woods', -1)).toThrow(/tolerance/);
  });
});

describe('squaring a building', () => {
  /** Metres to degrees around [-81, 41] on the sphere Turf measures with. */
  const spot = (x: number, y: number, turn = 0.4): LonLat => {
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    return [-81 + (x * c - y * s) / 83_919.6, 41.01 + (x * s + y * c) / 111_195.1];
  };
  const house = (corners: LonLat[]) => land([thing('house', 'building', areaOf([...corners, corners[0]!]))]);

  it('makes an L-shape of sloppy corners square, in its own direction', () => {
    const sloppy = [spot(0, 0), spot(12, 0.8), spot(11.5, 8.4), spot(6.2, 8), spot(6, 14), spot(-0.5, 13.5)];
    const next = done(squareBuilding(house(sloppy), 'house'));
    opensClean(next);
    const corners = chainsOf(find(next, 'house').geometry)[0]!.corners;
    expect(corners).toHaveLength(6);
    corners.forEach((corner, i) => {
      const [before, after] = [corners.at(i - 1)!, corners[(i + 1) % 6]!];
      const a = [(before[0]! - corner[0]!) * 83_919.6, (before[1]! - corner[1]!) * 111_195.1];
      const b = [(after[0]! - corner[0]!) * 83_919.6, (after[1]! - corner[1]!) * 111_195.1];
      const cosine = (a[0]! * b[0]! + a[1]! * b[1]!) / (Math.hypot(...a) * Math.hypot(...b));
      expect(Math.abs(cosine)).toBeLessThan(0.01);
    });
    expect(Math.abs(size(next, 'house') / size(house(sloppy), 'house') - 1)).toBeLessThan(0.05);
  });

  it('joins walls in a row, and refuses a slanted one with its place', () => {
    const bay = [spot(0, 0), spot(5, 0.1), spot(10, 0), spot(10, 6), spot(0, 6)];
    expect(chainsOf(find(done(squareBuilding(house(bay), 'house')), 'house').geometry)[0]!.corners).toHaveLength(4);
    const slanted = [spot(0, 0, 0), spot(20, 0, 0), spot(20, 10, 0), spot(12, 18, 0), spot(0, 18, 0)];
    expect(why(squareBuilding(house(slanted), 'house'))).toMatch(/near 41\.01\d\d, -80\.99\d\d stands too slanted/);
    expect(why(squareBuilding(site, 'path'))).toMatch(/is no area/);
  });
});

describe('circles and strips', () => {
  it('draws a circle of the radius', () => {
    const next = done(addCircle(site, 'water', [-80.99, 41.02], 50, { name: 'Pond' }));
    opensClean(next);
    expect(next.features.at(-1)).toMatchObject({
      id: 'water-1',
      kind: 'water',
      properties: { kind: 'water', name: 'Pond' },
    });
    // A regular 64-gon covers 64/(2π)·sin(2π/64) = 99.84 % of its circle.
    expect(size(next, 'water-1') / (Math.PI * 50 ** 2)).toBeCloseTo(0.9984, 3);
    for (const bad of [0, -5, 1e9, Number.NaN])
      expect(why(addCircle(site, 'water', [-80.99, 41.02], bad))).toMatch(/radius has to be/);
    expect(why(addCircle(site, 'water', [-80.99, 89], 50))).toMatch(/not a place/);
  });

  it('makes a strip along a line', () => {
    const edit = bufferLine(site, 'path', { kind: 'brush', width: 6 });
    opensClean(done(edit));
    const strip = done(edit).features.at(-1)!;
    const metres = lineLength(
      {
        type: 'Feature',
        properties: {},
        geometry: find(site, 'path').geometry as SiteGeometry & { type: 'LineString' },
      },
      { units: 'meters' },
    );
    const expected = metres * 6 + Math.PI * 3 ** 2;
    expect(Math.abs(size(done(edit), strip.id) / expected - 1)).toBeLessThan(0.01);
    expect(booleanPointInPolygon([-80.998, 40.99902], strip.geometry as SiteGeometry & { type: 'Polygon' })).toBe(true);
    expect(
      done(bufferLine(site, 'path', { kind: 'brush', width: 6, keepLine: false })).features.map(({ id }) => id),
    ).not.toContain('path');
    expect(why(bufferLine(site, 'woods', { kind: 'brush', width: 6 }))).toMatch(/is no line/);
    expect(why(bufferLine(site, 'path', { kind: 'brush', width: 0 }))).toMatch(/width has to be/);
  });
});

describe('whatever is drawn', () => {
  const number = fc.integer({ min: -500, max: 4500 }).map((n) => n / 1000);
  const spots = (least: number, most: number) =>
    fc
      .array(fc.tuple(number, number), { minLength: least, maxLength: most })
      .map((list) => list.map(([x, y]) => at(x, y)));

  it('reshaping gives a site that opens clean, or says no', () => {
    let changed = 0;
    const property = fc.property(spots(2, 4), (line) => {
      const edit = reshape(site, 'woods', line);
      if ('refused' in edit) return;
      changed++;
      opensClean(edit.site);
    });
    fc.assert(property, { numRuns: 300, seed: 12 });
    expect(changed).toBeGreaterThan(10);
  });

  it('so do cutting holes, simplifying, squaring and cutting out', () => {
    const counts = { holes: 0, simplified: 0, squared: 0, cutOut: 0 };
    const count = (key: keyof typeof counts, edit: ReturnType<typeof cutHole>) => {
      if ('refused' in edit) return;
      counts[key]++;
      opensClean(edit.site);
    };
    const property = fc.property(spots(3, 6), fc.integer({ min: 1, max: 60 }), (ring, metres) => {
      count('holes', cutHole(site, 'woods', ring));
      const drawn = readSite(
        writeSite({
          ...site,
          readFrom: undefined,
          features: [...site.features, thing('x', 'building', areaOf([...ring, ring[0]!]))],
        }),
        'x',
      ).site!;
      if (!drawn.features.some(({ id }) => id === 'x')) return;
      count('simplified', simplify(drawn, 'x', metres));
      count('squared', squareBuilding(drawn, 'x'));
      count('cutOut', cutOut(drawn, 'woods', 'x'));
    });
    fc.assert(property, { numRuns: 300, seed: 13 });
    expect(Math.min(...Object.values(counts)), JSON.stringify(counts)).toBeGreaterThan(10);
  });
});
