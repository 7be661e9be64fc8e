import { describe, expect, it } from 'vitest';
import { bandsContain, makeBands } from '../../../src/geometry/bands.ts';
import { forEachEdgePair } from '../../../src/geometry/edge-pairs.ts';
import { columnAt, lastRing, makeGrid, ringCells, ringDistance, rowAt } from '../../../src/geometry/grid.ts';
import { seededRandom } from '../../../src/geometry/random.ts';
import { makeRays, slotOf, slots, turnOf } from '../../../src/geometry/rays.ts';
import { ringContains } from '../../../src/geometry/ring.ts';
import { distanceToSegment, nearestShare } from '../../../src/geometry/segment.ts';
import { VertexTable } from '../../../src/geometry/vertex-table.ts';

/** Edges of all lengths, some level, some upright, some of no length. */
function edges(count: number, seed: number): Float64Array {
  const random = seededRandom(seed);
  const all = new Float64Array(4 * count);
  for (let i = 0; i < count; i++) {
    const [x, y] = [1000 * random(), 300 * random()];
    const long = i % 10 === 0 ? 400 : 20;
    const [dx, dy] = [long * (random() - 0.5), long * (random() - 0.5)];
    all.set([x, y, x + (i % 7 === 0 ? 0 : dx), y + (i % 5 === 0 ? 0 : dy)], 4 * i);
  }
  return all;
}

describe('pairs of edges', () => {
  it('are all pairs whose boxes meet and that come near each other, each once', () => {
    const all = edges(300, 1);
    const found = new Set<string>();
    forEachEdgePair(all, 0.01, (i, j) => {
      expect(i).toBeLessThan(j);
      expect(found.has(`${i}-${j}`)).toBe(false);
      found.add(`${i}-${j}`);
      return false;
    });
    for (let i = 0; i < 300; i++) {
      for (let j = i + 1; j < 300; j++) {
        const [a, b] = [all.subarray(4 * i, 4 * i + 4), all.subarray(4 * j, 4 * j + 4)];
        const ends = Math.min(
          distanceToSegment(a[0]!, a[1]!, b[0]!, b[1]!, b[2]!, b[3]!),
          distanceToSegment(a[2]!, a[3]!, b[0]!, b[1]!, b[2]!, b[3]!),
          distanceToSegment(b[0]!, b[1]!, a[0]!, a[1]!, a[2]!, a[3]!),
          distanceToSegment(b[2]!, b[3]!, a[0]!, a[1]!, a[2]!, a[3]!),
        );
        const turn = (p: Float64Array, x: number, y: number) =>
          Math.sign((p[2]! - p[0]!) * (y - p[1]!) - (p[3]! - p[1]!) * (x - p[0]!));
        const crosses =
          turn(a, b[0]!, b[1]!) * turn(a, b[2]!, b[3]!) < 0 && turn(b, a[0]!, a[1]!) * turn(b, a[2]!, a[3]!) < 0;
        if (ends <= 0.01 || crosses) expect(found.has(`${i}-${j}`), `${i}-${j}`).toBe(true);
      }
    }
  });
  it('stop when asked to, and are none for one edge', () => {
    let calls = 0;
    forEachEdgePair(edges(300, 1), 10, () => ++calls === 3);
    expect(calls).toBe(3);
    forEachEdgePair(Float64Array.of(0, 0, 1, 1), 1, () => {
      throw new Error('no pair');
    });
  });
});

describe('the grid', () => {
  const all = edges(500, 2);
  const grid = makeGrid(all)!;
  it('keeps every piece whole, in parts of at most half a cell within reach of their cell', () => {
    const length = new Float64Array(500);
    for (let cell = 0; cell < grid.columns * grid.rows; cell++) {
      for (let k = grid.start[cell]!; k < grid.start[cell + 1]!; k++) {
        const [ax, ay, bx, by] = Array.from(grid.ends.subarray(4 * k, 4 * k + 4)) as [number, number, number, number];
        const part = Math.hypot(bx - ax, by - ay);
        expect(part).toBeLessThanOrEqual(grid.cell / 2 + 1e-9);
        length[grid.piece[k]!]! += part;
        expect(rowAt(grid, (ay + by) / 2) * grid.columns + columnAt(grid, (ax + bx) / 2)).toBe(cell);
      }
    }
    length.forEach((sum, i) => {
      expect(sum).toBeCloseTo(Math.hypot(all[4 * i + 2]! - all[4 * i]!, all[4 * i + 3]! - all[4 * i + 1]!), 9);
    });
    expect(grid.start[grid.columns * grid.rows]).toBe(grid.piece.length);
  });
  it('visits every cell once over all rings, never nearer than promised', () => {
    const cells = new Int32Array(2 * (grid.columns + grid.rows) + 4);
    for (const [px, py] of [
      [500, 150],
      [-900, 20],
      [1010, 900],
      [3, 3],
    ] as const) {
      const [column, row] = [columnAt(grid, px), rowAt(grid, py)];
      const seen = new Set<number>();
      let first = -1;
      for (let ring = 0; ring <= lastRing(grid, column, row); ring++) {
        const count = ringCells(grid, column, row, ring, cells);
        if (count > 0 && first < 0) first = ring;
        const promised = ringDistance(grid, px, py, column, row, ring);
        for (const cell of cells.subarray(0, count)) {
          expect(seen.has(cell)).toBe(false);
          seen.add(cell);
          for (let k = grid.start[cell]!; k < grid.start[cell + 1]!; k++) {
            const [ax, ay, bx, by] = Array.from(grid.ends.subarray(4 * k, 4 * k + 4)) as [
              number,
              number,
              number,
              number,
            ];
            expect(distanceToSegment(px, py, ax, ay, bx, by)).toBeGreaterThanOrEqual(promised - 1e-9);
          }
        }
      }
      let filled = 0;
      for (let cell = 0; cell < grid.columns * grid.rows; cell++)
        if (grid.start[cell]! < grid.start[cell + 1]!) filled++;
      expect(seen.size).toBe(filled);
      expect(grid.gap[row * grid.columns + column]).toBe(first);
    }
  });
  it('is none for nothing, and one cell for one place', () => {
    expect(makeGrid(new Float64Array(0))).toBeNull();
    const one = makeGrid(Float64Array.of(5, 5, 5, 5))!;
    expect([one.columns, one.rows, one.piece.length]).toEqual([1, 1, 1]);
  });
  it('stays small when two far places are all there is', () => {
    const two = makeGrid(Float64Array.of(0, 0, 1, 1, 1e5, 9e4, 1e5, 9e4))!;
    expect(two.columns * two.rows).toBeLessThan(1000);
  });
});

