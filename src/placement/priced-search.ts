/** A deep search among the units whose prices speak for them: the best layout is nearly always made of few. */
import type { Field } from './field.ts';
import { fieldOf } from './field.ts';
import type { Layout } from './layout.ts';
import { layoutOf } from './layout.ts';
import { searchLayout } from './local-search.ts';

/** Units per site and at most, moves, runs where spacing leaves no room for all sites and where it does (tuned on both), and seed. */
const pricedPerSite = 10;
const mostSearched = 1500;
const searchMoves = 2_000_000;
const searchRuns = { scarce: 8, plenty: 12 };
const searchPatch = 12;
const searchSeed = 17;

export interface PricedSearch {
  /** Units in question and the reduced cost of each. */
  readonly alive: Int32Array;
  readonly reducedCost: Float64Array;
  /** Seconds of the whole proof: a longer proof affords a longer search, told by the seconds allowed and not by the clock. */
  readonly seconds: number;
  readonly shouldStop?: () => boolean;
}

/** The better of `layout` and what is found among the best-priced units; all are searched where they are few. */
export function searchPriced(field: Field, layout: Layout, options: PricedSearch): Layout {
  const { alive, reducedCost } = options;
  const ranked = [...alive.keys()].sort((p, q) => reducedCost[q] - reducedCost[p] || p - q);
  let best = layout;
  for (const size of [pricedPerSite * Math.max(20, layout.chosen.length), mostSearched]) {
    const found = searchIn(
      field,
      best,
      ranked.slice(0, size).map((k) => alive[k]),
      options,
    );
    if (found.value > best.value) best = found;
    if (ranked.length <= size) break;
  }
  return best;
}

function searchIn(field: Field, layout: Layout, priced: readonly number[], options: PricedSearch): Layout {
  const { seconds, shouldStop } = options;
  const chosen = new Set(layout.chosen);
  const units = [...new Set([...priced, ...chosen])].sort((a, b) => a - b);
  const turns = Math.max(1, Math.min(3, Math.floor(seconds / 10)));
  const wanted = field.problem.wanted.reduce((sum, sites) => sum + sites, 0);
  const runs = layout.chosen.length < wanted ? searchRuns.scarce : searchRuns.plenty;
  const small = fieldOf({ ...field.problem, units: units.map((u) => field.problem.units[u]) });
  const found = searchLayout(small, {
    seed: searchSeed,
    moves: searchMoves * turns,
    runs: runs * turns,
    patch: searchPatch,
    shouldStop,
    start: { chosen: units.flatMap((u, k) => (chosen.has(u) ? [k] : [])), value: layout.value },
  });
  return layoutOf(
    field.problem,
    found.chosen.map((k) => units[k]),
  );
}
