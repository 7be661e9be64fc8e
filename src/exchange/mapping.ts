/** From a file's own words to our kinds: rules looked at in order, and properties carried over. A mapping is plain data, kept per source. */
import { isKind, type Shape, shapeOf } from '../site/kinds.ts';
import { hasProperty, type PropertyName, propertyRows } from '../site/property-table.ts';
import { propertyTrouble } from '../site/property-trouble.ts';
import type { Kind, SiteGeometry } from '../site/types.ts';
import { fitShape, geometryShape } from './fit-shape.ts';
import type { Attributes, Draft, FeatureNote, ReadFeature } from './import-types.ts';
import { readLength } from './lengths.ts';
import { cleanText, cutText, oneLine } from './safe-text.ts';

/** Where `attribute` has `value` ('*' = anything but "no"), the thing is of this kind; null = leave it out on purpose. */
export interface Rule {
  readonly attribute: string;
  readonly value: string;
  readonly kind: Kind | null;
  /** Only for things of this shape. */
  readonly shape?: Shape;
  /** Properties set on the new thing, unless the file says otherwise. */
  readonly set?: Readonly<Partial<Record<PropertyName, string | number | boolean>>>;
  /** The file is one of ours: all attributes become properties. */
  readonly own?: boolean;
}

/** An attribute that becomes a property. `length` reads "12", "12 m", "40 ft"; then it is multiplied by `times`. */
export interface Transfer {
  readonly from: string;
  readonly to: PropertyName;
  readonly as: 'text' | 'length' | 'number' | 'yes-no';
  readonly times?: number;
}

export interface Mapping {
  readonly id: string;
  readonly title: string;
  readonly rules: readonly Rule[];
  readonly transfers: readonly Transfer[];
  /** The kind of things that no rule fits. */
  readonly otherwise: Readonly<Partial<Record<Shape, Kind>>>;
}

/** Drafts, and the things left out with the reason, by their number in the file. */
export interface Mapped {
  readonly drafts: readonly Draft[];
  readonly left: readonly (FeatureNote & { readonly source: number })[];
  readonly repaired: readonly FeatureNote[];
}

/** Applies the first rule that fits to each feature. Nothing is guessed beyond the mapping. */
export function applyMapping(features: readonly ReadFeature[], mapping: Mapping): Mapped {
  const drafts: Draft[] = [];
  const left: (FeatureNote & { source: number })[] = [];
  const repaired: FeatureNote[] = [];
  for (const feature of features) {
    const made = mapOne(feature, mapping);
    if (typeof made === 'string') left.push({ what: feature.from, why: made, source: feature.source });
    else {
      drafts.push(made.draft);
      repaired.push(...made.notes.map((why) => ({ what: feature.from, why })));
    }
  }
  return { drafts, left, repaired };
}

type Made = { readonly draft: Draft; readonly notes: readonly string[] };

function mapOne(feature: ReadFeature, mapping: Mapping): Made | string {
  let misfit: string | null = null;
  const words = wordsOf(feature.attributes);
  for (const rule of mapping.rules) {
    if (!matches(rule, feature, words)) continue;
    if (rule.kind === null) return `${rule.attribute} = ${rule.value} is left out on purpose`;
    const fitted = fitShape(feature.geometry, rule.kind);
    if (fitted) return make(feature, rule.kind, fitted.geometry, fitted.notes, mapping, rule);
    misfit ??= `${rule.kind} must be drawn as ${withArticle(shapeOf(rule.kind))}, but this is ${withArticle(geometryShape(feature.geometry))}`;
  }
  const kind = mapping.otherwise[geometryShape(feature.geometry)];
  if (kind && !misfit) return make(feature, kind, feature.geometry, [], mapping, null);
  return misfit ?? 'no rule says what kind of thing it is';
}

function withArticle(shape: Shape): string {
  return shape === 'area' ? 'an area' : `a ${shape}`;
}

/** Attribute → value, both in lower case: shapefiles write NATURAL where map files write natural. */
function wordsOf(attributes: Attributes): ReadonlyMap<string, string> {
  return new Map(
    Object.entries(attributes).map(([key, value]) => [key.toLowerCase(), attributeText(value).toLowerCase()]),
  );
}

function matches(rule: Rule, feature: ReadFeature, words: ReadonlyMap<string, string>): boolean {
  const said = words.get(rule.attribute.toLowerCase());
  if (said === undefined || (rule.shape && rule.shape !== geometryShape(feature.geometry))) return false;
  return rule.value === '*' ? said !== '' && said !== 'no' : said === rule.value.toLowerCase();
}

/** An attribute's value as a rule compares it: one line of text; '' for nothing, lists and objects. */
export function attributeText(value: unknown): string {
  return oneLine(value).slice(0, 200);
}

