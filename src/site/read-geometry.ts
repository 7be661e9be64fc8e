/** A feature's geometry: the right shape for its kind, good positions, outlines that can be measured. Repairs what can be repaired. */
import type { Position } from 'geojson';
import { checkParts, checkPolygon, type Who } from './check-area.ts';
import { placeWords, trouble } from './issues.ts';
import { isObject, otherMembers } from './json.ts';
import { type Shape, shapeOf } from './kinds.ts';
import { kindWord } from './label.ts';
import { type PositionTrouble, placeOf, positionsOf, positionTrouble, samePlace } from './positions.ts';
import type { Issue, Kind, LonLat, SiteGeometry } from './types.ts';

/** What a geometry became. */
export interface ReadGeometry {
  /** One, or several when a MultiPoint was split; [null] when the file gives none; empty when it cannot be used. */
  readonly geometries: readonly (SiteGeometry | null)[];
  readonly issues: Issue[];
}

interface Raw {
  readonly type: string;
  readonly coordinates: unknown;
  /** What was repaired to make it fit its kind. */
  readonly repaired?: Issue;
}

const wants: Readonly<Record<Shape, string>> = {
  area: 'an area (Polygon)',
  line: 'a line (LineString)',
  point: 'one point (Point)',
};

/** Reads and checks a geometry of any origin for a kind. */
export function readGeometry(raw: unknown, kind: Kind, who: Who): ReadGeometry {
  if (raw === null) {
    const fix = 'Place it on the map when you know where it stands.';
    return {
      geometries: [null],
      issues: [trouble('not-placed', { feature: who.id }, `${who.label} has no place yet.`, fix)],
    };
  }
  const shaped = asShape(raw, kind, who);
  if ('refused' in shaped) return { geometries: [], issues: [shaped.refused] };
  const positions = positionsOf(shaped.type, shaped.coordinates);
  if (positions === null) return unreadable(who, `${shaped.type} without the brackets RFC 7946 asks for`);
  const bad = badPosition(positions, who);
  if (bad) return { geometries: [], issues: [bad] };
  const long = positions.some((position) => (position as Position).length > 3);
  const issues = shaped.repaired ? [shaped.repaired] : [];
  if (long) issues.push(extraNumbers(who, positions[0] as Position));
  const read = readShape(long ? { ...shaped, coordinates: trimmed(shaped.coordinates) } : shaped, who);
  issues.push(...read.issues);
  return { geometries: read.geometries.map((one) => one && withOthers(one, raw, issues.length > 0)), issues };
}

/** The geometry with the members beside type and coordinates that the file gave it; a bounding box only while nothing was repaired. */
function withOthers(geometry: SiteGeometry, raw: unknown, changed: boolean): SiteGeometry {
  const others = isObject(raw) ? (otherMembers(raw, changed ? ['bbox'] : []) ?? {}) : {};
  return { ...others, ...geometry };
}

function unreadable(who: Who, what: string): ReadGeometry {
  const sentence = `The geometry of ${who.label} cannot be read: ${what}.`;
  const fix = 'Draw it again, or save it anew from the program it came from.';
  return { geometries: [], issues: [trouble('geometry-not-readable', { feature: who.id }, sentence, fix)] };
}

/** The geometry when its shape fits the kind; closed lines of area kinds become areas. */
function asShape(raw: unknown, kind: Kind, who: Who): Raw | { refused: Issue } {
  const type = typeof raw === 'object' && raw !== null && 'type' in raw ? raw.type : null;
  if (typeof type !== 'string') return { refused: unreadable(who, 'it has no type').issues[0]! };
  const coordinates = (raw as { coordinates?: unknown }).coordinates;
  const shape = shapeOf(kind);
  const fits: Readonly<Record<Shape, readonly string[]>> = {
    area: ['Polygon', 'MultiPolygon'],
    line: ['LineString', 'MultiLineString'],
    point: ['Point', 'MultiPoint'],
  };
  if (fits[shape].includes(type)) return { type, coordinates };
  if (shape === 'area' && isClosedLine(type, coordinates)) return lineMadeArea(coordinates as Position[], who);
  return { refused: wrongShape(type, kind, who, coordinates) };
}

function wrongShape(type: string, kind: Kind, who: Who, coordinates: unknown): Issue {
  const first = positionsOf(type, coordinates)?.[0];
  const place = first && positionTrouble(first) === null ? placeOf(first as Position) : null;
  const near = place ? ` near ${placeWords(place)}` : '';
  const collection = type === 'GeometryCollection';
  const sentence = `${who.label}${near} is a ${type.slice(0, 40)}; ${kindWord(kind).toLowerCase()} needs ${wants[shapeOf(kind)]}.`;
  const fix = collection
    ? 'Split the collection into one feature for each part.'
    : 'Draw it again, or give it another kind.';
  return trouble('wrong-geometry', { feature: who.id, place }, sentence, fix);
}

function isClosedLine(type: string, coordinates: unknown): boolean {
  if (type !== 'LineString' || !Array.isArray(coordinates) || coordinates.length < 4) return false;
  const [first, last] = [coordinates[0], coordinates.at(-1)];
  return (
    positionTrouble(first) === null && positionTrouble(last) === null && samePlace(first as Position, last as Position)
  );
}

function lineMadeArea(line: Position[], who: Who): Raw {
  const place = placeOf(line[0]!);
  const sentence = `${who.label} near ${placeWords(place)} was drawn as a closed line; it became an area.`;
  const repaired = trouble(
    'line-made-area',
    { feature: who.id, place },
    sentence,
    'Nothing to do; save the site to keep the repair.',
  );
  return { type: 'Polygon', coordinates: [line], repaired };
}

