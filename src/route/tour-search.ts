/**
 * A round made shorter step by step: 2-opt and Or-opt moves over neighbour lists (Croes 1958; Or 1976), kicked by small double
 * bridges (Martin, Otto & Felten 1991) and allowed to worsen a little while it cools. Kicks are counted, never timed.
 */
import { seededRandom } from '../geometry/random.ts';
import type { CostMatrix } from './matrix.ts';
import { roundCost } from './matrix.ts';

/** Up to this many places every other place is tried as a neighbour; beyond it only the nearest `fewNeighbours`. */
const fullListsUpTo = 150;
const fewNeighbours = 14;
/** Most places moved together by an Or-opt move. */
const longestSegment = 3;
/** Most places in each of the two stretches a kick swaps, and the first temperature as a share of the mean leg (tuned on random rounds of 100 and 150). */
const longestKick = 30;
const hottest = 0.25;
/** Gains below this share of the mean leg are rounding. */
const rounding = 1e-10;

/** Nearest first, walking on to the nearest place not yet visited. */
export function nearestNeighbour(matrix: CostMatrix, first = 0): number[] {
  const { size, cost } = matrix;
  const left = new Set(Array.from({ length: size }, (_, k) => k));
  const order = [first];
  left.delete(first);
  while (left.size > 0) {
    const here = order[order.length - 1];
    let next = -1;
    for (const k of left) if (next < 0 || cost[here * size + k] < cost[here * size + next]) next = k;
    order.push(next);
    left.delete(next);
  }
  return order;
}

/** A closed order through all places, beginning at place 0. `kicks` = 0 gives the plain descent from nearest neighbour. */
export function searchTour(matrix: CostMatrix, seed: number, kicks: number): number[] {
  const { size } = matrix;
  if (size <= 3) return Array.from({ length: size }, (_, k) => k);
  const tour = new TourSearch(matrix, nearestNeighbour(matrix));
  tour.descendAll();
  return size < 8 ? fromFirst(tour.order) : fromFirst(kick(tour, matrix, seededRandom(seed), kicks));
}

/** The order after all kicks, best seen. */
function kick(tour: TourSearch, matrix: CostMatrix, random: () => number, kicks: number): Int32Array {
  let current = roundCost(matrix, tour.order);
  let best = current;
  const kept = tour.order.slice();
  const saved = tour.order.slice();
  const heat = (hottest * current) / matrix.size;
  for (let k = 0; k < kicks; k++) {
    tour.doubleBridge(random);
    tour.descend();
    const now = roundCost(matrix, tour.order);
    const allowed = current - heat * (1 - k / kicks) ** 2 * Math.log(random() + 1e-300);
    if (now <= allowed) {
      current = now;
      saved.set(tour.order);
      if (now < best - rounding) {
        best = now;
        kept.set(tour.order);
      }
    } else tour.restore(saved);
  }
  return kept;
}

/** Turned so that place 0 comes first and its lower-numbered neighbour second: one order for each round. */
function fromFirst(order: ArrayLike<number>): number[] {
  const list = Array.from(order);
  const at = list.indexOf(0);
  const turned = [...list.slice(at), ...list.slice(0, at)];
  return turned[1] <= turned[turned.length - 1] ? turned : [0, ...turned.slice(1).reverse()];
}

/** One round under search, with the queue of places whose surroundings changed. */
class TourSearch {
  readonly order: Int32Array;
  private readonly place: Int32Array;
  private readonly size: number;
  private readonly cost: Float64Array;
  private readonly near: Int32Array[];
  private readonly queue: Int32Array;
  private readonly queued: Uint8Array;
  private waiting = 0;
  private readonly least: number;

  constructor(matrix: CostMatrix, start: readonly number[]) {
    this.size = matrix.size;
    this.cost = matrix.cost;
    this.order = Int32Array.from(start);
    this.place = new Int32Array(this.size);
    this.near = neighbourLists(matrix);
    this.queue = new Int32Array(this.size);
    this.queued = new Uint8Array(this.size);
    this.least = (roundCost(matrix, start) / this.size) * rounding;
    this.restore(this.order);
  }

  restore(order: Int32Array): void {
    if (order !== this.order) this.order.set(order);
    for (let k = 0; k < this.size; k++) this.place[this.order[k]] = k;
  }

  descendAll(): void {
    for (let k = 0; k < this.size; k++) this.wake(this.order[k]);
    this.descend();
  }

  /** Improves around every waiting place until none waits. */
  descend(): void {
    while (this.waiting > 0) {
      const c = this.queue[--this.waiting];
      this.queued[c] = 0;
      while (this.twoOpt(c) || this.orOpt(c));
    }
  }

  /** Two neighbouring short stretches change places. */
  doubleBridge(random: () => number): void {
    const { size, order } = this;
    const most = Math.max(1, Math.min(longestKick, Math.floor((size - 2) / 3)));
    const first = 1 + Math.floor(random() * most);
    const second = 1 + Math.floor(random() * most);
    const from = Math.floor(random() * size);
    const moved: number[] = [];
    for (let k = 0; k < second; k++) moved.push(order[(from + 1 + first + k) % size]);
    for (let k = 0; k < first; k++) moved.push(order[(from + 1 + k) % size]);
    for (let k = 0; k < moved.length; k++) this.put((from + 1 + k) % size, moved[k]);
    for (const at of [
      from,
      from + 1,
      from + second,
      from + second + 1,
      from + first + second,
      from + first + second + 1,
    ]) {
      this.wake(order[at % size]);
    }
  }

