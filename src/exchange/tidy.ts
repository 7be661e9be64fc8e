/** Strangers' geometry made sound, or refused with the reason: finite places on earth, closed rings, right winding, one shape each. */
import { polygon, unkinkPolygon } from '@turf/turf';
import type { Geometry, Position } from 'geojson';
import { checkParts, checkPolygon } from '../site/check-area.ts';
import type { Issue, SiteGeometry } from '../site/types.ts';
import { count } from './issue.ts';

/** Shapes a site can hold, with what was mended; none when nothing usable is left, then `why` says so. */
export interface Tidied {
  readonly shapes: readonly SiteGeometry[];
  readonly repaired: readonly string[];
  readonly why: string;
}

/** Checks and mends one geometry of a file. Multi-points and collections fall apart into their parts. */
export function tidyGeometry(geometry: Geometry): Tidied {
  const repaired = new Set<string>();
  const why = new Set<string>();
  const shapes = parts(geometry, { repaired, why }, 0);
  const lost = shapes.length > 0 ? [...why].map((reason) => `a part was left out: ${reason}`) : [];
  return {
    shapes,
    repaired: [...repaired, ...lost],
    why: shapes.length > 0 ? '' : [...why].join('; ') || 'it is empty',
  };
}

interface Notes {
  readonly repaired: Set<string>;
  readonly why: Set<string>;
}

function parts(geometry: Geometry, notes: Notes, depth: number): SiteGeometry[] {
  if (depth > 8 || typeof geometry !== 'object' || geometry === null)
    return refuse(notes, 'its geometry is of no known type');
  switch (geometry.type) {
    case 'Point':
      return points([geometry.coordinates], notes);
    case 'MultiPoint':
      return points(list(geometry.coordinates), notes);
    case 'LineString':
      return lines([geometry.coordinates], notes);
    case 'MultiLineString':
      return lines(list(geometry.coordinates), notes);
    case 'Polygon':
      return areas([geometry.coordinates], notes);
    case 'MultiPolygon':
      return areas(list(geometry.coordinates), notes);
    case 'GeometryCollection':
      return list<Geometry>(geometry.geometries).flatMap((one) => parts(one, notes, depth + 1));
    default:
      return refuse(notes, 'its geometry is of no known type');
  }
}

function list<T>(value: readonly T[] | unknown): readonly T[] {
  return Array.isArray(value) ? value : [];
}

function refuse(notes: Notes, why: string): [] {
  notes.why.add(why);
  return [];
}

function points(coordinates: readonly Position[], notes: Notes): SiteGeometry[] {
  return coordinates.flatMap((position) => {
    const place = placeOf(position, notes);
    return typeof place === 'string' ? refuse(notes, place) : [{ type: 'Point' as const, coordinates: place }];
  });
}

function lines(coordinates: readonly (readonly Position[])[], notes: Notes): SiteGeometry[] {
  const sound = coordinates.map((line) => run(line, notes)).filter((line) => line.length > 1 || refuseShort(notes));
  if (sound.length === 0) return [];
  return sound.length === 1
    ? [{ type: 'LineString', coordinates: sound[0]! }]
    : [{ type: 'MultiLineString', coordinates: sound }];
}

function refuseShort(notes: Notes): false {
  notes.why.add('a line needs two different positions');
  return false;
}

function areas(coordinates: readonly (readonly (readonly Position[])[])[], notes: Notes): SiteGeometry[] {
  const sound = coordinates.flatMap((rings) => area(list(rings), notes));
  if (sound.length === 0) return [];
  if (sound.length === 1) return [{ type: 'Polygon', coordinates: sound[0]! }];
  if (checkParts(sound, nobody).value) return [{ type: 'MultiPolygon', coordinates: sound }];
  notes.repaired.add('its parts overlap, so each became a thing of its own');
  return sound.map((part) => ({ type: 'Polygon', coordinates: part }));
}

/** Twice an area in square degrees below which a hole is nothing (about a square centimetre). */
const tiny = 1e-14;

const nobody = { id: '', label: 'it' };

