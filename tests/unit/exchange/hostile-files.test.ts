/** Files made to harm: each is refused with a reason or read with a full account, quickly, and never throws. */
import { zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { importFile } from '../../../src/exchange/import.ts';
import { zipped } from './make-shapefile.ts';

const bytes = (text: string) => new TextEncoder().encode(text);

function utf16(text: string, big: boolean, mark: boolean): Uint8Array {
  const out = new Uint8Array((text.length + (mark ? 1 : 0)) * 2);
  const view = new DataView(out.buffer);
  Array.from(mark ? `\ufeff${text}` : text).forEach((letter, i) => {
    view.setUint16(i * 2, letter.charCodeAt(0), !big);
  });
  return out;
}

function read(file: Uint8Array, name = 'file.xml') {
  const answer = importFile(file, name);
  expect(answer.report.read).toBe(answer.report.kept + answer.report.dropped.length);
  return answer;
}

function refusedAs(file: Uint8Array, id: string, name?: string): void {
  const { issues, report } = read(file, name);
  expect(issues.filter((issue) => issue.severity === 'error').map((issue) => issue.id)).toContain(id);
  expect(report.read).toBe(0);
  for (const issue of issues) expect(issue.sentence.length).toBeLessThan(400);
}

const gpx = '<gpx version="1.1"><wpt lat="41.5" lon="-81.25"><name>&x;</name></wpt></gpx>';
const declarations: readonly (readonly [string, string])[] = [
  ['a doctype', `<!DOCTYPE gpx>${gpx}`],
  ['lower case', `<!doctype gpx>${gpx}`],
  ['after the xml line', `<?xml version="1.0"?>\n<!DOCTYPE gpx>${gpx}`],
  ['after a comment', `<!-- a --><!DOCTYPE gpx>${gpx}`],
  ['an entity', `<!DOCTYPE gpx [<!ENTITY x "y">]>${gpx}`],
  [
    'ten levels of entities',
    `<!DOCTYPE gpx [<!ENTITY a "aaaaaaaaaa">${'bcdefghij'
      .split('')
      .map((c, i) => `<!ENTITY ${c} "${`&${'abcdefghi'[i]};`.repeat(10)}">`)
      .join('')}]>${gpx}`,
  ],
  [
    'one long entity used often',
    `<!DOCTYPE gpx [<!ENTITY x "${'a'.repeat(50_000)}">]><gpx>${'&x;'.repeat(5000)}</gpx>`,
  ],
  ['an entity from a file', `<!DOCTYPE gpx [<!ENTITY x SYSTEM "file:///etc/hostname">]>${gpx}`],
  ['an entity from the net', `<!DOCTYPE gpx [<!ENTITY x SYSTEM "http://127.0.0.1:9/x">]>${gpx}`],
  ['a parameter entity', `<!DOCTYPE gpx [<!ENTITY % x SYSTEM "http://127.0.0.1:9/x"> %x;]>${gpx}`],
  ['a lone entity declaration', `<gpx><!ENTITY x "y"></gpx>`],
  ['in KML', `<!DOCTYPE kml><kml><Document/></kml>`],
  ['an element declaration', `<!ELEMENT gpx ANY>${gpx}`],
];

describe('document types and entities', () => {
  it.each(declarations)('%s is refused before parsing', (_, text) => {
    const start = performance.now();
    refusedAs(bytes(text), 'xml-entities');
    refusedAs(utf16(text, false, true), 'xml-entities');
    refusedAs(utf16(text, true, true), 'xml-entities');
    refusedAs(utf16(text, false, false), 'xml-entities');
    refusedAs(utf16(text, true, false), 'xml-entities');
    refusedAs(new Uint8Array([0xef, 0xbb, 0xbf, ...bytes(text)]), 'xml-entities');
    refusedAs(zipped({ 'doc.kml': text }), 'xml-entities', 'a.kmz');
    // No speed claim: a hang of seconds would be an expanded entity.
    expect(performance.now() - start).toBeLessThan(5000);
  });

  it('in character data or a comment they are only text', () => {
    const text = `<gpx version="1.1"><!-- <!DOCTYPE x> --><wpt lat="41.5" lon="-81.25"><name><![CDATA[<!DOCTYPE html>]]></name></wpt></gpx>`;
    expect(read(bytes(text)).features[0]!.properties.name).toBe('<!DOCTYPE html>');
  });

  it('an undeclared entity, XInclude and stylesheets do nothing', () => {
    refusedAs(bytes(gpx), 'xml-broken');
    const include =
      '<gpx version="1.1" xmlns:xi="http://www.w3.org/2001/XInclude"><xi:include href="file:///etc/hostname"/><wpt lat="1" lon="2"/></gpx>';
    expect(read(bytes(include)).report.kept).toBe(1);
    expect(read(bytes(`<?xml-stylesheet href="http://127.0.0.1:9/x.xsl"?>${include}`)).report.kept).toBe(1);
  });
});

describe('XML that is not sound', () => {
  it.each([
    ['cut off', '<gpx><wpt lat="1" lon="2">', 'xml-broken'],
    ['crossed tags', '<gpx><wpt lat="1" lon="2"></gpx></wpt>', 'xml-broken'],
    ['two attributes alike', '<gpx><wpt lat="1" lat="2" lon="3"/></gpx>', 'xml-broken'],
    ['10,000 deep', `<gpx>${'<a>'.repeat(10_000)}${'</a>'.repeat(10_000)}</gpx>`, 'too-deep'],
    ['100,000 deep and cut off', '<a>'.repeat(100_000), 'too-deep'],
    ['a web page', '<html><body>not found</body></html>', 'not-a-map'],
    ['other XML', '<svg xmlns="http://www.w3.org/2000/svg"/>', 'not-kml'],
    ['only a start', '<', 'xml-broken'],
    ['an odd encoding', '<?xml version="1.0" encoding="UTF-7"?><gpx/>', 'encoding'],
    ['an unknown encoding', '<?xml version="1.0" encoding="x-nonsense"?><gpx/>', 'encoding'],
  ])('%s', (_, text, id) => refusedAs(bytes(text), id));

  it('control characters are taken out and said', () => {
    const { features, issues } = read(
      bytes('<gpx version="1.1"><wpt lat="1" lon="2"><name>a\u0001b</name></wpt></gpx>'),
    );
    expect(features[0]!.properties.name).toBe('ab');
    expect(issues.map((issue) => issue.id)).toContain('control-characters');
  });

  it('Latin-1 is read by its name', () => {
    const text =
      '<?xml version="1.0" encoding="ISO-8859-1"?><gpx version="1.1"><wpt lat="1" lon="2"><name>Gr\u00fcn</name></wpt></gpx>';
    const latin = Uint8Array.from(text, (letter) => letter.charCodeAt(0));
    expect(read(latin).features[0]!.properties.name).toBe('Grün');
  });
});

const feature = (geometry: string) =>
  `{"type":"FeatureCollection","features":[{"type":"Feature","properties":{"natural":"tree"},"geometry":${geometry}},{"type":"Feature","properties":{"natural":"tree"},"geometry":{"type":"Point","coordinates":[10,50]}}]}`;

describe('GeoJSON', () => {
  it.each([
    ['1e999', '{"type":"Point","coordinates":[1e999,2]}'],
    ['-1e999', '{"type":"Point","coordinates":[1,-1e999]}'],
    ['NaN', '{"type":"Point","coordinates":[NaN,2]}'],
    ['Infinity', '{"type":"Point","coordinates":[1,-Infinity]}'],
    ['1e308', '{"type":"Point","coordinates":[1e308,2]}'],
    ['latitude 91', '{"type":"Point","coordinates":[1,91]}'],
    ['longitude 400', '{"type":"Point","coordinates":[400,1]}'],
    ['null ordinate', '{"type":"Point","coordinates":[null,1]}'],
    ['text ordinate', '{"type":"Point","coordinates":["1","1"]}'],
    ['one ordinate', '{"type":"Point","coordinates":[1]}'],
    ['no ordinates', '{"type":"Point","coordinates":[]}'],
    ['no coordinates', '{"type":"Point"}'],
    ['coordinates of text', '{"type":"Polygon","coordinates":"x"}'],
    ['too shallow', '{"type":"Polygon","coordinates":[[1,2],[3,4]]}'],
    ['too deep by one', '{"type":"Point","coordinates":[[1,2]]}'],
    ['empty polygon', '{"type":"Polygon","coordinates":[]}'],
    ['empty ring', '{"type":"Polygon","coordinates":[[]]}'],
    ['two corners', '{"type":"Polygon","coordinates":[[[0,0],[1,1],[0,0]]]}'],
    ['flat', '{"type":"Polygon","coordinates":[[[0,0],[1,1],[2,2],[0,0]]]}'],
    ['unknown type', '{"type":"Circle","coordinates":[1,2]}'],
    ['null geometry', 'null'],
    ['text geometry', '"POINT (1 2)"'],
    ['an empty collection', '{"type":"GeometryCollection","geometries":[]}'],
    [
      'a collection of rubbish',
      '{"type":"GeometryCollection","geometries":[null,1,{"type":"Point","coordinates":[1e999,1]}]}',
    ],
    ['a line of one', '{"type":"LineString","coordinates":[[1,2],[1,2]]}'],
  ])('%s drops that feature with its reason and keeps its neighbor', (_, geometry) => {
    const { report, features } = read(bytes(feature(geometry)), 'a.geojson');
    expect(report.read).toBe(2);
    expect(features).toHaveLength(1);
    expect(report.dropped).toHaveLength(1);
    expect(report.dropped[0]!.what).toBe('feature 1');
    expect(report.dropped[0]!.why.length).toBeGreaterThan(10);
  });

  it.each([
    ['open ring', '{"type":"Polygon","coordinates":[[[0,0],[0.01,0],[0.01,0.01]]]}', 'closed'],
    ['doubled corners', '{"type":"Polygon","coordinates":[[[0,0],[0,0],[0.01,0],[0.01,0.01],[0,0]]]}', 'repeated'],
    ['bow-tie', '{"type":"Polygon","coordinates":[[[0,0],[0.01,0.01],[0.01,0],[0,0.01],[0,0]]]}', 'crosses itself'],
    [
      'hole outside',
      '{"type":"Polygon","coordinates":[[[0,0],[0.01,0],[0.01,0.01],[0,0]],[[1,1],[1,1.1],[1.1,1.1],[1,1]]]}',
      'without its holes',
    ],
    ['longitude 200', '{"type":"Polygon","coordinates":[[[200,0],[200.01,0],[200.01,0.01],[200,0]]]}', 'full turn'],
    [
      'one bad corner',
      '{"type":"Polygon","coordinates":[[[0,0],[0.01,0],[1e999,5],[0.01,0.01],[0,0]]]}',
      'no place on earth',
    ],
  ])('%s is mended and named', (_, geometry, why) => {
    const text = `{"type":"Feature","properties":{"natural":"wood"},"geometry":${geometry}}`;
    const { report } = read(bytes(text), 'a.geojson');
    expect(report).toMatchObject({ read: 1, kept: 1, dropped: [] });
    expect(report.repaired.map((one) => one.why).join('; ')).toContain(why);
  });

  it.each([
    ['cut off', '{"type":"FeatureCollection","features":[', 'json-broken'],
    ['not GeoJSON', '{"a":1}', 'not-geojson'],
    ['a number list', '[1,2,3]', 'not-geojson'],
    ['1,000 deep', `{"type":"Point","coordinates":${'['.repeat(1000)}${']'.repeat(1000)}}`, 'too-deep'],
    ['1,000,000 deep', '['.repeat(1_000_000), 'too-deep'],
    ['features that are none', '{"type":"FeatureCollection","features":"x"}', 'not-geojson'],
  ])('%s is refused', (_, text, id) => refusedAs(bytes(text), id, 'a.geojson'));

  it('no name in it reaches the program', () => {
    const text =
      '{"type":"Feature","properties":{"natural":"tree","__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}}},"geometry":{"type":"Point","coordinates":[1,2]}}';
    const { features } = read(bytes(text), 'a.json');
    expect(features).toHaveLength(1);
    expect(({} as { polluted?: number }).polluted).toBeUndefined();
    expect(JSON.stringify(features)).not.toContain('polluted');
  });

  it('refuses more things or positions than the limit', () => {
    const many = `{"type":"FeatureCollection","features":[${Array(20_001).fill('{"type":"Feature","properties":{},"geometry":null}').join(',')}]}`;
    refusedAs(bytes(many), 'file-too-big', 'a.geojson');
    const long = `{"type":"LineString","coordinates":[${Array(500_001).fill('[1,2]').join(',')}]}`;
    refusedAs(bytes(long), 'file-too-big', 'a.geojson');
    refusedAs(new Uint8Array(150 * 1024 * 1024 + 1), 'file-too-big', 'a.geojson');
  });
});

describe('zips', () => {
  const kml = '<kml><Placemark><name>P</name><Point><coordinates>1,2</coordinates></Point></Placemark></kml>';

  it('a bomb is refused by what it declares, and by what it is', () => {
    const bomb = zipSync({ 'doc.kml': new Uint8Array(20_000_000) }, { level: 9 });
    refusedAs(bomb, 'zip-bomb', 'a.kmz');
    // The same with a lying list: declared as 1,000 bytes.
    const lying = bomb.slice();
    const view = new DataView(lying.buffer);
    const end = lying.length - 22;
    view.setUint32(view.getUint32(end + 16, true) + 24, 1000, true);
    refusedAs(lying, 'zip-broken', 'a.kmz');
  });

  it('names outside the zip and zips inside it are not read, and named', () => {
    for (const name of ['../../doc.kml', '/doc.kml', 'C:\\doc.kml', 'a/../doc.kml', '..\\doc.kml']) {
      const { issues, report } = read(zipped({ [name]: kml }), 'a.kmz');
      expect(issues.map((issue) => issue.id)).toContain('zip-path');
      expect(report.read).toBe(0);
    }
    const nested = zipped({ 'doc.kml': kml, 'inner.kmz': zipped({ 'doc.kml': kml }) });
    const { issues, report } = read(nested, 'a.kmz');
    expect(report.kept).toBe(1);
    expect(issues.map((issue) => issue.id)).toContain('zip-in-zip');
  });

  it('too many files, locked, cut off or with nothing in it', () => {
    refusedAs(
      zipped(Object.fromEntries(Array.from({ length: 1001 }, (_, i) => [`f${i}`, 'x']))),
      'zip-too-many',
      'a.zip',
    );
    const locked = zipped({ 'doc.kml': kml });
    const view = new DataView(locked.buffer);
    view.setUint16(view.getUint32(locked.length - 6, true) + 8, 1, true);
    refusedAs(locked, 'zip-locked', 'a.kmz');
    refusedAs(zipped({ 'doc.kml': kml }).slice(0, 60), 'zip-broken', 'a.kmz');
    refusedAs(zipped({ 'a.txt': 'x' }), 'zip-no-map', 'a.zip');
  });

  it('a stored file and one in a folder are read', () => {
    expect(read(zipSync({ 'a/b.kml': bytes(kml) }, { level: 0 }), 'a.kmz').report.kept).toBe(1);
  });
});

it.each([
  ['nothing', new Uint8Array(0), 'file-empty'],
  ['a PDF', bytes('%PDF-1.7'), 'not-a-map'],
  ['a PNG', new Uint8Array([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10]), 'not-a-map'],
  ['gzip', new Uint8Array([0x1f, 0x8b, 8, 0]), 'not-a-map'],
  ['bytes', new Uint8Array([1, 2, 3, 0, 0, 0, 255]), 'not-text'],
  ['prose', bytes('Once upon a time'), 'not-a-map'],
  ['a GeoPackage', bytes('SQLite format 3\0'), 'not-a-map'],
])('%s is named for what it is', (_, file, id) => refusedAs(file, id));