function make(
  feature: ReadFeature,
  kind: Kind,
  geometry: SiteGeometry,
  shapeNotes: readonly string[],
  mapping: Mapping,
  rule: Rule | null,
): Made {
  const notes = [...shapeNotes];
  const properties = rule?.own
    ? ownProperties(feature.attributes, kind)
    : foreignProperties(feature.attributes, kind, mapping.transfers, rule?.set ?? {}, notes);
  return {
    draft: {
      from: feature.from,
      source: feature.source,
      id: rule?.own ? idOf(feature.attributes) : null,
      kind,
      geometry,
      properties,
    },
    notes,
  };
}

function idOf(attributes: Attributes): string | null {
  return attributeText(attributes['@id'] ?? attributes.id) || null;
}

function foreignProperties(
  attributes: Attributes,
  kind: Kind,
  transfers: readonly Transfer[],
  set: NonNullable<Rule['set']>,
  notes: string[],
): Record<string, unknown> {
  const properties: Record<string, unknown> = {};
  for (const transfer of transfers) {
    const given =
      hasProperty(kind, transfer.to) && !(transfer.to in properties)
        ? attributeOf(attributes, transfer.from)
        : undefined;
    if (given === undefined || given === null || given === '') continue;
    const value = transferred(given, transfer);
    const trouble = value === null ? 'it was not understood' : propertyTrouble(propertyRows[transfer.to], value);
    if (trouble === null) properties[transfer.to] = value;
    else notes.push(`${transfer.from} “${attributeText(given).slice(0, 40)}” was not used as ${transfer.to}`);
  }
  const usable = Object.entries(set).filter(([key]) => hasProperty(kind, key as PropertyName) && !(key in properties));
  return {
    ...properties,
    ...noteOf(attributes),
    ...Object.fromEntries(usable),
    ...(Object.keys(attributes).length > 0 ? { imported: attributes } : {}),
  };
}

/** By the very name, else by the name in other letters. */
function attributeOf(attributes: Attributes, name: string): unknown {
  if (Object.hasOwn(attributes, name)) return attributes[name];
  const other = Object.keys(attributes).find((key) => key.toLowerCase() === name.toLowerCase());
  return other === undefined ? undefined : attributes[other];
}

function transferred(value: unknown, { as, times = 1 }: Transfer): unknown {
  const text = attributeText(value);
  if (text === '') return null;
  if (as === 'text') return oneLine(value);
  if (as === 'yes-no') return /^(yes|true|1|y)$/i.test(text) ? true : /^(no|false|0|n)$/i.test(text) ? false : null;
  const number =
    as === 'length' ? readLength(text) : /^[-+]?\d+([.,]\d+)?$/.test(text) ? Number(text.replace(',', '.')) : null;
  return number === null ? null : Math.round(number * times * 100) / 100;
}

const formatOnly = new Set(['kind', 'gpx', 'folder', 'style', 'id', '@id', 'what', 'description']);

/** Attributes of a file of ours come back as they were; text formats carry numbers as text, so known ones are read again. */
function ownProperties(attributes: Attributes, kind: Kind): Record<string, unknown> {
  const entries = Object.entries(attributes).filter(([key]) => !formatOnly.has(key));
  const properties = Object.fromEntries(entries.map(([key, value]) => [key, typed(key, value, kind)]));
  return attributes.description === undefined ? properties : { note: attributes.description, ...properties };
}

/** The first text a foreign file gives about a thing. */
function noteOf(attributes: Attributes): { note?: string } {
  const text = ['note', 'description', 'desc', 'cmt']
    .map((key) => cleanText(attributes[key]))
    .find((one) => one !== '');
  return text === undefined ? {} : { note: cutText(text, 2000) };
}

function typed(key: string, value: unknown, kind: Kind): unknown {
  if (typeof value !== 'string' || !Object.hasOwn(propertyRows, key) || !hasProperty(kind, key as PropertyName))
    return value;
  const { type } = propertyRows[key as PropertyName];
  if ((type === 'number' || type === 'whole') && /^-?\d+(\.\d+)?$/.test(value)) return Number(value);
  if (type === 'yes-no' && /^(true|false)$/i.test(value)) return value.toLowerCase() === 'true';
  return value;
}

/** A mapping read back from where it was kept; null when it is not one. Unknown kinds make it null rather than wrong. */
export function readMapping(value: unknown): Mapping | null {
  const kept = value as Partial<Mapping> | null;
  if (typeof kept !== 'object' || kept === null || !Array.isArray(kept.rules) || !Array.isArray(kept.transfers))
    return null;
  const sound =
    kept.rules.every(
      (rule) =>
        typeof rule?.attribute === 'string' &&
        typeof rule.value === 'string' &&
        (rule.kind === null || isKind(rule.kind)),
    ) &&
    kept.transfers.every((one) => typeof one?.from === 'string' && Object.hasOwn(propertyRows, one.to)) &&
    Object.values(kept.otherwise ?? {}).every(isKind);
  return sound
    ? {
        id: String(kept.id ?? ''),
        title: String(kept.title ?? ''),
        rules: kept.rules,
        transfers: kept.transfers,
        otherwise: kept.otherwise ?? {},
      }
    : null;
}
