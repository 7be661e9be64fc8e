/** Cut a hole into an area, or take another area out of it. */
import { difference, featureCollection, multiPolygon } from '@turf/turf';
import type { Position } from 'geojson';
import { label } from '../site/label.ts';
import { samePlace } from '../site/positions.ts';
import type { LonLat, Site, SiteFeature } from '../site/types.ts';
import { type Edit, featureOf, rounded, settle, withGeometry } from './edit.ts';
import { roundedButKnown } from './keep-known.ts';

type Parts = Position[][][];

function partsOf({ geometry }: SiteFeature): Parts | null {
  if (geometry?.type === 'Polygon') return [geometry.coordinates];
  return geometry?.type === 'MultiPolygon' ? geometry.coordinates : null;
}

/** Cuts a drawn hole. It has to lie inside the area and may not cross its outline or another hole. */
export function cutHole(site: Site, id: string, hole: readonly LonLat[]): Edit {
  const feature = featureOf(site, id);
  const parts = partsOf(feature);
  if (!parts) return { refused: `${label(feature)} is no area. Choose an area to cut into.` };
  const closed = hole.length > 1 && samePlace([...hole[0]!], [...hole.at(-1)!]) ? hole.slice(0, -1) : hole;
  if (closed.length < 3) return { refused: 'A hole needs at least 3 corners. Draw it again.' };
  const ring = [...closed, closed[0]!].map((position) => rounded([...position]));
  const n = parts.length === 1 ? 0 : parts.findIndex((part) => partTakes(feature, part, ring));
  if (n < 0) return { refused: `The hole does not lie inside one part of ${label(feature)}. Draw it inside.` };
  const cut = parts.map((part, i) => (i === n ? [...part, ring] : part));
  return settle(site, [withParts(feature, cut)], `Cut a hole into ${label(feature)}`);
}

/** Whether the hole lies inside this part: taking it away leaves one piece with one hole more. */
function partTakes(_feature: SiteFeature, part: Position[][], ring: Position[]): boolean {
  const left = difference(featureCollection([multiPolygon([part]), multiPolygon([[ring]])]))?.geometry;
  return left?.type === 'Polygon' && left.coordinates.length === part.length + 1;
}

function withParts(feature: SiteFeature, parts: Parts): SiteFeature {
  const [only] = parts;
  return withGeometry(
    feature,
    parts.length === 1 && only ? { type: 'Polygon', coordinates: only } : { type: 'MultiPolygon', coordinates: parts },
  );
}

/** Takes the ground of another area out of this one (a lawn out of the woods around it). The other stays as it is. */
export function cutOut(site: Site, id: string, otherId: string): Edit {
  const [feature, other] = [featureOf(site, id), featureOf(site, otherId)];
  const [parts, taken] = [partsOf(feature), partsOf(other)];
  if (!parts || !taken)
    return { refused: 'Both have to be areas. Choose the area to cut into, then the one to take out.' };
  const left = difference(featureCollection([multiPolygon(parts), multiPolygon(taken)]))?.geometry;
  if (!left) return { refused: `${label(other)} covers all of ${label(feature)}. Delete ${label(feature)} instead.` };
  const geometry = roundedButKnown(left, [feature.geometry, other.geometry]);
  return settle(site, [withGeometry(feature, geometry)], `Cut ${label(other)} out of ${label(feature)}`);
}
