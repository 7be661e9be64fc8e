/** How stable a plan is: the same choice made again under weights and knees that are a little different. */
import { seededRandom } from '../geometry/random.ts';
import type { Choice, ChooseInput } from './choose.ts';
import type { Field } from './field.ts';
import { conflictsOf, fieldOf, layoutIn } from './field.ts';
import { searchLayout } from './local-search.ts';
import { Rivals } from './rivals.ts';
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
const movesPerDraw = 6000;

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

/** The choice made again on the contenders only: who conflicts with whom stays, only what they are worth is drawn. */
class Trial {
  readonly chosen: string[];
  private readonly input: SurenessInput;
  private readonly built: BuiltUnits;
  /** Unit of each contender. */
  private readonly units: readonly number[];
  private readonly field: Field;
  private readonly rivals: Rivals;
  /** The plan, as contenders. */
  private readonly plan: readonly number[];

  constructor(input: SurenessInput, built: BuiltUnits) {
    this.input = input;
    this.built = built;
    this.chosen = input.choice.sites.flatMap((site) => site.posts.map((p) => p.id));
    const { problem } = built;
    this.units = contenders(built, fieldOf(problem), new Set(this.chosen));
    this.field = fieldOf({ ...problem, units: this.units.map((u) => problem.units[u]) });
    this.rivals = new Rivals(this.field);
    this.plan = this.planned();
  }

  /** Ids of the posts chosen under a draw. */
  run(draw: Draw): string[] {
    const { input, built, units, field, rivals } = this;
    const weight = Float64Array.from(units, (u) => this.worth(draw, u));
    const drawn: Field = { ...field, weight };
    const start = layoutIn(
      drawn,
      this.plan.filter((k) => weight[k] >= 0),
    );
    const layout = searchLayout(drawn, { seed: input.seed, moves: movesPerDraw, start, rivals });
    return layout.chosen.flatMap((k) => built.postsOfUnit[units[k]].map((p) => p.id));
  }

  /** What a unit is worth under a draw; below zero where it may not be chosen. */
  private worth(draw: Draw, u: number): number {
    const { fixed } = this.built.problem.units[u];
    const weight = this.weight(draw, u);
    if (fixed) return weight ?? 0;
    return weight === null || weight < this.input.choose.minimumScore ? -1 : weight;
  }

  private weight(draw: Draw, u: number): number | null {
    const unit = this.built.problem.units[u];
    const bird = this.built.birds[unit.bird];
    const posts = this.built.postsOfUnit[u];
    let [sum, before, own] = [0, 0, 0];
    for (const post of posts) {
      if (post.added) continue;
      const score = this.input.rescore(draw, post.id, bird);
      if (score === null) return null;
      sum += score;
      before += post.score ?? 0;
      own++;
    }
    const mean = sum / Math.max(1, own);
    // A second box at no candidate moves as the first does.
    return own === posts.length || before <= 0 ? mean : (unit.weight * mean * own) / before;
  }

  /** The units of the plan; none where they cannot be told. */
  private planned(): number[] {
    const { built, units, input } = this;
    const birdOf = new Map(input.choice.sites.flatMap((s) => s.posts.map((p) => [p.id, s.bird] as const)));
    const found = [...units.keys()].filter((k) => {
      const bird = built.birds[built.problem.units[units[k]].bird];
      return built.postsOfUnit[units[k]].every((p) => birdOf.get(p.id) === bird);
    });
    const posts = found.flatMap((k) => built.postsOfUnit[units[k]].map((p) => p.id));
    return new Set(posts).size === posts.length ? found : [];
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
