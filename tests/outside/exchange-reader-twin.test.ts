/** Our GPX and KML readers against an independent one (@tmcw/togeojson, BSD-2-Clause) on sound files: same shapes, same names. */

import { gpx as twinGpx, kml as twinKml } from '@tmcw/togeojson';
import { DOMParser } from '@xmldom/xmldom';
import type { Feature, Geometry, Position } from 'geojson';
import { describe, expect, it } from 'vitest';
import { siteThings } from '../../src/exchange/exported.ts';
import { writeGpx } from '../../src/exchange/gpx.ts';
import { readGpx } from '../../src/exchange/import-gpx.ts';
import { readKml } from '../../src/exchange/import-kml.ts';
import type { RawFeature } from '../../src/exchange/import-types.ts';
import { writeKml } from '../../src/exchange/kml.ts';
import { planThings } from '../../src/exchange/plan-things.ts';
import { fixturePlan, frame } from '../unit/exchange/plan-fixture.ts';
import { randomSite } from '../unit/exchange/random-site.ts';

const exported = [
  planThings(fixturePlan(), frame),
  ...Array.from({ length: 150 }, (_, i) => siteThings(randomSite(i + 9000))),
];
const parse = (text: string) => new DOMParser().parseFromString(text, 'text/xml');

/** Places of a geometry in one flat list; the twin keeps several lines of a placemark apart. */
function places(geometry: Geometry | null): Position[] {
  if (!geometry) return [];
  if (geometry.type === 'GeometryCollection') return geometry.geometries.flatMap(places);
  const flat = (value: unknown): Position[] =>
    Array.isArray(value) ? (typeof value[0] === 'number' ? [value.slice(0, 2) as Position] : value.flatMap(flat)) : [];
  return flat(geometry.coordinates);
}

/** Name and places of each, in an order that does not depend on the reader. */
function told(features: readonly (RawFeature | Feature<Geometry | null>)[]): string[] {
  // A route of one stop has no line: the twin passes over it, ours names it.
  return features
    .filter((one) => one.geometry)
    .map((one) => {
      const name =
        'attributes' in one
          ? (one.attributes.cmt ?? one.attributes.name)
          : (one.properties?.cmt ?? one.properties?.name);
      return JSON.stringify([String(name).trim(), places(one.geometry)]);
    })
    .sort();
}

describe('the two readers agree', () => {
  it('on GPX', () => {
    for (const things of exported) {
      const text = writeGpx(things);
      expect(told(readGpx(text).features)).toEqual(told(twinGpx(parse(text)).features));
    }
  });

  it('on KML', () => {
    for (const things of exported) {
      const text = writeKml(things);
      expect(told(readKml(text).features)).toEqual(told(twinKml(parse(text)).features));
    }
  });
});

it('where the twin loses a waypoint in silence, ours names it', () => {
  const text = '<gpx version="1.1"><wpt lat="NaN" lon="1"/><wpt lat="2" lon="1"/></gpx>';
  expect(twinGpx(parse(text)).features).toHaveLength(1);
  expect(readGpx(text).features).toHaveLength(2);
  expect(readGpx(text).features[0]!.trouble).toContain('NaN');
});
