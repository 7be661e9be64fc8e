/** Areas a person marked (sprayed, grazed): few, so they are looked through one by one. */
import type { Point } from '../geometry/point.ts';
import type { Ground } from '../ground/types.ts';
import type { LonLat, SiteFeature } from '../site/types.ts';

/** Rings of an area on the site's plane; none for anything else. */
function rings(ground: Ground, { geometry }: SiteFeature): Point[][] {
  const plane = (ring: number[][]) => ring.map((position) => ground.frame.toPlane(position as LonLat));
  if (geometry?.type === 'Polygon') return geometry.coordinates.map(plane);
  if (geometry?.type === 'MultiPolygon') return geometry.coordinates.flat().map(plane);
  return [];
}

/** Metres from a point to a side. */
function toSide(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length = dx * dx + dy * dy;
  const t = length === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / length));
  return Math.hypot(a.x + t * dx - p.x, a.y + t * dy - p.y);
}

/** Metres to an area given by its rings: 0 inside (even–odd, so holes are outside). */
function toArea(p: Point, area: readonly Point[][]): number {
  let inside = false;
  let least = Number.POSITIVE_INFINITY;
  for (const ring of area) {
    for (let i = 1; i < ring.length; i++) {
      const [a, b] = [ring[i - 1]!, ring[i]!];
      if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
      least = Math.min(least, toSide(p, a, b));
    }
  }
  return inside ? 0 : least;
}

interface Marked {
  readonly id: string;
  readonly rings: readonly Point[][];
}

type Mark = (feature: SiteFeature) => boolean;

/** Areas found and put on the plane once a ground and mark. */
const kept = new WeakMap<Ground, Map<Mark, readonly Marked[]>>();

function markedAreas(ground: Ground, marked: Mark): readonly Marked[] {
  const marks = kept.get(ground) ?? new Map<Mark, readonly Marked[]>();
  kept.set(ground, marks);
  const known = marks.get(marked);
  if (known) return known;
  const areas = ground.site.features
    .filter(marked)
    .map((feature) => ({ id: feature.id, rings: rings(ground, feature) }));
  marks.set(marked, areas);
  return areas;
}

/** The nearest area that `marked` picks (such as `isSprayed`), and how far it is; null where none is. */
export function groundWith(
  ground: Ground,
  marked: Mark,
  p: Point,
): { readonly distance: number; readonly feature: string } | null {
  let nearest: { distance: number; feature: string } | null = null;
  for (const area of markedAreas(ground, marked)) {
    const distance = toArea(p, area.rings);
    if (distance < (nearest?.distance ?? Number.POSITIVE_INFINITY)) nearest = { distance, feature: area.id };
  }
  return nearest;
}
