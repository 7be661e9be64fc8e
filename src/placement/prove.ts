/** From a good layout to what is known of it: the best layout found, and the proof's figures and words. */
import type { LinearSolver } from '../geometry/linear-model.ts';
import type { Proof } from '../plan-types.ts';
import type { FullChooseInput } from './choose.ts';
import type { ExactAnswer } from './exact.ts';
import type { Field } from './field.ts';
import { fieldOf } from './field.ts';
import type { Layout } from './layout.ts';
import { metresBetween } from './layout.ts';
import { searchLayout } from './local-search.ts';
import type { BuiltUnits } from './units.ts';

export interface Proven {
  readonly layout: Layout;
  readonly proof: Proof;
}

interface Tools {
  readonly solver: LinearSolver;
  readonly exact: typeof import('./exact.ts');
}

/** Seconds a proof may take unless the person says otherwise. */
const secondsOf = { quick: 5, full: 30 } as const;

/**
 * Simplex steps of branch and bound for each second allowed: meant to be what a slow machine makes in well under a second (a guess, not
 * calibrated), so that the steps end a solve before the clock does and the same seed gives the same plan on any machine.
 */
export const stepsPerSecond = 1500;

/** Never rejects: a solver that cannot be loaded or fails leaves the good layout and says so. */
export async function proveLayout(
  field: Field,
  start: Layout,
  input: FullChooseInput,
  built: BuiltUnits,
): Promise<Proven> {
  const mode = input.proof ?? 'quick';
  if (mode === 'none') return unproven(start, 'A good layout; the proof was not asked for.');
  if (input.shouldStop?.()) return unproven(start, 'A good layout, not proven: the work was stopped.');
  if (!input.loadSolver) return unproven(start, 'A good layout, not proven: no solver was given.');
  let tools: Tools;
  try {
    // The proof's own code comes with the solver: a first answer needs neither.
    const [solver, exact] = await Promise.all([input.loadSolver(), import('./exact.ts')]);
    tools = { solver, exact };
  } catch {
    return unproven(start, 'A good layout, not proven: the solver could not be loaded.');
  }
  const seconds = input.seconds ?? secondsOf[mode];
  try {
    return proveWith(tools, field, start, input, built, seconds);
  } catch {
    return unproven(start, 'A good layout, not proven: the solver gave up.');
  }
}

function unproven(layout: Layout, sentence: string, seconds = 0): Proven {
  const { value } = layout;
  return {
    layout,
    proof: { state: 'not-proven', value, bound: null, gap: null, mostSites: null, sentence, seconds },
  };
}

function proveWith(
  tools: Tools,
  field: Field,
  start: Layout,
  input: FullChooseInput,
  built: BuiltUnits,
  seconds: number,
): Proven {
  const { shouldStop } = input;
  const answer = tools.exact.exactLayout(field, start, tools.solver, {
    seconds,
    steps: seconds * stepsPerSecond,
    shouldStop,
  });
  const short = shortBird(input, built, answer.layout);
  const most = short === null ? null : mostSites(field, answer.layout, tools, input, seconds / 2);
  return { layout: answer.layout, proof: proofOf(answer, most, short, input, built) };
}

/** The first bird with fewer sites than wanted though posts for it are left; null when there is none. */
function shortBird(input: FullChooseInput, built: BuiltUnits, layout: Layout): number | null {
  for (const { bird, sites } of input.wanted) {
    const b = built.birds.indexOf(bird);
    const got = layout.chosen.filter((u) => built.problem.units[u].bird === b).length;
    const free = built.problem.units.filter((u) => u.bird === b && !u.fixed).length;
    if (got < sites && free > 0) return b;
  }
  return null;
}

/** The most sites that can stand under the spacing, whatever they score: proven, never too low. */
function mostSites(
  field: Field,
  layout: Layout,
  { solver, exact }: Tools,
  input: FullChooseInput,
  seconds: number,
): number | null {
  const { problem } = field;
  const counted = fieldOf({ ...problem, units: problem.units.map((unit) => ({ ...unit, weight: 1 })) });
  const start = searchLayout(counted, {
    seed: input.seed,
    moves: 200_000,
    start: { chosen: layout.chosen, value: layout.chosen.length },
  });
  const answer = exact.exactLayout(counted, start, solver, {
    seconds,
    steps: seconds * stepsPerSecond,
    shouldStop: input.shouldStop,
  });
  return answer.bound === null ? null : Math.floor(answer.bound + 1e-6);
}

function proofOf(
  answer: ExactAnswer,
  most: number | null,
  short: number | null,
  input: FullChooseInput,
  built: BuiltUnits,
): Proof {
  const { value } = answer.layout;
  const bound = answer.bound;
  const gap = bound === null || bound <= 0 ? (bound === null ? null : 0) : Math.max(0, (bound - value) / bound);
  const best = answer.end === 'proven';
  const quality = best
    ? 'Best possible: proven.'
    : gap === null
      ? 'A good layout, not proven.'
      : `Within ${percent(gap)} of the best possible: proven.`;
  const sites = answer.layout.chosen.length;
  return {
    state: best ? 'best-possible' : gap === null ? 'not-proven' : 'within',
    value,
    bound: best ? value : bound,
    gap: best ? 0 : gap,
    mostSites: most,
    sentence: short === null || most === null ? quality : `${fitSentence(most, sites, short, input, built)} ${quality}`,
    seconds: answer.seconds,
  };
}

/** Rounded up, so that the claim stays true: 0.0061 → "0.7 %". */
function percent(gap: number): string {
  const step = gap < 0.001 ? 100 : 10;
  return `${Math.ceil(gap * 100 * step - 1e-9) / step} %`;
}

/** With one bird wanted, the spacing that binds; with several, all of them: the count is of all birds together. */
function fitSentence(most: number, sites: number, short: number, input: FullChooseInput, built: BuiltUnits): string {
  const { problem, birds } = built;
  const between = (b: number) => input.words(metresBetween(problem, b, b));
  const wanted = [...birds.keys()].filter((b) => problem.wanted[b] > 0);
  const asked = problem.wanted.reduce((sum, sites) => sum + sites, 0);
  const stand = sites < most ? ` ${sites} are placed, which scores best.` : '';
  const fits =
    wanted.length > 1
      ? `At most ${most} of the ${asked} sites wanted for all birds fit under their spacings (${wanted.map((b) => `${input.birdName(birds[b])} ${between(b)}`).join(', ')})`
      : `At most ${most} ${most === 1 ? 'site fits' : 'sites fit'} with ${between(short)} between sites`;
  return `${fits}: proven; the spacing rule binds here.${stand}`;
}
