/** The site file → a site and everything that is wrong with it. The one door for text from outside. */
import { checkSite, strayFeatures, tooWide } from './check-site.ts';
import { limits } from './defaults.ts';
import { gather } from './gather.ts';
import { Ids } from './ids.ts';
import { trouble } from './issues.ts';
import { isObject, type JsonObject, member, otherMembers } from './json.ts';
import { cut } from './label.ts';
import { versionIssues } from './migrate.ts';
import { parseText } from './parse.ts';
import { featurePositions } from './positions.ts';
import { type ReadFeature, readFeature } from './read-feature.ts';
import { readSettings } from './read-settings.ts';
import type { Issue, KeptFeature, Site, SiteFeature } from './types.ts';

/** A read file: `site` is null only when the file as a whole cannot be opened. */
export interface ReadSite {
  readonly site: Site | null;
  readonly issues: Issue[];
}

/** Reads the text of a site file. `fileName` goes into the sentences and names a site that has no name. Never throws. */
export function readSite(text: string, fileName: string): ReadSite {
  const parsed = parseText(text, cut(fileName));
  const file = cut(fileName);
  if (parsed.issues.some(isError)) return { site: null, issues: parsed.issues };
  const root = asCollection(parsed.value, file);
  const issues = [...parsed.issues, ...root.issues];
  if (!root.collection) return { site: null, issues };
  const read = readCollection(root.collection, file);
  const all = [...issues, ...read.issues];
  const asItWas = all.every(({ severity, id }) => severity !== 'repaired' && id !== 'number-not-finite');
  const site = read.site && asItWas ? { ...read.site, readFrom: { text } } : read.site;
  return { site, issues: gather(all) };
}

function isError({ severity }: Issue): boolean {
  return severity === 'error';
}

interface Collection {
  readonly raw: JsonObject;
  readonly features: readonly unknown[];
}

/** The collection in the file, or why there is none. */
function asCollection(value: unknown, file: string): { collection: Collection | null; issues: Issue[] } {
  const stop = (issue: Issue) => ({ collection: null, issues: [issue] });
  const many = Array.isArray(value) ? value : [];
  if (many.filter(isCollection).length > 0) return stop(twoSites(file, 'a list of collections'));
  if (isFeature(value)) {
    const sentence = `${file} held one feature without a collection; it was wrapped in one.`;
    const wrapped = trouble('single-feature', {}, sentence, 'Nothing to do; save the site to keep the repair.');
    return { collection: { raw: {}, features: [value] }, issues: [wrapped] };
  }
  if (!isObject(value) || !isCollection(value)) return stop(notASite(value, file));
  const features = member(value, 'features');
  if (!Array.isArray(features)) return stop(notASite(value, file));
  if (features.some(isCollection)) return stop(twoSites(file, 'a collection inside its collection'));
  const much = tooMuch(features, file);
  return much ? stop(much) : { collection: { raw: value, features }, issues: [] };
}

function isCollection(value: unknown): boolean {
  return member(value, 'type') === 'FeatureCollection';
}

function isFeature(value: unknown): boolean {
  return member(value, 'type') === 'Feature';
}

function twoSites(file: string, how: string): Issue {
  const sentence = `${file} holds two sites in one file: ${how}.`;
  return trouble('two-sites', {}, sentence, 'Save each collection as a file of its own and open one.');
}

function notASite(value: unknown, file: string): Issue {
  const type = member(value, 'type');
  const what = isCollection(value)
    ? 'has no list of features'
    : typeof type === 'string'
      ? `is a ${cut(type)}, not a FeatureCollection`
      : 'is JSON, but not a GeoJSON FeatureCollection';
  return trouble('not-a-site', {}, `${file} ${what}.`, 'Open a site file, or bring other files in with Import.');
}

function tooMuch(features: readonly unknown[], file: string): Issue | null {
  if (features.length <= limits.mostFeatures) return null;
  const sentence = `${file} holds ${features.length} features; ${limits.mostFeatures} is the most.`;
  return trouble('file-too-big', {}, sentence, 'Cut the file to the site itself.');
}

function readCollection({ raw, features }: Collection, file: string): ReadSite {
  const { settings, issues: settingIssues } = readSettings(member(raw, 'meadowpost'), siteName(file));
  const ids = new Ids(features.map((feature) => String(member(feature, 'id') ?? '')));
  const read = features.map((feature, i) => readFeature(feature, i, ids));
  const issues = [...versionIssues(raw, file), ...settingIssues, ...read.flatMap((one) => one.issues)];
  const everywhere = allWrong(read, file);
  if (everywhere) return { site: null, issues: [everywhere] };
  const used = read.flatMap((one) => one.features);
  const stray = strayFeatures(used);
  const whole = read.filter((one) => !one.features.some((feature) => stray.has(feature)));
  const good = whole.flatMap((one) => one.features);
  const wide = tooWide(good, file) ?? tooManyCorners(good, file);
  if (wide) return { site: null, issues: [...issues, ...stray.values(), wide] };
  const kept = keptFeatures(features, read, stray);
  const extra = otherMembers(raw, ['type', 'features', 'meadowpost']);
  const site: Site = { settings, features: good, ...(extra ? { extra } : {}), ...(kept.length > 0 ? { kept } : {}) };
  return { site, issues: [...issues, ...stray.values(), ...checkSite(good, settings, kept.length)] };
}

function siteName(file: string): string {
  return file.replace(/^.*[\\/]/, '').replace(/\.(geo)?json$/i, '') || 'New site';
}

function tooManyCorners(features: readonly SiteFeature[], file: string): Issue | null {
  const corners = features.reduce((sum, feature) => sum + featurePositions(feature).length, 0);
  if (corners <= limits.mostVertices) return null;
  const sentence = `${file} holds ${corners} corners; ${limits.mostVertices} is the most.`;
  return trouble('file-too-big', {}, sentence, 'Simplify outlines that were traced too finely.');
}

/** When every feature fails for the same reason of units or order, it is the file's trouble, said once. */
function allWrong(read: readonly ReadFeature[], file: string): Issue | null {
  const errors = read.map((one) => one.issues.find(isError));
  const [first] = errors;
  if (!first || (first.id !== 'metres-not-degrees' && first.id !== 'lat-lon-swapped')) return null;
  if (!errors.every((issue) => issue?.id === first.id)) return null;
  const what =
    first.id === 'metres-not-degrees'
      ? 'All positions look like meters of a map grid (UTM), not degrees'
      : 'All positions look as if latitude and longitude were swapped';
  const place = first.place ? `, such as ${first.place[0]}, ${first.place[1]}` : '';
  return trouble(first.id, { place: first.place }, `${what} in ${file}${place}.`, first.fix);
}

function keptFeatures(
  raw: readonly unknown[],
  read: readonly ReadFeature[],
  stray: Map<SiteFeature, Issue>,
): KeptFeature[] {
  let before = 0;
  return raw.flatMap((feature, i) => {
    const { features, issues } = read[i]!;
    const far = features.map((one) => stray.get(one)).find((issue) => issue !== undefined);
    if (features.length > 0 && !far) {
      before += features.length;
      return [];
    }
    const why = issues.find(isError) ?? issues.find(({ id }) => id.startsWith('kind-')) ?? far;
    return [{ before, feature, issue: why?.id ?? 'not-a-feature' }];
  });
}
