/** The pieces of one target: seams where its areas end, lines, and single places. */
import type { CoverKind } from '../site/types.ts';
import type { Drawn, DrawnPoint } from './drawn.ts';
import type { Layer } from './layer.ts';
import { shrubHeight, type TargetRow } from './targets.ts';

export interface TargetPieces {
  /** ax, ay, bx, by of piece i at 4i; a = b for a single place. */
  readonly ends: number[];
  readonly feature: string[];
  readonly height: number[];
  /** Metres taken off the distance: a crown's radius or half a hedge's width. */
  readonly offset: number[];
  /** The distance stops at 0 when the offset is larger (hedges); crowns go below. */
  readonly stopsAtZero: boolean[];
  /** Pieces before this number are seams of areas. */
  seams: number;
}

/** Where the target's areas end: one side belongs to it and the other does not. */
function addSeams(pieces: TargetPieces, layer: Layer, belongs: readonly boolean[]): void {
  const { ends, left, right, areas } = layer;
  for (let s = 0; s < left.length; s++) {
    const onLeft = left[s]! >= 0 && belongs[left[s]!]!;
    const onRight = right[s]! >= 0 && belongs[right[s]!]!;
    if (onLeft === onRight) continue;
    const area = areas[onLeft ? left[s]! : right[s]!]!;
    pieces.ends.push(ends[4 * s]!, ends[4 * s + 1]!, ends[4 * s + 2]!, ends[4 * s + 3]!);
    add(pieces, area.id, area.height, 0, false);
  }
  pieces.seams = pieces.feature.length;
}

function add(pieces: TargetPieces, id: string, height: number, offset: number, stopsAtZero: boolean): void {
  pieces.feature.push(id);
  pieces.height.push(height);
  pieces.offset.push(offset);
  pieces.stopsAtZero.push(stopsAtZero);
}

/** A low tree stands as a shrub. */
const standsAs = ({ kind, height }: DrawnPoint): DrawnPoint['kind'] =>
  kind === 'tree' && height <= shrubHeight ? 'shrub' : kind;

/** Which areas of the layer belong to a target. */
export function belongsTo(row: TargetRow, layer: Layer): boolean[] {
  return layer.areas.map(({ kind }) => (row.areas ?? []).includes(kind as CoverKind));
}

/** Collects a target's pieces; `layer` is the one its areas are in. */
export function targetPieces(row: TargetRow, layer: Layer, drawn: Drawn): TargetPieces {
  const pieces: TargetPieces = { ends: [], feature: [], height: [], offset: [], stopsAtZero: [], seams: 0 };
  if (row.areas) addSeams(pieces, layer, belongsTo(row, layer));
  for (const { kind, id, height, width, paths } of drawn.lines) {
    if (!row.lines?.includes(kind)) continue;
    for (const path of paths) {
      for (let i = 0; i === 0 || i + 2 < path.length; i += 2) {
        const j = Math.min(i + 2, path.length - 2);
        pieces.ends.push(path[i]!, path[i + 1]!, path[j]!, path[j + 1]!);
        add(pieces, id, height, width / 2, true);
      }
    }
  }
  for (const point of drawn.points) {
    if (!row.points?.includes(standsAs(point))) continue;
    pieces.ends.push(point.x, point.y, point.x, point.y);
    add(pieces, point.id, point.height, row.crowns && point.kind === 'tree' ? point.crown : 0, false);
  }
  return pieces;
}
