import { describe, expect, it } from 'vitest';
import { prepareGround } from '../../../src/ground/prepare.ts';
import { targetRows } from '../../../src/ground/targets.ts';
import type { Target } from '../../../src/ground/types.ts';
import { defaultSettings } from '../../../src/site/defaults.ts';
import type { LonLat, SiteFeature, SiteGeometry } from '../../../src/site/types.ts';
import { at, planeGround, rectangle } from './plane-site.ts';

const site = (...features: Partial<SiteFeature>[]) => ({
  settings: { ...defaultSettings, name: 'Test' },
  features: features.map((f, i): SiteFeature => ({ id: `f${i}`, kind: 'woods', geometry: null, properties: {}, ...f })),
});

const targets = Object.keys(targetRows) as Target[];

describe('where no box may stand', () => {
  const ground = planeGround([
    { kind: 'boundary', rings: [rectangle(-200, -200, 200, 200)] },
    { kind: 'water', rings: [rectangle(0, 0, 10, 10)], properties: { name: 'Teal Pond' } },
    { kind: 'building', rings: [rectangle(20, 0, 30, 10)] },
    { kind: 'paved', rings: [rectangle(40, 0, 50, 10)] },
    { kind: 'off-limits', rings: [rectangle(60, 0, 70, 10)], properties: { name: 'Range' } },
    { kind: 'woods', rings: [rectangle(80, 0, 90, 10)] },
  ]);
  it.each([
    [5, 'in water (Teal Pond)', 'f1'],
    [25, 'on a roof', 'f2'],
    [45, 'on paved ground', 'f3'],
    [65, 'in off-limits ground (Range)', 'f4'],
    [500, 'outside the boundary', 'f0'],
  ])('%d m east: %s', (x, reason, feature) => {
    expect(ground.forbidden(at(x, 5))).toEqual({ reason, feature });
  });
  it('but it may in woods and on open ground, and anywhere when no boundary is drawn', () => {
    expect(ground.forbidden(at(85, 5))).toBeNull();
    expect(ground.forbidden(at(-50, 5))).toBeNull();
    expect(planeGround([]).forbidden(at(5000, 5))).toBeNull();
  });
});

describe('odd sites', () => {
  it('an empty one has a frame at 0, 0, no bounds, and answers everything', () => {
    const ground = prepareGround(site());
    expect(ground.frame.centre).toEqual([0, 0]);
    expect(ground.bounds).toBeNull();
    for (const target of targets) {
      expect(ground.has(target)).toBe(false);
      expect(ground.nearest(at(0, 0), target)).toBeNull();
      expect(ground.piecesWithin(at(0, 0), target, 100)).toEqual([]);
    }
    expect(ground.meanSight(at(0, 0), 1.5, 150)).toBe(150);
    expect(ground.shares(at(0, 0), 40).unmapped).toBe(1);
    expect(ground.forbidden(at(0, 0))).toBeNull();
  });

  const odd: Record<string, SiteGeometry | null> = {
    'nothing placed': null,
    'an area of no coordinates': { type: 'Polygon', coordinates: [] },
    'an empty ring': { type: 'Polygon', coordinates: [[]] },
    'a ring of two places': {
      type: 'Polygon',
      coordinates: [
        [
          [1, 1],
          [1.001, 1],
          [1, 1],
        ],
      ],
    },
    'a ring of one place': {
      type: 'Polygon',
      coordinates: [
        [
          [1, 1],
          [1, 1],
          [1, 1],
          [1, 1],
        ],
      ],
    },
    'a flat ring': {
      type: 'Polygon',
      coordinates: [
        [
          [1, 1],
          [1.001, 1],
          [1.002, 1],
          [1, 1],
        ],
      ],
    },
    'numbers that are none': {
      type: 'Polygon',
      coordinates: [
        [
          [1, 1],
          [Number.NaN, 1],
          [1.001, Infinity],
          [1, 1],
        ],
      ],
    },
    'an area drawn as a line': {
      type: 'LineString',
      coordinates: [
        [1, 1],
        [1.001, 1],
      ],
    },
    'an area drawn as a point': { type: 'Point', coordinates: [1, 1] },
  };
  for (const [name, geometry] of Object.entries(odd)) {
    it(`${name}: takes no part and breaks nothing`, () => {
      for (const kind of ['woods', 'boundary', 'off-limits', 'hedge', 'tree'] as const) {
        const ground = prepareGround(
          site({ kind, geometry }, { kind: 'post', geometry: { type: 'Point', coordinates: [1, 1] } }),
        );
        const p = ground.frame.toPlane([1.0003, 1.0002]);
        const shares = ground.shares(p, 40);
        expect(Object.values(shares).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
        expect(Number.isFinite(ground.meanSight(p, 1.5, 150))).toBe(true);
        for (const target of targets) ground.nearest(p, target);
      }
    });
  }

  it('a bow-tie covers both its lobes', () => {
    const place = ([x, y]: LonLat): LonLat => [1 + x / 1000, 1 + y / 1000];
    const ring = (
      [
        [0, 0],
        [1, 1],
        [1, 0],
        [0, 1],
        [0, 0],
      ] as LonLat[]
    ).map(place);
    const ground = prepareGround(site({ geometry: { type: 'Polygon', coordinates: [ring] } }));
    const kindAt = (x: number, y: number) => ground.coverAt(ground.frame.toPlane(place([x, y])));
    expect([kindAt(0.1, 0.5), kindAt(0.9, 0.5), kindAt(0.5, 0.1), kindAt(0.5, 0.9)]).toEqual([
      'woods',
      'woods',
      null,
      null,
    ]);
  });

  it('lines of several parts and areas of several parts are measured whole', () => {
    const ground = prepareGround(
      site(
        {
          kind: 'path',
          geometry: {
            type: 'MultiLineString',
            coordinates: [
              [
                [1, 1],
                [1.001, 1],
              ],
              [
                [1.002, 1],
                [1.003, 1],
              ],
            ],
          },
        },
        { kind: 'road', geometry: { type: 'LineString', coordinates: [[1.0015, 1]] } },
      ),
    );
    const p = ground.frame.toPlane([1.0025, 1.0001]);
    expect(ground.nearest(p, 'path')!.distance).toBeCloseTo(11.06, 1);
    expect(ground.nearest(ground.frame.toPlane([1.0015, 1]), 'road')!.distance).toBeCloseTo(0, 9);
  });

  it('heights that are no numbers fall back to the default', () => {
    for (const height of ['tall', -3, Number.NaN, null, {}]) {
      const ground = planeGround([{ kind: 'woods', rings: [rectangle(10, -900, 20, 900)], properties: { height } }]);
      expect(ground.horizon(at(0, 0), 0, Float64Array.of(90))[0]).toBeCloseTo((Math.atan(1.8) * 180) / Math.PI, 6);
    }
  });

  it('stands at the edge of the world without failing', () => {
    for (const centre of [
      [179.7, 10],
      [-179.7, -45],
      [20, 84],
      [20, -84],
    ] as LonLat[]) {
      const ground = planeGround([{ kind: 'woods', rings: [rectangle(10, -50, 60, 50)] }], centre);
      expect(ground.nearest(at(0, 0), 'woods-edge')!.distance).toBeCloseTo(10, 5);
    }
  });
});
