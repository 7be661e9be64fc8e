/** Site → text of the file: keys in a fixed order, one setting and one feature a line, wound as RFC 7946 says. */
import type { Position } from 'geojson';
import { wound } from './check-area.ts';
import { settingTable } from './setting-table.ts';
import type { Site, SiteFeature, SiteGeometry, SiteSettings } from './types.ts';

/** The file's text: the very text a site was read from while nothing changed, else `canonicalText`. */
export function writeSite(site: Site): string {
  return site.readFrom?.text ?? canonicalText(site);
}

/** The one text a site has whatever file it came from: equal sites, equal texts. Ends with a newline. */
export function canonicalText(site: Site): string {
  const extra = Object.entries(site.extra ?? {}).map(
    ([key, value]) => `${JSON.stringify(key)}: ${JSON.stringify(value)}`,
  );
  const members = [
    '"type": "FeatureCollection"',
    `"meadowpost": {\n${settingLines(site.settings).join(',\n')}\n}`,
    ...extra,
    featureList(site),
  ];
  return `{\n${members.join(',\n')}\n}\n`;
}

function settingLines(settings: SiteSettings): string[] {
  const values: Readonly<Record<string, unknown>> = { ...settings };
  const keys = ['fileVersion', ...Object.keys(settingTable), 'wanted', 'weights', 'figures', 'order'];
  const known = keys.map((key): [string, unknown] => [key, values[key]]);
  const one = [...known, ...Object.entries(settings.extra ?? {})].map(
    ([key, value]) => `  ${JSON.stringify(key)}: ${JSON.stringify(value)}`,
  );
  return settings.plans.length === 0 ? one : [...one, planLines(settings.plans)];
}

/** Kept plans, one a line. */
function planLines(plans: SiteSettings['plans']): string {
  return `  "plans": [\n${plans.map((plan) => `    ${JSON.stringify(plan)}`).join(',\n')}\n  ]`;
}

function featureList(site: Site): string {
  const lines: string[] = [];
  const kept = [...(site.kept ?? [])];
  const putKept = (upTo: number) => {
    while (kept[0] && kept[0].before <= upTo) lines.push(JSON.stringify(kept.shift()?.feature));
  };
  for (const [i, feature] of site.features.entries()) {
    putKept(i);
    lines.push(featureLine(feature));
  }
  putKept(Infinity);
  return lines.length === 0 ? '"features": []' : `"features": [\n${lines.join(',\n')}\n]`;
}

/** A feature as one line of JSON, its kind first among the properties unless the file had it elsewhere. */
export function featureLine(feature: SiteFeature): string {
  return JSON.stringify(featureObject(feature));
}

/** A feature as a plain GeoJSON object (for the file and for other formats). */
export function featureObject({
  id,
  kind,
  properties,
  geometry,
  extra,
  numberId,
}: SiteFeature): Record<string, unknown> {
  const named = Object.hasOwn(properties, 'kind') ? { ...properties, kind } : { kind, ...properties };
  return {
    type: 'Feature',
    id: numberId ? Number(id) : id,
    properties: named,
    geometry: geometry && rightHanded(geometry),
    ...extra,
  };
}

function rightHanded(geometry: SiteGeometry): SiteGeometry {
  if (geometry.type === 'Polygon') return { ...geometry, coordinates: wound(geometry.coordinates).rings };
  if (geometry.type !== 'MultiPolygon') return geometry;
  return { ...geometry, coordinates: geometry.coordinates.map((part: Position[][]) => wound(part).rings) };
}
