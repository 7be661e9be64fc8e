/**
 * Looking around from a point: for every ray, how steeply the steepest obstacle stands. Nearest cells first; a cell is passed over
 * when nothing in it could beat what its rays have met already. Exact at each ray: an obstacle's distance is computed on the ray.
 */
import { columnAt, lastRing, ringCells, ringDistance, rowAt } from '../geometry/grid.ts';
import { type RaySet, slotOf, slots, turnOf } from '../geometry/rays.ts';
import type { Stand } from './obstacles.ts';

/** A point this near a wall stands at it, metres. */
const atWall = 1e-6;

/** What is asked. `level`: only whether something is taller than the eye counts (1 / distance), not by how much (rise / distance). */
export interface Question {
  readonly eye: number;
  readonly level: boolean;
  /** A ray that has been beaten once needs no more looking (it is set to Infinity). */
  readonly once: boolean;
}

/** The state of a look: `best` per ray, to be set before; `least` is the lowest best of each slot. */
export class View {
  readonly rays: RaySet;
  readonly best: Float64Array;
  private readonly least = new Float64Array(slots);
  private readonly stale = new Uint8Array(slots);

  constructor(rays: RaySet) {
    this.rays = rays;
    this.best = new Float64Array(rays.count);
  }

  /** To be called after `best` was filled. */
  begin(): void {
    this.stale.fill(1);
  }

  beat(ray: number, value: number): void {
    this.best[ray] = value;
    this.stale[this.rays.slot[ray]!] = 1;
  }

  /** Lowest best of slots from … to, running over north when to < from. */
  lowest(from: number, to: number): number {
    let low = Infinity;
    for (let slot = from; ; slot = slot + 1 === slots ? 0 : slot + 1) {
      if (this.stale[slot]) this.refresh(slot);
      if (this.least[slot]! < low) low = this.least[slot]!;
      if (slot === to) return low;
    }
  }

  private refresh(slot: number): void {
    const { first } = this.rays;
    let low = Infinity;
    for (let ray = first[slot]!; ray < first[slot + 1]!; ray++) if (this.best[ray]! < low) low = this.best[ray]!;
    this.least[slot] = low;
    this.stale[slot] = 0;
  }
}

/** Rays between two turns (no running over north) against the wall a→b: 1 / distance on a ray d is (d × e) / moment. */
function fillWall(
  view: View,
  from: number,
  to: number,
  ex: number,
  ey: number,
  perMoment: number,
  once: boolean,
): void {
  const { turn, x, y, first, count } = view.rays;
  let ray = first[slotOf(from)]!;
  while (ray < count && turn[ray]! < from) ray++;
  for (; ray < count && turn[ray]! <= to; ray++) {
    const value = (x[ray]! * ey - y[ray]! * ex) * perMoment;
    if (value > view.best[ray]!) view.beat(ray, once ? Infinity : value);
  }
}

function lookAtWall(view: View, ax: number, ay: number, bx: number, by: number, rise: number, once: boolean): void {
  const ex = bx - ax;
  const ey = by - ay;
  const square = ex * ex + ey * ey;
  let moment = ax * by - ay * bx;
  if (moment * moment <= atWall * atWall * square) {
    // Seen edge-on, or the point stands at the wall: then the wall is put a hair away on its taller side.
    if (square === 0 || ax * ex + ay * ey > 0 || bx * ex + by * ey < 0) return;
    const length = Math.sqrt(square);
    const push = (moment / length + 3 * atWall) / length;
    const dx = -ey * push;
    const dy = ex * push;
    lookAtWall(view, ax + dx, ay + dy, bx + dx, by + dy, rise, once);
    return;
  }
  if (moment > 0) return;
  moment = rise / moment;
  const from = turnOf(ax, ay);
  const to = turnOf(bx, by);
  if (from <= to) fillWall(view, from, to, ex, ey, moment, once);
  else {
    fillWall(view, from, 4, ex, ey, moment, once);
    fillWall(view, 0, to, ex, ey, moment, once);
  }
}

function fillCrown(
  view: View,
  from: number,
  to: number,
  cx: number,
  cy: number,
  r2: number,
  rise: number,
  once: boolean,
): void {
  const { turn, x, y, first, count } = view.rays;
  let ray = first[slotOf(from)]!;
  while (ray < count && turn[ray]! < from) ray++;
  for (; ray < count && turn[ray]! <= to; ray++) {
    const across = x[ray]! * cy - y[ray]! * cx;
    const inner = r2 - across * across;
    const distance = x[ray]! * cx + y[ray]! * cy - (inner > 0 ? Math.sqrt(inner) : 0);
    const value = rise / distance;
    if (value > view.best[ray]!) view.beat(ray, once ? Infinity : value);
  }
}

