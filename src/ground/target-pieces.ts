/** The pieces of one target: seams where its areas end, lines, and single places. */
import { copyPiece } from '../geometry/segment.ts';
import type { CoverKind } from '../site/types.ts';
import type { Drawn, DrawnPoint } from './drawn.ts';
import type { Layer } from './layer.ts';
import { shrubHeight, type TargetRow } from './targets.ts';

/** What a piece belongs to. */
export interface Owner {
  readonly id: string;
  /** Metres that stand there. */
  readonly height: number;
  /** Metres taken off the distance: a crown's radius or half a hedge's width. */
  readonly offset: number;
  /** The distance stops at 0 when the offset is larger (hedges); crowns go below. */
  readonly stopsAtZero: boolean;
}

export interface TargetPieces {
  /** ax, ay, bx, by of piece i at 4i; a = b for a single place. */
  readonly ends: Float64Array;
  /** Place in `owners` of each piece. */
  readonly owner: Int32Array;
  readonly owners: readonly Owner[];
  /** Pieces before this number are seams of areas. */
  readonly seams: number;
}

/** Which areas of the layer belong to a target. */
export function belongsTo(row: TargetRow, layer: Layer): boolean[] {
  return layer.areas.map(({ kind }) => (row.areas ?? []).includes(kind as CoverKind));
}

/** Where the target's areas end – one side belongs to it and the other does not – with the area that does. */
function seamsOf({ ends, left, right }: Layer, belongs: readonly boolean[]): { ends: Float64Array; area: Int32Array } {
  const inside = Uint8Array.from(belongs, Number);
  const kept = new Float64Array(ends.length);
  const area = new Int32Array(left.length);
  let used = 0;
  for (let s = 0; s < left.length; s++) {
    const onLeft = left[s]! >= 0 && inside[left[s]!] === 1;
    const onRight = right[s]! >= 0 && inside[right[s]!] === 1;
    if (onLeft === onRight) continue;
    area[used] = onLeft ? left[s]! : right[s]!;
    copyPiece(ends, s, kept, used++);
  }
  return { ends: kept.subarray(0, 4 * used), area: area.subarray(0, used) };
}

/** A low tree stands as a shrub. */
const standsAs = ({ kind, height }: DrawnPoint): DrawnPoint['kind'] =>
  kind === 'tree' && height <= shrubHeight ? 'shrub' : kind;

/** Lines and points of a target: their edges and places, and the owner of each. */
function loosePieces(row: TargetRow, drawn: Drawn): { ends: number[]; owners: Owner[] } {
  const ends: number[] = [];
  const owners: Owner[] = [];
  for (const { kind, id, height, width, paths } of drawn.lines) {
    if (!row.lines?.includes(kind)) continue;
    const owner = { id, height, offset: width / 2, stopsAtZero: true };
    for (const path of paths) {
      for (let i = 0; i === 0 || i + 2 < path.length; i += 2) {
        const j = Math.min(i + 2, path.length - 2);
        ends.push(path[i]!, path[i + 1]!, path[j]!, path[j + 1]!);
        owners.push(owner);
      }
    }
  }
  for (const point of drawn.points) {
    if (!row.points?.includes(standsAs(point))) continue;
    const offset = row.crowns && point.kind === 'tree' ? point.crown : 0;
    ends.push(point.x, point.y, point.x, point.y);
    owners.push({ id: point.id, height: point.height, offset, stopsAtZero: false });
  }
  return { ends, owners };
}

/** Collects a target's pieces; `layer` is the one its areas are in. */
export function targetPieces(row: TargetRow, layer: Layer, drawn: Drawn): TargetPieces {
  const seams = seamsOf(layer, belongsTo(row, layer));
  const loose = loosePieces(row, drawn);
  const areas = layer.areas.map(({ id, height }): Owner => ({ id, height, offset: 0, stopsAtZero: false }));
  const ends = new Float64Array(seams.ends.length + loose.ends.length);
  ends.set(seams.ends);
  ends.set(loose.ends, seams.ends.length);
  const owner = new Int32Array(ends.length / 4);
  owner.set(seams.area);
  for (let i = 0; i < loose.owners.length; i++) owner[seams.area.length + i] = areas.length + i;
  return { ends, owner, owners: [...areas, ...loose.owners], seams: seams.area.length };
}
