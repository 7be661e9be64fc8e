/** Make the corners of a building square. */
import type { Position } from 'geojson';
import type { Point } from '../geometry/point.ts';
import { placeWords } from '../site/issues.ts';
import { label } from '../site/label.ts';
import type { Site } from '../site/types.ts';
import { chainsOf, mapChains } from './chains.ts';
import { type Edit, featureOf, rounded, settle, withGeometry } from './edit.ts';
import { planeAt } from './plane.ts';

/** A wall turned by more than this many degrees is meant to stand slanted. Ours. */
const mostTurn = 30;

/** A wall's line: horizontal (`across` false, y fixed) or vertical (x fixed) in the turned frame. */
interface Wall {
  across: boolean;
  /** Sum of offset × length, and of length: walls in a row that point one way become one. */
  moment: number;
  length: number;
}

/** Turns every wall to the nearest of the two main directions, keeping its middle. */
export function squareBuilding(site: Site, id: string): Edit {
  const feature = featureOf(site, id);
  const chains = chainsOf(feature.geometry);
  if (!chains[0]?.closed) return { refused: `${label(feature)} is no area. Choose a building.` };
  const origin = chains[0].corners[0]!;
  const plane = planeAt(origin);
  const angle = mainDirection(chains.map(({ corners }) => corners.map(plane.to)));
  const slanted = chains.flatMap(({ corners }) =>
    slantedWall(
      corners,
      corners.map((corner) => turned(plane.to(corner), -angle)),
    ),
  );
  if (slanted[0]) {
    return {
      refused: `A wall of ${label(feature)} near ${placeWords(slanted[0])} stands too slanted to be squared. Move its corners first.`,
    };
  }
  const geometry = mapChains(feature.geometry!, (corners) => {
    const square = squared(corners.map((corner) => turned(plane.to(corner), -angle)));
    return square ? square.map((corner) => rounded(plane.from(turned(corner, angle)))) : corners;
  });
  return settle(site, [withGeometry(feature, geometry)], `Squared ${label(feature)}`);
}

function turned({ x, y }: Point, angle: number): Point {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return { x: x * c - y * s, y: x * s + y * c };
}

function sides(corners: readonly Point[]): { from: Point; dx: number; dy: number; length: number }[] {
  return corners.map((from, i) => {
    const to = corners[(i + 1) % corners.length]!;
    return { from, dx: to.x - from.x, dy: to.y - from.y, length: Math.hypot(to.x - from.x, to.y - from.y) };
  });
}

/** Direction of the walls, each counted by its length, as an angle from −45° to 45° (in radians): the mean of four times the angle. */
function mainDirection(rings: readonly Point[][]): number {
  let [c, s] = [0, 0];
  for (const { dx, dy, length } of rings.flatMap(sides)) {
    const four = 4 * Math.atan2(dy, dx);
    c += length * Math.cos(four);
    s += length * Math.sin(four);
  }
  return Math.atan2(s, c) / 4;
}

function slantedWall(corners: readonly Position[], flat: readonly Point[]): Position[] {
  const least = Math.tan((mostTurn * Math.PI) / 180);
  const i = sides(flat).findIndex(
    ({ dx, dy }) => Math.min(Math.abs(dx), Math.abs(dy)) > least * Math.max(Math.abs(dx), Math.abs(dy)),
  );
  return i < 0 ? [] : [corners[i]!];
}

/** Corners where neighbouring walls' lines cross; null when fewer than four walls are left. */
function squared(corners: readonly Point[]): Point[] | null {
  const walls = oneWayWalls(corners);
  if (walls.length < 4) return null;
  return walls.map((wall, i) => {
    const before = walls[(i + walls.length - 1) % walls.length]!;
    const [upright, level] = wall.across ? [wall, before] : [before, wall];
    return { x: upright.moment / upright.length, y: level.moment / level.length };
  });
}

function oneWayWalls(corners: readonly Point[]): Wall[] {
  const walls: Wall[] = [];
  for (const { from, dx, dy, length } of sides(corners)) {
    const across = Math.abs(dy) > Math.abs(dx);
    const moment = length * (across ? from.x + dx / 2 : from.y + dy / 2);
    const last = walls.at(-1);
    if (last?.across === across) join(last, { across, moment, length });
    else walls.push({ across, moment, length });
  }
  const [first, last] = [walls[0], walls.at(-1)];
  if (first && last && walls.length > 1 && first.across === last.across) {
    join(first, last);
    walls.pop();
  }
  return walls;
}

function join(wall: Wall, other: Wall): void {
  wall.moment += other.moment;
  wall.length += other.length;
}
