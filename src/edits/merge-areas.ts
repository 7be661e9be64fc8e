/** Make one area of several. */
import { featureCollection, multiPolygon, union } from '@turf/turf';
import { shapeOf } from '../site/kinds.ts';
import { label } from '../site/label.ts';
import type { Site, SiteFeature } from '../site/types.ts';
import { type Edit, featuresOf, settle, withFeatures, withGeometry } from './edit.ts';
import { roundedButKnown } from './keep-known.ts';

/** Merges areas that touch or overlap into the first named, whose kind and properties stay. */
export function mergeAreas(site: Site, ids: readonly string[]): Edit {
  const features = featuresOf(site, ids);
  const [first, ...others] = features;
  if (!first || others.length === 0) return { refused: 'One area cannot be merged. Select two or more that touch.' };
  const noArea = features.find(({ kind, geometry }) => shapeOf(kind) !== 'area' || geometry === null);
  if (noArea) return { refused: `${label(noArea)} is no area. Select areas only.` };
  const merged = union(featureCollection(features.map(asTurf)))?.geometry;
  if (!merged || partsOf(merged.type, merged.coordinates) > separate(features)) return apart(features);
  const geometry = roundedButKnown(
    merged,
    features.map((feature) => feature.geometry),
  );
  const gone = new Set(others.map(({ id }) => id));
  const rest = withFeatures(
    site,
    site.features.filter(({ id }) => !gone.has(id)),
  );
  return settle(
    rest,
    [withGeometry(first, geometry)],
    `Merged ${features.map((feature) => label(feature)).join(' and ')}`,
  );
}

function asTurf({ geometry }: SiteFeature) {
  if (geometry?.type === 'Polygon') return multiPolygon([geometry.coordinates]);
  if (geometry?.type === 'MultiPolygon') return multiPolygon(geometry.coordinates);
  throw new Error('only areas can be merged');
}

function partsOf(type: string, coordinates: readonly unknown[]): number {
  return type === 'Polygon' ? 1 : coordinates.length;
}

/** Parts that one of the areas had to begin with: merging may not leave more than the most scattered of them. */
function separate(features: readonly SiteFeature[]): number {
  return Math.max(...features.map(({ geometry }) => (geometry ? partsOf(geometry.type, geometry.coordinates) : 0)));
}

function apart(features: readonly SiteFeature[]): Edit {
  const names = features.map((feature) => label(feature)).join(' and ');
  return { refused: `${names} do not touch. Move their borders together first.` };
}
