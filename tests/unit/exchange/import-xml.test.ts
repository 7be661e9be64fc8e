import { describe, expect, it } from 'vitest';
import { importFile } from '../../../src/exchange/import.ts';

const read = (text: string, name = 'a.xml') => importFile(new TextEncoder().encode(text), name);

describe('GPX', () => {
  it('names every lost point and keeps the rest', () => {
    const { report, features } = read(`<?xml version="1.0"?>
      <gpx version="1.1" creator="receiver" xmlns="http://www.topografix.com/GPX/1/1">
        <wpt lat="41.5" lon="-81.25"><ele>300</ele><name>Gate</name><sym>Flag</sym></wpt>
        <wpt lat="NaN" lon="-81"/><wpt lat="41.5"/><wpt lat="1e999" lon="0"/><wpt lat="95" lon="0"/>
        <rte><name>Loop</name><rtept lat="1" lon="2"/><rtept lat="x" lon="2"/><rtept lat="1.01" lon="2"/></rte>
        <trk><trkseg><trkpt lat="1" lon="2"><name>not the track's</name></trkpt><trkpt lat="1.01" lon="2"/></trkseg><trkseg><trkpt lat="1" lon="3"/></trkseg></trk>
        <trk><name>Short</name><trkseg><trkpt lat="1" lon="2"/></trkseg></trk>
      </gpx>`);
    expect(report).toMatchObject({ read: 8, kept: 3 });
    expect(report.dropped).toEqual([
      { what: 'waypoint 2', why: 'its latitude is “NaN” and its longitude “-81”' },
      { what: 'waypoint 3', why: 'its latitude is “41.5” and its longitude missing' },
      { what: 'waypoint 4', why: 'its latitude is “1e999” and its longitude “0”' },
      { what: 'waypoint 5', why: 'latitude 95 is beyond the poles' },
      { what: 'track 2 “Short”', why: 'it has fewer than two points' },
    ]);
    expect(report.repaired.map((one) => one.why)).toEqual([
      '1 of its points had no place and were left out',
      '1 of its stretches had fewer than two points and were left out',
    ]);
    expect(features.map((one) => [one.kind, one.properties.name])).toEqual([
      ['post', 'Gate'],
      ['path', 'Loop'],
      ['path', undefined],
    ]);
    expect(features[0]!.properties.imported).toMatchObject({ ele: 300, sym: 'Flag' });
  });

  it('reads prefixes and extensions', () => {
    const { features } = read(
      '<g:gpx xmlns:g="http://www.topografix.com/GPX/1/1" version="1.1"><g:wpt lat="1" lon="2"><g:extensions><x:natural xmlns:x="urn:x">tree</x:natural></g:extensions></g:wpt></g:gpx>',
    );
    expect(features[0]!.kind).toBe('tree');
  });
});

describe('KML', () => {
  it('reads folders, data, tracks and collections, and names what is no place', () => {
    const { report, features } =
      read(`<kml xmlns="http://www.opengis.net/kml/2.2" xmlns:gx="http://www.google.com/kml/ext/2.2"><Document>
      <Folder><name>Park</name><Folder><name>Trees</name>
        <Placemark><name>Oak</name><description><![CDATA[<b>old</b>]]></description><ExtendedData><Data name="natural"><value>tree</value></Data><SchemaData schemaUrl="#s"><SimpleData name="height">12</SimpleData></SchemaData></ExtendedData><Point><coordinates> -81.25 , 41.5 , 300 </coordinates></Point></Placemark>
      </Folder></Folder>
      <Placemark><gx:Track><when>2026-01-01</when><gx:coord>-81 41 0</gx:coord><gx:coord>-81 41.001 0</gx:coord></gx:Track></Placemark>
      <Placemark><name>Mixed</name><MultiGeometry><Point><coordinates>1,2</coordinates></Point><LineString><coordinates>1,2 3,4 x,5</coordinates></LineString></MultiGeometry></Placemark>
      <Placemark><name>Nothing</name></Placemark>
      <Placemark><name>Bad</name><Point><coordinates>NaN,41.1,300</coordinates></Point></Placemark>
      <GroundOverlay><name>Photo</name><Icon><href>http://127.0.0.1:9/x.png</href></Icon></GroundOverlay>
      <NetworkLink><Link><href>http://127.0.0.1:9/x.kml</href></Link></NetworkLink>
    </Document></kml>`);
    expect(report).toMatchObject({ read: 7, kept: 3, made: 4 });
    expect(report.dropped.map((one) => one.what)).toEqual([
      'placemark 4 “Nothing”',
      'placemark 5 “Bad”',
      'GroundOverlay 6 “Photo”',
      'NetworkLink 7',
    ]);
    expect(features[0]).toMatchObject({
      kind: 'tree',
      geometry: { type: 'Point', coordinates: [-81.25, 41.5] },
      properties: { name: 'Oak', height: 12, note: '<b>old</b>' },
    });
    expect(features[0]!.properties.imported).toMatchObject({ folder: 'Park / Trees' });
    expect(features.slice(1).map((one) => one.kind)).toEqual(['path', 'post', 'path']);
    expect(report.repaired[0]!.why).toContain('1 position could not be read');
  });

  it('keeps holes', () => {
    const ring = (text: string) => `<LinearRing><coordinates>${text}</coordinates></LinearRing>`;
    const { features } = read(
      `<kml><Placemark><ExtendedData><Data name="kind"><value>woods</value></Data></ExtendedData><Polygon><outerBoundaryIs>${ring('0,0 0,1 1,1 1,0 0,0')}</outerBoundaryIs><innerBoundaryIs>${ring('0.2,0.2 0.4,0.2 0.4,0.4 0.2,0.2')}</innerBoundaryIs></Polygon></Placemark></kml>`,
    );
    const { coordinates } = features[0]!.geometry as { coordinates: number[][][] };
    expect(coordinates).toHaveLength(2);
    // RFC 7946: the outline counter-clockwise.
    expect(coordinates[0]).toEqual([
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 1],
      [0, 0],
    ]);
  });
});
