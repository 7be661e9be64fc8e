/** The nearest place of one target, by rings of grid cells around the point. */
import { columnAt, type Grid, lastRing, makeGrid, ringCells, ringDistance, rowAt } from '../geometry/grid.ts';
import type { Point } from '../geometry/point.ts';
import { nearestShare, squareToSegment } from '../geometry/segment.ts';
import type { Owner, TargetPieces } from './target-pieces.ts';
import type { Found, Piece } from './types.ts';

export interface TargetIndex {
  readonly empty: boolean;
  /** `inside` says that the point lies in an area of the target: then only the area's own edge counts, and `reach` does not. */
  nearest(p: Point, inside: boolean, reach: number): Found | null;
  /** Pieces coming within `reach`, in the order they were drawn. */
  within(p: Point, reach: number): Piece[];
}

interface Hit {
  piece: number;
  distance: number;
}

interface Search {
  readonly pieces: TargetPieces;
  readonly grid: Grid;
  /** By grid part. */
  readonly offset: Float64Array;
  readonly widest: number;
  readonly cells: Int32Array;
  readonly hit: Hit;
  /** By piece, as far as it was asked for. */
  readonly shown: Piece[];
}

const ownerOf = ({ owners, owner }: TargetPieces, piece: number): Owner => owners[owner[piece]!]!;

/** Looks through one cell for anything nearer than the hit so far. */
function searchCell(search: Search, cell: number, px: number, py: number, seamsOnly: boolean): void {
  const { grid, offset, pieces, hit } = search;
  const { ends, start, piece } = grid;
  for (let k = start[cell]!; k < start[cell + 1]!; k++) {
    if (seamsOnly && piece[k]! >= pieces.seams) continue;
    const limit = hit.distance + offset[k]!;
    if (limit <= 0) continue;
    const square = squareToSegment(px, py, ends[4 * k]!, ends[4 * k + 1]!, ends[4 * k + 2]!, ends[4 * k + 3]!);
    if (square >= limit * limit) continue;
    const distance = Math.sqrt(square) - offset[k]!;
    hit.distance = distance < 0 && ownerOf(pieces, piece[k]!).stopsAtZero ? Math.min(0, hit.distance) : distance;
    hit.piece = piece[k]!;
  }
}

function search(s: Search, px: number, py: number, seamsOnly: boolean, reach: number): Hit {
  const { grid, hit, cells, widest } = s;
  const column = columnAt(grid, px);
  const row = rowAt(grid, py);
  const last = lastRing(grid, column, row);
  hit.piece = -1;
  hit.distance = reach;
  for (let ring = grid.gap[row * grid.columns + column]!; ring <= last; ring++) {
    if (ringDistance(grid, px, py, column, row, ring) - widest > hit.distance) break;
    const count = ringCells(grid, column, row, ring, cells);
    for (let k = 0; k < count; k++) searchCell(s, cells[k]!, px, py, seamsOnly);
  }
  return hit;
}

/** The place on a piece that its distance is measured to. */
function placeOn(pieces: TargetPieces, i: number, p: Point, distance: number): Point {
  const { ends } = pieces;
  const { offset } = ownerOf(pieces, i);
  const ax = ends[4 * i]!;
  const ay = ends[4 * i + 1]!;
  const bx = ends[4 * i + 2]!;
  const by = ends[4 * i + 3]!;
  const share = nearestShare(p.x, p.y, ax, ay, bx, by);
  const at = { x: ax + share * (bx - ax), y: ay + share * (by - ay) };
  if (offset === 0) return at;
  const off = Math.hypot(p.x - at.x, p.y - at.y);
  if (off === 0) return distance < 0 ? { x: at.x, y: at.y + offset } : at;
  const back = (off - distance) / off;
  return { x: at.x + back * (p.x - at.x), y: at.y + back * (p.y - at.y) };
}

/** Whether a grid part of a target comes within `reach`. */
function isWithin({ grid, offset }: Search, k: number, p: Point, reach: number): boolean {
  const { ends } = grid;
  const e = 4 * k;
  const limit = reach + offset[k]!;
  return squareToSegment(p.x, p.y, ends[e]!, ends[e + 1]!, ends[e + 2]!, ends[e + 3]!) <= limit * limit;
}

function piecesWithin(s: Search, p: Point, reach: number): Piece[] {
  const { grid, widest } = s;
  const wide = reach + widest + grid.reach;
  const row1 = rowAt(grid, p.y + wide);
  const column0 = columnAt(grid, p.x - wide);
  const column1 = columnAt(grid, p.x + wide);
  const found: number[] = [];
  for (let row = rowAt(grid, p.y - wide); row <= row1; row++) {
    const last = grid.start[row * grid.columns + column1 + 1]!;
    for (let k = grid.start[row * grid.columns + column0]!; k < last; k++)
      if (isWithin(s, k, p, reach) && !found.includes(grid.piece[k]!)) found.push(grid.piece[k]!);
  }
  return found.sort((a, b) => a - b).map((i) => pieceOf(s, i));
}

/** A piece as others see it: made when first asked for. */
function pieceOf({ pieces, shown }: Search, i: number): Piece {
  const { ends } = pieces;
  const { id, height } = ownerOf(pieces, i);
  shown[i] ??= {
    a: { x: ends[4 * i]!, y: ends[4 * i + 1]! },
    b: { x: ends[4 * i + 2]!, y: ends[4 * i + 3]! },
    height,
    feature: id,
  };
  return shown[i];
}

/** Prepares the search for one target. */
export function makeTargetIndex(pieces: TargetPieces): TargetIndex {
  const grid = makeGrid(pieces.ends);
  if (!grid) return { empty: true, nearest: () => null, within: () => [] };
  const offset = new Float64Array(grid.piece.length);
  for (let k = 0; k < offset.length; k++) offset[k] = ownerOf(pieces, grid.piece[k]!).offset;
  const cells = new Int32Array(2 * (grid.columns + grid.rows) + 4);
  const widest = offset.reduce((a, b) => Math.max(a, b), 0);
  const s: Search = { pieces, grid, offset, widest, cells, hit: { piece: -1, distance: 0 }, shown: [] };
  return {
    empty: false,
    nearest(p, inside, reach) {
      const { piece, distance } = search(s, p.x, p.y, inside, inside ? Infinity : reach);
      if (piece < 0) return null;
      const at = placeOn(pieces, piece, p, distance);
      return { distance: inside ? -distance : distance, at, feature: ownerOf(pieces, piece).id };
    },
    within: (p, reach) => piecesWithin(s, p, reach),
  };
}
