/** A handle, point or whole thing in the hand: what letting go would do, and how that looks before. */
import type { Feature } from 'geojson';
import { addVertex } from '../../../edits/add-vertex.ts';
import { chainsOf, mapChains } from '../../../edits/chains.ts';
import type { Edit } from '../../../edits/edit.ts';
import { moveFeatures } from '../../../edits/move-feature.ts';
import { movePost } from '../../../edits/move-post.ts';
import { moveVertex } from '../../../edits/move-vertex.ts';
import type { LonLat, Site, SiteFeature } from '../../../site/types.ts';
import { outlineCrossing } from './crossing.ts';
import { edgesOf, type Handle } from './handles.ts';
import { shape } from './sketch.ts';

export interface Drag {
  readonly id: string;
  readonly handle: Handle;
  /** What letting go now would do. */
  edit: Edit | null;
  at: LonLat;
}

/** A thing taken whole, by the place where the hand went down. */
export function wholeHandle(at: LonLat): Handle {
  return { is: 'whole', corner: { chain: 0, corner: 0 }, at };
}

/** The edit of a drag; `shared`: neighbors' borders follow. */
export function editOf(site: Site, { id, handle, at }: Drag, shared: boolean): Edit {
  if (handle.is === 'point') return movePost(site, id, at);
  if (handle.is === 'whole') return moveFeatures(site, [id], [at[0] - handle.at[0], at[1] - handle.at[1]], { shared });
  return handle.is === 'corner'
    ? moveVertex(site, id, handle.corner, at, { shared })
    : addVertex(site, id, handle.corner, at, { shared });
}

/** The thing and the neighbors that follow as they would become; when refused, the outline as the hand has it, with the crossing. */
export function dragMarks({ edit, at, handle }: Drag, chosen: SiteFeature, site: Site | null): Feature[] {
  const hand = shape('Point', at, handle.is === 'point' ? 'point' : 'chosen');
  if (edit && 'site' in edit) {
    const old = new Set(site?.features);
    return [...edit.site.features.filter((f) => !old.has(f)).flatMap((f) => edgesOf(f, 'moving')), hand];
  }
  if (handle.is === 'whole') return edgesOf(chosen, 'edge');
  if (handle.is === 'point' || !chosen.geometry) return [hand];
  const { chain, corner } = handle.corner;
  const drop = handle.is === 'middle' ? 0 : 1;
  const geometry = mapChains(chosen.geometry, (corners, n) =>
    n === chain ? corners.toSpliced(corner + 1 - drop, drop, at) : corners,
  );
  const crossings = chainsOf(geometry).flatMap(({ corners, closed }) => (closed ? [outlineCrossing(corners)] : []));
  const marks = crossings.flatMap((place) => (place ? [shape('Point', place, 'crossing')] : []));
  return [...edgesOf({ ...chosen, geometry }, 'moving'), hand, ...marks];
}
