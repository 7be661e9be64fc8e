/** Made-up seasons for demos and tests: seeded, and every visit labeled as invented. */

import type { BirdGuide } from '../birds/guide.ts';
import { seededRandom } from '../geometry/random.ts';
import { dateOf, dayOf } from './days.ts';
import { localSeason } from './season-year.ts';
import { makeVisit, type Trouble, type Visit, type VisitState } from './visit.ts';

export interface InventBox {
  readonly post: string;
  readonly number: number;
  readonly bird: BirdGuide;
  /** Score 0–1: better posts are used more and lose fewer nests. */
  readonly score: number;
}

export interface InventPlan {
  readonly boxes: readonly InventBox[];
  readonly firstYear: number;
  readonly years: number;
  readonly seed: number;
  /** Names of the walkers, in turn; "Invented walker 1" when none are given. */
  readonly walkers?: readonly string[];
  /** How much the score moves the chances: 0 not at all, 1 as built. For tests of what tells success from failure. */
  readonly effect?: number;
  /** South of the equator: the season lies half a year later. */
  readonly south?: boolean;
}

/** `device` of every invented visit. */
export const inventedDevice = 'invented';

/** Whether a visit came from this generator. */
export function isInvented(visit: Visit): boolean {
  return visit.device === inventedDevice;
}

type Random = () => number;

/** One invented attempt in day numbers. */
interface Made {
  readonly build: number;
  readonly first: number;
  readonly clutch: number;
  readonly hatch: number;
  readonly fledge: number;
  readonly hatched: number;
  /** Day it is lost, or null. */
  readonly lost: number | null;
  readonly cause: Trouble;
}

const between = (random: Random, [low, high]: readonly [number, number]) =>
  low + Math.floor(random() * (high - low + 1));
const pick = <T>(random: Random, items: readonly T[]): T => items[Math.floor(random() * items.length)]!;
const lossCauses: readonly Trouble[] = [
  'predator-sign',
  'predator-sign',
  'competitor',
  'cold',
  'heat',
  'abandoned',
  'parasites',
];

function makeNest(random: Random, bird: BirdGuide, start: number, lossChance: number): Made {
  const build = start;
  const first = build + between(random, bird.clock.build?.value ?? [5, 10]);
  const clutch = between(random, bird.eggs.count.value);
  const every = bird.clock.layEvery?.value[1] ?? 1;
  const hatch = first + (clutch - 1) * every + between(random, bird.clock.incubation.value);
  const fledge = hatch + between(random, bird.clock.nestling.value);
  const lost = random() < lossChance ? first + 1 + Math.floor(random() * (fledge - first - 1)) : null;
  return {
    build,
    first,
    clutch,
    hatch,
    fledge,
    hatched: Math.max(1, clutch - (random() < 0.3 ? 1 : 0)),
    lost,
    cause: pick(random, lossCauses),
  };
}

type Seen = Pick<Visit, 'state' | 'eggs' | 'young' | 'age' | 'trouble' | 'bird'>;

function look(made: Made | null, bird: BirdGuide, day: number, ended: boolean): Seen {
  const nothing: Seen = { state: 'empty', eggs: null, young: null, age: null, trouble: [], bird: null };
  if (!made || day < made.build) return nothing;
  if (made.lost !== null && day >= made.lost)
    return ended ? nothing : { ...nothing, state: 'failed', trouble: [made.cause], bird: bird.id };
  if (day >= made.fledge) return ended ? nothing : { ...nothing, state: 'fledged', bird: bird.id };
  if (day < made.first) return { ...nothing, state: 'building', bird: bird.id };
  if (day < made.hatch) {
    const every = bird.clock.layEvery?.value[1] ?? 1;
    const count = Math.min(made.clutch, 1 + Math.floor((day - made.first) / every));
    return { ...nothing, state: 'eggs', bird: bird.id, eggs: { count, color: null, pattern: null, size: null } };
  }
  const age = day - made.hatch;
  return { ...nothing, state: 'young', bird: bird.id, young: made.hatched, age: [Math.max(0, age - 1), age + 1] };
}

const over: readonly VisitState[] = ['fledged', 'failed'];

/** Share of the boxes that no bird takes in any season (invented too: so that a review has something to move or retire). */
const shunnedShare = 0.08;

/** Posts of those boxes: drawn apart, the same for every season. */
function shunned({ boxes, seed }: InventPlan): ReadonlySet<string> {
  const random = seededRandom(seed + 7919);
  return new Set(boxes.flatMap(({ post }) => (random() < shunnedShare ? [post] : [])));
}

/** One box through one season, looked at every seventh day. */
function season(random: Random, box: InventBox, year: number, plan: InventPlan, taken: boolean): Visit[] {
  const { bird, post, number } = box;
  const effect = plan.effect ?? 1;
  const score = 0.5 + (box.score - 0.5) * effect;
  const days = localSeason(bird.season, plan.south ?? false);
  const from = dayOf(`${year}-${days.from}`);
  const to = dayOf(`${days.to < days.from ? year + 1 : year}-${days.to}`);
  const length = to - from;
  const cycle = bird.eggs.count.value[1] + bird.clock.incubation.value[1] + bird.clock.nestling.value[1] + 14;
  const loss = 0.15 + 0.6 * (1 - score);
  const used = random() < 0.3 + 0.6 * score && taken;
  let made = used
    ? makeNest(random, bird, from + Math.floor(random() * Math.max(1, Math.min(20, length / 4))), loss)
    : null;
  let ended = false;
  let again = true;
  const visits: Visit[] = [];
  for (let day = from + (number % 7), n = 1; day <= to + 21; day += 7, n++) {
    const seen = look(made, bird, day, ended);
    visits.push(
      makeVisit({
        ...seen,
        id: `invented-${plan.seed}-${year}-${post}-${n}`,
        post,
        box: number,
        date: dateOf(day),
        time: `${String(14 + (number % 4)).padStart(2, '0')}:${String((number * 7) % 60).padStart(2, '0')}`,
        observer: plan.walkers?.[number % plan.walkers.length] ?? `Invented walker ${1 + (number % 4)}`,
        material: seen.state === 'building' ? ['grass'] : [],
        note: 'Invented for demonstration.',
        device: inventedDevice,
        madeAt: `${dateOf(day)}T20:00:00Z`,
      }),
    );
    if (over.includes(seen.state)) {
      ended = true;
      if (again && day + cycle < to) {
        made = makeNest(random, bird, day + 8, loss);
        ended = false;
        again = false;
      }
    }
  }
  return visits;
}

/** Visits of all boxes over all years, oldest first a box. The same plan gives the same visits. */
export function inventSeasons(plan: InventPlan): readonly Visit[] {
  const random = seededRandom(plan.seed);
  const none = shunned(plan);
  const visits: Visit[] = [];
  for (let year = plan.firstYear; year < plan.firstYear + plan.years; year++) {
    for (const box of plan.boxes) visits.push(...season(random, box, year, plan, !none.has(box.post)));
  }
  return visits;
}