/** Returns true when the point stands under the crown. */
function lookAtCrown(view: View, cx: number, cy: number, radius: number, rise: number, once: boolean): boolean {
  const r2 = radius * radius;
  const tangent2 = cx * cx + cy * cy - r2;
  if (tangent2 <= 0) return true;
  const tangent = Math.sqrt(tangent2);
  const from = turnOf(cx * tangent - cy * radius, cy * tangent + cx * radius);
  const to = turnOf(cx * tangent + cy * radius, cy * tangent - cx * radius);
  if (from <= to) fillCrown(view, from, to, cx, cy, r2, rise, once);
  else {
    fillCrown(view, from, 4, cx, cy, r2, rise, once);
    fillCrown(view, 0, to, cx, cy, r2, rise, once);
  }
  return false;
}

/** Whether anything in a cell could beat what its rays have met. */
function mayMatter(stand: Stand, cell: number, px: number, py: number, question: Question, view: View): boolean {
  const { grid, pad, tallestIn } = stand;
  const rise = tallestIn[cell]! - question.eye;
  if (rise <= 0) return false;
  const row = (cell / grid.columns) | 0;
  const half = grid.cell / 2;
  const dx = grid.x + (cell - row * grid.columns) * grid.cell + half - px;
  const dy = grid.y + row * grid.cell + half - py;
  const outX = Math.max(0, Math.abs(dx) - half);
  const outY = Math.max(0, Math.abs(dy) - half);
  const near = Math.sqrt(outX * outX + outY * outY) - pad;
  if (near <= 0) return true;
  // A circle around the cell and all that sticks out of it; slightly large, against rounding.
  const round = grid.cell * 0.7072 + pad * 1.000001;
  const tangent2 = dx * dx + dy * dy - round * round;
  if (tangent2 <= 0) return true;
  const tangent = Math.sqrt(tangent2);
  const from = slotOf(turnOf(dx * tangent - dy * round, dy * tangent + dx * round));
  const to = slotOf(turnOf(dx * tangent + dy * round, dy * tangent - dx * round));
  return (question.level ? 1 : rise) / near > view.lowest(from, to);
}

/** Looks at every obstacle of a cell; true when the point stands under one of its crowns. */
function lookAtCell(stand: Stand, cell: number, px: number, py: number, question: Question, view: View): boolean {
  const { grid, height, radius } = stand;
  const { ends, start } = grid;
  for (let k = start[cell]!; k < start[cell + 1]!; k++) {
    const lift = height[k]! - question.eye;
    if (lift <= 0) continue;
    const rise = question.level ? 1 : lift;
    const ax = ends[4 * k]! - px;
    const ay = ends[4 * k + 1]! - py;
    if (radius[k]! > 0) {
      if (lookAtCrown(view, ax, ay, radius[k]!, rise, question.once)) return true;
    } else lookAtWall(view, ax, ay, ends[4 * k + 2]! - px, ends[4 * k + 3]! - py, rise, question.once);
  }
  return false;
}

/** Looks around at all obstacles of a stand. Returns true when the point stands under one of its crowns. */
export function lookAround(
  stand: Stand,
  px: number,
  py: number,
  question: Question,
  view: View,
  cells: Int32Array,
): boolean {
  const { grid, pad, tallest } = stand;
  const lift = tallest - question.eye;
  if (lift <= 0) return false;
  const most = question.level ? 1 : lift;
  const column = columnAt(grid, px);
  const row = rowAt(grid, py);
  const last = lastRing(grid, column, row);
  for (let ring = grid.gap[row * grid.columns + column]!; ring <= last; ring++) {
    const near = ringDistance(grid, px, py, column, row, ring) + grid.reach - pad;
    if (near > 0 && most / near <= view.lowest(0, slots - 1)) return false;
    const count = ringCells(grid, column, row, ring, cells);
    for (let k = 0; k < count; k++) {
      if (!mayMatter(stand, cells[k]!, px, py, question, view)) continue;
      if (lookAtCell(stand, cells[k]!, px, py, question, view)) return true;
    }
  }
  return false;
}
