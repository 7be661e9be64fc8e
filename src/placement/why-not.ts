/** Why each post was left out: as data, and as a sentence. */
import { distance } from '../geometry/point.ts';
import type { ChoiceLeftOut, FullChooseInput, ScoredPost } from './choose.ts';
import type { Field } from './field.ts';
import { conflict } from './field.ts';
import type { Layout } from './layout.ts';
import { metresBetween, spacingSlack } from './layout.ts';
import type { BuiltUnits } from './units.ts';
import { usableScore } from './usable.ts';

/** One entry for every input post that carries no box in the layout. */
export function whyNot(input: FullChooseInput, built: BuiltUnits, field: Field, layout: Layout): ChoiceLeftOut[] {
  const used = new Set(layout.chosen.flatMap((u) => built.postsOfUnit[u].map((p) => p.id)));
  return input.posts.flatMap((post, index) =>
    used.has(post.candidate.id) ? [] : [reasonFor(input, built, field, layout, post, index)],
  );
}

function reasonFor(
  input: FullChooseInput,
  built: BuiltUnits,
  field: Field,
  layout: Layout,
  post: ScoredPost,
  index: number,
): ChoiceLeftOut {
  const best = bestScore(input, post);
  const plain: ChoiceLeftOut = {
    post: post.candidate.id,
    at: post.candidate.at,
    code: 'outscored',
    score: best?.score ?? null,
    bird: best?.bird ?? null,
    becauseOf: null,
    metres: null,
    needed: null,
    rule: null,
  };
  if (post.candidate.state === 'retired') return { ...plain, code: 'retired' };
  if (post.forbidden) return { ...plain, code: 'forbidden', rule: post.forbidden };
  if (post.unreachable) return { ...plain, code: 'unreachable' };
  const usable = input.wanted.filter((w) => usableScore(input, post, w.bird) !== null);
  if (usable.length === 0) return notUsable(input, post, plain);
  const own = usable.reduce((a, b) => (post.scores[b.bird].score! > post.scores[a.bird].score! ? b : a)).bird;
  const scored = { ...plain, bird: own, score: post.scores[own].score };
  const inTheWay = nearestInTheWay(built, layout, post, own);
  if (inTheWay) return { ...scored, ...inTheWay };
  if (built.unitsOfPost[index].length === 0 && built.lonely.has(index)) {
    return {
      ...plain,
      code: 'refused',
      rule: 'no allowed place 15–25 ft (4.6–7.6 m) away for the second box of the pair',
    };
  }
  const blocker = pairBlocker(built, field, layout, index);
  return blocker === null ? scored : { ...scored, code: 'too-close', ...blocker };
}

function bestScore(input: FullChooseInput, post: ScoredPost): { bird: string; score: number } | null {
  let best: { bird: string; score: number } | null = null;
  for (const { bird } of input.wanted) {
    const score = post.scores[bird]?.score ?? null;
    if (score !== null && (!best || score > best.score)) best = { bird, score };
  }
  return best;
}

/** No wanted bird may have it: a hard rule, a low score, or a bird of its own that nobody asked for. */
function notUsable(input: FullChooseInput, post: ScoredPost, plain: ChoiceLeftOut): ChoiceLeftOut {
  const allowed = input.wanted.filter((w) => !post.candidate.bird || post.candidate.bird === w.bird);
  if (allowed.length === 0) {
    const rule = post.candidate.bird
      ? `it is kept for ${input.birdName(post.candidate.bird)}, and no box is wanted for that bird`
      : 'no bird is wanted';
    return { ...plain, code: 'refused', rule };
  }
  const free = allowed.filter((w) => post.scores[w.bird]?.refused.length === 0 && post.scores[w.bird].score !== null);
  if (free.length > 0) {
    const top = free.reduce((a, b) => (post.scores[b.bird].score! > post.scores[a.bird].score! ? b : a));
    return { ...plain, code: 'low-score', score: post.scores[top.bird].score, bird: top.bird };
  }
  const rule = allowed.map((w) => post.scores[w.bird]?.refused[0]).find((r) => r !== undefined);
  return rule ? { ...plain, code: 'refused', rule } : { ...plain, code: 'low-score', score: null };
}

/** The chosen box nearest to the post among those too near for `bird`. */
function nearestInTheWay(
  built: BuiltUnits,
  layout: Layout,
  post: ScoredPost,
  bird: string,
): Partial<ChoiceLeftOut> | null {
  let best: { becauseOf: string; metres: number; needed: number; score: number } | null = null;
  for (const u of layout.chosen) {
    const unit = built.problem.units[u];
    const needed = metresBetween(built.problem, built.birds.indexOf(bird), unit.bird);
    for (const chosen of built.postsOfUnit[u]) {
      const metres = distance(post.candidate.at, chosen.at);
      if (metres >= needed - spacingSlack || (best && metres >= best.metres)) continue;
      best = { becauseOf: chosen.id, metres, needed, score: unit.fixed ? -1 : unit.weight };
    }
  }
  if (!best) return null;
  const { score, ...rest } = best;
  // Neighbours for the same spot: the better one took it. Farther off it is the spacing that decides.
  const neighbour = rest.metres < rest.needed / 2 && score > (post.scores[bird].score ?? 0);
  return { ...rest, code: neighbour ? 'outscored' : 'too-close' };
}

/** A chosen box too near the second box the post would have had. */
function pairBlocker(
  built: BuiltUnits,
  field: Field,
  layout: Layout,
  index: number,
): Pick<ChoiceLeftOut, 'becauseOf' | 'metres' | 'needed'> | null {
  for (const u of built.unitsOfPost[index]) {
    for (const v of layout.chosen) {
      if (!conflict(field, u, v)) continue;
      const ends = built.postsOfUnit[u].flatMap((a) =>
        built.postsOfUnit[v].map((b) => ({ becauseOf: b.id, metres: distance(a.at, b.at) })),
      );
      const nearest = ends.reduce((a, b) => (b.metres < a.metres ? b : a));
      const needed = metresBetween(built.problem, built.problem.units[u].bird, built.problem.units[v].bird);
      return { ...nearest, needed };
    }
  }
  return null;
}

/** The reason in one plain sentence; `box` names a box by its post id ("14"), `words` says a length in the person's units. */
export function leftOutSentence(
  out: ChoiceLeftOut,
  box: (post: string) => string,
  words: (metres: number) => string,
): string {
  const scored = out.score === null ? '' : ` It scores ${Math.round(out.score)}.`;
  switch (out.code) {
    case 'too-close':
      return `Too close to box ${box(out.becauseOf!)}: ${words(out.metres!)} apart, ${words(out.needed!)} asked.${scored}`;
    case 'outscored':
      return out.becauseOf
        ? `Lost to a better neighbor: box ${box(out.becauseOf)}, ${words(out.metres!)} away.${scored}`
        : `Every box wanted found a place that adds more.${scored}`;
    case 'low-score':
      return out.score === null
        ? 'Nothing here could be judged, so it has no score.'
        : `Scores ${Math.round(out.score)}, less than the least score asked.`;
    case 'refused':
      return `Refused: ${out.rule}.${scored}`;
    case 'forbidden':
      return `No box may stand here: ${out.rule}.`;
    case 'retired':
      return 'Retired: kept on the record, never chosen.';
    case 'unreachable':
      return `No walk leads here without crossing water, a building or land that is off-limits.${scored}`;
    case 'too-far-to-walk':
      return `Left out to keep the round within its length.${scored}`;
  }
}
