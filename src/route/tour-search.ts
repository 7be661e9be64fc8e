/**
 * A round made shorter step by step: 2-opt and Or-opt moves over neighbour lists (Croes 1958; Or 1976), kicked by small double
 * bridges (Martin, Otto & Felten 1991) and allowed to worsen a little while it cools. Kicks are counted, never timed.
 */
import { seededRandom } from '../geometry/random.ts';
import type { CostMatrix } from './matrix.ts';
import { roundCost } from './matrix.ts';
import { nearestNeighbour, neighbourLists } from './near-places.ts';

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
    const change = tour.doubleBridge(random) - tour.descend();
    const allowed = -heat * (1 - k / kicks) ** 2 * Math.log(random() + 1e-300);
    if (change > allowed) {
      tour.restore(saved);
      continue;
    }
    current += change;
    saved.set(tour.order);
    if (current < best - rounding * best) {
      best = current;
      kept.set(tour.order);
    }
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
  /** Neighbours of place c, nearest first: `keep` of them from c × keep. */
  private readonly near: Int32Array;
  private readonly keep: number;
  private readonly queue: Int32Array;
  private readonly queued: Uint8Array;
  private waiting = 0;
  /** By how much the moves of this descent made the round shorter. */
  private gained = 0;
  /** Places on their way from one stretch of the order to another. */
  private readonly moved: Int32Array;
  private readonly least: number;

  constructor(matrix: CostMatrix, start: readonly number[]) {
    this.size = matrix.size;
    this.cost = matrix.cost;
    this.order = Int32Array.from(start);
    this.place = new Int32Array(this.size);
    this.keep = this.size <= fullListsUpTo ? this.size - 1 : fewNeighbours;
    this.near = neighbourLists(matrix, this.keep);
    this.queue = new Int32Array(this.size);
    this.queued = new Uint8Array(this.size);
    this.moved = new Int32Array(this.size);
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

  /** Improves around every waiting place until none waits; how much shorter the round is then. */
  descend(): number {
    this.gained = 0;
    while (this.waiting > 0) {
      const c = this.queue[--this.waiting];
      this.queued[c] = 0;
      while (this.twoOpt(c) || this.orOpt(c));
    }
    return this.gained;
  }

  /** Two neighbouring short stretches change places; how much longer the round is then. */
  doubleBridge(random: () => number): number {
    const { size, order, cost, moved } = this;
    const most = Math.max(1, Math.min(longestKick, Math.floor((size - 2) / 3)));
    const first = 1 + Math.floor(random() * most);
    const second = 1 + Math.floor(random() * most);
    const from = Math.floor(random() * size);
    const at = (k: number) => order[from + k < size ? from + k : from + k - size];
    const [before, after] = [at(0), at(first + second + 1)];
    const [a, b, c, d] = [at(1), at(first), at(first + 1), at(first + second)];
    for (let k = 0; k < second; k++) moved[k] = at(1 + first + k);
    for (let k = 0; k < first; k++) moved[second + k] = at(1 + k);
    for (let k = 1; k <= first + second; k++) this.put(from + k < size ? from + k : from + k - size, moved[k - 1]);
    this.wake(before);
    this.wake(c);
    this.wake(d);
    this.wake(a);
    this.wake(b);
    this.wake(after);
    const now = cost[before * size + c] + cost[d * size + a] + cost[b * size + after];
    return now - cost[before * size + a] - cost[b * size + c] - cost[d * size + after];
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
      const { near, least } = this;
      for (let n = c * this.keep; n < (c + 1) * this.keep; n++) {
        const e = near[n];
        const gain = leg - cost[c * size + e];
        if (gain <= least) break;
        const f = side === 0 ? this.next(e) : this.previous(e);
        const all = gain + cost[e * size + f] - cost[after * size + f];
        if (all <= least) continue;
        this.gained += all;
        if (side === 0) this.reverse(after, e);
        else this.reverse(c, f);
        this.wake(c);
        this.wake(after);
        this.wake(e);
        this.wake(f);
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
    const { near, least } = this;
    if (freed <= least) return false;
    for (let n = c * this.keep; n < (c + 1) * this.keep; n++) {
      const e = near[n];
      const gain = freed - cost[c * size + e];
      if (gain <= least) break;
      if (this.within(e, c, end, forward)) continue;
      for (let side = 0; side < 2; side++) {
        const f = side === 0 ? this.next(e) : this.previous(e);
        const leg = (e === before && f === c) || (e === after && f === end);
        if (leg || this.within(f, c, end, forward)) continue;
        const all = gain + cost[e * size + f] - cost[end * size + f];
        if (all <= least) continue;
        this.gained += all;
        this.relink(c, end, e, f, forward);
        this.wake(c);
        this.wake(end);
        this.wake(before);
        this.wake(after);
        this.wake(e);
        this.wake(f);
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
    const segment = this.moved;
    const eFirst = this.next(e) === f;
    const target = eFirst ? e : f;
    // In the new order `target` comes first, then the stretch, then the other of e and f.
    const turned = eFirst !== (first === c);
    for (let k = 0; k < length; k++) segment[turned ? length - 1 - k : k] = order[(place[first] + k) % size];
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
