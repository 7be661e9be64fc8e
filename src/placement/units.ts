/** Scored posts → units: one for each bird a post may serve, or each pair of posts a paired bird may use. */
import { distance } from '../geometry/point.ts';
import type { ChosenPost, FullChooseInput, ScoredPost } from './choose.ts';
import type { LayoutProblem, Unit } from './layout.ts';
import { metresBetween, spacingSlack } from './layout.ts';
import { findPartner, pairFarthest } from './pairs.ts';
import { type PostIndex, postIndex } from './post-index.ts';
import { usableScore } from './usable.ts';

export interface BuiltUnits {
  readonly problem: LayoutProblem;
  /** Bird id by index of the problem. */
  readonly birds: readonly string[];
  /** Chosen posts of each unit, in the problem's order. */
  readonly postsOfUnit: readonly (readonly ChosenPost[])[];
  /** Units of each input post as its first post, by index of the input. */
  readonly unitsOfPost: readonly (readonly number[])[];
  /** Fixed posts, by index of the input. */
  readonly fixed: readonly number[];
  /** Input posts that serve a paired bird only and found no place for the second box. */
  readonly lonely: ReadonlySet<number>;
}

/** Everything that may be chosen. Units that conflict with a standing box are left out here: they can never be chosen. */
export function buildUnits(input: FullChooseInput): BuiltUnits {
  const builder = new Builder(input);
  input.posts.forEach((post, index) => {
    if (post.candidate.state === 'fixed') builder.addFixed(post, index);
  });
  input.posts.forEach((post, index) => {
    if (post.candidate.state === 'candidate') builder.addCandidate(post, index);
  });
  return builder.finish();
}

class Builder {
  private readonly units: Unit[] = [];
  private readonly posts: (readonly ChosenPost[])[] = [];
  private readonly unitsOfPost: number[][];
  private readonly fixed: number[] = [];
  private readonly lonely = new Set<number>();
  private readonly birds: string[];
  private readonly input: FullChooseInput;
  private extraPosts = 0;
  private readonly index: PostIndex;

  constructor(input: FullChooseInput) {
    this.input = input;
    this.unitsOfPost = input.posts.map(() => []);
    this.index = postIndex(input.posts, pairFarthest);
    const standing = input.posts.filter((p) => p.candidate.state === 'fixed').map((p) => this.birdOfFixed(p));
    this.birds = [...new Set([...input.wanted.map((w) => w.bird), ...standing])];
  }

  /** A standing box keeps its bird; one without a bird serves the wanted bird it suits best. */
  private birdOfFixed(post: ScoredPost): string {
    if (post.candidate.bird) return post.candidate.bird;
    const ranked = this.input.wanted
      .map((w) => ({ bird: w.bird, score: post.scores[w.bird]?.score ?? -1 }))
      .sort((a, b) => b.score - a.score);
    return ranked[0]?.bird ?? '';
  }

  addFixed(post: ScoredPost, index: number): void {
    if (this.fixed.includes(index)) return;
    const bird = this.birdOfFixed(post);
    const mates = this.input.posts
      .map((other, i) => ({ other, i }))
      .filter(
        ({ other, i }) =>
          i !== index &&
          other.candidate.state === 'fixed' &&
          !this.fixed.includes(i) &&
          (other.candidate.id === post.candidate.pair || other.candidate.pair === post.candidate.id),
      );
    const mate = mates[0];
    this.fixed.push(index);
    if (mate) this.fixed.push(mate.i);
    const score = (p: ScoredPost) => p.scores[bird]?.score ?? null;
    const scores = [score(post), ...(mate ? [score(mate.other)] : [])].filter((s) => s !== null);
    this.push(
      index,
      {
        post: index,
        at: post.candidate.at,
        partner: mate && { post: mate.i, at: mate.other.candidate.at },
        bird: this.birds.indexOf(bird),
        weight: scores.length ? scores.reduce((a, b) => a + b, 0) / scores.length : 0,
        fixed: true,
      },
      [
        { id: post.candidate.id, at: post.candidate.at, score: score(post), added: false },
        ...(mate
          ? [{ id: mate.other.candidate.id, at: mate.other.candidate.at, score: score(mate.other), added: false }]
          : []),
      ],
    );
    if (mate) this.unitsOfPost[mate.i].push(this.units.length - 1);
  }

