/** Which drawn thing a press means: points before lines before areas, and of areas the smallest. */
import type { Position } from 'geojson';
import { chainsOf } from '../../../edits/chains.ts';
import { ringContains } from '../../../geometry/ring.ts';
import { distanceToSegment } from '../../../geometry/segment.ts';
import type { LonLat, Site, SiteFeature } from '../../../site/types.ts';
import { ringMetres } from './measure.ts';

type Project = (at: LonLat) => { readonly x: number; readonly y: number };

/** Targets in px: of a point, and of a line or border. */
export interface Reach {
  readonly point: number;
  readonly line: number;
}

/** The feature meant, or null. Boundaries and areas are meant by their border or by their inside. */
export function thingAt(
  site: Site,
  press: { x: number; y: number; at: LonLat },
  reach: Reach,
  project: Project,
): SiteFeature | null {
  return (
    pointAt(site, press, reach.point, project) ?? lineAt(site, press, reach.line, project) ?? areaAt(site, press.at)
  );
}

function pointAt(site: Site, press: { x: number; y: number }, reach: number, project: Project): SiteFeature | null {
  let best: SiteFeature | null = null;
  let least = reach;
  for (const feature of site.features) {
    if (feature.geometry?.type !== 'Point') continue;
    const p = project(feature.geometry.coordinates as LonLat);
    const away = Math.hypot(p.x - press.x, p.y - press.y);
    if (away <= least) [best, least] = [feature, away];
  }
  return best;
}

function lineAt(site: Site, press: { x: number; y: number }, reach: number, project: Project): SiteFeature | null {
  let best: SiteFeature | null = null;
  let least = reach;
  for (const feature of site.features) {
    if (feature.geometry?.type !== 'LineString' && feature.geometry?.type !== 'MultiLineString') continue;
    for (const { corners } of chainsOf(feature.geometry)) {
      const points = corners.map((corner) => project([corner[0]!, corner[1]!]));
      for (let i = 1; i < points.length; i++) {
        const [a, b] = [points[i - 1]!, points[i]!];
        const away = distanceToSegment(press.x, press.y, a.x, a.y, b.x, b.y);
        if (away <= least) [best, least] = [feature, away];
      }
    }
  }
  return best;
}

/** The smallest area around a place; a boundary only when nothing else is there. */
export function areaAt(site: Site, at: LonLat, without: string | null = null): SiteFeature | null {
  const around = site.features.filter((feature) => feature.id !== without && covers(feature, at));
  const size = (feature: SiteFeature) =>
    chainsOf(feature.geometry).reduce((sum, { corners }) => sum + ringMetres(corners), 0);
  const rank = (feature: SiteFeature) => (feature.kind === 'boundary' ? Number.POSITIVE_INFINITY : size(feature));
  return around.sort((a, b) => rank(a) - rank(b))[0] ?? null;
}

/** Whether an area covers a place, its holes left out. */
export function covers({ geometry }: SiteFeature, [x, y]: LonLat): boolean {
  if (geometry?.type !== 'Polygon' && geometry?.type !== 'MultiPolygon') return false;
  const points = (ring: readonly Position[]) => ring.map((p) => ({ x: p[0]!, y: p[1]! }));
  const rings = geometry.type === 'Polygon' ? geometry.coordinates : geometry.coordinates.flat();
  return rings.filter((ring) => ringContains(points(ring), { x, y })).length % 2 === 1;
}
