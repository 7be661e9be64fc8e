/** Every text a person can fill × every export: written, parsed back by another reader, and compared. */
import { DOMParser } from '@xmldom/xmldom';
import { csvParse } from 'd3-dsv';
import { describe, expect, it } from 'vitest';
import { toCsv, undoFormulaGuard, writePlacesCsv } from '../../../src/exchange/csv.ts';
import { type Exported, siteThings } from '../../../src/exchange/exported.ts';
import { writeGpx } from '../../../src/exchange/gpx.ts';
import { writeKml } from '../../../src/exchange/kml.ts';
import { writePlanGeojson } from '../../../src/exchange/plan-geojson.ts';
import { planThings } from '../../../src/exchange/plan-things.ts';
import { cleanText, oneLine } from '../../../src/exchange/safe-text.ts';
import { shortNames } from '../../../src/exchange/short-names.ts';
import { newSite } from '../../../src/site/new-site.ts';
import type { Site } from '../../../src/site/types.ts';
import { fixturePlan, frame } from './plan-fixture.ts';

const carriers: readonly string[] = [
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  ']]><script>x</script><![CDATA[',
  '<!--',
  '<?xml version="1.0"?>',
  '<!DOCTYPE x [<!ENTITY y "z">]>&y;',
  '&lt;b&gt; &amp; &#65;',
  'javascript:alert(1)',
  '</name></wpt></gpx>',
  '=cmd|"/C calc"!A0',
  '=1+1',
  '+1+1',
  '-1+1',
  '@SUM(1)',
  '\t=1',
  '\r=1',
  '\n=1',
  ' =1',
  "'=1",
  "''=1",
  "'",
  '＝1+1',
  'a"b""c',
  'a,b;c|d',
  'two\r\nlines\nand\rmore',
  '-81.5',
  '+44 20',
  '007',
  '1e5',
  'control \u0000\u0001\u0008\u000b\u001b\u007f\u0085 end',
  'lone \ud800 and \udc00 end',
  'bom \ufeff and \ufffe\uffff',
  '\u202eright to left',
  'Žluťoučký kůň 木 🦉',
  '__proto__',
  'constructor',
  `${'long '.repeat(2000)}end`,
  ' ',
  '',
];

function siteWith(text: string): Site {
  const site = newSite(text, { date: '2026-06-15' });
  const point = { type: 'Point' as const, coordinates: [-81.25, 41.5] };
  const line = {
    type: 'LineString' as const,
    coordinates: [
      [-81.25, 41.5],
      [-81.249, 41.501],
    ],
  };
  return {
    ...site,
    features: [
      {
        id: `a ${text}`,
        kind: 'post',
        geometry: point,
        properties: { name: text, note: text, bird: text, [`x ${text}`]: text },
      },
      { id: 'b', kind: 'path', geometry: line, properties: { name: text, note: text } },
    ],
  };
}

/** XML by a strict parse; throws on anything not well-formed. */
function xml(text: string) {
  const stop = (level: string, message: string) => {
    throw new Error(`${level}: ${message}`);
  };
  return new DOMParser({ onError: stop }).parseFromString(text, 'text/xml');
}

function texts(document: ReturnType<typeof xml>, tag: string): string[] {
  return Array.from(document.getElementsByTagName(tag), (one) => one.textContent ?? '');
}

const exported: readonly (readonly [string, (text: string) => Exported])[] = [
  ['site', (text) => siteThings(siteWith(text))],
  ['plan', (text) => planThings(fixturePlan(text), frame)],
];

describe.each(carriers.map((text) => [text]))('%j', (text) => {
  it.each(exported)('GPX of the %s', (_, make) => {
    const things = make(text);
    const document = xml(writeGpx(things, { leftOut: true }));
    const points = things.things.filter((one) => one.geometry?.type === 'Point');
    const cmt = Array.from(
      document.getElementsByTagName('wpt'),
      (wpt) => wpt.getElementsByTagName('cmt')[0]?.textContent,
    );
    expect(cmt).toEqual(points.map((one) => one.name));
    expect(document.getElementsByTagName('script')).toHaveLength(0);
    for (const name of texts(document, 'wpt').length ? [...shortNames(things.things).values()] : []) {
      expect(name).toMatch(/^[A-Za-z0-9 -]{1,20}$/);
    }
    const allowed = new Set('gpx metadata name desc wpt cmt type rte rtept trk trkseg trkpt'.split(' '));
    expect(
      Array.from(document.getElementsByTagName('*'), (one) => one.tagName).filter((tag) => !allowed.has(tag)),
    ).toEqual([]);
  });

  it.each(exported)('KML of the %s', (_, make) => {
    const things = make(text);
    const document = xml(writeKml(things));
    const marks = Array.from(document.getElementsByTagName('Placemark'));
    const byName = things.things.map((one) => one.name);
    expect(marks.map((mark) => mark.getElementsByTagName('name')[0]?.textContent)).toEqual(
      expect.arrayContaining(byName),
    );
    const notes = things.things.map((one) => one.note).filter(Boolean);
    expect(texts(document, 'description')).toEqual(expect.arrayContaining(notes));
    expect(document.getElementsByTagName('script')).toHaveLength(0);
    expect(document.doctype).toBeNull();
  });

  it.each(exported)('CSV of the %s', (_, make) => {
    const things = make(text);
    const csv = writePlacesCsv(things);
    expect(csv.startsWith('\ufeffname,lat,lon,')).toBe(true);
    const rows = csvParse(csv.slice(1));
    const points = things.things.filter((one) => one.geometry === null || one.geometry.type === 'Point');
    expect(rows.map((row) => undoFormulaGuard(row.name!))).toEqual(points.map((one) => one.name));
    expect(rows.map((row) => undoFormulaGuard(row.note!))).toEqual(points.map((one) => one.note));
    for (const cell of rows.flatMap((row) => Object.values(row))) expectSafeCell(cell);
    for (const heading of rows.columns) expectSafeCell(heading);
    for (const row of rows) expect(Math.abs(Number(row.lon))).toBeLessThan(82);
  });

  it('any table', () => {
    const csv = toCsv(
      [{ text, number: -81.5 }],
      [
        { name: text, value: (row) => row.text },
        { name: 'n', value: (row) => row.number },
      ],
    );
    const [head, row] = csvParse(`h,n\r\n${csv.slice(1)}`);
    expectSafeCell(head!.h!);
    expectSafeCell(row!.h!);
    expect(undoFormulaGuard(row!.h!)).toBe(cleanText(text));
    expect(row!.n).toBe('-81.5');
  });

  it('GeoJSON of the plan', () => {
    const json = JSON.parse(writePlanGeojson(fixturePlan(text), frame));
    expect(json.features.filter((one: { properties: { what: string } }) => one.properties.what === 'box')).toHaveLength(
      4,
    );
    expect(json.plan.site).toBe(text);
    expect(json.features[3].properties.bird).toBe(text);
    expect(json.features[3].properties.name).toBe(`12 ${oneLine(text)}`);
  });
});

/** What a spreadsheet shows as text or as a plain number: never a formula. */
function expectSafeCell(cell: string): void {
  const number = /^-?\d+(\.\d+)?$/.test(cell);
  expect(number || !/^\s*[=+\-@＝＋－＠\t\r]/.test(cell), JSON.stringify(cell.slice(0, 50))).toBe(true);
}

it('a guarded text comes back as it was', () => {
  for (const text of carriers.map(cleanText)) {
    const [row] = csvParse(toCsv([text], [{ name: 't', value: (one) => one }]).slice(1));
    expect(undoFormulaGuard(row?.t ?? '')).toBe(text);
  }
});
