/** Where the name of an area is written: the middle of the largest room for it, and how large that room is. */
import type { Position } from 'geojson';

/** Rings in any flat unit; the first is the outside, the others holes or things drawn over it. */
export type Rings = readonly (readonly Position[])[];

export interface NamePlace {
  readonly at: [number, number];
  /** Half the width of the room, in the rings' unit, for a name `aspect` times as wide as high. */
  readonly half: number;
}

interface Cell {
  readonly x: number;
  readonly y: number;
  readonly half: number;
  readonly room: number;
  readonly most: number;
}

/** Cells looked at before the search is content (ours). */
const patience = 260;

/**
 * The pole of inaccessibility by cell splitting, in a frame squeezed by the name's shape so that the free disc is a free ellipse.
 * Null when the first ring has no inside.
 */
export function namePlace(rings: Rings, aspect: number): NamePlace | null {
  const squeezed = rings.map((ring) => ring.map(([x = 0, y = 0]) => [x, y * aspect] as [number, number]));
  const outside = squeezed[0] ?? [];
  if (outside.length < 4) return null;
  const xs = outside.map((p) => p[0]);
  const ys = outside.map((p) => p[1]);
  const [minX, maxX, minY, maxY] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const size = Math.min(maxX - minX, maxY - minY);
  if (!(size > 0)) return null;
  const cell = (x: number, y: number, half: number): Cell => {
    const room = roomAt(squeezed, x, y);
    return { x, y, half, room, most: room + half * Math.SQRT2 };
  };
  let queue: Cell[] = [];
  const step = Math.max(size, (maxX - minX) / 24, (maxY - minY) / 24);
  for (let x = minX; x < maxX; x += step)
    for (let y = minY; y < maxY; y += step) queue.push(cell(x + step / 2, y + step / 2, step / 2));
  let best = cell((minX + maxX) / 2, (minY + maxY) / 2, 0);
  for (let looked = 0; looked < patience && queue.length > 0; looked++) {
    queue.sort((a, b) => a.most - b.most);
    const top = queue.pop() as Cell;
    if (top.room > best.room) best = top;
    if (top.most - best.room <= size / 60) continue;
    const h = top.half / 2;
    queue = queue.filter((c) => c.most > best.room);
    for (const [dx, dy] of [
      [-h, -h],
      [h, -h],
      [-h, h],
      [h, h],
    ] as const)
      queue.push(cell(top.x + dx, top.y + dy, h));
  }
  return best.room > 0 ? { at: [best.x, best.y / aspect], half: best.room } : null;
}

/** Distance to the nearest edge, negative where the place is outside the first ring or inside another. */
function roomAt(rings: readonly (readonly [number, number][])[], x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY;
  let free = true;
  for (const [i, ring] of rings.entries()) {
    let inside = false;
    for (let a = 0, b = ring.length - 1; a < ring.length; b = a++) {
      const [ax, ay] = ring[a] as [number, number];
      const [bx, by] = ring[b] as [number, number];
      if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
      least = Math.min(least, toSegment(x, y, ax, ay, bx, by));
    }
    if (inside !== (i === 0)) free = false;
  }
  return free ? least : -least;
}

function toSegment(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const t = dx || dy ? Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy))) : 0;
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}
