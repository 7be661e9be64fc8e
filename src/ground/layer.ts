/**
 * A layer of areas with one on top of another: which one is on top at a place, and its seams – straight pieces with a different
 * area on top on either side. Everything measured on areas is read from the seams.
 */
import { type Bands, bandsContain, makeBands } from '../geometry/bands.ts';
import { copyPiece } from '../geometry/segment.ts';
import type { DrawnArea } from './drawn.ts';
import { makePartFinder, type PartFinder } from './part-finder.ts';
import { type OutlineEdges, outlineEdges, splitEdges } from './split-edges.ts';

export interface Layer {
  /** The areas, the one on top first. */
  readonly areas: readonly DrawnArea[];
  /** ax, ay, bx, by of seam s at 4s. */
  readonly ends: Float64Array;
  /** Area on top left and right of a→b, as a place in `areas`; −1 where there is none. */
  readonly left: Int32Array;
  readonly right: Int32Array;
  /** Place in `areas` of the one on top at (x, y), or −1. */
  topAt(x: number, y: number): number;
}

/** Pieces without repeats. The parts whose outline runs along piece p: owner[k] for k = head[p], then next[k], until −1. */
interface Pieces {
  readonly count: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly head: Int32Array;
  readonly next: Int32Array;
  /** Part, or −1 where the same outline runs along the piece and back again. */
  readonly owner: Int32Array;
  /** Piece of each k. */
  readonly piece: Int32Array;
}

/** Coincident edges become one piece. */
function uniquePieces({ from, to, part }: OutlineEdges): Pieces {
  const room = from.length;
  const mask = 2 ** Math.ceil(Math.log2(2 * room + 2)) - 1;
  const slot = new Int32Array(mask + 1).fill(-1);
  const [pieceFrom, pieceTo] = [new Int32Array(room), new Int32Array(room)];
  const head = new Int32Array(room).fill(-1);
  const next = new Int32Array(room).fill(-1);
  const [owner, piece] = [new Int32Array(room), new Int32Array(room)];
  let count = 0;
  const pieceOf = (a: number, b: number): number => {
    let s = (Math.imul(a, 0x9e3779b1) ^ Math.imul(b, 0x85ebca6b)) & mask;
    for (; slot[s]! >= 0; s = (s + 1) & mask) {
      const p = slot[s]!;
      if (pieceFrom[p] === a && pieceTo[p] === b) return p;
    }
    slot[s] = count;
    pieceFrom[count] = a;
    pieceTo[count] = b;
    return count++;
  };
  for (let e = 0; e < room; e++) {
    const p = pieceOf(Math.min(from[e]!, to[e]!), Math.max(from[e]!, to[e]!));
    piece[e] = p;
    owner[e] = part[e]!;
    for (let k = head[p]!; k >= 0; k = next[k]!) {
      if (owner[k] !== part[e]) continue;
      owner[k] = -1;
      owner[e] = -1;
      break;
    }
    if (owner[e] === -1) continue;
    next[e] = head[p]!;
    head[p] = e;
  }
  return { count, from: pieceFrom, to: pieceTo, head, next, owner, piece };
}

function bandsOf(edges: OutlineEdges, pieces: Pieces): Bands {
  const { x, y } = edges.vertices;
  const ends = new Float64Array(4 * pieces.count);
  for (let p = 0; p < pieces.count; p++) {
    ends[4 * p] = x[pieces.from[p]!]!;
    ends[4 * p + 1] = y[pieces.from[p]!]!;
    ends[4 * p + 2] = x[pieces.to[p]!]!;
    ends[4 * p + 3] = y[pieces.to[p]!]!;
  }
  const [owner, edge] = [new Int32Array(pieces.piece.length), new Int32Array(pieces.piece.length)];
  let used = 0;
  for (let k = 0; k < pieces.piece.length; k++) {
    if (pieces.owner[k]! < 0) continue;
    owner[used] = pieces.owner[k]!;
    edge[used++] = pieces.piece[k]!;
  }
  return makeBands(ends, owner.subarray(0, used), edge.subarray(0, used), edges.parts);
}

/** The area on top on either side of a piece: judged at its middle, its own outlines by the side, the others by the place. */
function sidesOf(p: number, pieces: Pieces, bands: Bands, finder: PartFinder, areaOf: Int32Array): [number, number] {
  const { ends } = bands;
  const ax = ends[4 * p]!;
  const ay = ends[4 * p + 1]!;
  const bx = ends[4 * p + 2]!;
  const by = ends[4 * p + 3]!;
  const x = ax + (bx - ax) / 2;
  const y = ay + (by - ay) / 2;
  // What `bandsContain` answers without the piece holds west of it, or north where it lies level.
  const nearIsLeft = ay > y !== by > y ? by > ay : bx > ax;
  let [near, far] = [-1, -1];
  const cell = finder.cellAt(x, y);
  for (let k = finder.start[cell]!; k < finder.start[cell + 1]! && (near < 0 || far < 0); k++) {
    const part = finder.part[k]!;
    let owns = false;
    for (let o = pieces.head[p]!; o >= 0 && !owns; o = pieces.next[o]!) owns = pieces.owner[o] === part;
    const inside = bandsContain(bands, part, x, y, owns ? p : -1);
    if (near < 0 && inside) near = areaOf[part]!;
    if (far < 0 && inside !== owns) far = areaOf[part]!;
  }
  return nearIsLeft ? [near, far] : [far, near];
}

/** Prepares areas given with the one on top first. */
export function makeLayer(areas: readonly DrawnArea[]): Layer {
  const edges = splitEdges(outlineEdges(areas));
  const pieces = uniquePieces(edges);
  const bands = bandsOf(edges, pieces);
  const areaOf = Int32Array.from(areas.flatMap((area, i) => area.parts.map(() => i)));
  const finder = makePartFinder(bands, edges.parts);
  const ends = new Float64Array(4 * pieces.count);
  const [left, right] = [new Int32Array(pieces.count), new Int32Array(pieces.count)];
  let used = 0;
  for (let p = 0; p < pieces.count; p++) {
    const [onLeft, onRight] = sidesOf(p, pieces, bands, finder, areaOf);
    if (onLeft === onRight) continue;
    left[used] = onLeft;
    right[used] = onRight;
    copyPiece(bands.ends, p, ends, used++);
  }
  return {
    areas,
    ends: ends.subarray(0, 4 * used),
    left: left.subarray(0, used),
    right: right.subarray(0, used),
    topAt(x: number, y: number): number {
      const cell = finder.cellAt(x, y);
      for (let k = finder.start[cell]!; k < finder.start[cell + 1]!; k++) {
        if (bandsContain(bands, finder.part[k]!, x, y)) return areaOf[finder.part[k]!]!;
      }
      return -1;
    },
  };
}