  private wake(c: number): void {
    if (this.queued[c]) return;
    this.queued[c] = 1;
    this.queue[this.waiting++] = c;
  }

  private put(at: number, c: number): void {
    this.order[at] = c;
    this.place[c] = at;
  }

  private next(c: number): number {
    const at = this.place[c] + 1;
    return this.order[at === this.size ? 0 : at];
  }

  private previous(c: number): number {
    const at = this.place[c];
    return this.order[at === 0 ? this.size - 1 : at - 1];
  }

  private twoOpt(c: number): boolean {
    const { size, cost } = this;
    for (let side = 0; side < 2; side++) {
      const after = side === 0 ? this.next(c) : this.previous(c);
      const leg = cost[c * size + after];
      for (const e of this.near[c]) {
        const gain = leg - cost[c * size + e];
        if (gain <= this.least) break;
        const f = side === 0 ? this.next(e) : this.previous(e);
        if (gain + cost[e * size + f] - cost[after * size + f] <= this.least) continue;
        if (side === 0) this.reverse(after, e);
        else this.reverse(c, f);
        for (const k of [c, after, e, f]) this.wake(k);
        return true;
      }
    }
    return false;
  }

  /** Reverses the stretch from place `a` on to place `b`, or the rest of the round, whichever is shorter. */
  private reverse(a: number, b: number): void {
    const { size } = this;
    let i = this.place[a];
    let j = this.place[b];
    let length = j - i + (j < i ? size : 0) + 1;
    if (length * 2 > size) {
      const start = j + 1 === size ? 0 : j + 1;
      j = i === 0 ? size - 1 : i - 1;
      i = start;
      length = size - length;
    }
    for (let k = length >> 1; k > 0; k--) {
      const left = this.order[i];
      this.put(i, this.order[j]);
      this.put(j, left);
      i = i + 1 === size ? 0 : i + 1;
      j = j === 0 ? size - 1 : j - 1;
    }
  }

  /** Moves the stretch of up to three places that begins at `c` next to a place near `c`, either way round. */
  private orOpt(c: number): boolean {
    for (let side = 0; side < 2; side++) {
      let end = c;
      for (let length = 1; length <= longestSegment && length < this.size - 2; length++) {
        if (length > 1) end = side === 0 ? this.next(end) : this.previous(end);
        if (this.moveSegment(c, end, side === 0)) return true;
      }
    }
    return false;
  }

  private moveSegment(c: number, end: number, forward: boolean): boolean {
    const { size, cost } = this;
    const before = forward ? this.previous(c) : this.next(c);
    const after = forward ? this.next(end) : this.previous(end);
    const freed = cost[before * size + c] + cost[end * size + after] - cost[before * size + after];
    if (freed <= this.least) return false;
    for (const e of this.near[c]) {
      const gain = freed - cost[c * size + e];
      if (gain <= this.least) break;
      if (this.within(e, c, end, forward)) continue;
      for (const f of [this.next(e), this.previous(e)]) {
        const leg = (e === before && f === c) || (e === after && f === end);
        if (leg || this.within(f, c, end, forward)) continue;
        if (gain + cost[e * size + f] - cost[end * size + f] <= this.least) continue;
        this.relink(c, end, e, f, forward);
        for (const k of [c, end, before, after, e, f]) this.wake(k);
        return true;
      }
    }
    return false;
  }

  private within(k: number, c: number, end: number, forward: boolean): boolean {
    const from = this.place[forward ? c : end];
    const to = this.place[forward ? end : c];
    const at = this.place[k];
    return from <= to ? at >= from && at <= to : at >= from || at <= to;
  }

  /** Takes c … end out and puts it between e and f, c beside e: the places between are shifted along. */
  private relink(c: number, end: number, e: number, f: number, forward: boolean): void {
    const { size, order, place } = this;
    const first = forward ? c : end;
    const last = forward ? end : c;
    const length = ((place[last] - place[first] + size) % size) + 1;
    const segment: number[] = [];
    for (let k = 0; k < length; k++) segment.push(order[(place[first] + k) % size]);
    const eFirst = this.next(e) === f;
    const target = eFirst ? e : f;
    // In the new order `target` comes first, then the stretch, then the other of e and f.
    const headIsC = segment[0] === c;
    if (eFirst !== headIsC) segment.reverse();
    const gapAfter = (place[target] - place[last] + size) % size;
    const gapBefore = (place[first] - place[target] + size) % size;
    let at = place[first];
    if (gapAfter < gapBefore) {
      for (let k = 0; k < gapAfter; k++) {
        this.put(at, order[(at + length) % size]);
        at = (at + 1) % size;
      }
    } else {
      at = (place[last] + 0) % size;
      for (let k = 1; k < gapBefore; k++) {
        this.put(at, order[(at - length + size) % size]);
        at = (at - 1 + size) % size;
      }
      at = (at - length + 1 + size) % size;
    }
    for (let k = 0; k < length; k++) this.put((at + k) % size, segment[k]);
  }
}

function neighbourLists(matrix: CostMatrix): Int32Array[] {
  const { size, cost } = matrix;
  const keep = size <= fullListsUpTo ? size - 1 : fewNeighbours;
  return Array.from({ length: size }, (_, c) => {
    const others = Array.from({ length: size }, (_, k) => k).filter((k) => k !== c);
    return Int32Array.from(others.sort((a, b) => cost[c * size + a] - cost[c * size + b] || a - b).slice(0, keep));
  });
}
