/** Corners of walls beside a gap that the net's cells may be too wide to see: between two buildings, at a narrow neck of land. */
import type { Point } from '../geometry/point.ts';
import type { Walls } from './walls.ts';

/** More corners than this are not looked at: a site so finely drawn gets its gaps from paths (ours). */
const mostCorners = 8000;
const looks = 16;

/** Corners with walls on two sides within two cells, one for each half cell. */
export function gapCorners(walls: Walls, cell: number, inside: (x: number, y: number) => boolean): Point[] {
  const corners = new Map<string, Point>();
  for (const ring of walls.rings) {
    for (let i = 0; i < ring.length; i += 2) {
      const [x, y] = [ring[i], ring[i + 1]];
      if (!inside(x, y)) continue;
      corners.set(`${Math.round((2 * x) / cell)},${Math.round((2 * y) / cell)}`, { x, y });
      if (corners.size > mostCorners) return [];
    }
  }
  return [...corners.values()].filter((p) => isBesideGap(walls, p, cell) || isBesideGap(walls, p, 2 * cell));
}

/** Whether a circle round the corner goes through walls at least twice. */
function isBesideGap(walls: Walls, p: Point, radius: number): boolean {
  let changes = 0;
  let before = false;
  for (let k = 0; k <= looks; k++) {
    const turn = (2 * Math.PI * (k + 0.5)) / looks;
    const now = walls.blockedAt(p.x + radius * Math.sin(turn), p.y + radius * Math.cos(turn));
    if (k > 0 && now !== before) changes++;
    before = now;
  }
  return changes >= 4;
}
