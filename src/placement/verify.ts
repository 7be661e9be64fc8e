/** Checks a finished choice by the rules alone. Shares no code with what chose it. */
import type { Choice, ChooseInput } from './choose.ts';

/** A hand's breadth more lenient than the chooser's own slack. */
const slack = 0.01;

/** Every broken rule in a sentence; empty when the choice keeps them all. */
export function brokenRules(input: ChooseInput, choice: Choice): string[] {
  return [
    ...postRules(input, choice),
    ...countRules(input, choice),
    ...distanceRules(input, choice),
    ...books(input, choice),
  ];
}

function postRules(input: ChooseInput, choice: Choice): string[] {
  const known = new Map(input.posts.map((p) => [p.candidate.id, p]));
  return choice.sites.flatMap((site) =>
    site.posts.flatMap((post) => {
      const source = known.get(post.id);
      if (!source) {
        if (!post.added) return [`${post.id} is not among the candidates`];
        const found = input.scoreAt?.(post.at, site.bird) ?? null;
        return found && found.refused.length === 0 && (found.score ?? -1) >= input.minimumScore
          ? []
          : [`${post.id} was added where no box may stand`];
      }
      const { candidate, forbidden, unreachable, scores } = source;
      if (candidate.state === 'fixed') return [];
      const found = scores[site.bird];
      const wrong: string[] = [];
      if (candidate.state === 'retired') wrong.push('is retired');
      if (forbidden) wrong.push(`is forbidden: ${forbidden}`);
      if (unreachable) wrong.push('cannot be reached');
      if (!found || found.refused.length > 0) wrong.push(`is refused for ${site.bird}`);
      if ((found?.score ?? -1) < input.minimumScore) wrong.push('scores too little');
      if (candidate.bird !== null && candidate.bird !== site.bird) wrong.push(`is kept for ${candidate.bird}`);
      return wrong.map((w) => `${post.id} ${w}`);
    }),
  );
}

function countRules(input: ChooseInput, choice: Choice): string[] {
  const wrong: string[] = [];
  for (const bird of new Set(choice.sites.map((s) => s.bird))) {
    const wanted = input.wanted.filter((w) => w.bird === bird).reduce((sum, w) => sum + Math.max(0, w.sites), 0);
    const sites = choice.sites.filter((s) => s.bird === bird);
    const standing = sites.filter((s) => s.fixed).length;
    if (sites.length > Math.max(wanted, standing)) wrong.push(`${sites.length} sites for ${bird}, ${wanted} wanted`);
  }
  const ids = choice.sites.flatMap((s) => s.posts.map((p) => p.id));
  if (new Set(ids).size !== ids.length) wrong.push('a post serves two sites');
  for (const { candidate } of input.posts) {
    if (candidate.state === 'fixed' && !ids.includes(candidate.id))
      wrong.push(`standing box ${candidate.id} is missing`);
  }
  return wrong;
}

function distanceRules(input: ChooseInput, choice: Choice): string[] {
  const wrong: string[] = [];
  choice.sites.forEach((a, i) => {
    if (a.posts.length > 2) wrong.push('a site has more than two posts');
    if (a.posts.length === 2 && !a.fixed) {
      const metres = Math.hypot(a.posts[0].at.x - a.posts[1].at.x, a.posts[0].at.y - a.posts[1].at.y);
      if (metres < 1.524 - slack || metres > 7.62 + slack)
        wrong.push(`the pair at ${a.posts[0].id} is ${metres} m apart`);
    }
    for (const b of choice.sites.slice(i + 1)) {
      if (a.fixed && b.fixed) continue;
      const needed = Math.max(1.524, input.spacing(a.bird, b.bird), input.spacing(b.bird, a.bird));
      for (const p of a.posts) {
        for (const q of b.posts) {
          const metres = Math.hypot(p.at.x - q.at.x, p.at.y - q.at.y);
          if (metres < needed - slack) wrong.push(`${p.id} and ${q.id} are ${metres} m apart, ${needed} asked`);
        }
      }
    }
  });
  return wrong;
}

/** Every post is either chosen or left out with a reason, and the proof's value is the sum of the sites. */
function books(input: ChooseInput, choice: Choice): string[] {
  const wrong: string[] = [];
  const chosen = new Set(choice.sites.flatMap((s) => s.posts.map((p) => p.id)));
  const left = choice.leftOut.map((l) => l.post);
  for (const { candidate } of input.posts) {
    const times = (chosen.has(candidate.id) ? 1 : 0) + left.filter((id) => id === candidate.id).length;
    if (times !== 1) wrong.push(`${candidate.id} is accounted for ${times} times`);
  }
  const value = choice.sites.reduce((sum, s) => sum + s.score, 0);
  if (Math.abs(value - choice.proof.value) > 1e-6)
    wrong.push(`the sites add to ${value}, the proof says ${choice.proof.value}`);
  const { bound } = choice.proof;
  if (bound !== null && bound < value - 1e-6) wrong.push(`the bound ${bound} is below the value ${value}`);
  return wrong;
}
