/** Shares of a disc by kind of land. */
import { type DiscScratch, discShares, makeDiscScratch, type Painted } from '../geometry/disc.ts';
import { makeGrid } from '../geometry/grid.ts';
import { type CoverKind, coverKinds } from '../site/types.ts';
import type { Layer } from './layer.ts';
import type { Shares } from './types.ts';

/** Class of ground where nothing is drawn. */
const unmapped = coverKinds.length;

export interface Cover {
  /** Exact shares of the circle around (x, y), radius in metres above 0. */
  shares(x: number, y: number, radius: number): Shares;
}

/** The kinds of land as a painted plane: only seams between different kinds count. */
function paint(layer: Layer): Painted {
  const classOfArea = Uint8Array.from(layer.areas, ({ kind }) => coverKinds.indexOf(kind as CoverKind));
  const classOf = (area: number): number => (area < 0 ? unmapped : classOfArea[area]!);
  const count = layer.left.length;
  const kept: number[] = [];
  for (let s = 0; s < count; s++) if (classOf(layer.left[s]!) !== classOf(layer.right[s]!)) kept.push(s);
  const ends = new Float64Array(4 * kept.length);
  kept.forEach((s, i) => {
    for (let k = 0; k < 4; k++) ends[4 * i + k] = layer.ends[4 * s + k]!;
  });
  const grid = makeGrid(ends);
  const pieces = grid ? grid.piece : new Int32Array(0);
  return {
    grid,
    left: Uint8Array.from(pieces, (piece) => classOf(layer.left[kept[piece]!]!)),
    right: Uint8Array.from(pieces, (piece) => classOf(layer.right[kept[piece]!]!)),
    classes: coverKinds.length + 1,
    classAt: (x, y) => classOf(layer.topAt(x, y)),
  };
}

function named(sums: Float64Array): Shares {
  const shares = { unmapped: sums[unmapped]! } as Record<CoverKind | 'unmapped', number>;
  for (let c = 0; c < unmapped; c++) shares[coverKinds[c]!] = sums[c]!;
  return shares;
}

export function makeCover(layer: Layer): Cover {
  const painted = paint(layer);
  const scratch: DiscScratch = makeDiscScratch(painted.classes);
  return { shares: (x, y, radius) => named(discShares(painted, scratch, x, y, radius)) };
}
