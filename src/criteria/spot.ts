/** One place with everything measured there kept: criteria and birds share the same disc, distances and sight. */
import type { Point } from '../geometry/point.ts';
import type { Found, Ground, Piece, Shares, Target } from '../ground/types.ts';
import type { SunTable } from '../sky/sun-table.ts';

export interface Spot {
  readonly ground: Ground;
  readonly point: Point;
  shares(radius: number): Shares;
  nearest(target: Target): Found | null;
  pieces(target: Target, reach: number): readonly Piece[];
  meanSight(eye: number, reach: number): number;
  shaded(eye: number, sun: SunTable): Uint8Array;
}
