/** The plain parts of the Land place: snapping, crossings, measures, typed lengths, mapping rows, kept entries, offers. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kindNow, withRule } from '../../../../src/app/elements/land-import/map-rows.ts';
import { keptRows } from '../../../../src/app/elements/land-issues/kept-rows.ts';
import { shownLength, typedLength } from '../../../../src/app/length-input.ts';
import { lastEdgeCrossing, outlineCrossing } from '../../../../src/app/map/drawing/crossing.ts';
import { measureOf, ringMetres, wayMetres } from '../../../../src/app/map/drawing/measure.ts';
import { snap } from '../../../../src/app/map/drawing/snap.ts';
import { thingAt } from '../../../../src/app/map/drawing/thing-at.ts';
import { openStreetMapPreset } from '../../../../src/exchange/openstreetmap-preset.ts';
import { readSite } from '../../../../src/site/read.ts';
import type { LonLat, SiteFeature } from '../../../../src/site/types.ts';

const chain = {
  corners: [
    [0, 0],
    [0.001, 0],
    [0.001, 0.001],
  ],
  closed: true,
};

describe('snapping', () => {
  const reach = { corner: 1e-4, border: 0.6e-4 };
  it('takes a corner before a border, a border before nothing', () => {
    expect(snap([0.00095, 0.00002], [chain], reach)).toEqual({ at: [0.001, 0], to: 'corner' });
    const border = snap([0.0005, -0.00003], [chain], reach);
    expect(border.to).toBe('border');
    expect(border.at[1]).toBeCloseTo(0, 10);
    expect(snap([0.0005, 0.0004], [chain], { corner: 1e-6, border: 1e-6 })).toEqual({ at: [0.0005, 0.0004], to: null });
  });

  it('never moves a place farther than the larger reach, anywhere on earth', () => {
    const lat = fc.double({ min: -84, max: 84, noNaN: true });
    const off = fc.double({ min: -2e-4, max: 2e-4, noNaN: true });
    fc.assert(
      fc.property(lat, off, off, (y, dx, dy) => {
        const moved = { corners: chain.corners.map(([a = 0, b = 0]) => [a, b + y]), closed: true };
        const at: LonLat = [0.0005 + dx, y + dy];
        const squash = Math.cos((at[1] * Math.PI) / 180);
        const to = snap(at, [moved], reach).at;
        expect(Math.hypot((to[0] - at[0]) * squash, to[1] - at[1])).toBeLessThanOrEqual(reach.corner * squash + 1e-12);
      }),
      { seed: 1 },
    );
  });
});

describe('crossings', () => {
  it('are found at the newest edge, and in the closed outline', () => {
    const bow: LonLat[] = [
      [0, 0],
      [2, 0],
      [0, 2],
      [2, 2],
    ];
    expect(lastEdgeCrossing(bow)).toBe(null);
    expect(
      lastEdgeCrossing([
        [0, 0],
        [2, 0],
        [2, 2],
        [1, -1],
      ]),
    ).toEqual([4 / 3, 0]);
    expect(outlineCrossing(bow)).toEqual([1, 1]);
    expect(
      outlineCrossing([
        [0, 0],
        [2, 0],
        [2, 2],
        [0, 2],
      ]),
    ).toBe(null);
  });
});

describe('measures', () => {
  // SOURCE: WGS84, NIMA TR8350.2 (2000): at 45° N one degree of latitude is 111 131.75 m, one of longitude 78 846.81 m (from memory).
  it('agree with the ellipsoid at 45° N within 0.01 %', () => {
    const d = 1e-3;
    expect(
      wayMetres([
        [0, 45 - d / 2],
        [0, 45 + d / 2],
      ]),
    ).toBeCloseTo(111.13175, 1);
    expect(
      Math.abs(
        wayMetres([
          [0, 45],
          [d, 45],
        ]) /
          78.84681 -
          1,
      ),
    ).toBeLessThan(1e-4);
    const square = ringMetres([
      [0, 45 - d / 2],
      [d, 45 - d / 2],
      [d, 45 + d / 2],
      [0, 45 + d / 2],
    ]);
    expect(Math.abs(square / (111.13175 * 78.84681) - 1)).toBeLessThan(2e-4);
  });

  it('take holes out of an area', () => {
    const ring = (a: number, b: number) => [
      [a, a],
      [b, a],
      [b, b],
      [a, b],
      [a, a],
    ];
    const whole = { geometry: { type: 'Polygon', coordinates: [ring(0, 0.003)] } } as unknown as SiteFeature;
    const holed = {
      geometry: { type: 'Polygon', coordinates: [ring(0, 0.003), ring(0.001, 0.002)] },
    } as unknown as SiteFeature;
    expect(measureOf(holed)!.area! / measureOf(whole)!.area!).toBeCloseTo(8 / 9, 4);
  });
});

describe('typed lengths', () => {
  it.each([
    ['12', 'metric', 12],
    ['12', 'us', 3.6576],
    ['40 ft', 'metric', 12.192],
    ["6'", 'metric', 1.8288],
    ['2 yd', 'us', 1.8288],
    ['3,5 m', 'us', 3.5],
    ['about 5', 'us', null],
    ['', 'us', null],
    ['1e9', 'us', null],
  ] as const)('%s in %s is %s m', (text, units, metres) => {
    const read = typedLength(text, units);
    if (metres === null) expect(read).toBe(null);
    else expect(read).toBeCloseTo(metres, 9);
  });

  it('come back as they were shown', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 500, noNaN: true }),
        fc.constantFrom('us' as const, 'metric' as const),
        (m, units) => {
          expect(Math.abs(typedLength(String(shownLength(m, units)), units)! - m)).toBeLessThan(0.006);
        },
      ),
      { seed: 2 },
    );
  });
});

describe('mapping rows', () => {
  it('put a rule first, leave out, and take away', () => {
    const own = withRule(openStreetMapPreset, 'cover', 'Oak', 'woods');
    expect(own.rules[0]).toEqual({ attribute: 'cover', value: 'Oak', kind: 'woods' });
    expect(kindNow(own, 'cover', 'oak')).toBe('woods');
    expect(kindNow(withRule(own, 'cover', 'oak', null), 'cover', 'Oak')).toBe('leave');
    expect(kindNow(withRule(own, 'cover', 'oak', undefined), 'cover', 'Oak')).toBe(null);
  });
});

describe('entries not used', () => {
  it('stand with their own reason and a guess of the kind', () => {
    const feature = (id: string, properties: object, geometry: object) => ({
      type: 'Feature',
      id,
      properties,
      geometry,
    });
    const ring = [
      [0, 0],
      [0.001, 0],
      [0.001, 0.001],
      [0, 0],
    ];
    const text = JSON.stringify({
      type: 'FeatureCollection',
      meadowpost: { fileVersion: 1, name: 'Odd' },
      features: [
        feature('a', { kind: 'wods', name: 'Copse' }, { type: 'Polygon', coordinates: [ring] }),
        feature(
          'b',
          { kind: 'woods' },
          {
            type: 'Polygon',
            coordinates: [
              [
                [0, 0],
                [0.001, 0.001],
                [0.001, 0],
                [0, 0.001],
                [0, 0],
              ],
            ],
          },
        ),
      ],
    });
    const { site, issues } = readSite(text, 'odd.geojson');
    const rows = keptRows(site!, issues);
    expect(rows.map((row) => [row.name, row.issue?.id, row.guess])).toEqual([
      ['Copse', 'kind-unknown', 'wods'],
      ['b', 'ring-crosses-itself', null],
    ]);
  });
});

describe('a press', () => {
  it('means the point before the area, and the smallest area', () => {
    const square = (id: string, a: number, b: number) => ({
      id,
      kind: 'meadow' as const,
      properties: {},
      geometry: {
        type: 'Polygon' as const,
        coordinates: [
          [
            [a, a],
            [b, a],
            [b, b],
            [a, b],
            [a, a],
          ],
        ],
      },
    });
    const tree = {
      id: 't',
      kind: 'tree' as const,
      properties: {},
      geometry: { type: 'Point' as const, coordinates: [0.0005, 0.0005] },
    };
    const site = { settings: {}, features: [tree, square('small', 0, 0.001), square('large', -0.01, 0.01)] } as never;
    const project = ([lon, lat]: LonLat) => ({ x: lon * 1e5, y: -lat * 1e5 });
    const meant = (lon: number, lat: number) =>
      thingAt(site, { ...project([lon, lat]), at: [lon, lat] }, { point: 18, line: 8 }, project)?.id ?? null;
    expect(meant(0.00055, 0.0005)).toBe('t');
    expect(meant(0.0001, 0.0001)).toBe('small');
    expect(meant(0.005, 0.005)).toBe('large');
    expect(meant(0.05, 0.05)).toBe(null);
  });
});
