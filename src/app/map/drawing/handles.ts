/** Corners of the chosen thing as handles: full ones to move, small hollow ones between to make a new corner. */
import type { Feature, Position } from 'geojson';
import { type Corner, chainsOf } from '../../../edits/chains.ts';
import type { LonLat, SiteFeature } from '../../../site/types.ts';
import { halfway, shape } from './sketch.ts';

/** A handle under the hand. */
export interface Handle {
  readonly is: 'corner' | 'middle' | 'point' | 'whole';
  /** Of a middle: the corner before it. */
  readonly corner: Corner;
  readonly at: LonLat;
}

type Project = (at: LonLat) => { readonly x: number; readonly y: number };

/** An edge shorter than this on the screen has no handle in its middle, px (ours: two targets must fit). */
const shortest = 40;

/** All handles of a feature; the middles only where there is room. A point has one. */
export function handlesOf({ geometry }: SiteFeature, project: Project): Handle[] {
  if (!geometry) return [];
  if (geometry.type === 'Point')
    return [{ is: 'point', corner: { chain: 0, corner: 0 }, at: lonLat(geometry.coordinates) }];
  return chainsOf(geometry).flatMap(({ corners, closed }, chain) =>
    corners.flatMap((position, corner): Handle[] => {
      const at = lonLat(position);
      const next = corners[corner + 1] ?? (closed ? corners[0] : undefined);
      const own: Handle = { is: 'corner', corner: { chain, corner }, at };
      if (!next) return [own];
      const [a, b] = [project(at), project(lonLat(next))];
      if (Math.hypot(a.x - b.x, a.y - b.y) < shortest) return [own];
      return [own, { is: 'middle', corner: { chain, corner }, at: lonLat(halfway(position, next)) }];
    }),
  );
}

function lonLat(position: Position): LonLat {
  return [position[0]!, position[1]!];
}

/** The handle nearest to a place on the screen within `reach` px; a corner wins over a middle that is not much nearer. */
export function handleAt(
  handles: readonly Handle[],
  at: { x: number; y: number },
  reach: number,
  project: Project,
): Handle | null {
  let best: Handle | null = null;
  let least = reach;
  for (const handle of handles) {
    const p = project(handle.at);
    const away = Math.hypot(p.x - at.x, p.y - at.y) + (handle.is === 'middle' ? 4 : 0);
    if (away <= least) [best, least] = [handle, away];
  }
  return best;
}

/** The handles as things on the map. */
export function handleMarks(handles: readonly Handle[], chosen: Corner | null): Feature[] {
  return handles.map(({ is, corner, at }) => {
    const here = is === 'corner' && chosen?.chain === corner.chain && chosen.corner === corner.corner;
    return shape('Point', at, here ? 'chosen' : is);
  });
}

/** The outline or line of a thing. */
export function edgesOf({ geometry }: SiteFeature, role: string): Feature[] {
  return chainsOf(geometry).map(({ corners, closed }) =>
    shape('LineString', closed ? [...corners, corners[0]] : corners, role),
  );
}
