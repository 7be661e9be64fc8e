/** The whole way through the house on one page: a site becomes a plan. */
import { spacingNeeded } from './criteria/spacing.ts';
import { lengthText } from './criteria/units.ts';
import type { LinearSolver, LoadSolver } from './geometry/linear-model.ts';
import type { Point } from './geometry/point.ts';
import type { Ground } from './ground/types.ts';
import { placeCandidate } from './placement/candidates.ts';
import { type BirdScore, type Choice, type ChooseInput, choose } from './placement/choose.ts';
import type { TradeOffPoint } from './placement/trade-off.ts';
import { leftOutSentence } from './placement/why-not.ts';
import { orderIssues } from './plan/hand-order.ts';
import { landIssues } from './plan/land-issues.ts';
import { numberedRound, numbersOf } from './plan/numbering.ts';
import { boxesOf } from './plan/planned-boxes.ts';
import { scoredPost } from './plan/scored-posts.ts';
import { type Stage, stageOf, type Tell } from './plan/stage.ts';
import { walkIssues } from './plan/walk-issues.ts';
import type { Candidate, LeftOut, Plan, PlannedBox } from './plan-types.ts';
import { planRound, type RoundInput, type RoundPlan } from './route/plan-round.ts';
import type { Issue, Site, Units } from './site/types.ts';

export interface PlanOptions {
  /** How far to go in proving the choice; `quick` unless given. */
  readonly proof?: 'none' | 'quick' | 'full';
  /** Time limit of the proof. */
  readonly seconds?: number;
  /** How the exact solver is loaded when it is needed; without it nothing is proven. */
  readonly loadSolver?: LoadSolver;
  /** A first answer within a second, its choice a little less good, its walk coarse, its cards without the other birds: to be followed by another. */
  readonly sketch?: boolean;
  /** Draws of weights and knees for the sureness of each box; 0 unless given. */
  readonly draws?: number;
  readonly shouldStop?: () => boolean;
  readonly onProgress?: Tell;
}

/** A plan with the choice behind it, so that it can be proven and tried further. */
export interface Made {
  readonly plan: Plan;
  readonly choice: Choice;
  readonly sketch: boolean;
}

/** Chooses, numbers and explains. Trouble in the site comes back as issues beside whatever plan is possible. */
export async function makePlan(site: Site, options: PlanOptions = {}): Promise<Plan> {
  const stage = stageOf(site, options.onProgress);
  const made = await planOn(stage, options);
  return options.draws ? makeSure(stage, made, options.draws, options.shouldStop) : made.plan;
}

/**
 * The plan of a site already measured and scored. `early` is one made on the same stage: its walk and cards are kept where the
 * choice is the same, so that proving a good answer costs the proof alone.
 */
export async function planOn(stage: Stage, options: PlanOptions = {}, early: Made | null = null): Promise<Made> {
  const tell = options.onProgress ?? (() => undefined);
  const { settings } = stage.ground.site;
  tell('choice', 0);
  const solver = await solverOf(options);
  // A choice cut to a walk limit is no good place to begin the proof of the free one, and a sketch is only one for the solver.
  const start = settings.walkLimit === null && (solver || !early?.sketch) ? early?.choice : null;
  const choice = await choose({ ...chooseInput(stage, options), start });
  const sketch = options.sketch ?? false;
  if (early && !early.sketch && !solver && sameBoxes(early.plan, choice))
    return { plan: { ...early.plan, proof: choice.proof }, choice, sketch };
  return { plan: planFrom(stage, choice, { solver, sketch, tell }, early?.plan.boxes), choice, sketch };
}

