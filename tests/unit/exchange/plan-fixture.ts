/** A small plan made by hand: two rounds, a pair, a standing box and two posts left out. `text` goes into every field a person can fill. */

import { makeFrame } from '../../../src/ground/frame.ts';
import type { Frame } from '../../../src/ground/types.ts';
import type { Plan, PlannedBox } from '../../../src/plan-types.ts';
import type { LonLat } from '../../../src/site/types.ts';

export const frame: Frame = makeFrame([-81.25, 41.5]);

function box(
  number: number,
  x: number,
  y: number,
  bird: string,
  post: string,
  more: Partial<PlannedBox> = {},
): PlannedBox {
  return {
    number,
    post,
    at: { x, y },
    position: frame.toLonLat({ x, y }),
    bird,
    state: 'new',
    pairedWith: null,
    holeHeight: 1.5,
    sureness: 0.93,
    card: {
      post,
      bird,
      score: 81.4,
      judged: 1,
      weakest: [],
      rows: [],
      facing: {
        best: 95,
        from: 60,
        to: 130,
        used: 95,
        word: 'E',
        magnetic: { degrees: 103.4, declination: -8.4, model: 'World Magnetic Model 2025, 2026-06-15' },
        sentence: 'face 95°',
      },
      sun: {
        hours: 3,
        grade: 'MID',
        front: 1,
        roof: 2,
        hottestWall: 1.5,
        sunny: [],
        sentence: '',
        help: [],
      },
      refused: [],
      flags: [],
      unmapped: 0.1,
      who: [],
    },
    ...more,
  };
}

/** The plan, with `text` as site name, post id, unknown bird id and left-out sentence. */
export function fixturePlan(text = 'Long Acre'): Plan {
  const boxes = [
    box(1, 10, 20, 'eastern-bluebird', 'p1', { state: 'standing' }),
    box(2, 110, 20, 'tree-swallow', 'p2', { pairedWith: 3 }),
    box(3, 116, 20, 'eastern-bluebird', `p3 ${text}`, { pairedWith: 2 }),
    box(12, 300, 150, text, 'p12'),
  ];
  const leg = (from: number | 'start', to: number | 'end', points: readonly (readonly [number, number])[]) => ({
    from,
    to,
    metres: 100,
    minutes: 2,
    bearing: 90,
    line: points.map(([x, y]) => ({ x, y })),
  });
  return {
    siteName: text,
    date: '2026-06-15',
    boxes,
    sites: 3,
    leftOut: [
      {
        post: 'p9',
        at: { x: 60, y: 20 },
        code: 'too-close',
        score: 77,
        sentence: `Too close to 1. ${text}`,
        becauseOf: 1,
      },
      { post: `q ${text}`, at: { x: -60, y: 20 }, code: 'retired', score: null, sentence: 'Retired.', becauseOf: null },
    ],
    rounds: [
      {
        walker: 1,
        start: { x: 0, y: 0 },
        boxes: [1, 2, 3],
        legs: [
          leg('start', 1, [
            [0, 0],
            [10, 20],
          ]),
          leg(1, 2, [
            [10, 20],
            [60, 40],
            [110, 20],
          ]),
          leg(2, 3, [
            [110, 20],
            [116, 20],
          ]),
          leg(3, 'end', [
            [116, 20],
            [0, 0],
          ]),
        ],
        metres: 400,
        minutes: 20,
        gap: 0,
      },
      { walker: 2, start: null, boxes: [12], legs: [], metres: 0, minutes: 4, gap: null },
    ],
    sureness: null,
    proof: {
      state: 'best-possible',
      value: 300,
      bound: 300,
      gap: 0,
      mostSites: null,
      sentence: 'Best possible.',
      seconds: 1,
    },
    issues: [],
    unmapped: 0.1,
  };
}

/** Metres between two nearby positions, good enough for tolerances. */
export function metresApart(a: LonLat, b: LonLat): number {
  const [p, q] = [frame.toPlane(a), frame.toPlane(b)];
  return Math.hypot(p.x - q.x, p.y - q.y);
}
