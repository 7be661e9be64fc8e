import type { Edit } from '../../../src/edits/edit.ts';
import { readSite } from '../../../src/site/read.ts';
import type { Kind, Site, SiteFeature, SiteGeometry } from '../../../src/site/types.ts';

/** A feature for the tests. */
export function thing(
  id: string,
  kind: Kind,
  geometry: SiteGeometry | null,
  properties: Record<string, unknown> = {},
): SiteFeature {
  return { id, kind, geometry, properties: { kind, ...properties } };
}

/** Corners of a rectangle in steps of 0.001 degree from [-81, 41], counter-clockwise and closed. */
export function box(x: number, y: number, width: number, height: number): number[][] {
  const at = (i: number, j: number) => [Number((-81 + i / 1000).toFixed(7)), Number((41 + j / 1000).toFixed(7))];
  return [at(x, y), at(x + width, y), at(x + width, y + height), at(x, y + height), at(x, y)];
}

export function areaOf(...rings: number[][][]): SiteGeometry {
  return { type: 'Polygon', coordinates: rings };
}

/** Woods and meadow side by side sharing the border x = 4, a path, two posts and a gate; read from text like a file. */
export function land(more: readonly SiteFeature[] = []): Site {
  const features = [
    thing('woods', 'woods', areaOf(box(0, 0, 4, 4)), { name: 'Long Spinney' }),
    thing('meadow', 'meadow', areaOf(box(4, 0, 4, 4))),
    thing('path', 'path', {
      type: 'LineString',
      coordinates: [
        [-81, 40.999],
        [-80.996, 40.999],
        [-80.992, 40.9985],
      ],
    }),
    thing('p1', 'post', { type: 'Point', coordinates: [-80.994, 41.002] }),
    thing('p2', 'post', { type: 'Point', coordinates: [-80.993, 41.002] }, { state: 'fixed', number: 2 }),
    thing('gate', 'trailhead', { type: 'Point', coordinates: [-81, 40.999] }),
    ...more,
  ];
  const list = features.map(({ id, properties, geometry }) => ({ type: 'Feature', id, properties, geometry }));
  const text = JSON.stringify({
    type: 'FeatureCollection',
    meadowpost: { name: 'Land', region: 'europe', start: 'gate' },
    features: list,
  });
  const { site, issues } = readSite(text, 'land.geojson');
  if (!site || issues.length > 0) throw new Error(`the test's land is not clean: ${JSON.stringify(issues)}`);
  return site;
}

/** The site an edit gave; fails loudly when it was refused. */
export function done(edit: Edit): Site {
  if ('refused' in edit) throw new Error(`refused: ${edit.refused}`);
  return edit.site;
}

/** Why an edit was refused; empty when it was not. */
export function why(edit: Edit): string {
  return 'refused' in edit ? edit.refused : '';
}

export function find(site: Site, id: string): SiteFeature {
  const found = site.features.find((feature) => feature.id === id);
  if (!found) throw new Error(`no ${id} in ${site.features.map((one) => one.id).join(', ')}`);
  return found;
}

/** Coordinates of a feature as they stand. */
export function coordinates(site: Site, id: string): unknown {
  return find(site, id).geometry?.coordinates;
}
