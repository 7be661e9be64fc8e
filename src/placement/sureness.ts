/** How stable a plan is: the same choice made again under weights and knees that are a little different. */
import { seededRandom } from '../geometry/random.ts';
import type { Choice, ChooseInput } from './choose.ts';
import type { Field } from './field.ts';
import { conflictsOf, fieldOf } from './field.ts';
import type { LayoutProblem, Unit } from './layout.ts';
import { searchLayout } from './local-search.ts';
import type { BuiltUnits } from './units.ts';
import { buildUnits } from './units.ts';

/** One draw: factors by criterion id on its weight and on its knees (the raw figures of its curve). */
export interface Draw {
  readonly weight: Readonly<Record<string, number>>;
  readonly knee: Readonly<Record<string, number>>;
}

export interface SurenessInput {
  readonly choose: ChooseInput;
  readonly choice: Choice;
  /** Criterion ids that are drawn. */
  readonly criteria: readonly string[];
  /** Score (0–100) of a post for a bird under a draw; null when nothing can be judged. Asked for every contender once a draw. */
  readonly rescore: (draw: Draw, post: string, bird: string) => number | null;
  readonly seed: number;
  /** 200 unless given. */
  readonly draws?: number;
  readonly shouldStop?: () => boolean;
}

export interface Sureness {
  /** Share of draws, 0–1, in which a chosen post stays chosen, by post id; standing boxes are always 1. */
  readonly share: Readonly<Record<string, number>>;
  /** The criteria whose weight changes most posts when it alone goes up or down, most first, three at most; posts changed of all chosen. */
  readonly matters: readonly { readonly criterion: string; readonly changed: number }[];
  readonly draws: number;
}

/** Ranges of the draws (siting model §5): weights ± 25 %, knees ± 20 %. */
const weightRange = 0.25;
const kneeRange = 0.2;
/** Units that take part: those chosen and those that come nearest to being so. */
const mostContenders = 500;
const movesPerDraw = 12_000;

/** Draws, chooses again and counts. Deterministic for a seed. */
export function surenessOf(input: SurenessInput): Sureness {
  const words = (metres: number) => `${metres}`;
  const built = buildUnits({ ...input.choose, words, birdName: (bird) => bird });
  const trial = new Trial(input, built);
  const random = seededRandom(input.seed);
  const stays = new Map<string, number>(trial.chosen.map((id) => [id, 0]));
  let draws = 0;
  for (; draws < (input.draws ?? 200) && !input.shouldStop?.(); draws++) {
    for (const id of trial.run(drawOf(input.criteria, random))) {
      const count = stays.get(id);
      if (count !== undefined) stays.set(id, count + 1);
    }
  }
  return {
    share: Object.fromEntries([...stays].map(([id, count]) => [id, draws === 0 ? 1 : count / draws])),
    matters: mattering(input, trial),
    draws,
  };
}

function drawOf(criteria: readonly string[], random: () => number): Draw {
  const factors = (range: number) =>
    Object.fromEntries(criteria.map((id) => [id, 1 - range + 2 * range * random()] as const));
  return { weight: factors(weightRange), knee: factors(kneeRange) };
}

/** Each weight alone at its least and its most. */
function mattering(input: SurenessInput, trial: Trial): Sureness['matters'] {
  const even = Object.fromEntries(input.criteria.map((id) => [id, 1] as const));
  const usual = new Set(trial.run({ weight: even, knee: even }));
  const ranked = input.criteria.map((criterion) => {
    const changed = [1 - weightRange, 1 + weightRange].map((factor) => {
      const now = trial.run({ weight: { ...even, [criterion]: factor }, knee: even });
      return now.filter((id) => !usual.has(id)).length;
    });
    return { criterion, changed: Math.max(...changed) };
  });
  return ranked
    .filter((r) => r.changed > 0)
    .sort((a, b) => b.changed - a.changed || a.criterion.localeCompare(b.criterion))
    .slice(0, 3);
}

