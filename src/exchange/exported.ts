/** What every format is written from: a plain list of things with names, and the rounds that join them. */
import { kindWord } from '../site/label.ts';
import { nameOf } from '../site/properties.ts';
import type { LonLat, Site, SiteFeature, SiteGeometry } from '../site/types.ts';
import { cleanText, oneLine } from './safe-text.ts';

export type PlainValue = string | number | boolean;

/** One thing in a file. `word` is the short word a receiver shows behind the number; `note` is free text of any length. */
export interface ExportedThing {
  readonly id: string;
  readonly group: 'boxes' | 'walk' | 'left out' | 'land';
  readonly kind: string;
  readonly number: number | null;
  readonly name: string;
  readonly word: string;
  readonly note: string;
  readonly geometry: SiteGeometry | null;
  /** Facts with their site property names, in writing order; only finite numbers, text and yes/no. */
  readonly properties: Readonly<Record<string, PlainValue>>;
}

/** A walk: the ids of its stops in order (things of the same list) and the line walked, if it is known. */
export interface ExportedRound {
  readonly name: string;
  readonly stops: readonly string[];
  readonly line: readonly LonLat[];
}

export interface Exported {
  readonly name: string;
  readonly note: string;
  readonly things: readonly ExportedThing[];
  readonly rounds: readonly ExportedRound[];
}

/** The land as drawn, every feature once, in file order. */
export function siteThings(site: Site): Exported {
  const name = oneLine(site.settings.name) || 'Site';
  return { name, note: `Land of ${name}, ${site.settings.date}`, things: site.features.map(featureThing), rounds: [] };
}

function featureThing(feature: SiteFeature): ExportedThing {
  const word = kindWord(feature.kind);
  const number = feature.properties.number;
  return {
    id: feature.id,
    group: 'land',
    kind: feature.kind,
    number: feature.kind === 'post' && typeof number === 'number' && Number.isSafeInteger(number) ? number : null,
    name: oneLine(nameOf(feature) ?? '') || word,
    word: oneLine(nameOf(feature) ?? '') || word,
    note: cleanText(feature.properties.note).trim(),
    geometry: feature.geometry,
    properties: plainProperties(feature.properties),
  };
}

const hasPlace = new Set(['name', 'note', '__proto__']);

/** The members a table can hold: text, finite numbers and yes/no; name and note have their own place, lists and objects have none. */
export function plainProperties(properties: Readonly<Record<string, unknown>>): Readonly<Record<string, PlainValue>> {
  const plain: [string, PlainValue][] = [];
  for (const [key, value] of Object.entries(properties)) {
    if (hasPlace.has(key)) continue;
    if (typeof value === 'string') plain.push([cleanText(key), cleanText(value)]);
    else if (typeof value === 'boolean' || Number.isFinite(value)) plain.push([cleanText(key), value as PlainValue]);
  }
  return Object.fromEntries(plain);
}
