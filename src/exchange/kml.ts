/** KML 2.2 (OGC 07-147r2): a folder for each group, every fact in ExtendedData. Holds points, lines, areas and things without a place. */
import type { Position } from 'geojson';
import type { LonLat, SiteGeometry } from '../site/types.ts';
import { degrees } from './decimals.ts';
import type { Exported, ExportedRound, ExportedThing, PlainValue } from './exported.ts';
import { element, textElement, xmlHead } from './xml-write.ts';

/** Positions are lon,lat with seven decimals; names and notes are escaped text. */
export function writeKml(exported: Exported): string {
  const document = element('Document', {}, [
    textElement('name', exported.name),
    textElement('description', exported.note),
    ...styles.map(styleElement),
    ...groups.map((group) => folder(group, exported)),
  ]);
  return `${xmlHead}${element('kml', { xmlns: 'http://www.opengis.net/kml/2.2' }, [document])}\n`;
}

type Group = ExportedThing['group'];

const groups: readonly Group[] = ['boxes', 'walk', 'left out', 'land'];

interface Style {
  readonly id: string;
  /** aabbggrr, as KML writes colors. */
  readonly line: string;
  readonly fill: string;
  readonly width: number;
}

/** Plain looks of ours, so that a box and a left-out post can be told apart in any viewer. */
const styles: readonly Style[] = [
  { id: 'boxes', line: 'ff003c8c', fill: '80003c8c', width: 3 },
  { id: 'walk', line: 'ff2b2b2b', fill: '802b2b2b', width: 3 },
  { id: 'left-out', line: 'ff8c8c8c', fill: '808c8c8c', width: 2 },
  { id: 'land', line: 'ff3c6e3c', fill: '403c6e3c', width: 2 },
];

function styleElement({ id, line, fill, width }: Style): string {
  return element('Style', { id }, [
    element('IconStyle', {}, [textElement('color', line)]),
    element('LineStyle', {}, [textElement('color', line), textElement('width', width)]),
    element('PolyStyle', {}, [textElement('color', fill)]),
  ]);
}

function styleOf(group: Group): string {
  return `#${group.replace(' ', '-')}`;
}

function folder(group: Group, exported: Exported): string {
  const marks = exported.things.filter((thing) => thing.group === group).map(thingPlacemark);
  if (group === 'walk') marks.push(...exported.rounds.map(roundPlacemark));
  return marks.length === 0
    ? ''
    : element('Folder', {}, [
        textElement('name', group),
        group === 'left out' ? textElement('visibility', 0) : '',
        ...marks,
      ]);
}

function thingPlacemark(thing: ExportedThing): string {
  return element('Placemark', {}, [
    textElement('name', thing.name),
    textElement('description', thing.note),
    textElement('styleUrl', styleOf(thing.group)),
    extendedData({ ...thing.properties, id: thing.id, kind: thing.kind }),
    geometryElement(thing.geometry),
  ]);
}

function roundPlacemark(round: ExportedRound): string {
  if (round.line.length < 2) return '';
  return element('Placemark', {}, [
    textElement('name', round.name),
    textElement('styleUrl', styleOf('walk')),
    geometryElement({ type: 'LineString', coordinates: round.line as LonLat[] }),
  ]);
}

function extendedData(values: Readonly<Record<string, PlainValue>>): string {
  return element(
    'ExtendedData',
    {},
    Object.entries(values).map(([name, value]) =>
      element('Data', { name }, [textElement('value', value) || '<value/>']),
    ),
  );
}

function geometryElement(geometry: SiteGeometry | null): string {
  if (!geometry) return '';
  switch (geometry.type) {
    case 'Point':
      return element('Point', {}, [coordinates([geometry.coordinates])]);
    case 'LineString':
      return element('LineString', {}, [coordinates(geometry.coordinates)]);
    case 'MultiLineString':
      return element(
        'MultiGeometry',
        {},
        geometry.coordinates.map((line) => element('LineString', {}, [coordinates(line)])),
      );
    case 'Polygon':
      return polygon(geometry.coordinates);
    case 'MultiPolygon':
      return element('MultiGeometry', {}, geometry.coordinates.map(polygon));
  }
}

function polygon(rings: readonly Position[][]): string {
  return element(
    'Polygon',
    {},
    rings.map((ring, i) =>
      element(i === 0 ? 'outerBoundaryIs' : 'innerBoundaryIs', {}, [element('LinearRing', {}, [coordinates(ring)])]),
    ),
  );
}

function coordinates(positions: readonly Position[]): string {
  return textElement('coordinates', positions.map(([lon, lat]) => `${degrees(lon!)},${degrees(lat!)}`).join(' '));
}
