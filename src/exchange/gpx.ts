/** GPX 1.1 (topografix.com/GPX/1/1, 2004): waypoints, then routes, then tracks, children in the order of its schema. Holds points and lines, no areas. */
import type { LonLat } from '../site/types.ts';
import { degrees } from './decimals.ts';
import type { Exported, ExportedRound, ExportedThing } from './exported.ts';
import { shortNames } from './short-names.ts';
import { element, textElement, xmlHead } from './xml-write.ts';

/**
 * Points become `wpt`, rounds `rte` (stops with the same names) and `trk` (the line walked), drawn lines `trk`.
 * `name` is short; the whole name is in `cmt`, the note in `desc`, our kind in `type`. Areas and unplaced things are left out, and so are
 * the posts a plan left out, which would hide the boxes on a small screen, unless `leftOut`.
 */
export function writeGpx(exported: Exported, { leftOut = false } = {}): string {
  const things = exported.things.filter((thing) => leftOut || thing.group !== 'left out');
  const names = shortNames(things);
  const points = things.filter((thing) => thing.geometry?.type === 'Point');
  const byId = new Map(points.map((thing) => [thing.id, thing]));
  return `${xmlHead}${element('gpx', gpxAttributes, [
    element('metadata', {}, [textElement('name', exported.name), textElement('desc', exported.note)]),
    ...points.map((thing) => pointElement('wpt', thing, names)),
    ...exported.rounds.map((round) => routeElement(round, byId, names)),
    ...exported.rounds.map((round) => trackElement(round.name, '', 'round', [round.line], round.name)),
    ...things.map((thing) => lineElement(thing, names)),
  ])}\n`;
}

const gpxAttributes = { version: '1.1', creator: 'Meadowpost', xmlns: 'http://www.topografix.com/GPX/1/1' };

function pointElement(tag: 'wpt' | 'rtept', thing: ExportedThing, names: ReadonlyMap<string, string>): string {
  if (thing.geometry?.type !== 'Point') return '';
  return element(tag, place(thing.geometry.coordinates as LonLat), [
    textElement('name', names.get(thing.id)),
    textElement('cmt', thing.name),
    textElement('desc', thing.note),
    textElement('type', thing.kind),
  ]);
}

function routeElement(
  round: ExportedRound,
  things: ReadonlyMap<string, ExportedThing>,
  names: ReadonlyMap<string, string>,
): string {
  const stops = round.stops.flatMap((id) => things.get(id) ?? []);
  if (stops.length === 0) return '';
  return element('rte', {}, [
    textElement('name', round.name),
    textElement('cmt', round.name),
    ...stops.map((stop) => pointElement('rtept', stop, names)),
  ]);
}

function lineElement(thing: ExportedThing, names: ReadonlyMap<string, string>): string {
  const { geometry } = thing;
  if (geometry?.type !== 'LineString' && geometry?.type !== 'MultiLineString') return '';
  const lines = geometry.type === 'LineString' ? [geometry.coordinates] : geometry.coordinates;
  return trackElement(names.get(thing.id) ?? '', thing.note, thing.kind, lines as LonLat[][], thing.name);
}

function trackElement(
  name: string,
  note: string,
  kind: string,
  lines: readonly (readonly LonLat[])[],
  whole: string,
): string {
  const segments = lines.filter((line) => line.length > 1);
  if (segments.length === 0) return '';
  return element('trk', {}, [
    textElement('name', name),
    textElement('cmt', whole),
    textElement('desc', note),
    textElement('type', kind),
    ...segments.map((line) =>
      element(
        'trkseg',
        {},
        line.map((at) => element('trkpt', place(at), [])),
      ),
    ),
  ]);
}

/** GPX allows longitude −180 ≤ lon < 180. */
function place([lon, lat]: LonLat): Readonly<Record<string, string>> {
  const east = degrees(lon);
  return { lat: degrees(lat), lon: Number(east) >= 180 ? degrees(Number(east) - 360) : east };
}
