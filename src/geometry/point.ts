/** A place on the site's flat frame in metres: x east, y north. Everything but `site/`, `edits/`, `exchange/` and the map works in it. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

const degree = Math.PI / 180;

/** Metres between two points. */
export function distance(a: Point, b: Point): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}

/** Whether two points are exactly the same. */
export function samePoint(a: Point, b: Point): boolean {
  return a.x === b.x && a.y === b.y;
}

/** Degrees clockwise from true north, 0 ≤ bearing < 360, from `a` toward `b`; 0 when they are the same point. */
export function bearing(a: Point, b: Point): number {
  return normalDegrees(Math.atan2(b.x - a.x, b.y - a.y) / degree);
}

/** The point `metres` from `a` toward `degrees` clockwise from north. */
export function destination(a: Point, degrees: number, metres: number): Point {
  return { x: a.x + metres * Math.sin(degrees * degree), y: a.y + metres * Math.cos(degrees * degree) };
}

/** The same direction as 0 ≤ degrees < 360. */
export function normalDegrees(degrees: number): number {
  const turned = degrees % 360;
  return turned < 0 ? turned + 360 : turned + 0;
}

/** The smaller angle between two bearings, 0–180 degrees. */
export function turn(a: number, b: number): number {
  const apart = Math.abs(normalDegrees(a) - normalDegrees(b));
  return apart > 180 ? 360 - apart : apart;
}