  addCandidate(post: ScoredPost, index: number): void {
    for (const wish of this.input.wanted) {
      const score = usableScore(this.input, post, wish.bird);
      if (score === null || wish.sites <= 0) continue;
      if (wish.paired) this.addPair(post, index, wish.bird, score);
      else this.addSingle(post, index, wish.bird, score);
    }
  }

  private addSingle(post: ScoredPost, index: number, bird: string, score: number): void {
    const { id, at } = post.candidate;
    this.push(index, { post: index, at, bird: this.birds.indexOf(bird), weight: score }, [
      { id, at, score, added: false },
    ]);
  }

  private addPair(post: ScoredPost, index: number, bird: string, score: number): void {
    const partner = findPartner(this.input, post, bird, this.index);
    if (!partner) {
      this.lonely.add(index);
      return;
    }
    const mate = partner.index ?? this.input.posts.length + this.extraPosts++;
    this.push(
      index,
      {
        post: index,
        at: post.candidate.at,
        partner: { post: mate, at: partner.at },
        bird: this.birds.indexOf(bird),
        weight: (score + partner.score) / 2,
      },
      [
        { id: post.candidate.id, at: post.candidate.at, score, added: false },
        { id: partner.id, at: partner.at, score: partner.score, added: partner.index === null },
      ],
    );
    if (partner.index !== null) this.unitsOfPost[partner.index].push(this.units.length - 1);
  }

  private push(index: number, unit: Unit, posts: readonly ChosenPost[]): void {
    this.unitsOfPost[index].push(this.units.length);
    this.units.push(unit);
    this.posts.push(posts);
  }

  finish(): BuiltUnits {
    const { input, birds } = this;
    const wanted = birds.map((bird, b) => {
      const asked = input.wanted.filter((w) => w.bird === bird).reduce((sum, w) => sum + Math.max(0, w.sites), 0);
      return Math.max(asked, this.units.filter((u) => u.fixed && u.bird === b).length);
    });
    const spacing = birds.map((a) => birds.map((b) => Math.max(input.spacing(a, b), input.spacing(b, a))));
    return dropBlocked({ units: this.units, wanted, spacing }, birds, this.posts, this.unitsOfPost, {
      fixed: this.fixed,
      lonely: this.lonely,
    });
  }
}

/** Leaves out the units that stand too near a standing box. */
function dropBlocked(
  problem: LayoutProblem,
  birds: readonly string[],
  posts: readonly (readonly ChosenPost[])[],
  unitsOfPost: readonly (readonly number[])[],
  rest: Pick<BuiltUnits, 'fixed' | 'lonely'>,
): BuiltUnits {
  const standing = problem.units.filter((u) => u.fixed);
  const taken = new Set(standing.flatMap((u) => (u.partner ? [u.post, u.partner.post] : [u.post])));
  const keep = problem.units.map((u) => u.fixed || !standing.some((s) => tooNear(problem, u, s, taken)));
  const renamed = new Int32Array(problem.units.length).fill(-1);
  let next = 0;
  keep.forEach((k, u) => {
    if (k) renamed[u] = next++;
  });
  return {
    problem: { ...problem, units: problem.units.filter((_, u) => keep[u]) },
    birds,
    postsOfUnit: posts.filter((_, u) => keep[u]),
    unitsOfPost: unitsOfPost.map((list) => list.map((u) => renamed[u]).filter((u) => u >= 0)),
    ...rest,
  };
}

function tooNear(problem: LayoutProblem, u: Unit, standing: Unit, taken: ReadonlySet<number>): boolean {
  if (taken.has(u.post) || (u.partner && taken.has(u.partner.post))) return true;
  const limit = metresBetween(problem, u.bird, standing.bird) - spacingSlack;
  const ends = (unit: Unit) => (unit.partner ? [unit.at, unit.partner.at] : [unit.at]);
  return ends(u).some((a) => ends(standing).some((b) => distance(a, b) < limit));
}
