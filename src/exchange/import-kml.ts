/** KML 2.0–2.2 and Google's tracks: every Placemark counted; pictures, links and 3D models are named as dropped. */
import type { Geometry, Position } from 'geojson';
import { readNumber } from './decimals.ts';
import type { Attributes, RawFeature, RawFile } from './import-types.ts';
import { count, fileIssue } from './issue.ts';
import { oneLine } from './safe-text.ts';
import { childrenOf, childText, readXml, textOf, type XmlElement } from './xml-read.ts';

/** Attributes: name, description, every Data and SimpleData by its name, `folder` (path of folder names) and `style`. */
export function readKml(text: string): RawFile {
  const { root, issues } = readXml(text);
  if (!root) return { features: [], issues };
  const known = ['kml', 'Document', 'Folder', 'Placemark'];
  if (!known.includes(root.name)) {
    const issue = fileIssue(
      'error',
      'not-kml',
      `This is XML, but not KML: it starts with <${root.name.slice(0, 40)}>.`,
      'Choose a KML file.',
    );
    return { features: [], issues: [issue] };
  }
  const features: RawFeature[] = [];
  walk(root, [], features);
  return { features, issues };
}

const containers = new Set(['kml', 'Document', 'Folder']);
const notPlaces: Readonly<Record<string, string>> = {
  GroundOverlay: 'it is a picture laid on the ground, not a place; lay the picture under the drawing instead',
  ScreenOverlay: 'it is a picture on the screen, not a place',
  PhotoOverlay: 'it is a photograph, not a place',
  NetworkLink: 'it is a link to another file, and nothing is fetched; open that file yourself',
};

function walk(element: XmlElement, folders: readonly string[], features: RawFeature[]): void {
  const tag = element.name;
  if (tag === 'Placemark') features.push(placemark(element, folders, features.length + 1));
  else if (notPlaces[tag]) features.push(noPlace(element, tag, features.length + 1));
  else if (containers.has(tag)) {
    const name = tag === 'Folder' ? childText(element, 'name') : null;
    for (const child of childrenOf(element)) walk(child, name ? [...folders, name] : folders, features);
  }
}

function noPlace(element: XmlElement, tag: string, number: number): RawFeature {
  const name = childText(element, 'name');
  return { from: nameThing(tag, number, name), geometry: null, attributes: {}, trouble: notPlaces[tag]! };
}

function nameThing(tag: string, number: number, name: string | null): string {
  return `${tag} ${number}${name ? ` “${oneLine(name).slice(0, 60)}”` : ''}`;
}

function placemark(element: XmlElement, folders: readonly string[], number: number): RawFeature {
  const notes: string[] = [];
  const geometries = childrenOf(element).flatMap((child) => geometriesOf(child, notes));
  const from = nameThing('placemark', number, childText(element, 'name'));
  const attributes = attributesOf(element, folders);
  if (geometries.length === 0) {
    const trouble = notes.length > 0 ? notes.join('; ') : 'it has no point, line or area';
    return { from, geometry: null, attributes, trouble };
  }
  return { from, geometry: gathered(geometries), attributes, repaired: notes };
}

/** Several lines are one line of several parts, several areas one area; a mixture stays a collection. */
function gathered(geometries: readonly Geometry[]): Geometry {
  if (geometries.length === 1) return geometries[0]!;
  const lines = geometries.flatMap((one) => (one.type === 'LineString' ? [one.coordinates] : []));
  if (lines.length === geometries.length) return { type: 'MultiLineString', coordinates: lines };
  const areas = geometries.flatMap((one) => (one.type === 'Polygon' ? [one.coordinates] : []));
  if (areas.length === geometries.length) return { type: 'MultiPolygon', coordinates: areas };
  return { type: 'GeometryCollection', geometries: [...geometries] };
}

function attributesOf(element: XmlElement, folders: readonly string[]): Attributes {
  const found: [string, unknown][] = ['name', 'description', 'address'].flatMap((name) => {
    const text = childText(element, name);
    return text === null ? [] : [[name, text] as [string, unknown]];
  });
  for (const data of childrenOf(element, 'ExtendedData')) found.push(...extended(data));
  const style = childText(element, 'styleUrl');
  if (folders.length > 0) found.push(['folder', folders.join(' / ')]);
  if (style) found.push(['style', style]);
  return Object.fromEntries(found);
}

function extended(element: XmlElement): [string, unknown][] {
  const data = childrenOf(element, 'Data').map(
    (one) => [one.attributes.get('name') ?? '', childText(one, 'value') ?? ''] as [string, unknown],
  );
  const simple = childrenOf(element, 'SchemaData')
    .flatMap((schema) => childrenOf(schema, 'SimpleData'))
    .map((one) => [one.attributes.get('name') ?? '', textOf(one)] as [string, unknown]);
  return [...data, ...simple].filter(([name]) => name !== '');
}

function geometriesOf(element: XmlElement, notes: string[]): Geometry[] {
  switch (element.name) {
    case 'Point': {
      const [place] = positions(childText(element, 'coordinates') ?? '', notes);
      return place ? [{ type: 'Point', coordinates: place }] : [];
    }
    case 'LineString':
    case 'LinearRing':
      return line(positions(childText(element, 'coordinates') ?? '', notes), notes);
    case 'Track':
      return line(trackPositions(element, notes), notes);
    case 'Polygon':
      return polygon(element, notes);
    case 'MultiGeometry':
    case 'MultiTrack':
      return childrenOf(element).flatMap((child) => geometriesOf(child, notes));
    case 'Model':
      notes.push('its 3D model was left out');
      return [];
    default:
      return [];
  }
}

function line(places: Position[], notes: string[]): Geometry[] {
  if (places.length > 1) return [{ type: 'LineString', coordinates: places }];
  notes.push('a line has fewer than two positions and was left out');
  return [];
}

function polygon(element: XmlElement, notes: string[]): Geometry[] {
  const rings = (name: string) =>
    childrenOf(element, name).flatMap((boundary) =>
      childrenOf(boundary, 'LinearRing').map((ring) => positions(childText(ring, 'coordinates') ?? '', notes)),
    );
  const outer = rings('outerBoundaryIs')[0];
  if (outer && outer.length > 2) return [{ type: 'Polygon', coordinates: [outer, ...rings('innerBoundaryIs')] }];
  notes.push('an area has no outline');
  return [];
}

/** Tuples "lon,lat[,height]"; a space after a comma is forgiven, a tuple that is no place is counted. */
function positions(text: string, notes: string[]): Position[] {
  const tuples = text
    .replace(/\s*,\s*/g, ',')
    .split(/\s+/)
    .filter(Boolean);
  return placed(
    tuples.map((tuple) => tuple.split(',')),
    notes,
  );
}

function trackPositions(element: XmlElement, notes: string[]): Position[] {
  return placed(
    childrenOf(element, 'coord').map((coord) => textOf(coord).split(/\s+/)),
    notes,
  );
}

function placed(tuples: readonly string[][], notes: string[]): Position[] {
  const places = tuples.flatMap(([lon = '', lat = '']) => {
    const [x, y] = [readNumber(lon), readNumber(lat)];
    return x === null || y === null ? [] : [[x, y]];
  });
  const lost = tuples.length - places.length;
  if (lost > 0) notes.push(`${count(lost, 'position')} could not be read and ${lost === 1 ? 'was' : 'were'} left out`);
  return places;
}
