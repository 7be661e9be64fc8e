/** Make an area of a line: a hedge, a creek, a mown strip along a path. */
import { buffer } from '@turf/turf';
import { kindWord, label } from '../site/label.ts';
import { nameOf } from '../site/properties.ts';
import type { AreaKind, Site } from '../site/types.ts';
import { addFeature } from './add-feature.ts';
import { type Edit, featureOf, withFeatures } from './edit.ts';

/** What to make along a line. */
export interface BufferOptions {
  readonly kind: AreaKind;
  /** Metres across, 0.2 to 500. */
  readonly width: number;
  /** Whether the line stays beside the new area; it does unless false. */
  readonly keepLine?: boolean;
}

/** Adds an area of the given width along a line, with the line's name. */
export function bufferLine(site: Site, id: string, { kind, width, keepLine = true }: BufferOptions): Edit {
  const line = featureOf(site, id);
  if (line.geometry?.type !== 'LineString' && line.geometry?.type !== 'MultiLineString') {
    return { refused: `${label(line)} is no line. Choose a line.` };
  }
  if (!(width >= 0.2 && width <= 500))
    return { refused: 'The width has to be from 0.2 to 500 meters. Give another width.' };
  const geometry = buffer(line.geometry, width / 2, { units: 'meters', steps: 4 })?.geometry;
  if (!geometry) return { refused: `${label(line)} is too short for that. Give another width.` };
  const name = nameOf(line);
  const rest = keepLine
    ? site
    : withFeatures(
        site,
        site.features.filter((feature) => feature !== line),
      );
  const edit = addFeature(rest, { kind, geometry, properties: name === null ? {} : { name } });
  return 'refused' in edit ? edit : { ...edit, sentence: `Made ${kindWord(kind).toLowerCase()} along ${label(line)}` };
}