/** The plan of a choice already made, on a stage it holds for (`sameForChoice`): only walked and numbered anew. Sureness stays. */
export async function planAgain(stage: Stage, { plan: before, choice }: Made, options: PlanOptions): Promise<Made> {
  const tell = options.onProgress ?? (() => undefined);
  const how = { solver: await solverOf(options), sketch: false, tell };
  const plan = planFrom(stage, choice, how, before.boxes);
  const sure = new Map(before.boxes.map(({ post, sureness }) => [post, sureness]));
  const boxes = plan.boxes.map((box) => ({ ...box, sureness: sure.get(box.post) ?? null }));
  return { plan: { ...plan, boxes, sureness: before.sureness }, choice, sketch: false };
}

/** The choice walked, numbered and explained; cards are taken from `early` where it has them. */
function planFrom(
  stage: Stage,
  choice: Choice,
  { solver, sketch, tell }: { solver: LinearSolver | null; sketch: boolean; tell: Tell },
  early: readonly PlannedBox[] = [],
): Plan {
  const { ground, candidates, birds } = stage;
  const { settings } = ground.site;
  tell('walk', 0);
  const walk = walkRound(
    stage,
    choice.sites.flatMap((site) => site.posts),
    { solver, grain: sketch ? 'coarse' : 'fine' },
  );
  const numbers = numbersOf(walk);
  tell('cards', 0);
  const boxes = boxesOf(stage, choice, numbers, early, sketch);
  return {
    siteName: settings.name,
    date: settings.date,
    boxes,
    sites: choice.sites.length,
    leftOut: leftOutOf(ground.site, choice, numbers),
    rounds: walk.rounds.map((round) => numberedRound(round, numbers)),
    proof: choice.proof,
    sureness: null,
    issues: placed(ground, candidates, [
      ...birds.issues,
      ...landIssues(ground),
      ...choice.issues,
      ...walkIssues(walk),
      ...orderIssues(settings, walk),
    ]),
    unmapped: boxes.reduce((sum, box) => sum + box.card.unmapped, 0) / Math.max(1, boxes.length),
  };
}

/** The plan with the share of `draws` in which each box stays chosen under other weights and knees. */
export async function makeSure(
  stage: Stage,
  { plan, choice }: Made,
  draws: number,
  shouldStop?: () => boolean,
): Promise<Plan> {
  // Loaded when it is asked for: the first plan does not wait for it.
  const { sureOf } = await import('./plan/sure.ts');
  const sure = sureOf(stage, chooseInput(stage, { proof: 'none' }), choice, draws, shouldStop);
  return {
    ...plan,
    boxes: plan.boxes.map((box) => ({ ...box, sureness: sure.share[box.post] ?? null })),
    sureness: { draws: sure.draws, matters: sure.matters },
  };
}

/** The solver that proves the round; none when nothing is to be proven or it cannot be loaded. */
async function solverOf({ proof, loadSolver, shouldStop }: PlanOptions): Promise<LinearSolver | null> {
  if (proof === 'none' || !loadSolver || shouldStop?.()) return null;
  return loadSolver().catch(() => null);
}

function sameBoxes(plan: Plan, { sites }: Choice): boolean {
  const key = (bird: string, post: string) => `${bird} ${post}`;
  const before = new Set(plan.boxes.map((box) => key(box.bird, box.post)));
  const now = sites.flatMap((site) => site.posts.map((post) => key(site.bird, post.id)));
  return now.length === before.size && now.every((box) => before.has(box));
}

function chooseInput(stage: Stage, options: PlanOptions): ChooseInput {
  const { settings } = stage.ground.site;
  const guide = (id: string) => stage.birds.guides.get(id) ?? null;
  return {
    posts: stage.posts,
    wanted: stage.birds.wanted,
    spacing: (a, b) => {
      const [one, two] = [guide(a), guide(b)];
      return one && two ? spacingNeeded(one, two).metres : 0;
    },
    minimumScore: settings.minimumScore,
    seed: settings.seed,
    scoreAt: (at, bird) => scoreAt(stage, at, bird),
    walk: walkLimit(stage),
    words: spacingWords(settings.units),
    birdName: (id) => guide(id)?.name ?? id,
    proof: options.proof ?? 'quick',
    sketch: options.sketch,
    seconds: options.seconds,
    loadSolver: options.loadSolver,
    shouldStop: options.shouldStop,
  };
}

