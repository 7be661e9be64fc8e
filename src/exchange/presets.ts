/** The mapping each format starts with: our own kinds first, then OpenStreetMap tags, then what a bare point or line most likely is. */
import { allKinds, type Shape } from '../site/kinds.ts';
import type { Kind } from '../site/types.ts';
import type { ImportFormat } from './import-types.ts';
import type { Mapping, Rule } from './mapping.ts';
import { openStreetMapPreset } from './openstreetmap-preset.ts';

/** Files we wrote say our kinds themselves. */
const ownRules: readonly Rule[] = allKinds.map((kind) => ({ attribute: 'kind', value: kind, kind, own: true }));

/** A GPS receiver's points are candidate posts and its lines are paths; a map file's things must say what they are (ours). */
const bare: Readonly<Record<ImportFormat, Readonly<Partial<Record<Shape, Kind>>>>> = {
  geojson: {},
  shapefile: {},
  gpx: { point: 'post', line: 'path' },
  kml: { point: 'post', line: 'path' },
  kmz: { point: 'post', line: 'path' },
  csv: { point: 'post' },
};

/** The mapping to begin with; a person's own is a copy of it with other rows. */
export function startingMapping(format: ImportFormat): Mapping {
  return {
    ...openStreetMapPreset,
    id: `start-${format}`,
    title: 'Our kinds, then OpenStreetMap tags',
    rules: [...ownRules, ...openStreetMapPreset.rules],
    otherwise: bare[format],
  };
}
