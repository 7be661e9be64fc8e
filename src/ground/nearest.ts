/** The nearest place of one target, by rings of grid cells around the point. */
import { columnAt, type Grid, lastRing, makeGrid, ringCells, ringDistance, rowAt } from '../geometry/grid.ts';
import type { Point } from '../geometry/point.ts';
import { distanceToSegment, nearestShare, squareToSegment } from '../geometry/segment.ts';
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
  const [ax, ay, bx, by] = [ends[4 * i]!, ends[4 * i + 1]!, ends[4 * i + 2]!, ends[4 * i + 3]!];
  const share = nearestShare(p.x, p.y, ax, ay, bx, by);
  const at = { x: ax + share * (bx - ax), y: ay + share * (by - ay) };
  if (offset === 0) return at;
  const off = Math.hypot(p.x - at.x, p.y - at.y);
  if (off === 0) return distance < 0 ? { x: at.x, y: at.y + offset } : at;
  const back = (off - distance) / off;
  return { x: at.x + back * (p.x - at.x), y: at.y + back * (p.y - at.y) };
}

function piecesWithin({ pieces, grid, widest }: Search, p: Point, reach: number): Piece[] {
  const wide = reach + widest + grid.reach;
  const [row0, row1] = [rowAt(grid, p.y - wide), rowAt(grid, p.y + wide)];
  const [column0, column1] = [columnAt(grid, p.x - wide), columnAt(grid, p.x + wide)];
  const found = new Set<number>();
  for (let row = row0; row <= row1; row++) {
    const last = grid.start[row * grid.columns + column1 + 1]!;
    for (let k = grid.start[row * grid.columns + column0]!; k < last; k++) found.add(grid.piece[k]!);
  }
  const { ends } = pieces;
  const near: Piece[] = [];
  for (const i of [...found].sort((a, b) => a - b)) {
    const [ax, ay, bx, by] = [ends[4 * i]!, ends[4 * i + 1]!, ends[4 * i + 2]!, ends[4 * i + 3]!];
    const { id, height, offset } = ownerOf(pieces, i);
    if (distanceToSegment(p.x, p.y, ax, ay, bx, by) - offset > reach) continue;
    near.push({ a: { x: ax, y: ay }, b: { x: bx, y: by }, height, feature: id });
  }
  return near;
}

/** Prepares the search for one target. */
export function makeTargetIndex(pieces: TargetPieces): TargetIndex {
  const grid = makeGrid(pieces.ends);
  if (!grid) return { empty: true, nearest: () => null, within: () => [] };
  const offset = new Float64Array(grid.piece.length);
  for (let k = 0; k < offset.length; k++) offset[k] = ownerOf(pieces, grid.piece[k]!).offset;
  const cells = new Int32Array(2 * (grid.columns + grid.rows) + 4);
  const widest = offset.reduce((a, b) => Math.max(a, b), 0);
  const s: Search = { pieces, grid, offset, widest, cells, hit: { piece: -1, distance: 0 } };
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
