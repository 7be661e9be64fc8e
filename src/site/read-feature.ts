/** One entry of the file's `features` → a feature of the site (several when a MultiPoint is split), or what is kept out of use and why. */
import type { Who } from './check-area.ts';
import { firstGate } from './first-gate.ts';
import type { Ids } from './ids.ts';
import { trouble } from './issues.ts';
import { isObject, type JsonObject, member, otherMembers } from './json.ts';
import { isKind, nearestKind, respelled } from './kinds.ts';
import { cut, kindWord, label } from './label.ts';
import { hasProperty, type PropertyName, propertyRows } from './property-table.ts';
import { propertyTrouble } from './property-trouble.ts';
import { readGeometry } from './read-geometry.ts';
import type { Issue, Kind, SiteFeature } from './types.ts';

/** What one entry became. */
export interface ReadFeature {
  /** Empty when the entry is kept but not used; then the first error or warning among `issues` says why. */
  readonly features: readonly SiteFeature[];
  readonly issues: readonly Issue[];
}

const described = ['type', 'id', 'properties', 'geometry'];

/** Reads entry number `index` (from 0). Adds the ids it uses to `ids`. */
export function readFeature(raw: unknown, index: number, ids: Ids): ReadFeature {
  const nth = `feature ${index + 1}`;
  if (!isObject(raw) || raw.type !== 'Feature') return notAFeature(raw, nth);
  const issues: Issue[] = [];
  const properties = isObject(raw.properties) ? raw.properties : {};
  if (raw.properties !== null && raw.properties !== undefined && !isObject(raw.properties))
    issues.push(badProperties(nth));
  const given = typeof raw.id === 'string' || typeof raw.id === 'number' ? String(raw.id) : null;
  const kind = readKind(properties, given ?? nth, called(properties, nth), issues);
  if (kind === null) return { features: [], issues };
  const id = readId(raw, kind, ids, nth, issues);
  const who: Who = { id, label: label({ id, kind, properties }) };
  const feature = { id, kind, properties, ...foreignMembers(raw), ...numberMark(raw, id) };
  return finish(raw, feature, who, ids, issues);
}

function foreignMembers(raw: JsonObject): Pick<SiteFeature, 'extra'> {
  const extra = otherMembers(raw, described);
  return extra ? { extra } : {};
}

function numberMark(raw: JsonObject, id: string): Pick<SiteFeature, 'numberId'> {
  return typeof raw.id === 'number' && String(raw.id) === id ? { numberId: true } : {};
}

function finish(
  raw: JsonObject,
  feature: Omit<SiteFeature, 'geometry'>,
  who: Who,
  ids: Ids,
  issues: Issue[],
): ReadFeature {
  const geometry = member(raw, 'geometry');
  if (geometry === undefined) issues.push(geometryMissing(who));
  const read = readGeometry(geometry ?? null, feature.kind, who);
  issues.push(...read.issues, ...propertyIssues(feature, who));
  const doubt = read.issues.length === 0 && geometry !== undefined ? firstGate(raw) : [];
  if (doubt.length > 0) return { features: [], issues: [...issues, refusedByGate(who, doubt)] };
  const features = read.geometries.map((one, i) => ({
    ...feature,
    id: i === 0 ? who.id : ids.free(who.id),
    geometry: one,
  }));
  return { features, issues };
}

