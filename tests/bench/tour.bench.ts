/** Rounds: ours beside nearest neighbour and plain descent (2-opt and Or-opt), against the proven least. Seeded; one run. */
import loadHighs from 'highs';
import { seededRandom } from '../../src/geometry/random.ts';
import { linearSolver } from '../../src/placement/solver.ts';
import { matrixOf, roundCost } from '../../src/route/matrix.ts';
import { nearestNeighbour } from '../../src/route/near-places.ts';
import { waysBetween } from '../../src/route/surface.ts';
import { kicksFor } from '../../src/route/tour.ts';
import { boundTour } from '../../src/route/tour-bound.ts';
import { searchTour } from '../../src/route/tour-search.ts';
import { type Drawing, type Metres, metreGround } from '../unit/route/metre-ground.ts';

const solver = linearSolver(await loadHighs());
const mean = (list: readonly number[]) => list.reduce((a, b) => a + b, 0) / list.length;
const percent = (x: number) => `${(100 * x).toFixed(2)} %`;

for (const [size, rounds] of [
  [41, 10],
  [100, 4],
  [150, 4],
]) {
  const rows = Array.from({ length: rounds }, (_, seed) => {
    const random = seededRandom(seed + 1);
    const at = Array.from({ length: size }, () => [2000 * random(), 2000 * random()]);
    const matrix = matrixOf(size, (a, b) => Math.hypot(at[a][0] - at[b][0], at[a][1] - at[b][1]));
    const since = performance.now();
    const order = searchTour(matrix, 1, kicksFor(size));
    const took = performance.now() - since;
    // The best known: a proof that gives up after seconds leaves a gap of its own.
    const known = Math.min(...[2, 3].map((seed) => roundCost(matrix, searchTour(matrix, seed, 10 * kicksFor(size)))));
    const start = performance.now();
    const proof = boundTour(matrix, order, { solver, seconds: 5 });
    return {
      took,
      proofTook: performance.now() - start,
      ours: roundCost(matrix, order) / proof.bound - 1,
      over: Math.max(0, roundCost(matrix, order) / Math.min(known, proof.cost) - 1),
      near: roundCost(matrix, nearestNeighbour(matrix)) / proof.bound - 1,
      plain: roundCost(matrix, searchTour(matrix, 1, 0)) / proof.bound - 1,
      proven: proof.bound > proof.cost * (1 - 1e-7),
    };
  });
  const of = (key: 'took' | 'proofTook' | 'ours' | 'over' | 'near' | 'plain') => mean(rows.map((r) => r[key]));
  const most = (key: 'ours' | 'over') => Math.max(...rows.map((r) => r[key]));
  console.log(
    `${size} stops, ${rounds} rounds (over the proven least; ${rows.filter((r) => r.proven).length} proven best)`,
  );
  console.log(`  nearest neighbour ${percent(of('near'))}, 2-opt and Or-opt ${percent(of('plain'))}`);
  console.log(
    `  ours ${percent(of('ours'))} (most ${percent(most('ours'))}) in ${of('took').toFixed(0)} ms, proof ${of('proofTook').toFixed(0)} ms more`,
  );
  console.log(
    `  ours over the best round known (ten times the kicks, two seeds, the proof's own) ${percent(of('over'))} (most ${percent(most('over'))})`,
  );
}

/** A park of 90 ha: ponds, a woods, buildings, a path across. */
const random = seededRandom(7);
const blob = (x: number, y: number, r: number, corners: number): Metres[] =>
  Array.from({ length: corners }, (_, k): Metres => {
    const turn = (2 * Math.PI * k) / corners;
    const reach = r * (0.75 + 0.25 * random());
    return [x + reach * Math.cos(turn), y + reach * Math.sin(turn)];
  });
const middle = (): Metres => [950 * random() - 475, 950 * random() - 475];
const drawings: Drawing[] = [
  { kind: 'boundary', area: blob(0, 0, 640, 60) },
  { kind: 'path', line: Array.from({ length: 40 }, (_, k): Metres => [25 * k - 487, 60 * Math.sin(k / 5)]) },
  ...Array.from({ length: 12 }, (): Drawing => ({ kind: 'water', area: blob(...middle(), 50, 40) })),
  ...Array.from({ length: 25 }, (): Drawing => ({ kind: 'building', area: blob(...middle(), 12, 4) })),
  ...Array.from({ length: 10 }, (): Drawing => ({ kind: 'woods', area: blob(...middle(), 90, 60) })),
];
const { ground, at } = metreGround(drawings);
const places = Array.from({ length: 300 }, () => at(...middle()))
  .filter((p) => ground.forbidden(p) === null)
  .slice(0, 41);
const since = performance.now();
const ways = waysBetween(ground, places);
const took = performance.now() - since;
const detours = places.slice(1).map((p, k) => {
  const way = ways.way(0, k + 1);
  return way ? way.metres / Math.hypot(p.x - places[0].x, p.y - places[0].y) : Number.NaN;
});
console.log(
  `walking surface of a 90 ha park and all ${places.length} × ${places.length} ways: ${(took / 1000).toFixed(2)} s, mean detour ×${mean(detours).toFixed(3)}`,
);
