import fc from 'fast-check';
import type { Geometry } from 'geojson';
import { describe, expect, it } from 'vitest';
import { importFeatures } from '../../../src/edits/import-features.ts';
import { draftFeatures } from '../../../src/exchange/draft-features.ts';
import { siteThings } from '../../../src/exchange/exported.ts';
import { importFile } from '../../../src/exchange/import.ts';
import { writeKml } from '../../../src/exchange/kml.ts';
import { positionsOf } from '../../../src/exchange/project-geometry.ts';
import { tidyGeometry } from '../../../src/exchange/tidy.ts';
import { newSite } from '../../../src/site/new-site.ts';
import { readSite } from '../../../src/site/read.ts';
import { canonicalText } from '../../../src/site/write.ts';
import { randomSite } from './random-site.ts';

const ordinate = fc.oneof(
  { weight: 8, arbitrary: fc.integer({ min: -20, max: 20 }).map((n) => n / 100) },
  fc.double(),
  fc.constantFrom(null, 'x', 1e308, -1e308, Number.NaN, Number.POSITIVE_INFINITY, 91, 181, 359.9, -0, 456789, 4567890),
);
const position = fc.array(ordinate, { minLength: 0, maxLength: 4 });
const few = { maxLength: 7 };
const geometry = fc.oneof(
  fc.record({ type: fc.constant('Point'), coordinates: position }),
  fc.record({ type: fc.constant('MultiPoint'), coordinates: fc.array(position, few) }),
  fc.record({ type: fc.constant('LineString'), coordinates: fc.array(position, few) }),
  fc.record({ type: fc.constant('MultiLineString'), coordinates: fc.array(fc.array(position, few), few) }),
  fc.record({ type: fc.constant('Polygon'), coordinates: fc.array(fc.array(position, few), few) }),
  fc.record({ type: fc.constant('MultiPolygon'), coordinates: fc.array(fc.array(fc.array(position, few), few), few) }),
  fc.record({ type: fc.constantFrom('Point', 'Polygon', 'Circle', 'GeometryCollection'), coordinates: fc.anything() }),
);

describe('any geometry', () => {
  it('becomes shapes that a site opens without an error, or none and a reason', () => {
    fc.assert(
      fc.property(geometry, (raw) => {
        const { shapes, why } = tidyGeometry(raw as unknown as Geometry);
        expect(shapes.length > 0).toBe(why === '');
        for (const shape of shapes) {
          const off = positionsOf(shape).filter(([x, y]) => !(Math.abs(x!) <= 180 && Math.abs(y!) <= 90));
          expect(off).toEqual([]);
        }
      }),
      { seed: 11, numRuns: 3000 },
    );
  });

  it('whose places are near each other opens in a site without an error', () => {
    const near = fc
      .tuple(fc.integer({ min: -20, max: 20 }), fc.integer({ min: -20, max: 20 }))
      .map(([x, y]) => [10 + x / 1000, 50 + y / 1000]);
    const rings = fc.array(fc.array(near, { minLength: 3, maxLength: 9 }), { minLength: 1, maxLength: 3 });
    const area = fc.oneof(
      fc.record({ type: fc.constant('Polygon' as const), coordinates: rings }),
      fc.record({
        type: fc.constant('MultiPolygon' as const),
        coordinates: fc.array(rings, { minLength: 1, maxLength: 3 }),
      }),
    );
    fc.assert(
      fc.property(area, (raw) => {
        const { shapes } = tidyGeometry(raw);
        const features = shapes.map((shape, i) => ({
          id: `f${i}`,
          kind: 'woods' as const,
          geometry: shape,
          properties: {},
        }));
        const { site, issues } = readSite(canonicalText({ ...newSite('x', { date: '2026-06-15' }), features }), 'x');
        expect(issues.filter((issue) => issue.severity === 'error')).toEqual([]);
        expect(site!.features).toHaveLength(features.length);
      }),
      { seed: 12, numRuns: 400 },
    );
  });
});

describe('drafts land in a site as one edit', () => {
  it('with ids that are free, pairs that follow, and nothing lost', () => {
    const pairOf = (id: string, pair: string) => ({
      id,
      kind: 'post' as const,
      geometry: { type: 'Point' as const, coordinates: [10, 50] },
      properties: { pair },
    });
    const site = { ...newSite('x', { date: '2026-06-15' }), features: [pairOf('a', 'b'), pairOf('b', 'a')] };
    const { features } = importFile(new TextEncoder().encode(writeKml(siteThings(site))), 'a.kml');
    const edit = importFeatures(site, draftFeatures(features), 'a.kml');
    if ('refused' in edit) throw new Error(edit.refused);
    const all = edit.site.features;
    expect(all).toHaveLength(4);
    expect(new Set(all.map((one) => one.id)).size).toBe(4);
    expect(all[2]!.properties.pair).toBe(all[3]!.id);
    expect(all[3]!.properties.pair).toBe(all[2]!.id);
  });

  it('each with an id of its own', () => {
    const drafts = importFile(new TextEncoder().encode(writeKml(siteThings(randomSite(7)))), 'a.kml').features;
    const ids = draftFeatures([...drafts, ...drafts]).map((one) => one.id);
    expect(new Set(ids).size).toBe(drafts.length * 2);
  });
});
