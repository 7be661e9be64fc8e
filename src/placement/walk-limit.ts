/** The best sites a walk of a given length can take in: a round and a choice made together (an orienteering problem, solved by taking a round apart and building it up again). */
import type { Point } from '../geometry/point.ts';
import { seededRandom } from '../geometry/random.ts';
import type { Field } from './field.ts';
import { conflict } from './field.ts';
import type { Layout } from './layout.ts';
import { layoutOf } from './layout.ts';

export interface WalkWish {
  /** Metres the round may be, as the crow flies from stop to stop. */
  readonly limit: number;
  /** Where it starts and ends; null: from the first site to the last. */
  readonly start: Point | null;
  readonly seed: number;
  /** Times the round is taken apart; 400 unless given. */
  readonly turns?: number;
  readonly shouldStop?: () => boolean;
}

/** Units looked at when a round is built up: the best of a draw. */
const mostLooked = 120;

/** The best layout found whose round is within the limit, beginning from `free`, the best without one. Standing units stay, even beyond the limit. */
export function layoutWithinWalk(field: Field, free: Layout, wish: WalkWish): Layout {
  const walk = new WalkSearch(field, wish);
  walk.begin(free);
  let best = walk.layout();
  for (let turn = 0; turn < (wish.turns ?? 400); turn++) {
    if (turn % 16 === 0 && wish.shouldStop?.()) break;
    const saved = walk.order.slice();
    const before = walk.layout().value;
    walk.takeApart();
    walk.buildUp();
    const now = walk.layout();
    if (now.value > best.value + 1e-9) best = now;
    if (now.value < before - 1e-9) walk.order = saved;
  }
  return best;
}

/** Metres of the shortest round found through the units of a layout, as the crow flies. */
export function crowMetres(field: Field, layout: Layout, start: Point | null): number {
  const walk = new WalkSearch(field, { limit: Infinity, start, seed: 1 });
  walk.begin(layout);
  return walk.metres();
}

class WalkSearch {
  /** Units in walking order. */
  order: number[] = [];
  private readonly field: Field;
  private readonly wish: WalkWish;
  private readonly random: () => number;
  private readonly pool: number[];

  constructor(field: Field, wish: WalkWish) {
    this.field = field;
    this.wish = wish;
    this.random = seededRandom(wish.seed);
    const { units } = field.problem;
    this.pool = units.flatMap((unit, u) => (unit.fixed ? [] : [u]));
  }

  begin(free: Layout): void {
    for (const u of free.chosen) this.order.splice(this.cheapestAt(u).at, 0, u);
    this.shorten();
    while (this.metres() > this.wish.limit && this.dropWorst());
    this.buildUp();
  }

  layout(): Layout {
    return layoutOf(this.field.problem, this.order);
  }

  private x(u: number): number {
    return u < 0 ? this.wish.start!.x : this.field.x[u];
  }

  private y(u: number): number {
    return u < 0 ? this.wish.start!.y : this.field.y[u];
  }

  /** −1 stands for the start; null where the walk has a free end. */
  private leg(a: number | null, b: number | null): number {
    return a === null || b === null ? 0 : Math.hypot(this.x(a) - this.x(b), this.y(a) - this.y(b));
  }

  private at(k: number): number | null {
    if (k >= 0 && k < this.order.length) return this.order[k];
    return this.wish.start ? -1 : null;
  }

  metres(): number {
    if (this.order.length === 0) return 0;
    let sum = 0;
    for (let k = 0; k <= this.order.length; k++) sum += this.leg(this.at(k - 1), this.at(k));
    return sum;
  }

  private cheapestAt(u: number): { at: number; more: number } {
    let best = { at: 0, more: Infinity };
    for (let k = 0; k <= this.order.length; k++) {
      const [before, after] = [this.at(k - 1), this.at(k)];
      const more = this.leg(before, u) + this.leg(u, after) - this.leg(before, after);
      if (more < best.more) best = { at: k, more };
    }
    return best;
  }

  /** Plain 2-opt until nothing gains. */
  private shorten(): void {
    for (let gained = true; gained; ) {
      gained = false;
      for (let i = 0; i < this.order.length - 1; i++) {
        for (let j = i + 1; j < this.order.length; j++) {
          const old = this.leg(this.at(i - 1), this.at(i)) + this.leg(this.at(j), this.at(j + 1));
          const now = this.leg(this.at(i - 1), this.at(j)) + this.leg(this.at(i), this.at(j + 1));
          if (now >= old - 1e-9) continue;
          this.order.splice(i, j - i + 1, ...this.order.slice(i, j + 1).reverse());
          gained = true;
        }
      }
    }
  }

  /** Takes out the unit that is worth least for the metres it costs; false when only standing ones are left. */
  private dropWorst(): boolean {
    let worst = -1;
    let least = Infinity;
    this.order.forEach((u, k) => {
      if (this.field.problem.units[u].fixed) return;
      const [before, after] = [this.at(k - 1), this.at(k + 1)];
      const saved = this.leg(before, u) + this.leg(u, after) - this.leg(before, after);
      const worth = this.field.weight[u] / Math.max(0.1, saved);
      if (worth < least) [worst, least] = [k, worth];
    });
    if (worst >= 0) this.order.splice(worst, 1);
    return worst >= 0;
  }

  /** Takes a stretch of the round out, or a few units here and there. */
  takeApart(): void {
    const { random } = this;
    const length = 1 + Math.floor(random() * Math.max(1, this.order.length * 0.35));
    const from = Math.floor(random() * this.order.length);
    const stretch = random() < 0.6;
    this.order = this.order.filter((u, k) => {
      if (this.field.problem.units[u].fixed) return true;
      return stretch ? k < from || k >= from + length : random() > length / this.order.length;
    });
  }

  /** Puts in what is worth most for the metres it costs, while it fits. */
  buildUp(): void {
    const { random, field } = this;
    const look = this.pool.length <= mostLooked ? this.pool : this.draw();
    const noise = new Map(look.map((u) => [u, 0.6 + 0.8 * random()]));
    const left = [...field.problem.wanted];
    for (const u of this.order) left[field.bird[u]]--;
    for (let room = this.wish.limit - this.metres(); ; ) {
      let best = { u: -1, at: 0, more: 0, worth: 0 };
      for (const u of look) {
        if (left[field.bird[u]] <= 0 || this.blocked(u)) continue;
        const { at, more } = this.cheapestAt(u);
        const worth = (field.weight[u] * noise.get(u)!) / Math.max(5, more);
        if (more <= room && worth > best.worth) best = { u, at, more, worth };
      }
      if (best.u < 0) break;
      this.order.splice(best.at, 0, best.u);
      left[field.bird[best.u]]--;
      this.shorten();
      room = this.wish.limit - this.metres();
    }
  }

  private blocked(u: number): boolean {
    return this.order.some((v) => v === u || conflict(this.field, u, v));
  }

  /** A random draw from the pool, the heavier half of it. */
  private draw(): number[] {
    const { random, pool, field } = this;
    const drawn = new Set<number>();
    for (let k = 0; k < mostLooked * 2; k++) drawn.add(pool[Math.floor(random() * pool.length)]);
    return [...drawn].sort((a, b) => field.weight[b] - field.weight[a] || a - b).slice(0, mostLooked);
  }
}
