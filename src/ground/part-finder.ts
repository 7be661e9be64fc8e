/** Which parts of areas may lie over a place: a coarse grid of their boxes, the part on top first. */
import type { Bands } from '../geometry/bands.ts';

export interface PartFinder {
  /** Parts whose box comes into cell c: part[start[c]] … part[start[c + 1] − 1], in rising order. */
  readonly start: Int32Array;
  readonly part: Int32Array;
  /** Cell of a place; one that is always empty outside all boxes. */
  cellAt(x: number, y: number): number;
}

function extentOf(bands: Bands, count: number): [number, number, number, number] {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let p = 0; p < count; p++) {
    x0 = Math.min(x0, bands.x0[p]!);
    y0 = Math.min(y0, bands.y0[p]!);
    x1 = Math.max(x1, bands.x1[p]!);
    y1 = Math.max(y1, bands.y1[p]!);
  }
  return x0 <= x1 ? [x0, y0, x1, y1] : [0, 0, 0, 0];
}

export function makePartFinder(bands: Bands, count: number): PartFinder {
  const [x0, y0, x1, y1] = extentOf(bands, count);
  // About eight cells to a part, and never so fine that a layer of large areas fills memory.
  const across = Math.min(512, Math.max(4, Math.ceil(Math.sqrt(8 * count))));
  const [wide, tall] = [(x1 - x0) / across || 1, (y1 - y0) / across || 1];
  const index = (value: number, size: number): number => Math.min(across - 1, Math.max(0, Math.floor(value / size)));
  const empty = across * across;
  const start = new Int32Array(empty + 2);
  const eachCell = (visit: (cell: number, part: number) => void): void => {
    for (let p = 0; p < count; p++) {
      if (!(bands.x0[p]! <= bands.x1[p]!)) continue;
      const c0 = index(bands.x0[p]! - x0, wide);
      const c1 = index(bands.x1[p]! - x0, wide);
      const r0 = index(bands.y0[p]! - y0, tall);
      const r1 = index(bands.y1[p]! - y0, tall);
      for (let r = r0; r <= r1; r++) for (let c = c0; c <= c1; c++) visit(r * across + c, p);
    }
  };
  eachCell((cell) => start[cell + 1]!++);
  for (let c = 0; c <= empty; c++) start[c + 1]! += start[c]!;
  const next = start.slice(0, empty);
  const part = new Int32Array(start[empty]!);
  eachCell((cell, p) => {
    part[next[cell]!++] = p;
  });
  return {
    start,
    part,
    cellAt(x: number, y: number): number {
      if (!(x >= x0 && x <= x1 && y >= y0 && y <= y1)) return empty;
      return index(y - y0, tall) * across + index(x - x0, wide);
    },
  };
}
