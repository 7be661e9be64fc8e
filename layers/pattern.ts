/** Places the marks of a pattern: the same for the same seed, spread out but in no lattice. Used by the map and by the sheets. */
import type { Pattern } from './types.ts';

/** A mark of one tile: px from the tile's top left corner, degrees clockwise as seen, a factor, and which drawing. */
export interface PlacedMark {
  readonly x: number;
  readonly y: number;
  readonly turn: number;
  readonly size: number;
  readonly mark: number;
}

/** Of this many random places the one farthest from the marks so far is taken (Mitchell's best candidate, 1991; ours: 14). */
const tries = 14;

/** The marks of one tile. They may stick out over its edges. */
export function placeMarks(pattern: Pattern): PlacedMark[] {
  if (pattern.layout === 'grid') return [mark(pattern.tile / 2, pattern.tile / 2, pattern, () => 0.5)];
  const random = seeded(pattern.seed);
  const placed: PlacedMark[] = [];
  if (pattern.layout === 'rows') return inRows(pattern, random);
  for (let i = 0; i < pattern.count; i++) {
    const [x, y] = farthest(placed, pattern.tile, random);
    placed.push(mark(x, y, pattern, random));
  }
  return placed;
}

/** The marks of a tile and the copies that stick in from the eight tiles around it. */
export function wrapMarks(pattern: Pattern, marks: readonly PlacedMark[] = placeMarks(pattern)): PlacedMark[] {
  const { tile } = pattern;
  const out: PlacedMark[] = [];
  for (const one of marks) {
    const reach = (pattern.marks[one.mark]?.reach ?? 0) * one.size;
    for (const dx of [-tile, 0, tile])
      for (const dy of [-tile, 0, tile]) {
        const x = one.x + dx;
        const y = one.y + dy;
        if (x > -reach && y > -reach && x < tile + reach && y < tile + reach) out.push({ ...one, x, y });
      }
  }
  return out;
}

/** Numbers 0–1 from a seed (mulberry32). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

function mark(x: number, y: number, pattern: Pattern, random: () => number, along = 0): PlacedMark {
  const [turnFrom, turnTo] = pattern.turn ?? [0, 0];
  const [sizeFrom, sizeTo] = pattern.size ?? [1, 1];
  return {
    x,
    y,
    turn: turnFrom + (turnTo - turnFrom) * random() + along,
    size: sizeFrom + (sizeTo - sizeFrom) * random(),
    mark: Math.min(pattern.marks.length - 1, Math.floor(random() * pattern.marks.length)),
  };
}

function farthest(placed: readonly PlacedMark[], tile: number, random: () => number): [number, number] {
  let best: [number, number] = [random() * tile, random() * tile];
  let bestGap = gap(placed, tile, best);
  for (let i = 1; i < tries && placed.length > 0; i++) {
    const at: [number, number] = [random() * tile, random() * tile];
    const here = gap(placed, tile, at);
    if (here > bestGap) [best, bestGap] = [at, here];
  }
  return best;
}

/** Distance to the nearest mark, over the tile's edges too. */
function gap(placed: readonly PlacedMark[], tile: number, [x, y]: [number, number]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const p of placed) {
    const dx = Math.abs(p.x - x);
    const dy = Math.abs(p.y - y);
    least = Math.min(least, Math.hypot(Math.min(dx, tile - dx), Math.min(dy, tile - dy)));
  }
  return least;
}

/** `count` marks on each row, every row shifted on its own; the tile repeats because a row climbs by whole rows. */
function inRows(pattern: Pattern, random: () => number): PlacedMark[] {
  const { tile, count, rows = 1, climb = 0 } = pattern;
  const along = (-Math.atan2(climb, rows) * 180) / Math.PI;
  const out: PlacedMark[] = [];
  for (let row = 0; row < rows; row++) {
    const shift = random();
    for (let i = 0; i < count; i++) {
      const x = ((i + shift) * tile) / count;
      const y = ((row + 0.5) * tile) / rows - (x * climb) / rows;
      out.push(mark(x, ((y % tile) + tile) % tile, pattern, random, along));
    }
  }
  return out;
}