function walkLimit(stage: Stage): ChooseInput['walk'] {
  const { walkLimit: limit } = stage.ground.site.settings;
  return limit === null ? null : walkWithin(stage, limit);
}

/** What a longer walk buys: the best choice for each of several limits, the free one last. */
export async function walkCurve(stage: Stage, shouldStop?: () => boolean): Promise<TradeOffPoint[]> {
  const { tradeOff } = await import('./placement/trade-off.ts');
  const walk = walkWithin(stage, Infinity);
  return tradeOff({ choose: { ...chooseInput(stage, { proof: 'none', shouldStop }), walk } });
}

function walkWithin(stage: Stage, limit: number): NonNullable<ChooseInput['walk']> {
  const measure = (stops: readonly { readonly id: string; readonly at: Point }[]) =>
    walkRound(stage, stops, {}).rounds.reduce((sum, round) => sum + round.metres, 0);
  return { limit, start: startOf(stage.ground), measure };
}

function scoreAt({ ground, birds, suns, beside }: Stage, at: Point, bird: string): BirdScore | null {
  const guide = birds.guides.get(bird);
  if (!guide) return null;
  const key = `${bird} ${at.x} ${at.y}`;
  const known = beside.get(key);
  if (known !== undefined) return known;
  const post = scoredPost(ground, placeCandidate('place', at), [guide], suns);
  const score = post.forbidden ? null : (post.scores[bird] ?? null);
  beside.set(key, score);
  return score;
}

/** Where rounds start: the trailhead the person named, else the first one drawn. */
function startOf(ground: Ground): Point | null {
  const { settings, features } = ground.site;
  const trailheads = features.filter((f) => f.kind === 'trailhead' && f.geometry?.type === 'Point');
  const from = trailheads.find((f) => f.id === settings.start) ?? trailheads[0];
  return from?.geometry?.type === 'Point' ? ground.frame.toPlane(from.geometry.coordinates as [number, number]) : null;
}

function walkRound(
  { ground, findWays }: Stage,
  posts: readonly { readonly id: string; readonly at: Point }[],
  how: Pick<RoundInput, 'solver' | 'grain'>,
): RoundPlan {
  const { minutesPerBox, walkers, seed, direction, order } = ground.site.settings;
  const stops = posts.map(({ id, at }) => ({ id, at, minutes: minutesPerBox }));
  const byHand = order.length > 0 ? order : null;
  return planRound({ ground, start: startOf(ground), stops, walkers, seed, direction, byHand, findWays, ...how });
}

function leftOutOf(site: Site, choice: Choice, numbers: ReadonlyMap<string, number>): LeftOut[] {
  const { units } = site.settings;
  return choice.leftOut.map((out) => ({
    post: out.post,
    at: out.at,
    code: out.code,
    score: out.score,
    sentence: leftOutSentence(out, (post) => String(numbers.get(post) ?? post), spacingWords(units)),
    becauseOf: out.becauseOf === null ? null : (numbers.get(out.becauseOf) ?? null),
  }));
}

/** Spacings are asked in yards or metres, so distances between boxes are said in the same; steps inside a pair in feet. */
function spacingWords(units: Units): (metres: number) => string {
  const pairStep = 10;
  return (metres) => (metres < pairStep ? lengthText(metres, units) : lengthText(metres, units, 100));
}

/** Issues that name a post get its place. */
function placed(ground: Ground, candidates: readonly Candidate[], issues: readonly Issue[]): Issue[] {
  const at = new Map(candidates.map((candidate) => [candidate.id, candidate.at]));
  return issues.map((issue) => {
    const point = issue.place === null && issue.feature !== null ? at.get(issue.feature) : undefined;
    return point ? { ...issue, place: ground.frame.toLonLat(point) } : issue;
  });
}
