/**
 * Shapes the edits make, measured on the WGS84 ellipsoid by geographiclib-geodesic 2.2.0 (C. F. F. Karney, "Algorithms for
 * geodesics", Journal of Geodesy 87, 2013), while the edits work on Turf's sphere (radius 6,371,008.8 m).
 * Tolerance: 0.6 % of a length, the most a sphere of that radius differs from the ellipsoid between the equator and the poles.
 */
import geodesic from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import { bufferLine } from '../../src/edits/buffer-line.ts';
import { chainsOf } from '../../src/edits/chains.ts';
import { addCircle } from '../../src/edits/circle.ts';
import { newSite } from '../../src/site/new-site.ts';
import type { Site, SiteFeature } from '../../src/site/types.ts';

const wgs84 = geodesic.Geodesic.WGS84;
const metres = ([lon, lat]: readonly number[], [lon2, lat2]: readonly number[]) =>
  wgs84.Inverse(lat!, lon!, lat2!, lon2!).s12!;

const places: [number, number][] = [
  [-81.5, 41.2],
  [151.2, -33.9],
  [24.9, 65],
  [-56.1, -0.3],
];

function made(edit: { site: Site } | { refused: string }): SiteFeature {
  if ('refused' in edit) throw new Error(edit.refused);
  return edit.site.features.at(-1)!;
}

describe('drawn to measure', () => {
  it.each(places)('a circle of 120 m at %f, %f', (lon, lat) => {
    const circle = made(addCircle(newSite('x'), 'water', [lon, lat], 120));
    const radii = chainsOf(circle.geometry)[0]!.corners.map((corner) => metres([lon, lat], corner));
    expect(Math.max(...radii.map((radius) => Math.abs(radius / 120 - 1)))).toBeLessThan(0.006);
  });

  it.each(places)('a strip of 10 m along a line at %f, %f', (lon, lat) => {
    const line: SiteFeature = {
      id: 'creek',
      kind: 'stream',
      properties: { kind: 'stream' },
      geometry: {
        type: 'LineString',
        coordinates: [
          [lon, lat],
          [lon, lat + 0.002],
        ],
      },
    };
    const strip = made(bufferLine({ ...newSite('x'), features: [line] }, 'creek', { kind: 'brush', width: 10 }));
    const beside = chainsOf(strip.geometry)[0]!.corners.filter(
      (corner) => corner[1]! >= lat && corner[1]! <= lat + 0.002,
    );
    expect(beside.length).toBeGreaterThan(1);
    for (const corner of beside) {
      const away = metres(corner, [lon, corner[1]!]);
      expect(Math.abs(away / 5 - 1), `${away} m`).toBeLessThan(0.006);
    }
  });
});
