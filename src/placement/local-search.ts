/**
 * The good answer: simulated annealing over layouts (Kirkpatrick, Gelatt & Vecchi 1983, Science 220). A move puts a unit in and
 * takes out whatever stands in its way. Steps are counted, never timed, so the same seed gives the same layout on any machine.
 */
import { seededRandom } from '../geometry/random.ts';
import { ChosenSet } from './chosen-set.ts';
import { type Field, layoutIn } from './field.ts';
import { greedyLayout } from './greedy.ts';
import type { Layout } from './layout.ts';
import { mergeLayouts, patchLayout } from './patches.ts';
import { Rivals } from './rivals.ts';

export interface SearchOptions {
  readonly seed: number;
  /** Moves tried over all runs. */
  readonly moves: number;
  /** Independent runs the moves are split over, the best answer kept; 1 unless given. */
  readonly runs?: number;
  /** Asked every few thousand moves; true ends the search with the best layout so far. */
  readonly shouldStop?: () => boolean;
  readonly start?: Layout;
  /** Who conflicts with whom, where it was found before. */
  readonly rivals?: Rivals;
  /**
   * Sites that are chosen anew together at the end, where spacing leaves no room for all sites wanted: single exchanges soon find no
   * way out there. None unless given.
   */
  readonly patch?: number;
}

/**
 * First temperature where spacing leaves no room for all sites wanted, where it does, and when going on from a layout; middle and last
 * ones for all. Temperatures are shares of a chosen unit's mean weight. Then the share of the moves spent above the middle one: hot enough to
 * shift a whole packing where spacing binds, cold enough at the end where room is plenty (tuned on both kinds of site; ours).
 */
const hottest = { scarce: 0.25, plenty: 0.12, again: 0.05 };
const middle = 0.03;
const coldest = 0.004;
const hotShare = 0.7;
/** Share of the proposals drawn from all units where there are many; the rest lie near a chosen one. Few units are all drawn alike. */
const anywhere = 0.3;
const few = 1200;
const movesPerLook = 4096;
/** Sums kept through millions of moves are off by less than this. */
const drift = 1e-6;

/** The best layout found; never worse than greedy or `start`. */
export function searchLayout(field: Field, options: SearchOptions): Layout {
  const first = greedyLayout(field);
  let best = options.start && options.start.value > first.value ? options.start : first;
  if (field.count === 0 || best.chosen.length === 0) return best;
  const runs = Math.max(1, options.runs ?? 1);
  const rivals = options.rivals ?? new Rivals(field);
  const scarce = first.chosen.length < sitesWanted(field);
  const fresh = scarce ? hottest.scarce : hottest.plenty;
  const patch = scarce ? (options.patch ?? 0) : 0;
  for (let run = 0; run < runs; run++) {
    if (options.shouldStop?.()) break;
    // The first run goes on from the layout given, if one is; the others begin anew: runs that begin alike end alike.
    const again = run === 0 && options.start !== undefined;
    const plan = { heat: again ? hottest.again : fresh, moves: Math.ceil(options.moves / runs) };
    const found = anneal(field, rivals, again ? best : first, options.seed + run * 7919, plan, options.shouldStop);
    if (patch > 0) best = mergeLayouts(field, best, found);
    else if (found.value > best.value + 1e-9) best = found;
  }
  if (patch === 0) return best;
  return patchLayout(field, rivals, best, {
    seed: options.seed,
    sites: patch,
    shouldStop: options.shouldStop,
  });
}

/** All sites wanted that there are units for. */
function sitesWanted(field: Field): number {
  return field.problem.wanted.reduce(
    (sum, most, b) => sum + Math.min(most, field.bird.filter((x) => x === b).length),
    0,
  );
}

interface Cooling {
  readonly heat: number;
  readonly moves: number;
}

function anneal(
  field: Field,
  rivals: Rivals,
  start: Layout,
  seed: number,
  cooling: Cooling,
  shouldStop?: () => boolean,
): Layout {
  const { moves } = cooling;
  const random = seededRandom(seed);
  const set = new ChosenSet(field, rivals, start.chosen);
  const walk = new Proposals(field, set, random);
  const scale = start.value / start.chosen.length || 1;
  let best = start.value;
  let kept: number[] = [...start.chosen];
  let temperature = 0;
  for (let move = 0; move < moves; move++) {
    if (move % 256 === 0) temperature = scale * heatAt(cooling.heat, move / moves);
    if (move % movesPerLook === 0 && shouldStop?.()) break;
    const u = walk.next();
    if (u < 0) continue;
    const luck = random();
    if (hopeless(set.burden[u] - field.weight[u], luck, temperature)) continue;
    if (tryMove(field, set, u, -temperature * Math.log(luck + 1e-300), random) && set.value > best + 1e-9) {
      best = set.value;
      kept = set.list();
    }
  }
  return polish(field, rivals, kept);
}

