/** Places along an outline or line: the nearest one to a position, and the way between two of them. */
import type { Position } from 'geojson';
import { distance } from '../geometry/point.ts';
import { samePlace } from '../site/positions.ts';
import { beside, type Chain } from './chains.ts';
import { planeAt } from './plane.ts';

/** A place on the edge after corner `edge`, `share` (0–1) of the way to the next corner. */
export interface BorderPlace {
  readonly edge: number;
  readonly share: number;
  readonly position: Position;
  /** Metres from what was asked for. */
  readonly away: number;
}

/** The nearest place of a chain to a position; corners are taken exactly. */
export function nearestPlace(chain: Chain, asked: Position): BorderPlace {
  const plane = planeAt(asked);
  const p = plane.to(asked);
  let best: BorderPlace | null = null;
  const edges = chain.closed ? chain.corners.length : chain.corners.length - 1;
  for (let edge = 0; edge < edges; edge++) {
    const [, next] = beside(chain, edge);
    const [from, to] = [chain.corners[edge]!, next!];
    const [a, b] = [plane.to(from), plane.to(to)];
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const share = Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy)));
    const away = distance(p, { x: a.x + share * dx, y: a.y + share * dy });
    if (best !== null && away >= best.away) continue;
    const position = share === 0 ? from : share === 1 ? to : plane.from({ x: a.x + share * dx, y: a.y + share * dy });
    best = { edge, share, position, away };
  }
  if (!best) throw new Error('a chain needs at least one edge');
  return best;
}

/** Corners passed going forward from one place to another, the places themselves left out. */
export function cornersBetween({ corners, closed }: Chain, from: BorderPlace, to: BorderPlace): Position[] {
  const count = corners.length;
  const ahead = to.edge - from.edge;
  const back = ahead < 0 || (ahead === 0 && to.share < from.share);
  if (back && !closed) throw new Error('a line has no way back to its start');
  const steps = back ? ahead + count : ahead;
  const passed = Array.from({ length: steps }, (_, i) => corners[(from.edge + 1 + i) % count]!);
  return passed.filter((corner) => !samePlace(corner, from.position) && !samePlace(corner, to.position));
}

/** Length of a way in metres. */
export function wayLength(way: readonly Position[]): number {
  if (way.length < 2) return 0;
  const plane = planeAt(way[0]!);
  const points = way.map(plane.to);
  return points.slice(1).reduce((sum, point, i) => sum + distance(points[i]!, point), 0);
}
