import type { Feature } from 'geojson';
import { describe, expect, it } from 'vitest';
import { siteBounds } from '../../../src/app/map/bounds.ts';
import { sizeAt } from '../../../src/app/map/box-look.ts';
import { stepTo } from '../../../src/app/map/box-steps.ts';
import { pixelsPerMetre22 } from '../../../src/app/map/ground-scale.ts';
import { landFeatures } from '../../../src/app/map/land-source.ts';
import { namePlace } from '../../../src/app/map/name-place.ts';
import { pushAt, pushes, turned } from '../../../src/app/map/push-apart.ts';
import type { Plan, PlannedBox } from '../../../src/plan-types.ts';
import { newSite } from '../../../src/site/new-site.ts';
import type { Kind, SiteFeature, SiteGeometry } from '../../../src/site/types.ts';

const square = (x: number, y: number, side: number) => [
  [x, y],
  [x + side, y],
  [x + side, y + side],
  [x, y + side],
  [x, y],
];

function planOf(places: readonly (readonly [x: number, y: number, pairedWith?: number])[]): Plan {
  const boxes = places.map(
    ([x, y, pairedWith], i) =>
      ({ number: i + 1, at: { x, y }, position: [0, 0], pairedWith: pairedWith ?? null }) as unknown as PlannedBox,
  );
  return { boxes } as unknown as Plan;
}

describe('boxes that would lie on each other', () => {
  const drawn = (plan: Plan, zoom: number) => {
    const all = pushes(plan);
    return plan.boxes.map((b) => {
      const [dx, dy] = pushAt(all.get(b.number) ?? [], zoom);
      const scale = pixelsPerMetre22(0) * 2 ** (zoom - 22);
      return { x: b.at.x * scale + dx, y: -b.at.y * scale + dy, dx, dy };
    });
  };

  it.each([13, 14.2, 15.1, 16.3, 17.4, 18, 20])('are drawn apart at zoom %s', (zoom) => {
    const at = drawn(
      planOf([
        [0, 0],
        [6, 0],
        [3, 5],
        [0, 0],
        [300, 300],
      ]),
      zoom,
    );
    for (let i = 0; i < at.length; i++)
      for (let j = i + 1; j < at.length; j++) {
        const [a, b] = [at[i]!, at[j]!];
        // 33 px is the rim of a disc; between two worked-out zooms the map goes straight, so 3 px are allowed.
        expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThan(30 * sizeAt(zoom));
      }
    expect(Math.hypot(at[4]!.dx, at[4]!.dy), 'a box alone stays').toBe(0);
  });

  it('stay where they are once there is room', () => {
    expect(
      drawn(
        planOf([
          [0, 0],
          [30, 0],
        ]),
        20,
      ).map(({ dx, dy }) => [dx, dy]),
    ).toEqual([
      [0, 0],
      [0, 0],
    ]);
  });

  it('a pair is pushed along its own line', () => {
    const [a, b] = drawn(
      planOf([
        [0, 0, 2],
        [0, 5, 1],
      ]),
      15,
    ) as unknown as [{ dx: number; dy: number }, { dx: number; dy: number }];
    expect(a.dx).toBeCloseTo(0, 6);
    expect(a.dy).toBeGreaterThan(0);
    expect(b.dy).toBeCloseTo(-a.dy, 6);
  });

  it('a turned picture takes its offset turned back', () => {
    const [[x, y]] = turned([[0, -10]], 90) as unknown as [[number, number]];
    expect(x).toBeCloseTo(-10, 9);
    expect(y).toBeCloseTo(0, 9);
  });
});

describe('namePlace', () => {
  it('is the middle of a square, with half its side', () => {
    const place = namePlace([square(0, 0, 10)], 1);
    expect(place?.at[0]).toBeCloseTo(5, 0);
    expect(place?.half).toBeCloseTo(5, 0);
  });

  it('keeps out of what is drawn over it', () => {
    const place = namePlace([square(0, 0, 10), square(3, 3, 7)], 1);
    const [x, y] = place?.at ?? [9, 9];
    expect(x < 3 || y < 3).toBe(true);
  });

  it.each([[[]], [[[0, 0]]], [square(0, 0, 0)]])('is null where there is no inside', (ring) => {
    expect(namePlace([ring as never], 3)).toBeNull();
  });
});

const feature = (id: string, kind: Kind, geometry: SiteGeometry | null, properties = {}): SiteFeature => ({
  id,
  kind,
  geometry,
  properties: { kind, ...properties },
});

function pointOf(found: Feature | undefined): [number, number] {
  if (found?.geometry.type !== 'Point') throw new Error('no such point');
  return found.geometry.coordinates as [number, number];
}

describe('landFeatures', () => {
  const site = {
    ...newSite('x'),
    features: [
      feature('a', 'meadow', { type: 'Polygon', coordinates: [square(0, 0, 0.01)] }, { name: 'Big Field' }),
      feature('b', 'tree', { type: 'Point', coordinates: [0.002, 0.002] }, { crownRadius: 6 }),
      feature('c', 'post', { type: 'Point', coordinates: [0.003, 0.002] }, { state: 'retired' }),
      feature('d', 'tree', null),
    ],
  };
  const { features } = landFeatures(site);
  const roles = (id: string) => features.filter((f) => f.properties?.id === id).map((f) => f.properties?.role);

  it('gives a tree its crown and a place for its name, and leaves out what is not placed', () => {
    expect(roles('b')).toEqual(['', 'crown', 'below']);
    expect(roles('d')).toEqual([]);
    const below = pointOf(features.find((f) => f.properties?.role === 'below'));
    // 6 m south, at 111.195 km a degree.
    expect(0.002 - below[1]).toBeCloseTo(6 / 111_195, 7);
  });

  it('says a post is retired', () => {
    expect(features.find((f) => f.properties?.id === 'c')?.properties?.state).toBe('retired');
  });

  it('writes the name inside the area, shown only where it fits', () => {
    const name = features.find((f) => f.properties?.role === 'name');
    const [x, y] = pointOf(name);
    expect(x > 0 && x < 0.01 && y > 0 && y < 0.01).toBe(true);
    // 1.1 km of field: its name fits at a whole-park zoom, and not from a county away.
    expect(name?.properties?.fitsFrom).toBeGreaterThan(9);
    expect(name?.properties?.fitsFrom).toBeLessThan(14);
  });

  it('makes nothing of an empty site', () => {
    expect(landFeatures(newSite('empty')).features).toEqual([]);
  });
});

describe('siteBounds', () => {
  it('is null for a site with nothing placed', () => {
    expect(siteBounds(newSite('empty'))).toBeNull();
    expect(siteBounds({ ...newSite('x'), features: [feature('a', 'tree', null)] })).toBeNull();
  });

  it('takes the boundary alone where there is one', () => {
    const features = [
      feature('a', 'boundary', { type: 'Polygon', coordinates: [square(1, 1, 1)] }),
      feature('b', 'tree', { type: 'Point', coordinates: [9, 9] }),
    ];
    expect(siteBounds({ ...newSite('x'), features })).toEqual([1, 1, 2, 2]);
    expect(siteBounds({ ...newSite('x'), features: features.slice(1) })).toEqual([9, 9, 9, 9]);
  });
});

describe('stepTo', () => {
  it('goes round, to the ends, and leaves other keys alone', () => {
    expect(stepTo('ArrowRight', 2, 3)).toBe(0);
    expect(stepTo('ArrowLeft', 0, 3)).toBe(2);
    expect(stepTo('End', 0, 3)).toBe(2);
    expect(stepTo('Tab', 0, 3)).toBeNull();
  });
});