const positionSays: Readonly<Record<PositionTrouble, readonly [says: string, fix: string]>> = {
  'position-not-a-number': ['is not two numbers', 'Give longitude and latitude in degrees.'],
  'metres-not-degrees': [
    'looks like meters of a map grid (UTM), not degrees',
    'Convert it to WGS84 longitude and latitude (EPSG:4326) in the program it came from.',
  ],
  'lat-lon-swapped': [
    'has a latitude beyond 90: latitude and longitude look swapped',
    'Swap the two numbers: longitude comes first.',
  ],
  'position-out-of-range': [
    'is beyond the globe (longitude ±180, latitude ±90)',
    'Correct the numbers: longitude comes first, in degrees.',
  ],
  'near-pole': [
    'is more than 85 degrees from the equator',
    'Correct the latitude; sites so near a pole cannot be planned.',
  ],
  'near-antimeridian': [
    'is within 0.01 degree of the 180 degree meridian',
    'Correct the longitude; sites there cannot be planned.',
  ],
};

function badPosition(positions: readonly unknown[], who: Who): Issue | null {
  for (const [i, position] of positions.entries()) {
    const id = positionTrouble(position);
    if (!id) continue;
    const [says, fix] = positionSays[id];
    const shown = cutJson(position);
    const sentence = `${positions.length > 1 ? `Corner ${i + 1} of ${who.label}` : who.label} ${says}: ${shown}.`;
    return trouble(id, { feature: who.id, place: finitePlace(position) }, sentence, fix);
  }
  return null;
}

function cutJson(value: unknown): string {
  const text = JSON.stringify(value) ?? 'nothing';
  return text.length > 50 ? `${text.slice(0, 49)}…` : text;
}

/** The numbers as they stand, when there are two: the place may lie off the map. */
function finitePlace(position: unknown): LonLat | null {
  if (!Array.isArray(position) || !Number.isFinite(position[0]) || !Number.isFinite(position[1])) return null;
  return [Number(position[0]), Number(position[1])];
}

function extraNumbers(who: Who, first: Position): Issue {
  const sentence = `${who.label} near ${placeWords(first)} had more than three numbers in a position; the rest was dropped.`;
  const fix = 'Nothing to do; a position is longitude, latitude and at most a height.';
  return trouble('extra-numbers', { feature: who.id, place: placeOf(first) }, sentence, fix);
}

function trimmed(coordinates: unknown): unknown {
  if (!Array.isArray(coordinates)) return coordinates;
  return typeof coordinates[0] === 'number' ? coordinates.slice(0, 3) : coordinates.map(trimmed);
}

function readShape({ type, coordinates }: Raw, who: Who): ReadGeometry {
  if (type === 'Polygon') return areaOf(checkPolygon(coordinates as Position[][], who));
  if (type === 'MultiPolygon') return partsOf(coordinates as Position[][][], who);
  if (type === 'MultiPoint') return points(coordinates as Position[], who);
  if (type === 'Point') return { geometries: [{ type, coordinates: coordinates as Position }], issues: [] };
  if (type === 'MultiLineString') return lines(coordinates as Position[][], who, true);
  return lines([coordinates as Position[]], who);
}

function areaOf({ value, issues }: ReturnType<typeof checkPolygon>): ReadGeometry {
  return { geometries: value ? [{ type: 'Polygon', coordinates: value }] : [], issues };
}

function partsOf(coordinates: Position[][][], who: Who): ReadGeometry {
  const { value, issues } = checkParts(coordinates, who);
  return { geometries: value ? [{ type: 'MultiPolygon', coordinates: value }] : [], issues };
}

function lines(raw: readonly Position[][], who: Who, many = false): ReadGeometry {
  const kept = raw.map((line) => line.filter((position, i) => i === 0 || !samePlace(position, line[i - 1]!)));
  const short = kept.find((line) => line.length < 2);
  if (short || kept.length === 0) {
    const place = short?.[0] ? placeOf(short[0]) : null;
    const near = place ? ` near ${placeWords(place)}` : '';
    const sentence = `${who.label}${near} is a line with fewer than two different places.`;
    const issue = trouble('line-too-short', { feature: who.id, place }, sentence, 'Add the other end or delete it.');
    return { geometries: [], issues: [issue] };
  }
  const dropped = raw.flat().length - kept.flat().length;
  const issues = dropped > 0 ? [lineDoubled(dropped, kept[0]![0]!, who)] : [];
  const geometry: SiteGeometry = many
    ? { type: 'MultiLineString', coordinates: kept }
    : { type: 'LineString', coordinates: kept[0]! };
  return { geometries: [geometry], issues };
}

function lineDoubled(dropped: number, first: Position, who: Who): Issue {
  const place = placeOf(first);
  const said =
    dropped === 1 ? 'a corner standing twice; it was joined' : `${dropped} corners standing twice; they were joined`;
  const sentence = `${who.label} had ${said} (near ${placeWords(place)}).`;
  return trouble(
    'vertex-twice',
    { feature: who.id, place },
    sentence,
    'Nothing to do; save the site to keep the repair.',
  );
}

function points(coordinates: readonly Position[], who: Who): ReadGeometry {
  if (coordinates.length === 0) return unreadable(who, 'a MultiPoint without points');
  const place = placeOf(coordinates[0]!);
  const count = coordinates.length;
  const sentence = `${who.label} near ${placeWords(place)} was a MultiPoint of ${count}; it became ${count === 1 ? 'one point' : `${count} features`}.`;
  const issue = trouble(
    'points-split',
    { feature: who.id, place },
    sentence,
    'Nothing to do; save the site to keep the repair.',
  );
  return { geometries: coordinates.map((one) => ({ type: 'Point', coordinates: one })), issues: [issue] };
}