/** One polygon as none, one or (where its outline crossed itself) several sound ones. */
function area(rings: readonly (readonly Position[])[], notes: Notes): Position[][][] {
  const [outer, ...holes] = rings.map((positions) => ring(positions, notes));
  if (!outer) return refuse(notes, 'its outline needs three different positions that enclose some ground');
  const sound = holes.filter((hole): hole is Position[] => hole !== null && Math.abs(doubleArea(hole)) > tiny);
  if (sound.length < holes.length) notes.repaired.add(`${count(holes.length - sound.length, 'empty hole')} left out`);
  const whole = checkPolygon([outer, ...sound], nobody);
  if (whole.value) return [whole.value];
  const alone = sound.length > 0 ? checkPolygon([outer], nobody).value : null;
  if (alone) notes.repaired.add(`${why(whole.issues)}; it was kept without its holes`);
  return alone ? [alone] : uncrossed(outer, why(whole.issues), notes);
}

/** Above this many corners a crossing outline is refused: taking it apart is slow and seldom right. */
const mostUncrossed = 500;

function uncrossed(outer: Position[], reason: string, notes: Notes): Position[][][] {
  const parts = outer.length > mostUncrossed ? [] : unkinked(outer);
  const sound = parts.map((part) => checkPolygon(part, nobody).value);
  if (sound.length === 0 || sound.includes(null)) return refuse(notes, reason);
  notes.repaired.add(`${reason}; it was split there`);
  return sound as Position[][][];
}

function unkinked(outer: Position[]): Position[][][] {
  try {
    return unkinkPolygon(polygon([outer])).features.map((part) => part.geometry.coordinates);
  } catch {
    return [];
  }
}

function why(issues: readonly Issue[]): string {
  return (
    (issues.find((issue) => issue.severity === 'error') ?? issues.at(-1))?.sentence.replace(/\.$/, '') ??
    'its outline is not sound'
  );
}

/** A closed ring, or null when it has fewer than three corners. */
function ring(positions: readonly Position[], notes: Notes): Position[] | null {
  const places = run(positions, notes);
  const [first, last] = [places[0], places.at(-1)];
  if (!first || !last || places.length < 3) return null;
  if (first[0] !== last[0] || first[1] !== last[1]) {
    notes.repaired.add('its outline was not closed');
    places.push([...first]);
  }
  return places.length >= 4 ? places : null;
}

/** Positions that are places on earth, without repeats in a row. */
function run(positions: readonly Position[], notes: Notes): Position[] {
  const places: Position[] = [];
  let lost = 0;
  for (const position of list<Position>(positions)) {
    const place = placeOf(position, notes);
    const last = places.at(-1);
    if (typeof place === 'string') lost++;
    else if (last && last[0] === place[0] && last[1] === place[1])
      notes.repaired.add('repeated positions were left out');
    else places.push(place);
  }
  if (lost > 0)
    notes.repaired.add(`${count(lost, 'position')} ${lost === 1 ? 'was' : 'were'} no place on earth and left out`);
  return places;
}

/** The position as [lon, lat], or why it is none. Longitudes of 180–360 are brought home. */
function placeOf(position: Position, notes: Notes): Position | string {
  if (!Array.isArray(position) || typeof position[0] !== 'number' || typeof position[1] !== 'number')
    return 'a position is not two numbers';
  const [lon, lat] = position;
  if (!Number.isFinite(lon) || !Number.isFinite(lat)) return 'a position is not a finite number';
  if (Math.abs(lat!) > 90) return `latitude ${short(lat!)} is beyond the poles`;
  if (Math.abs(lon!) <= 180) return [lon!, lat!];
  if (lon! > 360 || lon! < -360) return `longitude ${short(lon!)} is beyond 180`;
  notes.repaired.add('longitudes beyond 180 were brought back by a full turn');
  return [lon! > 0 ? lon! - 360 : lon! + 360, lat!];
}

function short(value: number): string {
  return String(Number(value.toPrecision(7)));
}

/** Twice the area in square degrees, positive when counter-clockwise. */
function doubleArea(places: readonly Position[]): number {
  const [x0, y0] = places[0] as [number, number];
  let sum = 0;
  for (let i = 1; i + 1 < places.length; i++) {
    const [a, b] = [places[i]!, places[i + 1]!];
    sum += (a[0]! - x0) * (b[1]! - y0) - (b[0]! - x0) * (a[1]! - y0);
  }
  return sum;
}
