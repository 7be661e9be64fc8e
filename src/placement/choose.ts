/** The door of this room: scored posts and what is wanted → the sites chosen, why the others were left out, and how good that is known to be. */
import type { LoadSolver } from '../geometry/linear-model.ts';
import type { Point } from '../geometry/point.ts';
import type { Candidate, LeftOutCode, Proof } from '../plan-types.ts';
import type { Issue, Wanted } from '../site/types.ts';
import { fixedIssues, wantedIssues } from './choice-issues.ts';
import { type Field, fieldOf } from './field.ts';
import { type Layout, layoutOf } from './layout.ts';
import { type SearchOptions, searchLayout } from './local-search.ts';
import { proveLayout } from './prove.ts';
import type { BuiltUnits } from './units.ts';
import { buildUnits } from './units.ts';
import { whyNot } from './why-not.ts';

/** How one post does for one bird: 0–100, or null when nothing could be judged; the hard rules that refuse it. */
export interface BirdScore {
  readonly score: number | null;
  readonly refused: readonly string[];
}

/** A candidate with everything the choice needs to know of it. */
export interface ScoredPost {
  readonly candidate: Candidate;
  /** Why no box may stand here at all, or null. */
  readonly forbidden: string | null;
  /** True when no walk leads here. */
  readonly unreachable?: boolean;
  /** By bird id; birds not wanted may be missing. */
  readonly scores: Readonly<Record<string, BirdScore>>;
}

export interface ChooseInput {
  readonly posts: readonly ScoredPost[];
  readonly wanted: readonly Wanted[];
  /** Metres between sites of two birds (hard); 0 where they do not mind each other. Must be symmetric. */
  readonly spacing: (birdA: string, birdB: string) => number;
  /** 0–100: posts scoring less are not chosen. */
  readonly minimumScore: number;
  readonly seed: number;
  /** A first answer, soon on the screen: a shorter search. */
  readonly sketch?: boolean;
  /** A good choice already made of the same posts: the search is left out and only the proof goes on from it. */
  readonly start?: Pick<Choice, 'sites'> | null;
  /** Score of a place for a bird, for the second box of a pair; null where no box may stand. Without it only candidates are paired. */
  readonly scoreAt?: (at: Point, bird: string) => BirdScore | null;
  /** `quick` ends after seconds with the bound it has, `full` goes on to the time limit. */
  readonly proof?: 'none' | 'quick' | 'full';
  /** Time limit of the proof: 5 for quick and 30 for full unless given. */
  readonly seconds?: number;
  readonly loadSolver?: LoadSolver;
  readonly shouldStop?: () => boolean;
  /** A longest round: the best sites within it are chosen. */
  readonly walk?: WalkLimit | null;
  /** A length in the person's units: "100 yards". Metres unless given. */
  readonly words?: (metres: number) => string;
  /** Name of a bird by id, for sentences; the id unless given. */
  readonly birdName?: (bird: string) => string;
}

export interface WalkLimit {
  /** Metres. */
  readonly limit: number;
  readonly start: Point | null;
  /** Metres of the round through these stops as it is really walked. Asked a few times. */
  readonly measure: (stops: readonly { readonly id: string; readonly at: Point }[]) => number;
}

export interface ChosenPost {
  readonly id: string;
  readonly at: Point;
  /** 0–100, or null for a fixed box that could not be scored. */
  readonly score: number | null;
  /** True for a second box that stands at no drawn or suggested candidate. */
  readonly added: boolean;
}

/** One site: one box, or two counted as one. */
export interface ChosenSite {
  readonly bird: string;
  readonly posts: readonly ChosenPost[];
  /** Mean of its posts' scores, 0–100. */
  readonly score: number;
  readonly fixed: boolean;
}

