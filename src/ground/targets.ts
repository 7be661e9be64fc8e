/** What each target is made of. Data only: a new target is a row here and a word in `types.ts`. */
import type { AreaKind, LineKind, PointKind } from '../site/types.ts';
import type { Target } from './types.ts';

/** A tree up to this height is counted as a shrub, metres (siting model: woods edge = "tree taller than 3 m"). */
export const shrubHeight = 3;

export interface TargetRow {
  readonly areas?: readonly Exclude<AreaKind, 'boundary'>[];
  readonly lines?: readonly LineKind[];
  /** `tree` means one taller than `shrubHeight`; lower ones are `shrub`. */
  readonly points?: readonly PointKind[];
  /** Measured to the edge of a tree's crown (negative inside it) and not to its trunk. */
  readonly crowns?: boolean;
}

/** Distances to a hedge are to its side: the line's distance less half its width, at least 0. */
export const targetRows: Readonly<Record<Target, TargetRow>> = {
  'woods-edge': { areas: ['woods'], points: ['tree'] },
  brush: { areas: ['brush', 'woods'], lines: ['hedge'] },
  building: { areas: ['building'] },
  feeder: { points: ['feeder'] },
  water: { areas: ['water', 'wetland'], lines: ['stream'] },
  road: { lines: ['road'] },
  path: { lines: ['path'] },
  jump: { areas: ['building', 'woods'], lines: ['fence', 'hedge'], points: ['tree'], crowns: true },
  perch: { lines: ['fence'], points: ['perch', 'tree', 'shrub'] },
  tall: { areas: ['woods', 'building'], lines: ['hedge'], points: ['tree'], crowns: true },
  'overhead-wire': { lines: ['overhead-wire'] },
  'off-limits': { areas: ['off-limits'] },
};