/** The choice made again on the contenders only. */
class Trial {
  readonly chosen: string[];
  private readonly input: SurenessInput;
  private readonly built: BuiltUnits;
  private readonly units: readonly number[];

  constructor(input: SurenessInput, built: BuiltUnits) {
    this.input = input;
    this.built = built;
    this.chosen = input.choice.sites.flatMap((site) => site.posts.map((p) => p.id));
    this.units = contenders(built, fieldOf(built.problem), new Set(this.chosen));
  }

  /** Ids of the posts chosen under a draw. */
  run(draw: Draw): string[] {
    const { problem, postsOfUnit } = this.built;
    const kept: number[] = [];
    const units: Unit[] = [];
    for (const u of this.units) {
      const weight = this.weight(draw, u);
      if (!problem.units[u].fixed && (weight === null || weight < this.input.choose.minimumScore)) continue;
      kept.push(u);
      units.push({ ...problem.units[u], weight: weight ?? 0 });
    }
    const again: LayoutProblem = { ...problem, units };
    const layout = searchLayout(fieldOf(again), {
      seed: this.input.seed,
      moves: movesPerDraw,
      start: this.startIn(again, kept),
    });
    return layout.chosen.flatMap((k) => postsOfUnit[kept[k]].map((p) => p.id));
  }

  private weight(draw: Draw, u: number): number | null {
    const unit = this.built.problem.units[u];
    const bird = this.built.birds[unit.bird];
    const posts = this.built.postsOfUnit[u];
    const own = posts.filter((p) => !p.added).map((p) => this.input.rescore(draw, p.id, bird));
    if (own.some((s) => s === null)) return null;
    const mean = (own as number[]).reduce((a, b) => a + b, 0) / Math.max(1, own.length);
    // A second box at no candidate moves as the first does.
    const before = posts.filter((p) => !p.added).reduce((sum, p) => sum + (p.score ?? 0), 0) / Math.max(1, own.length);
    return own.length === posts.length || before <= 0 ? mean : (unit.weight * mean) / before;
  }

  /** The plan as it stands, where all of it may still be chosen. */
  private startIn(again: LayoutProblem, kept: readonly number[]) {
    const ids = new Set(this.chosen);
    const chosen = kept.flatMap((u, k) => (this.built.postsOfUnit[u].every((p) => ids.has(p.id)) ? [k] : []));
    const birdOf = new Map(this.input.choice.sites.flatMap((s) => s.posts.map((p) => [p.id, s.bird] as const)));
    const same = chosen.filter((k) => {
      const unit = again.units[k];
      return this.built.birds[unit.bird] === birdOf.get(this.built.postsOfUnit[kept[k]][0].id);
    });
    const posts = same.flatMap((k) => this.built.postsOfUnit[kept[k]].map((p) => p.id));
    if (new Set(posts).size !== posts.length) return undefined;
    return { chosen: same, value: same.reduce((sum, k) => sum + again.units[k].weight, 0) };
  }
}

/** Chosen units, and those that lose least against the chosen units in their way. */
function contenders(built: BuiltUnits, field: Field, chosen: ReadonlySet<string>): number[] {
  const { units } = built.problem;
  const inPlan = units.map((unit, u) => unit.fixed || built.postsOfUnit[u].every((p) => chosen.has(p.id)));
  if (units.length <= mostContenders) return units.map((_, u) => u);
  const lead = new Float64Array(units.length);
  units.forEach((unit, u) => {
    lead[u] = unit.weight;
  });
  units.forEach((unit, u) => {
    if (inPlan[u]) for (const v of conflictsOf(field, u)) lead[v] -= unit.weight;
  });
  const order = units.map((_, u) => u).sort((a, b) => lead[b] - lead[a] || a - b);
  const others = order.filter((u) => !inPlan[u]).slice(0, mostContenders);
  return [...others, ...units.flatMap((_, u) => (inPlan[u] ? [u] : []))].sort((a, b) => a - b);
}
