/**
 * Betters a layout where single exchanges cannot: the sites nearest a place are freed and chosen anew, exactly; and the sites of two
 * layouts are put together to the best of both. Both ask for sets without conflicts among few units. Seeded, no clock.
 */
import { seededRandom } from '../geometry/random.ts';
import { conflict, type Field, layoutIn } from './field.ts';
import { HeaviestSet, mostNodes } from './heaviest-set.ts';
import type { Layout } from './layout.ts';
import type { Rivals } from './rivals.ts';

/** Branchings one question may take; its answer is good even when they run out. */
const budget = 20_000;
/** Patches tried in a row without gain before it ends. */
const idle = 20;

export interface Patching {
  readonly seed: number;
  /** Sites freed at a time. */
  readonly sites: number;
  readonly shouldStop?: () => boolean;
}

/** The layout with its patches chosen anew as long as that gains. */
export function patchLayout(field: Field, rivals: Rivals, layout: Layout, options: Patching): Layout {
  const random = seededRandom(options.seed);
  const tool = new HeaviestSet();
  const { units } = field.problem;
  let best = layout;
  for (let tries = 0; tries < idle && !options.shouldStop?.(); tries++) {
    const center = Math.floor(random() * field.count);
    const metres = (u: number) => (field.x[u] - field.x[center]) ** 2 + (field.y[u] - field.y[center]) ** 2;
    const free = best.chosen.filter((u) => !units[u].fixed).sort((p, q) => metres(p) - metres(q) || p - q);
    const freed = new Set(free.slice(0, options.sites));
    const found = heaviest(field, tool, roomBeside(field, rivals, best, freed), worth(field, freed));
    const next = found && [...best.chosen.filter((u) => !freed.has(u)), ...found];
    if (!next || !withinWanted(field, next)) continue;
    best = layoutIn(field, next);
    tries = -1;
  }
  return best;
}

/** The best layout of the units of two: each may be better in another part of the site. */
export function mergeLayouts(field: Field, a: Layout, b: Layout): Layout {
  const better = b.value > a.value ? b : a;
  const { units } = field.problem;
  const standing = better.chosen.filter((u) => units[u].fixed);
  const either = [...new Set([...a.chosen, ...b.chosen])].filter((u) => !units[u].fixed);
  const least = better.value - worth(field, standing);
  const found = heaviest(field, new HeaviestSet(), either, least);
  const next = found && [...standing, ...found];
  return next && withinWanted(field, next) ? layoutIn(field, next) : better;
}

/** Units that could stand beside the sites of the layout that stay. */
function roomBeside(field: Field, rivals: Rivals, layout: Layout, freed: ReadonlySet<number>): number[] {
  const taken = new Uint8Array(field.count);
  for (const u of layout.chosen) {
    if (freed.has(u)) continue;
    taken[u] = 1;
    for (const v of rivals.of(u)) taken[v] = 1;
  }
  const room: number[] = [];
  for (let u = 0; u < field.count; u++) {
    if (taken[u] === 0 && field.weight[u] > 0 && !field.problem.units[u].fixed) room.push(u);
  }
  return room;
}

/** The heaviest set of the units without conflicts, when it outweighs `floor` and can be found. */
function heaviest(field: Field, tool: HeaviestSet, units: readonly number[], floor: number): readonly number[] | null {
  const n = units.length;
  if (n === 0 || n > mostNodes) return null;
  const words = (n + 31) >> 5;
  const bits = new Int32Array(n * words);
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      if (!conflict(field, units[i], units[j])) continue;
      bits[i * words + (j >> 5)] |= 1 << (j & 31);
      bits[j * words + (i >> 5)] |= 1 << (i & 31);
    }
  }
  const weight = units.map((u) => field.weight[u]);
  tool.solve(bits, words, [...units.keys()], weight, floor + 1e-9, budget);
  return tool.found.length > 0 ? tool.found.map((k) => units[k]) : null;
}

function worth(field: Field, units: Iterable<number>): number {
  let sum = 0;
  for (const u of units) sum += field.weight[u];
  return sum;
}

function withinWanted(field: Field, chosen: readonly number[]): boolean {
  const counts = new Int32Array(field.birds);
  for (const u of chosen) counts[field.bird[u]]++;
  return field.problem.wanted.every((most, b) => counts[b] <= most);
}
