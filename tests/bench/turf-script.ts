/**
 * The script someone would write with Turf for one post: shares of a 40 m disc, nearest woods, building, water and brush, sight to 360
 * degrees over 150 m, and the sun's rays. Plain, or with a bounding-box test by hand before every operation.
 */
import * as turf from '@turf/turf';
import type { Feature, LineString, MultiLineString, Polygon } from 'geojson';
import { type CoverKind, coverKinds, type LonLat, type Site } from '../../src/site/types.ts';

type Box = readonly [number, number, number, number];

interface Item {
  readonly kind: CoverKind;
  readonly area: Feature<Polygon>;
  readonly outline: Feature<LineString | MultiLineString>;
  readonly box: Box;
}

/** Milliseconds each part would take for one whole post. */
export interface TurfCost {
  readonly shares: number;
  readonly nearest: number;
  readonly sight: number;
  readonly sun: number;
}

const tall: readonly CoverKind[] = ['woods', 'building', 'brush'];
const sought: readonly CoverKind[] = ['woods', 'building', 'water', 'brush'];

export function turfItems(site: Site): Item[] {
  return site.features.map(({ kind, geometry }) => {
    const area = turf.feature(geometry as Polygon);
    const outline = turf.polygonToLine(area) as Feature<LineString | MultiLineString>;
    return { kind: kind as CoverKind, area, outline, box: turf.bbox(area) as unknown as Box };
  });
}

const meet = (a: Box, b: Box): boolean => a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3];

function shares(items: readonly Item[], post: LonLat, boxed: boolean): Map<CoverKind, number> {
  const disc = turf.circle(post, 0.04, { steps: 64 });
  const box = turf.bbox(disc) as unknown as Box;
  const all = new Map<CoverKind, number>();
  for (const kind of coverKinds) {
    for (const item of items) {
      if (item.kind !== kind || (boxed && !meet(box, item.box))) continue;
      const part = turf.intersect(turf.featureCollection([disc, item.area]));
      if (part) all.set(kind, (all.get(kind) ?? 0) + turf.area(part) / turf.area(disc));
    }
  }
  return all;
}

/** Distance to a box in degrees of latitude, roughly: enough to skip what cannot be nearer. */
function toBox([lon, lat]: LonLat, box: Box): number {
  const dx = Math.max(0, box[0] - lon, lon - box[2]) * Math.cos((lat * Math.PI) / 180);
  return Math.hypot(dx, Math.max(0, box[1] - lat, lat - box[3])) * 111.1;
}

function nearest(items: readonly Item[], post: LonLat, kind: CoverKind, boxed: boolean): number {
  let least = Infinity;
  for (const item of items) {
    if (item.kind !== kind || (boxed && toBox(post, item.box) > least)) continue;
    const lines = turf.flatten(item.outline).features as Feature<LineString>[];
    for (const line of lines) least = Math.min(least, turf.nearestPointOnLine(line, post).properties.dist!);
  }
  return least;
}

function ray(items: readonly Item[], post: LonLat, azimuth: number, reach: number, boxed: boolean): number {
  const end = turf.destination(post, reach / 1000, azimuth).geometry.coordinates;
  const line = turf.lineString([post, end]);
  const box = turf.bbox(line) as unknown as Box;
  let least = reach;
  for (const item of items) {
    if (!tall.includes(item.kind) || (boxed && !meet(box, item.box))) continue;
    for (const hit of turf.lineIntersect(line, item.outline).features) {
      least = Math.min(least, 1000 * turf.distance(post, hit));
    }
  }
  return least;
}

/** Runs the script on some posts with `rays` of the directions, and says what a whole post would take. */
export function turfCost(
  items: readonly Item[],
  posts: readonly LonLat[],
  boxed: boolean,
  rays: number,
  sunRays: number,
  cost: (work: () => void) => number,
): TurfCost {
  const each = (work: (post: LonLat) => void): number => cost(() => posts.forEach(work)) / posts.length;
  const look = (from: number) => (post: LonLat) => {
    for (let i = 0; i < rays; i++) ray(items, post, from + (360 / rays) * i, 150, boxed);
  };
  return {
    shares: each((post) => shares(items, post, boxed)),
    nearest: each((post) => {
      for (const kind of sought) nearest(items, post, kind, boxed);
    }),
    sight: each(look(0)) * (360 / rays),
    sun: each(look(7)) * (sunRays / rays),
  };
}
