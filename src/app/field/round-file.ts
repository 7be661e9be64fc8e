/** A round as a file for a walker: boxes in order, ways, what was seen last – with places exact, blurred or left out. */
import { oneLine } from '../../exchange/safe-text.ts';
import type { LonLat, Units } from '../../site/types.ts';
import { forSharing } from '../../visits/merge.ts';
import type { Visit } from '../../visits/visit.ts';
import { isMembers, type Members, membersOf, visitOf } from '../../visits/visit-json.ts';
import { countOf, textOf } from '../../visits/visit-members.ts';
import type { FieldRound, Stop, Way } from './field-round.ts';

/** How exactly nest places are told. */
export type Places = 'exact' | 'about' | 'none';

/** Half the side of the squares blurred places snap to, metres. */
const about = 100;

export interface RoundFile {
  readonly round: FieldRound;
  readonly region: string;
  readonly units: Units;
  readonly visits: readonly Visit[];
}

export const roundFileVersion = 1;
const mostStops = 2000;
const largest = 20_000_000;

/** Metres a degree of latitude is long, about (the earth's mean radius 6,371,009 m). */
const metresPerDegree = 111_195;

/** The middle of the square of 100 m the place lies in: always the same one, so that sharing twice tells no more. */
export function blurred([lon, lat]: LonLat): LonLat {
  const up = about / metresPerDegree;
  const middle = (value: number, step: number) => (Math.floor(value / step) + 0.5) * step;
  const row = middle(lat, up);
  const across = up / Math.max(0.01, Math.cos((row * Math.PI) / 180));
  const round = (degrees: number) => Math.round(degrees * 1e5) / 1e5;
  return [round(middle(lon, across)), round(row)];
}

/** Without places the bearings go too: a chain of ways from a known gate would tell them. */
function sharedStop(stop: Stop, places: Places): Stop {
  if (places === 'exact') return stop;
  const position = places === 'about' && stop.position ? blurred(stop.position) : null;
  return { ...stop, position, way: null };
}

/** The round with its places as they may leave the device. Ways are told only with exact places. */
export function roundForSharing(round: FieldRound, places: Places): FieldRound {
  const exact = places === 'exact';
  return {
    ...round,
    stops: round.stops.map((stop) => sharedStop(stop, places)),
    back: exact ? round.back : null,
    blur: exact ? round.blur : places === 'about' ? about : 0,
  };
}

/** The text of the file; visits go without device and photo. */
export function writeRoundFile({ round, region, units, visits }: RoundFile, places: Places): string {
  const shared = roundForSharing(round, places);
  const members = {
    meadowpostRound: roundFileVersion,
    site: shared.site,
    region,
    units,
    hash: shared.hash,
    walker: shared.walker,
    places,
    metres: Math.round(shared.metres),
    minutes: Math.round(shared.minutes),
    back: shared.back,
    boxes: shared.stops.map(({ number, post, position, bird, facing, way }) => ({
      number,
      post,
      ...(position ? { place: position } : {}),
      ...(bird ? { bird } : {}),
      ...(facing !== null ? { facing: Math.round(facing) } : {}),
      ...(way ? { way: [Math.round(way.metres), Math.round(way.minutes * 10) / 10, Math.round(way.bearing)] } : {}),
    })),
    visits: visits.map((visit) => membersOf(forSharing(visit))),
  };
  return `${JSON.stringify(members, null, 1)}\n`;
}

export type ReadRound = { readonly file: RoundFile } | { readonly file: null; readonly reason: string };

const no = (reason: string): ReadRound => ({ file: null, reason });

/** Whether a text is a round file at all, so that one button can open rounds and visits alike. */
export function looksLikeRound(text: string): boolean {
  return text.slice(0, 2000).includes('"meadowpostRound"');
}

/** Reads a round file. Read as hostile input: nothing is taken that is not a number, place or word of the kind asked. */
export function readRoundFile(text: string): ReadRound {
  if (text.length > largest) return no('The file is too large to be a round.');
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return no('The file is not JSON, or breaks off before its end. Ask for it again.');
  }
  if (!isMembers(value) || !Array.isArray(value.boxes) || !('meadowpostRound' in value))
    return no('This is not a round.');
  if (typeof value.meadowpostRound !== 'number' || value.meadowpostRound > roundFileVersion)
    return no('This round was made by a newer version. Update, then open it again.');
  const stops = value.boxes.slice(0, mostStops).flatMap((box) => (isMembers(box) ? (stopOf(box) ?? []) : []));
  if (stops.length === 0) return no('The round has no box that can be read.');
  const visits = Array.isArray(value.visits) ? value.visits : [];
  return {
    file: {
      round: {
        site: oneLine(textOf(value.site)).slice(0, 200),
        hash: hashOf(value.hash),
        walker: Math.max(1, Math.floor(countOf(value.walker) ?? 1)),
        stops: unique(stops),
        back: isMembers(value.back) ? wayOf([value.back.metres, value.back.minutes, value.back.bearing]) : null,
        metres: Math.max(0, countOf(value.metres) ?? 0),
        minutes: Math.max(0, countOf(value.minutes) ?? 0),
        blur: value.places === 'about' ? about : 0,
      },
      region: textOf(value.region) ?? '',
      units: value.units === 'metric' ? 'metric' : 'us',
      visits: visits.slice(0, 100_000).flatMap((one) => (isMembers(one) ? (visitOf(one) ?? []) : [])),
    },
  };
}

function hashOf(value: unknown): string | null {
  const text = textOf(value);
  return text !== null && /^[0-9a-f]{8}$/.test(text) ? text : null;
}

/** Two boxes of one post would be one visit twice: the first stays. */
function unique(stops: readonly Stop[]): readonly Stop[] {
  return stops.filter((stop, i) => stops.findIndex((other) => other.post === stop.post) === i);
}

function stopOf(box: Members): Stop | null {
  const number = countOf(box.number);
  const post = textOf(box.post);
  if (number === null || !Number.isInteger(number) || number < 0 || !post) return null;
  const facing = countOf(box.facing);
  return {
    number,
    post,
    position: positionOf(box.place),
    bird: textOf(box.bird),
    facing: facing === null ? null : ((facing % 360) + 360) % 360,
    way: Array.isArray(box.way) ? wayOf(box.way) : null,
  };
}

function positionOf(value: unknown): LonLat | null {
  if (!Array.isArray(value)) return null;
  const [lon, lat] = [countOf(value[0]), countOf(value[1])];
  return lon !== null && lat !== null && Math.abs(lon) <= 180 && Math.abs(lat) <= 90 ? [lon, lat] : null;
}

function wayOf(given: readonly unknown[]): Way | null {
  const [metres, minutes, bearing] = given.map(countOf);
  if (metres == null || minutes == null || bearing == null || metres < 0 || minutes < 0) return null;
  return { metres, minutes, bearing: ((bearing % 360) + 360) % 360 };
}
