/**
 * How much of a true circle each class of a painted plane takes, exactly (Green's theorem, no polygon standing in for the circle).
 * The plane is given by its seams: straight pieces with another class on either side.
 */
import type { Grid } from './grid.ts';

/** Seams in a grid (null when there are none), the class left and right of each grid part, and the class at any place. */
export interface Painted {
  readonly grid: Grid | null;
  readonly left: Uint8Array;
  readonly right: Uint8Array;
  readonly classes: number;
  classAt(x: number, y: number): number;
}

/** Shares below this are rounding, not land. */
const roundingDust = 1e-12;

/** Room to work in, made once. */
export interface DiscScratch {
  /** Twice the area gathered for each class, then its share. */
  readonly sums: Float64Array;
  angle: Float64Array;
  /** Class just before and just after each crossing, going counter-clockwise. */
  before: Uint8Array;
  after: Uint8Array;
  crossings: number;
}

export function makeDiscScratch(classes: number): DiscScratch {
  const room = 64;
  return {
    sums: new Float64Array(classes),
    angle: new Float64Array(room),
    before: new Uint8Array(room),
    after: new Uint8Array(room),
    crossings: 0,
  };
}

function grow(scratch: DiscScratch): void {
  const room = 2 * scratch.angle.length;
  const angle = new Float64Array(room);
  angle.set(scratch.angle);
  const [before, after] = [new Uint8Array(room), new Uint8Array(room)];
  before.set(scratch.before);
  after.set(scratch.after);
  Object.assign(scratch, { angle, before, after });
}

/** Notes that the circle is crossed at (x, y), relative to its centre, by a piece running along (ex, ey); keeps them sorted. */
function cross(scratch: DiscScratch, x: number, y: number, ex: number, ey: number, left: number, right: number): void {
  if (scratch.crossings === scratch.angle.length) grow(scratch);
  const { angle, before, after } = scratch;
  const at = Math.atan2(y, x);
  let k = scratch.crossings++;
  for (; k > 0 && angle[k - 1]! > at; k--) {
    angle[k] = angle[k - 1]!;
    before[k] = before[k - 1]!;
    after[k] = after[k - 1]!;
  }
  // The circle runs along (−y, x); it goes to the left of the piece where ex·x + ey·y > 0.
  const toLeft = ex * x + ey * y > 0;
  angle[k] = at;
  before[k] = toLeft ? right : left;
  after[k] = toLeft ? left : right;
}

/** Adds the part of a→b (relative to the centre) inside the circle to the sums, and notes where it crosses the circle. */
function addPiece(
  scratch: DiscScratch,
  square: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  left: number,
  right: number,
): void {
  const aIn = ax * ax + ay * ay <= square;
  const bIn = bx * bx + by * by <= square;
  let moment = ax * by - ay * bx;
  if (!(aIn && bIn)) {
    const ex = bx - ax;
    const ey = by - ay;
    const length2 = ex * ex + ey * ey;
    const middle = -(ax * ex + ay * ey) / length2;
    // Half the chord as a share of the piece; both ends inside or outside alike cross twice or never, else exactly once.
    const half2 = (square - (moment * moment) / length2) / length2;
    if (!aIn && !bIn && !(half2 > 0 && middle > 0 && middle < 1)) return;
    const half = half2 > 0 ? Math.sqrt(half2) : 0;
    const from = aIn ? 0 : Math.min(1, Math.max(0, middle - half));
    const to = bIn ? 1 : Math.min(1, Math.max(0, middle + half));
    if (!aIn) cross(scratch, ax + from * ex, ay + from * ey, ex, ey, left, right);
    if (!bIn) cross(scratch, ax + to * ex, ay + to * ey, ex, ey, left, right);
    moment *= to - from;
  }
  scratch.sums[left]! += moment;
  scratch.sums[right]! -= moment;
}

function addSeams(painted: Painted, grid: Grid, scratch: DiscScratch, px: number, py: number, radius: number): void {
  const { ends, start, cell, columns, rows } = grid;
  const { left, right } = painted;
  const square = radius * radius;
  const wide = radius + grid.reach;
  const row0 = Math.max(0, Math.floor((py - wide - grid.y) / cell));
  const row1 = Math.min(rows - 1, Math.floor((py + wide - grid.y) / cell));
  for (let row = row0; row <= row1; row++) {
    const south = grid.y + row * cell;
    const off = py < south ? south - py : py > south + cell ? py - south - cell : 0;
    if (off > wide) continue;
    const half = Math.sqrt(wide * wide - off * off);
    const column0 = Math.max(0, Math.floor((px - half - grid.x) / cell));
    const column1 = Math.min(columns - 1, Math.floor((px + half - grid.x) / cell));
    if (column0 > column1) continue;
    const last = start[row * columns + column1 + 1]!;
    for (let k = start[row * columns + column0]!; k < last; k++) {
      const e = 4 * k;
      const ax = ends[e]! - px;
      const ay = ends[e + 1]! - py;
      addPiece(scratch, square, ax, ay, ends[e + 2]! - px, ends[e + 3]! - py, left[k]!, right[k]!);
    }
  }
}

/**
 * Adds the arcs. Both crossings around an arc must agree on its class; where they do not (tangents, corners on the circle, crossings
 * closer than rounding) the class is looked up at the arc's middle, so no bad crossing can spoil the rest.
 */
function addArcs(painted: Painted, scratch: DiscScratch, px: number, py: number, radius: number): void {
  const { angle, before, after, crossings, sums } = scratch;
  const square = radius * radius;
  if (crossings === 0) {
    sums[painted.classAt(px + radius, py)]! += square * 2 * Math.PI;
    return;
  }
  for (let k = 0; k < crossings; k++) {
    const next = k + 1 < crossings ? k + 1 : 0;
    const width = angle[next]! - angle[k]! + (next === 0 ? 2 * Math.PI : 0);
    let kind = after[k]!;
    if (kind !== before[next]! && width > 0) {
      const middle = angle[k]! + width / 2;
      kind = painted.classAt(px + radius * Math.cos(middle), py + radius * Math.sin(middle));
    }
    sums[kind]! += square * width;
  }
}

/**
 * Shares of the circle's area by class, adding to 1: written to `scratch.sums`, which is returned. `radius` in metres, above 0.
 */
export function discShares(
  painted: Painted,
  scratch: DiscScratch,
  px: number,
  py: number,
  radius: number,
): Float64Array {
  if (!(radius > 0 && Number.isFinite(radius))) throw new RangeError(`radius must be above 0 m: ${radius}`);
  const { sums } = scratch;
  sums.fill(0);
  scratch.crossings = 0;
  if (painted.grid) addSeams(painted, painted.grid, scratch, px, py, radius);
  addArcs(painted, scratch, px, py, radius);
  const whole = 2 * Math.PI * radius * radius;
  for (let c = 0; c < sums.length; c++) {
    const share = sums[c]! / whole;
    sums[c] = share < roundingDust ? 0 : Math.min(share, 1);
  }
  return sums;
}