export interface ChoiceLeftOut {
  readonly post: string;
  readonly at: Point;
  readonly code: LeftOutCode;
  readonly score: number | null;
  /** The bird the score is for, the best of those wanted. */
  readonly bird: string | null;
  /** Post id of the box in the way, its distance and the distance asked, where a box is. */
  readonly becauseOf: string | null;
  readonly metres: number | null;
  readonly needed: number | null;
  /** The rule or land that refuses it, where one does. */
  readonly rule: string | null;
}

export interface Choice {
  readonly sites: readonly ChosenSite[];
  readonly leftOut: readonly ChoiceLeftOut[];
  readonly proof: Proof;
  /** Positions are left to the caller (`place` is null; `feature` names the post). */
  readonly issues: readonly Issue[];
  /** True when `shouldStop` ended the work early. */
  readonly cancelled: boolean;
}

const plainMetres = (metres: number) => `${Math.round(metres)} m`;

/** Chooses sites. Never rejects for what a person drew or asked: trouble comes back as issues beside whatever plan is possible. */
export async function choose(input: ChooseInput): Promise<Choice> {
  const full = { ...input, words: input.words ?? plainMetres, birdName: input.birdName ?? ((bird: string) => bird) };
  const built = buildUnits(full);
  const field = fieldOf(built.problem);
  const start = startLayout(full, built) ?? goodLayout(full, field);
  const free = await proveLayout(field, start, full, built);
  // Loaded where a walk has a limit: most have none.
  const limit = full.walk ? await import('./keep-to-walk.ts') : null;
  const walked = limit?.keepToWalk(full, built, field, free) ?? null;
  const { layout, proof } = walked ?? free;
  const leftOut = whyNot(full, built, field, layout);
  return {
    sites: sitesOf(built, layout),
    leftOut: walked && limit ? limit.tooFar(leftOut) : leftOut,
    proof,
    issues: [...fixedIssues(full, built, field), ...(walked ? walked.issues : wantedIssues(full, built, layout))],
    cancelled: input.shouldStop?.() ?? false,
  };
}

function goodLayout({ seed, sketch, shouldStop }: FullChooseInput, field: Field): Layout {
  return sketch
    ? searchLayout(field, { seed, moves: sketchMoves(field.count), runs: 2, patch: patchSites, shouldStop })
    : searchLayout(field, { seed, ...goodSearch(field.count), shouldStop });
}

/** Sites of a patch chosen anew together (ours). */
const patchSites = 7;

/** The units of the choice to begin from; null when there is none or it is not made of the same units. */
function startLayout({ start }: FullChooseInput, built: BuiltUnits): Layout | null {
  if (!start) return null;
  const key = (bird: string, posts: readonly ChosenPost[]) => [bird, ...posts.map((p) => p.id)].join('\n');
  const units = new Map(built.postsOfUnit.map((posts, u) => [key(built.birds[built.problem.units[u].bird], posts), u]));
  const found = start.sites.map((site) => units.get(key(site.bird, site.posts)));
  return found.every((u) => u !== undefined) ? layoutOf(built.problem, found) : null;
}

/** An answer within a second, a tenth to a third of a microsecond a move, cheapest where units are few. */
export function goodSearch(units: number): Pick<SearchOptions, 'moves' | 'runs' | 'patch'> {
  const moves = units <= 60 ? 60_000 : units <= 1200 ? Math.min(4_000_000, 500_000 + units * 3500) : 2_400_000;
  return { moves, runs: 8, patch: patchSites };
}

/** Enough for an answer within 1 % of the best where there is room, a quarter of a second on 3,000 units. */
function sketchMoves(units: number): number {
  return units <= 60 ? 60_000 : Math.min(900_000, 200_000 + units * 80);
}

function sitesOf(built: BuiltUnits, layout: Layout): ChosenSite[] {
  return layout.chosen.map((u) => {
    const unit = built.problem.units[u];
    return {
      bird: built.birds[unit.bird],
      posts: built.postsOfUnit[u],
      score: unit.weight,
      fixed: unit.fixed ?? false,
    };
  });
}

export type FullChooseInput = ChooseInput & Required<Pick<ChooseInput, 'words' | 'birdName'>>;
