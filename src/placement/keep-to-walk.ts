/** A choice kept within the longest round a person wants to walk. */
import type { Issue } from '../site/types.ts';
import type { ChoiceLeftOut, FullChooseInput } from './choose.ts';
import type { Field } from './field.ts';
import type { Layout } from './layout.ts';
import type { Proven } from './prove.ts';
import type { BuiltUnits } from './units.ts';
import { crowMetres, layoutWithinWalk } from './walk-limit.ts';

/** Times the crow's metres are set against the real ones before the search gives up coming nearer. */
const mostTries = 6;

export interface Walked extends Proven {
  readonly issues: readonly Issue[];
}

/** The best choice found within the limit; null when there is no limit or the free choice keeps to it. */
export function keepToWalk(input: FullChooseInput, built: BuiltUnits, field: Field, free: Proven): Walked | null {
  const { walk } = input;
  if (!walk || !Number.isFinite(walk.limit) || free.layout.chosen.length === 0) return null;
  const measure = (layout: Layout) =>
    layout.chosen.length === 0
      ? 0
      : walk.measure(layout.chosen.flatMap((u) => built.postsOfUnit[u].map(({ id, at }) => ({ id, at }))));
  const freeMetres = measure(free.layout);
  if (freeMetres <= walk.limit) return null;
  // Real ways are longer than the crow's: the limit is scaled by as much, and again until the round fits.
  let detour = Math.max(1, freeMetres / Math.max(1, crowMetres(field, free.layout, walk.start)));
  let best: Layout | null = null;
  let shortest: { layout: Layout; metres: number } | null = null;
  for (let turn = 0; turn < mostTries && !input.shouldStop?.(); turn++) {
    const { start } = walk;
    const limit = walk.limit / detour;
    const layout = layoutWithinWalk(field, free.layout, {
      limit,
      start,
      seed: input.seed,
      shouldStop: input.shouldStop,
    });
    const metres = measure(layout);
    if (metres <= walk.limit && (!best || layout.value > best.value)) best = layout;
    if (!shortest || metres < shortest.metres) shortest = { layout, metres };
    if (metres <= walk.limit && metres > walk.limit * 0.97) break;
    detour *= metres > walk.limit ? (metres / walk.limit) * 1.01 : Math.max(0.8, (metres / walk.limit) * 1.02);
    if (best && turn >= 3) break;
  }
  const layout = best ?? shortest?.layout ?? free.layout;
  return { layout, proof: proofWithin(input, free, layout), issues: walkIssues(input, free, layout, best !== null) };
}

/** No choice within the limit is worth more than the free one: that much stays proven. */
function proofWithin(input: FullChooseInput, free: Proven, layout: Layout): Proven['proof'] {
  const bound = free.proof.bound;
  const limit = input.words(input.walk!.limit);
  const share = free.layout.value > 0 ? Math.floor((100 * layout.value) / free.layout.value) : 100;
  return {
    ...free.proof,
    state: bound === null ? 'not-proven' : 'within',
    value: layout.value,
    gap: bound === null || bound <= 0 ? null : Math.max(0, (bound - layout.value) / bound),
    mostSites: null,
    sentence: `The best found within a round of ${limit}: ${share} % of the score that a free walk reaches. Not proven the best for this length.`,
  };
}

function walkIssues(input: FullChooseInput, free: Proven, layout: Layout, fits: boolean): Issue[] {
  const limit = input.words(input.walk!.limit);
  const base = { severity: 'note', feature: null, place: null } as const;
  if (!fits) {
    const sentence = `No round within ${limit} was found: the boxes that must stay, or the way to the nearest post, take more.`;
    return [
      {
        ...base,
        id: 'walk-limit-broken',
        severity: 'warning',
        sentence,
        fix: 'Allow a longer round, or move the start.',
      },
    ];
  }
  const fewer = free.layout.chosen.length - layout.chosen.length;
  const sentence = `The round is kept within ${limit}: ${layout.chosen.length} of ${free.layout.chosen.length} sites that would fit without the limit.`;
  return fewer > 0
    ? [{ ...base, id: 'walk-limit-binds', sentence, fix: 'Allow a longer round to take in more sites.' }]
    : [];
}

/** Posts that nothing else kept out were left for the walk's sake. */
export function tooFar(leftOut: readonly ChoiceLeftOut[]): ChoiceLeftOut[] {
  return leftOut.map((out) =>
    out.code === 'outscored' && out.becauseOf === null ? { ...out, code: 'too-far-to-walk' } : out,
  );
}
