/** The walking surface: how to get from one place to another, how far and how long. */
import type { Point } from '../geometry/point.ts';
import { distance } from '../geometry/point.ts';
import type { Ground } from '../ground/types.ts';
import { minutesPerMetre } from './pace.ts';
import { allRoutes, nearRoutes } from './routes.ts';
import { freeNear } from './stand.ts';
import type { Course } from './straighten.ts';
import { straighten } from './straighten.ts';
import type { Frame, WalkGrid } from './walk-grid.ts';
import { walkGrid } from './walk-grid.ts';
import { minutesPerMetreOnPath } from './walk-time.ts';
import type { Walkable } from './walkable.ts';
import { fenceMinutes, walkableOf } from './walkable.ts';

/** A way between two places. The line begins and ends where a walker can stand: beside the place, when the place itself is in water. */
export interface Way {
  readonly metres: number;
  readonly minutes: number;
  readonly line: readonly Point[];
}

/** Ways between every two of the places asked for, by index. */
export interface Ways {
  /** Null when no walk joins them. */
  way(a: number, b: number): Way | null;
  /** Minutes of the way; null when there is none. Where ways are coarse, of the way before it is drawn taut: a few in a hundred more. */
  minutes(a: number, b: number): number | null;
  /** Where a walker stands for each place; null where there is no free ground near enough. */
  readonly stands: readonly (Point | null)[];
}

/** Cells the net is laid out in, about; a park of 90 ha gets cells of 5 m, a yard of half a metre. */
const cellsWanted = { fine: 40_000, coarse: 10_000 };
const smallestCell = 0.25;

/** How finely ways are looked for: `coarse` ways are a little longer and found in a fraction of the time. */
export type Grain = keyof typeof cellsWanted;

/** Ways between all `places`. `reach[k]` says how far from place k free ground may lie (metres) when it stands on none; 3 unless given. */
export function waysBetween(
  ground: Ground,
  places: readonly Point[],
  reach: readonly number[] = [],
  grain: Grain = 'fine',
): Ways {
  const frame = frameOf(ground, places, cellsWanted[grain]);
  const land = walkableOf(ground, frame.cell);
  if (land.plain) return straightWays(places);
  const stands = places.map((p, k) => freeNear(land, frame, p, reach[k] ?? 3));
  const standing = stands.flatMap((p, k) => (p ? [k] : []));
  const net = walkGrid(
    land,
    frame,
    standing.map((k) => stands[k]!),
  );
  return netWays(land, net, stands, standing, grain);
}

function straightWays(places: readonly Point[]): Ways {
  return {
    stands: places,
    minutes: (a, b) => distance(places[a], places[b]) * minutesPerMetre(null),
    way(a, b) {
      const metres = distance(places[a], places[b]);
      return { metres, minutes: metres * minutesPerMetre(null), line: [places[a], places[b]] };
    },
  };
}

/** A frame of cells over the places and what is drawn about them, with room to walk round its edge. */
function frameOf(ground: Ground, places: readonly Point[], cells: number): Frame {
  const xs = places.map((p) => p.x);
  const ys = places.map((p) => p.y);
  const low = { x: Math.min(...xs), y: Math.min(...ys) };
  const high = { x: Math.max(...xs), y: Math.max(...ys) };
  const extent = Math.max(high.x - low.x, high.y - low.y);
  // Ways out of this wider box are not looked for, however far the drawing reaches.
  const roam = 200 + extent / 2;
  const drawn = ground.bounds ?? { min: low, max: high };
  const rim = 20;
  const minX = Math.min(low.x, Math.max(drawn.min.x, low.x - roam)) - rim;
  const minY = Math.min(low.y, Math.max(drawn.min.y, low.y - roam)) - rim;
  const maxX = Math.max(high.x, Math.min(drawn.max.x, high.x + roam)) + rim;
  const maxY = Math.max(high.y, Math.min(drawn.max.y, high.y + roam)) + rim;
  const cell = Math.max(smallestCell, Math.sqrt(((maxX - minX) * (maxY - minY)) / cells));
  return {
    cell,
    minX,
    minY,
    columns: Math.max(1, Math.ceil((maxX - minX) / cell)),
    rows: Math.max(1, Math.ceil((maxY - minY) / cell)),
  };
}

