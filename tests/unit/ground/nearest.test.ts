import { describe, expect, it } from 'vitest';
import { distance } from '../../../src/geometry/point.ts';
import { seededRandom } from '../../../src/geometry/random.ts';
import { distanceToSegment } from '../../../src/geometry/segment.ts';
import { at, type Pair, planeGround, rectangle, type Shape } from './plane-site.ts';

const near = (
  shapes: readonly Shape[],
  x: number,
  y: number,
  target: Parameters<ReturnType<typeof planeGround>['nearest']>[1],
) => planeGround(shapes).nearest(at(x, y), target);

const woods: Shape = { kind: 'woods', rings: [rectangle(50, -100, 150, 100)] };

describe('the nearest place of a target', () => {
  it('is metres to the edge, negative inside, with the place and the feature', () => {
    const outside = near([woods], 0, 10, 'woods-edge')!;
    expect(outside.distance).toBeCloseTo(50, 6);
    expect(outside.at.x).toBeCloseTo(50, 6);
    expect(outside.at.y).toBeCloseTo(10, 6);
    expect(outside.feature).toBe('f0');
    expect(near([woods], 60, 10, 'woods-edge')!.distance).toBeCloseTo(-10, 6);
  });

  it('is nothing when the target is not drawn, or not within reach', () => {
    const ground = planeGround([woods]);
    expect(ground.nearest(at(0, 0), 'feeder')).toBeNull();
    expect(ground.has('feeder')).toBe(false);
    expect(ground.has('woods-edge')).toBe(true);
    expect(ground.nearest(at(0, 0), 'woods-edge', 49.99)).toBeNull();
    expect(ground.nearest(at(0, 0), 'woods-edge', 50.01)!.distance).toBeCloseTo(50, 6);
    // Deep inside the reach does not hide that the post stands in it.
    expect(ground.nearest(at(100, 0), 'woods-edge', 5)!.distance).toBeCloseTo(-50, 6);
  });

  it('counts a tall tree by its trunk as woods edge and by its crown as a place to jump from', () => {
    const tree: Shape = { kind: 'tree', at: [0, 20], properties: { height: 9, crownRadius: 5 } };
    expect(near([tree], 0, 0, 'woods-edge')!.distance).toBeCloseTo(20, 6);
    const jump = near([tree], 0, 0, 'jump')!;
    expect(jump.distance).toBeCloseTo(15, 6);
    expect(jump.at.y).toBeCloseTo(15, 6);
    const under = near([tree], 0, 17, 'jump')!;
    expect(under.distance).toBeCloseTo(-2, 6);
    expect(under.at.y).toBeCloseTo(15, 6);
    expect(near([tree], 0, 20, 'jump')!.distance).toBeCloseTo(-5, 6);
  });

  it('counts a tree of 3 m as a shrub', () => {
    const tree: Shape = { kind: 'tree', at: [0, 20], properties: { height: 3 } };
    expect(near([tree], 0, 0, 'woods-edge')).toBeNull();
    expect(near([tree], 0, 0, 'jump')).toBeNull();
    expect(near([tree], 0, 0, 'perch')!.distance).toBeCloseTo(20, 6);
  });

  it('measures to the side of a hedge, at least 0', () => {
    const hedge: Shape = {
      kind: 'hedge',
      line: [
        [-50, 10],
        [50, 10],
      ],
      properties: { width: 3 },
    };
    const found = near([hedge], 0, 0, 'brush')!;
    expect(found.distance).toBeCloseTo(8.5, 6);
    expect(found.at.y).toBeCloseTo(8.5, 6);
    expect(near([hedge], 0, 9, 'brush')!.distance).toBe(0);
    expect(near([hedge], 0, 10, 'jump')!.distance).toBe(0);
  });

  it('does not see the line between neighbors of one kind, nor a wood hidden under something finer', () => {
    const two: Shape[] = [woods, { kind: 'woods', rings: [rectangle(150, -100, 250, 100)] }];
    expect(near(two, 140, 0, 'woods-edge')!.distance).toBeCloseTo(-90, 6);
    const pond: Shape = { kind: 'water', rings: [rectangle(0, -200, 100, 200)] };
    expect(near([woods, pond], 60, 0, 'woods-edge')!.distance).toBeCloseTo(40, 6);
    expect(near([woods, pond], 60, 0, 'water')!.distance).toBeCloseTo(-40, 6);
  });

  it('takes wetland and streams as water, and off-limits ground from its own layer', () => {
    const shapes: Shape[] = [
      {
        kind: 'stream',
        line: [
          [-100, 30],
          [100, 30],
        ],
      },
      { kind: 'wetland', rings: [rectangle(-100, -80, 100, -40)] },
      { kind: 'off-limits', rings: [rectangle(5, -100, 90, 100)] },
    ];
    const ground = planeGround(shapes);
    expect(ground.nearest(at(0, 0), 'water')!.distance).toBeCloseTo(30, 6);
    expect(ground.nearest(at(0, -20), 'water')!.distance).toBeCloseTo(20, 6);
    expect(ground.nearest(at(0, 0), 'off-limits')!.distance).toBeCloseTo(5, 6);
    expect(ground.nearest(at(10, 0), 'off-limits')!.distance).toBeCloseTo(-5, 6);
  });

  it('finds what brute force finds, near and far, among lines and points', () => {
    const random = seededRandom(5);
    const spot = (spread: number): Pair => [spread * (random() - 0.5), spread * (random() - 0.5)];
    const lines = Array.from({ length: 60 }, () => {
      const [x, y] = spot(2000);
      return [
        [x, y],
        [x + 90 * (random() - 0.5), y + 400 * (random() - 0.5)],
      ] as const;
    });
    const perches = Array.from({ length: 80 }, () => spot(600));
    const ground = planeGround([
      ...lines.map((line): Shape => ({ kind: 'fence', line })),
      ...perches.map((p): Shape => ({ kind: 'perch', at: p })),
    ]);
    for (let i = 0; i < 300; i++) {
      const [x, y] = spot(i % 3 === 0 ? 9000 : 1500);
      const expected = Math.min(
        ...lines.map(([a, b]) => distanceToSegment(x, y, a[0], a[1], b[0], b[1])),
        ...perches.map((p) => Math.hypot(p[0] - x, p[1] - y)),
      );
      const found = ground.nearest(at(x, y), 'perch')!;
      expect(found.distance).toBeCloseTo(expected, 6);
      expect(distance(found.at, at(x, y))).toBeCloseTo(expected, 6);
    }
  });

  it('refuses a target it does not know', () => {
    expect(() => planeGround([]).nearest(at(0, 0), 'swamp' as 'water')).toThrow('unknown target: swamp');
  });
});

describe('pieces within reach', () => {
  const shapes: Shape[] = [
    {
      kind: 'fence',
      line: [
        [-200, 10],
        [200, 10],
        [200, 300],
      ],
    },
    { kind: 'perch', at: [0, -20] },
    { kind: 'perch', at: [0, -50] },
  ];
  it('are whole edges and places, each once, with height and feature', () => {
    const pieces = planeGround(shapes).piecesWithin(at(0, 0), 'perch', 30);
    expect(pieces.map(({ feature }) => feature)).toEqual(['f0', 'f1']);
    expect(pieces[0]!.a.x).toBeCloseTo(-200, 6);
    expect(pieces[0]!.b.x).toBeCloseTo(200, 6);
    expect(pieces[0]!.height).toBe(1.2);
    expect(pieces[1]!.a).toEqual(pieces[1]!.b);
  });
  it('are none beyond reach or where the target is not drawn', () => {
    expect(planeGround(shapes).piecesWithin(at(0, 0), 'perch', 9)).toEqual([]);
    expect(planeGround(shapes).piecesWithin(at(0, 0), 'road', 900)).toEqual([]);
  });
});
