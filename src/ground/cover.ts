/** Shares of a disc by kind of land. */
import { type DiscScratch, discShares, makeDiscScratch, type Painted } from '../geometry/disc.ts';
import { makeGrid } from '../geometry/grid.ts';
import { copyPiece } from '../geometry/segment.ts';
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
  const ends = new Float64Array(layer.ends.length);
  const [onLeft, onRight] = [new Uint8Array(layer.left.length), new Uint8Array(layer.left.length)];
  let used = 0;
  for (let s = 0; s < layer.left.length; s++) {
    const left = classOf(layer.left[s]!);
    const right = classOf(layer.right[s]!);
    if (left === right) continue;
    onLeft[used] = left;
    onRight[used] = right;
    copyPiece(layer.ends, s, ends, used++);
  }
  const grid = makeGrid(ends.subarray(0, 4 * used));
  const pieces = grid ? grid.piece : new Int32Array(0);
  const sorted = (classes: Uint8Array): Uint8Array => {
    const bySeam = new Uint8Array(pieces.length);
    for (let k = 0; k < pieces.length; k++) bySeam[k] = classes[pieces[k]!]!;
    return bySeam;
  };
  const classAt = (x: number, y: number): number => classOf(layer.topAt(x, y));
  return { grid, left: sorted(onLeft), right: sorted(onRight), classes: coverKinds.length + 1, classAt };
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