function notAFeature(raw: unknown, nth: string): ReadFeature {
  const type = member(raw, 'type');
  const what = typeof type === 'string' ? `a ${cut(type)}, not a Feature` : 'not a GeoJSON Feature';
  const sentence = `${capital(nth)} is ${what}; it stays in the file, but is not used.`;
  const issue = trouble('not-a-feature', { feature: nth }, sentence, 'Make it a Feature, or delete it from the list.');
  return { features: [], issues: [issue] };
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function badProperties(nth: string): Issue {
  const sentence = `The properties of ${nth} are not an object; they were not used.`;
  return trouble('property-wrong-type', { feature: nth }, sentence, 'Write the properties as {"kind": "woods", …}.');
}

function called(properties: JsonObject, nth: string): string {
  const name = member(properties, 'name');
  return typeof name === 'string' && name.trim() !== '' ? `“${cut(name.trim())}” (${nth})` : capital(nth);
}

function readKind(properties: JsonObject, feature: string, name: string, issues: Issue[]): Kind | null {
  const word = member(properties, 'kind');
  if (isKind(word)) return word;
  if (typeof word !== 'string' || word.trim() === '') {
    const fix = 'Give it a kind, such as "woods", "path" or "post".';
    issues.push(
      trouble('kind-missing', { feature }, `${name} has no kind, so it is not used; it stays in the file.`, fix),
    );
    return null;
  }
  const known = respelled(word);
  if (known) {
    const sentence = `The kind “${cut(word)}” of ${name} was read as “${known}”.`;
    issues.push(trouble('kind-respelled', { feature }, sentence, 'Nothing to do; save the site to keep the repair.'));
    return known;
  }
  const sentence = `${name} has the unknown kind “${cut(word)}”, so it is not used; it stays in the file.`;
  const fix = `Did you mean “${nearestKind(word)}”? Change the kind.`;
  issues.push(trouble('kind-unknown', { feature }, sentence, fix));
  return null;
}

/** The entry's own id, or a new one when it has none, one that was used before, or one that is neither text nor number. */
function readId(raw: JsonObject, kind: Kind, ids: Ids, nth: string, issues: Issue[]): string {
  const given = member(raw, 'id');
  const usable = (typeof given === 'string' && given !== '') || (typeof given === 'number' && Number.isFinite(given));
  const own = usable ? String(given) : null;
  if (own !== null && ids.take(own)) return own;
  const id = ids.free(own ?? kind);
  const saved = 'Nothing to do; save the site to keep the id.';
  if (own !== null) {
    issues.push(
      trouble(
        'id-twice',
        { feature: id },
        `The id “${cut(own)}” of ${nth} was used before; it became “${cut(id)}”.`,
        saved,
      ),
    );
  } else if (given === undefined || given === null || given === '') {
    issues.push(trouble('id-missing', { feature: id }, `${kindWord(kind)} (${nth}) had no id; it got “${id}”.`, saved));
  } else {
    issues.push(
      trouble(
        'id-not-usable',
        { feature: id },
        `The id of ${nth} was neither text nor a number; it became “${id}”.`,
        saved,
      ),
    );
  }
  return id;
}

function geometryMissing(who: Who): Issue {
  return trouble(
    'geometry-missing',
    { feature: who.id },
    `${who.label} had no geometry member; null was put there.`,
    'Place it on the map.',
  );
}

function refusedByGate(who: Who, said: string[]): Issue {
  const sentence = `${who.label} is not a valid GeoJSON feature: ${said.slice(0, 2).join('; ')}.`;
  return trouble('not-geojson', { feature: who.id }, sentence, 'Correct it, or draw it again.');
}

function propertyIssues(feature: Omit<SiteFeature, 'geometry'>, who: Who): Issue[] {
  return (Object.keys(propertyRows) as PropertyName[]).flatMap((name) => {
    if (!hasProperty(feature.kind, name)) return [];
    const issue = propertyIssue(feature, name, who);
    return issue ? [issue] : [];
  });
}

function propertyIssue(feature: Omit<SiteFeature, 'geometry'>, name: PropertyName, who: Who): Issue | null {
  const row = propertyRows[name];
  const value = member(feature.properties, name);
  const id = propertyTrouble(row, value);
  if (!id) return null;
  const unit = row.unit ? ` ${row.unit}` : '';
  const wanted =
    row.words?.join(', ') ?? (row.range ? `${row.range[0]} to ${row.range[1]}${unit}` : `a ${row.type} value`);
  const sentence = `${name} of ${who.label} is ${cut(JSON.stringify(value))}; used instead: ${row.otherwise}.`;
  return trouble(id, { feature: who.id }, sentence, `Write ${wanted}.`);
}