/** Whether a move that loses so much is surely not let through: −ln r is at most 1 / r − 1. Spares a search and a logarithm. */
function hopeless(loss: number, luck: number, temperature: number): boolean {
  return loss > drift && luck * (loss - drift) > temperature * (1 - luck);
}

/** Temperature when `done` (0–1) of the moves are made. */
function heatAt(first: number, done: number): number {
  return done < hotShare
    ? first * (middle / first) ** (done / hotShare)
    : middle * (coldest / middle) ** ((done - hotShare) / (1 - hotShare));
}

/** Puts `u` in when the weight lost is at most the gain plus `allowance`. */
function tryMove(field: Field, set: ChosenSet, u: number, allowance: number, random: () => number): boolean {
  const limit = field.weight[u] + allowance;
  let loss = set.findBlockers(u, limit);
  if (loss > limit) return false;
  const bird = field.bird[u];
  const peers = set.perBird[bird];
  let freed = 0;
  for (let k = 0; k < set.blockerCount; k++) if (field.bird[set.blockers[k]] === bird) freed++;
  if (peers.length - freed >= field.problem.wanted[bird]) {
    const extra = freed > 0 || peers.length === 0 ? -1 : leaver(field, peers, random);
    if (extra < 0) return false;
    loss += field.weight[extra];
    if (loss > limit) return false;
    set.blockers[set.blockerCount++] = extra;
  }
  for (let k = 0; k < set.blockerCount; k++) set.remove(set.blockers[k]);
  set.add(u);
  return true;
}

/** Who leaves when the bird has all its sites: the lightest of four drawn, never a fixed one; −1 when all drawn are fixed. */
function leaver(field: Field, peers: readonly number[], random: () => number): number {
  let found = -1;
  for (let k = 0; k < 4; k++) {
    const v = peers[Math.floor(random() * peers.length)];
    if (!field.problem.units[v].fixed && (found < 0 || field.weight[v] < field.weight[found])) found = v;
  }
  return found;
}

/** Which unit to try next: any, or one near a chosen unit. */
class Proposals {
  private readonly field: Field;
  private readonly set: ChosenSet;
  private readonly random: () => number;

  constructor(field: Field, set: ChosenSet, random: () => number) {
    this.field = field;
    this.set = set;
    this.random = random;
  }

  /** A unit not chosen, or −1 when the draw missed. */
  next(): number {
    const { random, set, field } = this;
    const u = field.count <= few || random() < anywhere ? Math.floor(random() * field.count) : this.near();
    return u < 0 || set.inside[u] || field.problem.units[u].fixed ? -1 : u;
  }

  private near(): number {
    const { random, set, field } = this;
    const { grid } = field;
    const peers = set.perBird[Math.floor(random() * field.birds)];
    if (peers.length === 0) return -1;
    const v = peers[Math.floor(random() * peers.length)];
    const radius = field.reach * random() ** 2;
    const angle = random() * 2 * Math.PI;
    const column = Math.floor((field.x[v] + radius * Math.cos(angle) - grid.minX) / grid.cell);
    const row = Math.floor((field.y[v] + radius * Math.sin(angle) - grid.minY) / grid.cell);
    if (column < 0 || row < 0 || column >= grid.columns || row >= grid.rows) return -1;
    const from = grid.starts[row * grid.columns + column];
    const size = grid.starts[row * grid.columns + column + 1] - from;
    return size === 0 ? -1 : grid.members[from + Math.floor(random() * size)];
  }
}

/** Every single exchange that gains is made until none is left. */
function polish(field: Field, rivals: Rivals, chosen: readonly number[]): Layout {
  const set = new ChosenSet(field, rivals, chosen);
  for (let gained = true; gained; ) {
    gained = false;
    for (let u = 0; u < field.count; u++) {
      if (set.inside[u] || field.problem.units[u].fixed) continue;
      const before = set.value;
      if (exchange(field, set, u)) gained ||= set.value > before + 1e-9;
    }
  }
  return layoutIn(field, set.list());
}

/** Puts `u` in when that alone gains; the lightest unit of the bird leaves when all its sites are taken. */
function exchange(field: Field, set: ChosenSet, u: number): boolean {
  const limit = field.weight[u] - 1e-9;
  if (set.burden[u] > limit + drift) return false;
  let loss = set.findBlockers(u, limit);
  if (loss > limit) return false;
  const bird = field.bird[u];
  let freed = 0;
  for (let k = 0; k < set.blockerCount; k++) if (field.bird[set.blockers[k]] === bird) freed++;
  if (set.perBird[bird].length - freed >= field.problem.wanted[bird]) {
    let lightest = -1;
    for (const v of set.perBird[bird]) {
      if (!field.problem.units[v].fixed && (lightest < 0 || field.weight[v] < field.weight[lightest])) lightest = v;
    }
    if (lightest < 0 || freed > 0) return false;
    loss += field.weight[lightest];
    if (loss > limit) return false;
    set.blockers[set.blockerCount++] = lightest;
  }
  for (let k = 0; k < set.blockerCount; k++) set.remove(set.blockers[k]);
  set.add(u);
  return true;
}
