/** Where a drawn line runs through an outline, from border to border. */
import { booleanPointInPolygon, polygon } from '@turf/turf';
import type { Position } from 'geojson';
import { distance } from '../geometry/point.ts';
import { samePlace } from '../site/positions.ts';
import { type BorderPlace, nearestPlace } from './border.ts';
import { beside, type Chain } from './chains.ts';
import { rounded } from './edit.ts';
import { planeAt } from './plane.ts';

/** A stretch of the line inside the outline, from one place of the border (its first position) to another (its last). */
export interface Cut {
  readonly ends: readonly [BorderPlace, BorderPlace];
  readonly way: readonly Position[];
}

interface Contact {
  /** Number of the line's corner before it, and the share of the way to the next. */
  readonly along: number;
  readonly place: BorderPlace;
}

/** Metres within which a line's corner counts as on the border, and a crossing as at a corner: about the last decimal written. */
const snap = 0.03;

/** The cuts of a closed chain by a line, in the order of the line. */
export function crossings(chain: Chain, line: readonly Position[]): Cut[] {
  const contacts = [...cornerContacts(chain, line), ...edgeContacts(chain, line)].sort((a, b) => a.along - b.along);
  const apart = contacts.filter((one, i) => i === 0 || !samePlace(one.place.position, contacts[i - 1]!.place.position));
  const ring = polygon([[...chain.corners, chain.corners[0]!].map((corner) => [corner[0]!, corner[1]!])]);
  return apart.slice(1).flatMap((to, i) => {
    const from = apart[i]!;
    const between = line.filter((_, n) => n > from.along && n < to.along).map((position) => rounded([...position]));
    const way = [from.place.position, ...between, to.place.position];
    const middle = [(way[0]![0]! + way[1]![0]!) / 2, (way[0]![1]! + way[1]![1]!) / 2];
    const inside = booleanPointInPolygon(middle, ring) && nearestPlace(chain, middle).away > snap / 2;
    return inside && !samePlace(way[0]!, way.at(-1)!) ? [{ ends: [from.place, to.place] as const, way }] : [];
  });
}

/** The line's own corners that lie on the border. */
function cornerContacts(chain: Chain, line: readonly Position[]): Contact[] {
  return line.flatMap((corner, along) => {
    const place = nearestPlace(chain, corner);
    return place.away <= snap ? [{ along, place: snapped(chain, place, place.position) }] : [];
  });
}

/** At the border's corner when that is near enough, else where it was found. */
function snapped(chain: Chain, place: BorderPlace, found: Position): BorderPlace {
  const plane = planeAt(found);
  const [, next] = beside(chain, place.edge);
  const corner = chain.corners[place.edge]!;
  const near = (position: Position) => distance(plane.to(position), { x: 0, y: 0 }) <= snap;
  if (near(corner)) return { ...place, share: 0, position: corner };
  if (next && near(next)) return { ...place, edge: (place.edge + 1) % chain.corners.length, share: 0, position: next };
  return { ...place, position: rounded([found[0]!, found[1]!]) };
}

/** Crossings of the line's stretches with the edges, those at the line's own corners left to `cornerContacts`. */
function edgeContacts(chain: Chain, line: readonly Position[]): Contact[] {
  const onBorder = line.map((corner) => nearestPlace(chain, corner).away <= snap);
  return line.slice(1).flatMap((to, n) => {
    const from = line[n]!;
    const plane = planeAt(from);
    const skip = (metres: number, whole: number) =>
      (onBorder[n] && metres <= 2 * snap) || (onBorder[n + 1] && whole - metres <= 2 * snap);
    return chain.corners.flatMap((corner, edge) => {
      const met = meet([{ x: 0, y: 0 }, plane.to(to)], [plane.to(corner), plane.to(beside(chain, edge)[1]!)]);
      const whole = distance({ x: 0, y: 0 }, plane.to(to));
      if (!met || skip(met.along * whole, whole)) return [];
      const position = [from[0]! + met.along * (to[0]! - from[0]!), from[1]! + met.along * (to[1]! - from[1]!)];
      return [{ along: n + met.along, place: snapped(chain, { edge, share: met.share, position, away: 0 }, position) }];
    });
  });
}

type Stretch = readonly [{ readonly x: number; readonly y: number }, { readonly x: number; readonly y: number }];

/** Shares of the way at which two stretches cross; null when they do not. */
function meet([a, b]: Stretch, [c, d]: Stretch): { along: number; share: number } | null {
  const [dx, dy, ex, ey] = [b.x - a.x, b.y - a.y, d.x - c.x, d.y - c.y];
  const turned = dx * ey - dy * ex;
  if (turned === 0) return null;
  const along = ((c.x - a.x) * ey - (c.y - a.y) * ex) / turned;
  const share = ((c.x - a.x) * dy - (c.y - a.y) * dx) / turned;
  return along >= 0 && along <= 1 && share >= 0 && share <= 1 ? { along, share } : null;
}
