/** GPX 1.0 and 1.1: waypoints, routes and tracks, each counted, a waypoint without a place named rather than lost. */
import type { Position } from 'geojson';
import { readNumber } from './decimals.ts';
import type { Attributes, RawFeature, RawFile } from './import-types.ts';
import { fileIssue } from './issue.ts';
import { oneLine } from './safe-text.ts';
import { childrenOf, childText, readXml, textOf, type XmlElement } from './xml-read.ts';

/** Attributes: name, cmt, desc, type, sym, src, time, ele, extension leaves, and `gpx` = wpt, rte or trk. Files we wrote get their whole names back. */
export function readGpx(text: string): RawFile {
  const { root, issues } = readXml(text);
  if (!root) return { features: [], issues };
  if (root.name !== 'gpx') {
    const issue = fileIssue(
      'error',
      'not-gpx',
      `This is XML, but not GPX: it starts with <${root.name.slice(0, 40)}>.`,
      'Choose a GPX file.',
    );
    return { features: [], issues: [issue] };
  }
  const ours = root.attributes.get('creator') === 'Meadowpost';
  const counts = new Map<string, number>();
  const features = childrenOf(root).flatMap((element) => {
    const tag = element.name;
    const read = readers[tag];
    if (!read) return [];
    const number = (counts.get(tag) ?? 0) + 1;
    counts.set(tag, number);
    const attributes = attributesOf(element, tag, ours);
    return [{ from: nameThing(tag, number, attributes), attributes, ...read(element) }];
  });
  return { features, issues };
}

type Shape = Omit<RawFeature, 'from' | 'attributes'>;

const readers: Readonly<Record<string, (element: XmlElement) => Shape>> = {
  wpt: waypoint,
  rte: (element) => lineShape([childrenOf(element, 'rtept')]),
  trk: (element) => lineShape(childrenOf(element, 'trkseg').map((segment) => childrenOf(segment, 'trkpt'))),
};

const texts = ['name', 'cmt', 'desc', 'type', 'sym', 'src', 'time'];

function attributesOf(element: XmlElement, tag: string, ours: boolean): Attributes {
  const found: [string, unknown][] = texts.flatMap((name) => {
    const text = childText(element, name);
    return text === null ? [] : [[name, text] as [string, unknown]];
  });
  const elevation = readNumber(childText(element, 'ele') ?? '');
  if (elevation !== null) found.push(['ele', elevation]);
  for (const extensions of childrenOf(element, 'extensions')) found.push(...leaves(extensions));
  const attributes = { gpx: tag, ...Object.fromEntries(found) };
  return ours ? withWholeName(attributes) : attributes;
}

/** Our own files keep the whole name in cmt, the number first in name and the kind in type. */
function withWholeName(attributes: Record<string, unknown>): Attributes {
  const number = /^(\d+) /.exec(String(attributes.name ?? ''))?.[1];
  const { cmt, desc, type, ...others } = attributes;
  return {
    ...others,
    ...(cmt === undefined ? {} : { name: cmt }),
    ...(desc === undefined ? {} : { note: desc }),
    ...(type === undefined ? {} : { kind: type }),
    ...(number === undefined ? {} : { number: Number(number) }),
  };
}

function leaves(element: XmlElement): [string, unknown][] {
  return childrenOf(element).flatMap((child) =>
    childrenOf(child).length > 0 ? leaves(child) : ([[child.name, textOf(child)]] as [string, unknown][]),
  );
}

function waypoint(element: XmlElement): Shape {
  const position = placeOf(element);
  return typeof position === 'string'
    ? { geometry: null, trouble: position }
    : { geometry: { type: 'Point', coordinates: position } };
}

function placeOf(element: XmlElement): Position | string {
  const [lon, lat] = [element.attributes.get('lon') ?? null, element.attributes.get('lat') ?? null];
  const [x, y] = [readNumber(lon ?? ''), readNumber(lat ?? '')];
  if (x !== null && y !== null) return [x, y];
  return `its latitude is ${said(lat)} and its longitude ${said(lon)}`;
}

function said(value: string | null): string {
  return value === null ? 'missing' : `“${oneLine(value).slice(0, 30)}”`;
}

function lineShape(segments: readonly (readonly XmlElement[])[]): Shape {
  let lost = 0;
  const lines = segments.map((points) => {
    const places = points.map(placeOf).filter((place): place is Position => typeof place !== 'string');
    lost += points.length - places.length;
    return places;
  });
  const long = lines.filter((line) => line.length > 1);
  const single = lines.length - long.length;
  const repaired = [
    ...(lost > 0 ? [`${lost} of its points had no place and were left out`] : []),
    ...(single > 0 && long.length > 0
      ? [`${single} of its stretches had fewer than two points and were left out`]
      : []),
  ];
  if (long.length === 0) return { geometry: null, trouble: 'it has fewer than two points', repaired: [] };
  return long.length === 1
    ? { geometry: { type: 'LineString', coordinates: long[0]! }, repaired }
    : { geometry: { type: 'MultiLineString', coordinates: long }, repaired };
}

function nameThing(tag: string, number: number, attributes: Attributes): string {
  const words: Readonly<Record<string, string>> = { wpt: 'waypoint', rte: 'route', trk: 'track' };
  const name = oneLine(attributes.name);
  return `${words[tag]} ${number}${name ? ` “${name.slice(0, 60)}”` : ''}`;
}
