/** Take out corners that hardly matter. */
import { lineString, simplify as turfSimplify } from '@turf/turf';
import type { Position } from 'geojson';
import { label } from '../site/label.ts';
import type { Site, SiteFeature } from '../site/types.ts';
import { chainsOf, mapChains } from './chains.ts';
import { type Edit, featureOf, type Sharing, settle, withGeometry } from './edit.ts';
import { planeAt } from './plane.ts';

/**
 * Drops corners less than `metres` off the line between the ones that stay (Douglas & Peucker 1973, by Turf). Corners that other
 * lines and areas share stay, so that borders stay common, unless sharing is switched off.
 */
export function simplify(site: Site, id: string, metres: number, { shared = true }: Sharing = {}): Edit {
  const feature = featureOf(site, id);
  if (!(metres > 0)) throw new Error(`not a tolerance in metres: ${metres}`);
  const fixed = shared ? cornersOfOthers(site, feature) : new Set<string>();
  const before = chainsOf(feature.geometry).reduce((sum, { corners }) => sum + corners.length, 0);
  if (before === 0) return { refused: `${label(feature)} has no corners to take out.` };
  const geometry = mapChains(feature.geometry!, (corners, _n, closed) => simplified(corners, closed, metres, fixed));
  const dropped = before - chainsOf(geometry).reduce((sum, { corners }) => sum + corners.length, 0);
  if (dropped === 0)
    return { refused: `No corner of ${label(feature)} is nearer than that to its outline. Try a larger distance.` };
  return settle(site, [withGeometry(feature, geometry)], `Simplified ${label(feature)} by ${dropped} corners`);
}

const key = (position: Position) => `${position[0]} ${position[1]}`;

function cornersOfOthers(site: Site, feature: SiteFeature): Set<string> {
  const others = site.features.filter((other) => other !== feature);
  return new Set(others.flatMap(({ geometry }) => chainsOf(geometry).flatMap(({ corners }) => corners.map(key))));
}

/** Each run between fixed corners by itself. An outline without any is cut at its first corner and the one farthest from it. */
function simplified(
  corners: readonly Position[],
  closed: boolean,
  metres: number,
  fixed: ReadonlySet<string>,
): Position[] {
  const way = closed ? [...corners, corners[0]!] : [...corners];
  const stays = way.map((corner, i) => i === 0 || i === way.length - 1 || fixed.has(key(corner)));
  if (closed) stays[farthest(way)] = true;
  const kept: Position[] = [way[0]!];
  let from = 0;
  for (let i = 1; i < way.length; i++) {
    if (!stays[i]) continue;
    kept.push(...run(way.slice(from, i + 1), metres).slice(1));
    from = i;
  }
  const open = closed ? kept.slice(0, -1) : kept;
  return closed && open.length < 3 ? [...corners] : open;
}

function farthest(way: readonly Position[]): number {
  const plane = planeAt(way[0]!);
  const away = way.map((corner) => Math.hypot(plane.to(corner).x, plane.to(corner).y));
  return away.indexOf(Math.max(...away));
}

/** Turf measures in the plane, so it is given metres; what stays is looked up among the corners themselves. */
function run(way: readonly Position[], metres: number): Position[] {
  if (way.length < 3) return [...way];
  const plane = planeAt(way[0]!);
  const flat = lineString(way.map((corner, i) => [plane.to(corner).x, plane.to(corner).y, i]));
  const left = turfSimplify(flat, { tolerance: metres, highQuality: true }).geometry.coordinates;
  return left.map((corner) => way[corner[2] ?? 0]!);
}