describe('bands', () => {
  it('say inside where the ring says so, for rings with holes', () => {
    const random = seededRandom(3);
    const ring = (least: number, most: number) =>
      Array.from({ length: 40 }, (_, i) => {
        const [angle, radius] = [(2 * Math.PI * i) / 40, least + (most - least) * random()];
        return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
      });
    const [outer, hole] = [ring(50, 100), ring(10, 40)];
    const ends = [outer, hole].flatMap((r) => r.flatMap((p, i) => [p.x, p.y, r[(i + 1) % 40]!.x, r[(i + 1) % 40]!.y]));
    const owner = Int32Array.from({ length: 80 }, () => 0);
    const bands = makeBands(Float64Array.from(ends), owner, Int32Array.from(owner.keys()), 1);
    for (let i = 0; i < 3000; i++) {
      const p = { x: 220 * (random() - 0.5), y: 220 * (random() - 0.5) };
      expect(bandsContain(bands, 0, p.x, p.y)).toBe(ringContains(outer, p) && !ringContains(hole, p));
    }
    expect(bandsContain(bands, 0, Number.NaN, 0)).toBe(false);
  });
  it('stay few for a comb of 20,000 teeth', () => {
    const teeth = Array.from({ length: 20_000 }, (_, i) => ({ x: i, y: i % 2 ? 500 : 1 }));
    const comb = [{ x: 19_999, y: 0 }, { x: 0, y: 0 }, ...teeth];
    const ends = comb.flatMap((p, i) => [p.x, p.y, comb[(i + 1) % comb.length]!.x, comb[(i + 1) % comb.length]!.y]);
    const owner = new Int32Array(comb.length);
    const bands = makeBands(Float64Array.from(ends), owner, Int32Array.from(owner.keys()), 1);
    expect(bands.item.length).toBeLessThan(8 * comb.length);
    for (const [x, y] of [
      [1001, 400],
      [1000, 400],
      [1000, 0.5],
      [777.3, 250],
    ] as const) {
      expect(bandsContain(bands, 0, x, y)).toBe(ringContains(comb, { x, y }));
    }
  });
});

describe('vertices', () => {
  it('closer than the tolerance are one, also over the borders of the table', () => {
    const table = new VertexTable(1e-4, 2);
    const random = seededRandom(4);
    for (let i = 0; i < 500; i++) {
      const [x, y] = [Math.round(100 * random()) / 100, Math.round(100 * random()) / 100];
      const vertex = table.add(x, y);
      expect(table.add(x + 6e-5 * (random() - 0.5), y - 6e-5 * random())).toBe(vertex);
      expect(Math.abs(table.x[vertex]! - x)).toBeLessThan(1e-4);
    }
    expect(table.add(500, 500)).toBe(table.count - 1);
    expect(table.add(500.0002, 500)).toBe(table.count - 1);
  });
});

describe('turns and rays', () => {
  it('grow with the azimuth from 0 at north to 4', () => {
    let last = -1;
    for (let azimuth = 0; azimuth < 360; azimuth += 0.25) {
      const turn = turnOf(Math.sin((azimuth * Math.PI) / 180), Math.cos((azimuth * Math.PI) / 180));
      expect(turn).toBeGreaterThan(last);
      last = turn;
    }
    expect([turnOf(0, 3), turnOf(3, 0), turnOf(0, -3), turnOf(-3, 0), turnOf(0, 0)]).toEqual([0, 1, 2, 3, 0]);
    expect(slotOf(4)).toBe(slots - 1);
  });
  it('are sorted and remember their place', () => {
    const rays = makeRays([270, 10, 0, -10, 725]);
    expect(Array.from(rays.order)).toEqual([2, 4, 1, 0, 3]);
    expect([rays.x[0], rays.y[0]]).toEqual([0, 1]);
    expect(rays.first[slots]).toBe(5);
  });
});

describe('the nearest place on a segment', () => {
  it('is an end, between, or the only place there is', () => {
    expect(nearestShare(5, 5, 0, 0, 10, 0)).toBe(0.5);
    expect(nearestShare(-5, 5, 0, 0, 10, 0)).toBe(0);
    expect(nearestShare(15, 5, 0, 0, 10, 0)).toBe(1);
    expect(nearestShare(15, 5, 3, 3, 3, 3)).toBe(0);
    expect(distanceToSegment(3, 7, 3, 3, 3, 3)).toBe(4);
  });
});
