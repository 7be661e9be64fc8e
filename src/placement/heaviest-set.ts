/**
 * The heaviest nodes of which no two conflict, exactly, for graphs of at most a few hundred nodes: depth first, with a bound from
 * cliques taken greedily (after Tomita & Seki 2003, "An efficient branch-and-bound algorithm for finding a maximum clique", with weights).
 */

/** Nodes that one call may ask about. */
export const mostNodes = 512;
const mostWords = mostNodes / 32;
/** Sums of weights that differ by less than this are the same. */
const same = 1e-12;

/** One place to work in, used again by call after call. */
export class HeaviestSet {
  /** Nodes of the last answer; empty when nothing heavier than `floor` was found. */
  found: number[] = [];
  /** False when the last search was given up at its budget: its answer is a set, though perhaps not the heaviest. */
  complete = true;
  private left = 0;
  private words = 0;
  private best = 0;
  private bestPath: number[] = [];
  private adjacency = new Int32Array(0);
  private readonly weight = new Float64Array(mostNodes);
  private readonly path = new Int32Array(mostNodes);
  private readonly levels: Level[] = [];
  private readonly rest = new Int32Array(mostWords);
  private readonly common = new Int32Array(mostWords);
  private readonly clique = new Int32Array(mostNodes);

  /**
   * What the nodes of `list` can weigh together at most, or `floor` when they cannot pass it. `bits` holds the conflicts, `words` 32-bit
   * words a node; `weight` (above zero) goes by node. Gives up after `budget` branchings.
   */
  solve(
    bits: Int32Array,
    words: number,
    list: readonly number[],
    weight: ArrayLike<number>,
    floor: number,
    budget: number,
  ): number {
    const nodes = [...list].sort((p, q) => weight[q] - weight[p] || p - q);
    this.found = [];
    this.left = budget;
    this.best = floor;
    this.bestPath = [];
    this.take(bits, words, nodes, weight);
    if (nodes.length > 0) this.expand(0, 0);
    this.complete = this.left >= 0;
    this.found = this.bestPath.map((a) => nodes[a]);
    return this.best;
  }

  /** The conflicts among `nodes`, heaviest first, so that the first bit of a set is its heaviest node. */
  private take(bits: Int32Array, words: number, nodes: readonly number[], weight: ArrayLike<number>): void {
    const n = nodes.length;
    this.words = (n + 31) >> 5;
    if (this.adjacency.length < n * this.words) this.adjacency = new Int32Array(n * this.words);
    const { adjacency } = this;
    adjacency.fill(0, 0, n * this.words);
    const all = this.level(0).set.fill(0);
    for (let a = 0; a < n; a++) {
      const row = nodes[a] * words;
      this.weight[a] = weight[nodes[a]];
      all[a >> 5] |= 1 << (a & 31);
      for (let b = 0; b < n; b++) {
        const v = nodes[b];
        if ((bits[row + (v >> 5)] & (1 << (v & 31))) !== 0) adjacency[a * this.words + (b >> 5)] |= 1 << (b & 31);
      }
    }
  }

  private level(depth: number): Level {
    this.levels[depth] ??= {
      set: new Int32Array(mostWords),
      order: new Int32Array(mostNodes),
      bound: new Float64Array(mostNodes),
    };
    return this.levels[depth];
  }

  /** Tries the nodes of a level's set beside those on the path. */
  private expand(depth: number, value: number): void {
    if (--this.left < 0) return;
    const { words, adjacency, weight } = this;
    const { set, order, bound } = this.level(depth);
    const next = this.level(depth + 1).set;
    for (let k = this.cover(depth) - 1; k >= 0; k--) {
      if (value + bound[k] <= this.best + same) return;
      const a = order[k];
      this.path[depth] = a;
      set[a >> 5] &= ~(1 << (a & 31));
      let any = 0;
      for (let w = 0; w < words; w++) any |= next[w] = set[w] & ~adjacency[a * words + w];
      const now = value + weight[a];
      if (any !== 0) this.expand(depth + 1, now);
      else if (now > this.best + same) {
        this.best = now;
        this.bestPath = Array.from(this.path.subarray(0, depth + 1));
      }
    }
  }

  /** Lists the nodes of a level's set clique by clique; the first k of them weigh at most `bound[k − 1]` together. */
  private cover(depth: number): number {
    const { words, adjacency, weight, rest, common, clique } = this;
    const { set, order, bound } = this.level(depth);
    for (let w = 0; w < words; w++) rest[w] = set[w];
    let count = 0;
    let before = 0;
    for (let from = 0; from < words; ) {
      if (rest[from] === 0) {
        from++;
        continue;
      }
      const head = lowest(rest[from], from);
      rest[from] &= rest[from] - 1;
      let members = 0;
      clique[members++] = head;
      for (let w = from; w < words; w++) common[w] = rest[w] & adjacency[head * words + w];
      for (let w = from; w < words; w++) {
        while (common[w] !== 0) {
          const u = lowest(common[w], w);
          clique[members++] = u;
          rest[w] &= ~(1 << (u & 31));
          common[w] &= common[w] - 1;
          for (let v = w; v < words; v++) common[v] &= adjacency[u * words + v];
        }
      }
      // Lightest first: a part of the clique is bound by its own heaviest.
      for (let m = members - 1; m >= 0; m--) {
        order[count] = clique[m];
        bound[count++] = before + weight[clique[m]];
      }
      before += weight[head];
    }
    return count;
  }
}

interface Level {
  readonly set: Int32Array;
  readonly order: Int32Array;
  readonly bound: Float64Array;
}

/** Node of the lowest bit of word `w`. */
function lowest(word: number, w: number): number {
  return (w << 5) + 31 - Math.clz32(word & -word);
}
