/** What a person should know about a choice: standing boxes too close, fewer sites than wanted, nothing to choose from. */
import { distance } from '../geometry/point.ts';
import type { Issue } from '../site/types.ts';
import type { FullChooseInput } from './choose.ts';
import type { Field } from './field.ts';
import { conflict } from './field.ts';
import type { Layout } from './layout.ts';
import { metresBetween } from './layout.ts';
import type { BuiltUnits } from './units.ts';

function issue(id: string, severity: Issue['severity'], feature: string | null, sentence: string, fix: string): Issue {
  return { id, severity, feature, place: null, sentence, fix };
}

/** Standing boxes that break the spacing among themselves: kept, and said. */
export function fixedIssues(input: FullChooseInput, built: BuiltUnits, field: Field): Issue[] {
  const { units } = built.problem;
  const standing = units.flatMap((unit, u) => (unit.fixed ? [u] : []));
  return standing.flatMap((u, k) =>
    standing.slice(k + 1).flatMap((v) => {
      if (!conflict(field, u, v)) return [];
      const ends = built.postsOfUnit[u].flatMap((a) =>
        built.postsOfUnit[v].map((b) => ({ a: a.id, b: b.id, metres: distance(a.at, b.at) })),
      );
      const near = ends.reduce((p, q) => (q.metres < p.metres ? q : p));
      const needed = metresBetween(built.problem, units[u].bird, units[v].bird);
      return [
        issue(
          'fixed-too-close',
          'warning',
          near.a,
          `The boxes ${near.a} and ${near.b} stand or are locked ${input.words(near.metres)} apart; ${input.words(needed)} are asked between them. Both are kept.`,
          'Move, unlock or retire one of them, or draw them as a pair if they are meant to be one site.',
        ),
      ];
    }),
  );
}

/** Fewer sites than wanted, by bird, with what is known of the reason. */
export function wantedIssues(input: FullChooseInput, built: BuiltUnits, layout: Layout): Issue[] {
  if (input.posts.length === 0) {
    return [
      issue(
        'no-candidates',
        'warning',
        null,
        'There is no post to choose from.',
        'Draw posts, or ask for a grid of suggested ones.',
      ),
    ];
  }
  const issues = input.wanted.flatMap((wish) => {
    const bird = built.birds.indexOf(wish.bird);
    const got = layout.chosen.filter((u) => built.problem.units[u].bird === bird).length;
    return got >= wish.sites ? [] : [shortOf(input, built, wish.bird, wish.sites, got)];
  });
  return [...issues, ...extraFixed(input, built)];
}

function shortOf(input: FullChooseInput, built: BuiltUnits, bird: string, wanted: number, got: number): Issue {
  const name = input.birdName(bird);
  const free = built.problem.units.filter((u) => !u.fixed && built.birds[u.bird] === bird).length;
  const sentence = `${got} of ${wanted} ${wanted === 1 ? 'site' : 'sites'} for ${name} found a place`;
  if (free > 0) {
    return issue(
      'fewer-than-wanted',
      'note',
      null,
      `${sentence}: the spacing rule leaves no room for more.`,
      'Ask for fewer, or draw posts on other ground.',
    );
  }
  const usable = input.posts.some((p) => p.candidate.state === 'candidate' && !p.forbidden);
  if (!usable) {
    return issue(
      'fewer-than-wanted',
      'warning',
      null,
      `${sentence}: no candidate stands where a box may stand.`,
      'Draw posts on allowed ground.',
    );
  }
  return issue(
    'fewer-than-wanted',
    'warning',
    null,
    `${sentence}: no other post reaches the least score of ${Math.round(input.minimumScore)}, keeps the bird's hard rules and stays clear of the boxes that must stay.`,
    'Lower the least score, draw posts elsewhere, or choose a bird that suits this land.',
  );
}

/** More standing boxes of a bird than sites wanted: all are kept. */
function extraFixed(input: FullChooseInput, built: BuiltUnits): Issue[] {
  return input.wanted.flatMap((wish) => {
    const standing = built.problem.units.filter((u) => u.fixed && built.birds[u.bird] === wish.bird).length;
    if (standing <= wish.sites) return [];
    return [
      issue(
        'more-standing-than-wanted',
        'note',
        null,
        `${standing} standing or locked sites for ${input.birdName(wish.bird)} are kept, ${wish.sites} ${wish.sites === 1 ? 'was' : 'were'} wanted.`,
        'Unlock or retire the boxes that are no longer wanted, or raise the number.',
      ),
    ];
  });
}