function netWays(
  land: Walkable,
  net: WalkGrid,
  stands: readonly (Point | null)[],
  standing: readonly number[],
  grain: Grain,
): Ways {
  const found = grain === 'fine' ? allRoutes(net, standing.length) : nearRoutes(net, standing.length);
  const placeOf = new Map(standing.map((place, k) => [place, k]));
  const course = courseOf(land, net);
  const drawn = new Map<number, Way | null>();
  /** k < m, numbers among the standing places. */
  const draw = (k: number, m: number): Way | null => {
    const route = found.route(k, m);
    const minutes = route.length > 0 ? found.minutes(k, m) : Infinity;
    const direct = directWay(stands[standing[k]]!, stands[standing[m]]!, minutes, course);
    return direct ?? (route.length > 0 ? drawWay(net, route, course) : null);
  };
  const way = (a: number, b: number): Way | null => {
    if (a === b) return stands[a] ? { metres: 0, minutes: 0, line: [stands[a]!, stands[a]!] } : null;
    const [k, m] = [placeOf.get(Math.min(a, b)), placeOf.get(Math.max(a, b))];
    if (k === undefined || m === undefined) return null;
    const key = k * standing.length + m;
    let known = drawn.get(key);
    if (known === undefined) {
      known = draw(k, m);
      drawn.set(key, known);
    }
    return known && a > b ? { ...known, line: [...known.line].reverse() } : known;
  };
  const quick = (a: number, b: number): number | null => {
    const [k, m] = [placeOf.get(a), placeOf.get(b)];
    if (k === undefined || m === undefined) return null;
    const minutes = found.minutes(k, m);
    return minutes < Infinity ? minutes : null;
  };
  return { stands, way, minutes: grain === 'fine' ? (a, b) => way(a, b)?.minutes ?? null : quick };
}

/** The straight walk, when it crosses nothing and the net found nothing quicker. */
function directWay(a: Point, b: Point, minutes: number, course: Course): Way | null {
  const straight = course.minutes(a, b);
  if (straight > minutes + 1e-9 || !course.free(a, b)) return null;
  return { metres: distance(a, b), minutes: straight, line: [a, b] };
}

/** Straightens each stretch over land between the stretches along paths. */
function drawWay(net: WalkGrid, nodes: readonly number[], course: Course): Way {
  const point = (node: number): Point => ({ x: net.x[node], y: net.y[node] });
  const onPath = (a: number, b: number) => isPathNode(net, a) && isPathNode(net, b);
  const line: Point[] = [point(nodes[0])];
  let minutes = 0;
  for (let k = 0; k + 1 < nodes.length; ) {
    let end = k + 1;
    if (onPath(nodes[k], nodes[k + 1])) {
      const [a, b] = [point(nodes[k]), point(nodes[end])];
      minutes += distance(a, b) * minutesPerMetreOnPath;
      line.push(b);
    } else {
      while (end + 1 < nodes.length && !onPath(nodes[end], nodes[end + 1])) end++;
      const taut = straighten(nodes.slice(k, end + 1).map(point), course);
      for (let m = 1; m < taut.length; m++) minutes += course.minutes(taut[m - 1], taut[m]);
      line.push(...taut.slice(1));
    }
    k = end;
  }
  const clean = withoutRepeats(line);
  return { metres: lengthOf(clean), minutes, line: clean };
}

function isPathNode(net: WalkGrid, node: number): boolean {
  return node >= net.firstPath && node < net.firstCorner;
}

function lengthOf(line: readonly Point[]): number {
  return line.slice(1).reduce((sum, p, k) => sum + distance(line[k], p), 0);
}

/** Without points on the straight line between their neighbours (a path is cut finer than it is drawn). */
function withoutRepeats(line: readonly Point[]): Point[] {
  const kept: Point[] = [line[0]];
  for (let k = 1; k < line.length - 1; k++) {
    const [a, b, c] = [kept[kept.length - 1], line[k], line[k + 1]];
    if (distance(a, b) + distance(b, c) - distance(a, c) > 1e-6) kept.push(b);
  }
  if (line.length > 1) kept.push(line[line.length - 1]);
  return kept;
}

function courseOf(land: Walkable, net: WalkGrid): Course {
  const { frame, pace } = net;
  const scratch: number[] = [];
  const even = pace.every((p) => p === pace[0]);
  const paceAt = (x: number, y: number) => {
    const c = Math.max(0, Math.min(frame.columns - 1, Math.floor((x - frame.minX) / frame.cell)));
    const r = Math.max(0, Math.min(frame.rows - 1, Math.floor((y - frame.minY) / frame.cell)));
    return pace[r * frame.columns + c];
  };
  const landMinutes = (a: Point, b: Point): number => {
    const metres = distance(a, b);
    if (even) return metres * pace[0];
    const parts = Math.max(1, Math.ceil((2 * metres) / frame.cell));
    let sum = 0;
    for (let k = 0; k < parts; k++) {
      const share = (k + 0.5) / parts;
      sum += paceAt(a.x + share * (b.x - a.x), a.y + share * (b.y - a.y));
    }
    return (sum / parts) * metres;
  };
  return {
    free: (a, b) => land.walls.free(a.x, a.y, b.x, b.y),
    minutes: (a, b) => landMinutes(a, b) + fenceMinutes(land, a.x, a.y, b.x, b.y, scratch),
    cornersIn: (a, b, c) => land.walls.cornersIn(a, b, c),
  };
}
