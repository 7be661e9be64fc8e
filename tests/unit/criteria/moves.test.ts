/** What must hold whatever is drawn: turn, mirror or shift the land and only the compass may answer; more woods never mean more openness. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { brush } from '../../../src/criteria/brush.ts';
import { buildingsAndFeeders } from '../../../src/criteria/buildings-and-feeders.ts';
import type { Criterion } from '../../../src/criteria/criterion.ts';
import { criteria } from '../../../src/criteria/index.ts';
import { openness } from '../../../src/criteria/openness.ts';
import { predatorPath } from '../../../src/criteria/predator-path.ts';
import { water } from '../../../src/criteria/water.ts';
import { woodsEdge } from '../../../src/criteria/woods-edge.ts';
import { seededRandom } from '../../../src/geometry/random.ts';
import { type Pair, rectangle, type Shape, star } from '../ground/plane-site.ts';
import { judged, make, post } from './fixture.ts';

const kinds = ['woods', 'brush', 'meadow', 'short-grass', 'water', 'building'] as const;

/** A seeded piece of country: areas that do not share edges, a fence, trees and a feeder. */
function country(seed: number): Shape[] {
  const random = seededRandom(seed);
  const areas = Array.from({ length: 9 }, (_, i): Shape => {
    const [x, y] = [((i % 3) - 1) * 90 + 20 * random(), (Math.floor(i / 3) - 1) * 90 + 20 * random()];
    return { kind: kinds[Math.floor(random() * kinds.length)]!, rings: [star(random, x, y, 12, 42, 9)] };
  });
  return [
    ...areas,
    {
      kind: 'fence',
      line: [
        [-120, -60 + 40 * random()],
        [110, 30 * random()],
      ],
    },
    { kind: 'tree', at: [60 * random(), -60 * random()], properties: { height: 8, crownRadius: 3 } },
    { kind: 'feeder', at: [-70 * random(), 70 * random()] },
  ];
}

const moved = (shapes: readonly Shape[], move: (pair: Pair) => Pair): Shape[] =>
  shapes.map((shape) => ({
    ...shape,
    ...(shape.rings ? { rings: shape.rings.map((ring) => ring.map(move)) } : {}),
    ...(shape.line ? { line: shape.line.map(move) } : {}),
    ...(shape.at ? { at: move(shape.at) } : {}),
  }));

const turned = (degrees: number) => {
  const [s, c] = [Math.sin((degrees * Math.PI) / 180), Math.cos((degrees * Math.PI) / 180)];
  return ([x, y]: Pair): Pair => [x * c - y * s, x * s + y * c];
};

const blindToCompass: readonly Criterion[] = [openness, woodsEdge, brush, buildingsAndFeeders, predatorPath, water];

/** Sight is looked along whole degrees, so a turn by part of one sees slightly other rays: the tolerance, as a score. */
const sightTolerance = 0.01;

describe.each([1, 2, 3, 4])('country %d, as it is and moved', (seed) => {
  const shapes = country(seed);
  const here = make(shapes);
  const at = { x: 7, y: -4 };
  const scores = (made: typeof here, x: number, y: number) =>
    blindToCompass.map((criterion) => judged(criterion, made, 'tree-swallow', post(x, y)).score);
  const before = scores(here, at.x, at.y);

  it.each([
    ['turned by 90°', turned(90)],
    ['turned by 37.3°', turned(37.3)],
    ['mirrored', ([x, y]: Pair): Pair => [-x, y]],
    ['shifted by a kilometre', ([x, y]: Pair): Pair => [x + 800, y - 600]],
  ])('scores the same where the compass has no say: %s', (_, move) => {
    const [x, y] = move([at.x, at.y]);
    scores(make(moved(shapes, move)), x, y).forEach((score, i) => {
      if (before[i] === null) expect(score).toBeNull();
      else expect(Math.abs(score! - before[i]!)).toBeLessThan(blindToCompass[i] === openness ? sightTolerance : 1e-4);
    });
  });
});

describe('more woods', () => {
  it('never raise openness for a bird of open country', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 500 }),
        fc.double({ min: -60, max: 60, noNaN: true }),
        fc.double({ min: -60, max: 60, noNaN: true }),
        (seed, x, y) => {
          const shapes = country(seed);
          const more: Shape = { kind: 'woods', rings: [star(seededRandom(seed + 9), x, y, 5, 40, 8)] };
          const base: Shape = { kind: 'meadow', rings: [rectangle(-250, -250, 250, 250)] };
          // Over ground that is drawn all round: woods drawn on ground nobody drew would change what is known, not what is there.
          const before = judged(openness, make([...shapes, base]), 'eastern-bluebird').score!;
          const after = judged(openness, make([...shapes, base, more]), 'eastern-bluebird').score!;
          expect(after).toBeLessThanOrEqual(before + 1e-9);
        },
      ),
      { seed: 4, numRuns: 25 },
    );
  });

  it('farther away never lower the bluebird’s woods-edge score', () => {
    const made = make([{ kind: 'woods', rings: [star(seededRandom(3), 0, 0, 30, 60, 11)] }]);
    for (let bearing = 0; bearing < 360; bearing += 45) {
      let last = -1;
      for (let metres = 62; metres < 140; metres += 1.5) {
        const radians = (bearing * Math.PI) / 180;
        const { raw, score } = judged(
          woodsEdge,
          made,
          'eastern-bluebird',
          post(metres * Math.sin(radians), metres * Math.cos(radians)),
        );
        expect(score).toBeGreaterThanOrEqual(last - 1e-12);
        expect(raw).toBeGreaterThan(0);
        last = score!;
      }
    }
  });
});

describe('a post moved by a centimetre', () => {
  it('moves no criterion by more than 0.02, walking 200 steps over country with an own facing', () => {
    const made = make([...country(7), { kind: 'meadow', rings: [rectangle(-250, -250, 250, 250)] }]);
    const random = seededRandom(21);
    for (let i = 0; i < 200; i++) {
      const [x, y] = [-110 + 220 * random(), -110 + 220 * random()];
      const angle = 2 * Math.PI * random();
      for (const criterion of criteria) {
        const a = judged(criterion, made, 'eastern-bluebird', post(x, y, { facing: 120 }));
        const b = judged(
          criterion,
          made,
          'eastern-bluebird',
          post(x + 0.01 * Math.sin(angle), y + 0.01 * Math.cos(angle), { facing: 120 }),
        );
        if (a.score === null || b.score === null) expect(a.score).toBe(b.score);
        else expect(Math.abs(a.score - b.score), `${criterion.id} at ${x}, ${y}`).toBeLessThan(0.02);
      }
    }
  });
});
