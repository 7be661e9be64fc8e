/** The exact search for sets without conflicts against textbook independence numbers of graphs that are no fields of posts. */
import { describe, expect, it } from 'vitest';
import { HeaviestSet } from '../../src/placement/heaviest-set.ts';

type Edges = readonly (readonly [number, number])[];

const numbers = (n: number) => Array.from({ length: n }, (_, k) => k);

/** Generalized Petersen graph GP(n, k): a ring, spokes, and an inner ring of steps of k. */
function petersen(n: number, k: number): Edges {
  return numbers(n).flatMap((i): [number, number][] => [
    [i, (i + 1) % n],
    [i, n + i],
    [n + i, n + ((i + k) % n)],
  ]);
}

/** Nodes whose difference is a square modulo p are joined. */
function paley(p: number): Edges {
  const squares = new Set(numbers(p).map((k) => (k * k) % p));
  return numbers(p).flatMap((a) =>
    numbers(p)
      .filter((b) => b > a && squares.has(b - a))
      .map((b): [number, number] => [a, b]),
  );
}

/** Squares of an n × n board that a piece moves between. */
function board(n: number, moves: (dx: number, dy: number) => boolean): Edges {
  return numbers(n * n).flatMap((a) =>
    numbers(n * n)
      .filter((b) => b > a && moves(Math.abs((a % n) - (b % n)), Math.abs(Math.floor(a / n) - Math.floor(b / n))))
      .map((b): [number, number] => [a, b]),
  );
}

function independence(size: number, edges: Edges): { alpha: number; found: readonly number[] } {
  const words = (size + 31) >> 5;
  const bits = new Int32Array(size * words);
  for (const [a, b] of edges) {
    bits[a * words + (b >> 5)] |= 1 << (b & 31);
    bits[b * words + (a >> 5)] |= 1 << (a & 31);
  }
  const tool = new HeaviestSet();
  const alpha = tool.solve(bits, words, numbers(size), new Float64Array(size).fill(1), 0, Infinity);
  return { alpha, found: tool.found };
}

// SOURCE: independence numbers as in any graph theory text: GP(5,2) 4; dodecahedron 8; the bipartite Desargues and Möbius–Kantor graphs half
// their nodes; Dürer graph 4; Paley 13 and 17 3 each (R(4,4) = 18); hypercube Q4 8; eight queens; 32 knights; kings ⌈n/2⌉². Each was also
// re-verified with CBC 2.10.8.
describe('textbook independence numbers', () => {
  it.each([
    ['Petersen graph', 10, petersen(5, 2), 4],
    ['dodecahedron', 20, petersen(10, 2), 8],
    ['Desargues graph', 20, petersen(10, 3), 10],
    ['Dürer graph', 12, petersen(6, 2), 4],
    ['Möbius–Kantor graph', 16, petersen(8, 3), 8],
    ['Paley graph of 13', 13, paley(13), 3],
    ['Paley graph of 17', 17, paley(17), 3],
    [
      'hypercube of 16',
      16,
      numbers(16).flatMap((a) => [1, 2, 4, 8].filter((bit) => !(a & bit)).map((bit): [number, number] => [a, a | bit])),
      8,
    ],
    ['queens', 64, board(8, (x, y) => x === 0 || y === 0 || x === y), 8],
    ['knights', 64, board(8, (x, y) => x * y === 2), 32],
    ['kings on 8 × 8', 64, board(8, (x, y) => x <= 1 && y <= 1), 16],
    ['ring of 31', 31, numbers(31).map((k): [number, number] => [k, (k + 1) % 31]), 15],
  ])('%s', (_, size, edges, alpha) => {
    const answer = independence(size, edges);
    expect(answer.alpha).toBe(alpha);
    expect(answer.found).toHaveLength(alpha);
    expect(edges.some(([a, b]) => answer.found.includes(a) && answer.found.includes(b))).toBe(false);
  });
});
