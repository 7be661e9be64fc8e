/** Sound files of every format, damaged at random (seeded): never a throw, never a count that does not add up, never a place off the earth. */
import { describe, expect, it } from 'vitest';
import { writePlacesCsv } from '../../../src/exchange/csv.ts';
import { siteThings } from '../../../src/exchange/exported.ts';
import { writeGpx } from '../../../src/exchange/gpx.ts';
import { importFile } from '../../../src/exchange/import.ts';
import { writeKml } from '../../../src/exchange/kml.ts';
import { positionsOf } from '../../../src/exchange/project-geometry.ts';
import { writeSite } from '../../../src/site/write.ts';
import { dbf, shp, utm17, zipped } from './make-shapefile.ts';
import { randomSite, seeded } from './random-site.ts';

const things = siteThings(randomSite(7));
const bytes = (text: string) => new TextEncoder().encode(text);
const ring = [
  [450_000, 4_590_000],
  [450_000, 4_590_100],
  [450_100, 4_590_100],
  [450_000, 4_590_000],
] as const;
const files: readonly (readonly [string, Uint8Array])[] = [
  ['a.geojson', bytes(writeSite(randomSite(7)))],
  ['a.gpx', bytes(writeGpx(things))],
  ['a.kml', bytes(writeKml(things))],
  ['a.csv', bytes(writePlacesCsv(things))],
  ['a.kmz', zipped({ 'doc.kml': writeKml(things) })],
  [
    'a.zip',
    zipped({
      'a.shp': shp(5, [
        { type: 5, parts: [ring] },
        { type: 5, parts: [ring, ring] },
      ]),
      'a.dbf': dbf('natural', ['wood', 'scrub']),
      'a.prj': utm17,
    }),
  ],
];
const tokens = [
  '<',
  '>',
  '"',
  '{',
  ']',
  '<!DOCTYPE',
  '&x;',
  'NaN',
  '1e999',
  ',',
  '\0',
  '-',
  '\ufeff',
  '9'.repeat(400),
  '<![CDATA[',
  ']]>',
  '\u2028',
].map(bytes);

function damaged(file: Uint8Array, random: () => number): Uint8Array {
  let out: Uint8Array = file.slice();
  const times = 1 + Math.floor(random() * 4);
  for (let i = 0; i < times; i++) {
    const at = Math.floor(random() * out.length);
    const choice = Math.floor(random() * 5);
    if (choice === 0) out[at] = Math.floor(random() * 256);
    else if (choice === 1) out = out.slice(0, at);
    else if (choice === 2) out = joined(out.slice(0, at), out.slice(at + 1 + Math.floor(random() * 20)));
    else if (choice === 3) out = joined(out.slice(0, at), tokens[Math.floor(random() * tokens.length)]!, out.slice(at));
    else out = joined(out.slice(0, at), out.slice(Math.max(0, at - 50)));
  }
  return out;
}

function joined(...parts: readonly Uint8Array[]): Uint8Array {
  const out = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    out.set(part, at);
    at += part.length;
  }
  return out;
}

describe.each(files)('%s', (name, file) => {
  it('is sound to begin with', () => {
    expect(importFile(file, name).report.kept).toBeGreaterThan(0);
  });

  it('250 times damaged', () => {
    const random = seeded(file.length);
    for (let i = 0; i < 250; i++) {
      const { features, report } = importFile(damaged(file, random), name);
      expect(report.read).toBe(report.kept + report.dropped.length);
      expect(report.made).toBe(features.length);
      const off = features
        .flatMap((one) => positionsOf(one.geometry))
        .filter(([x, y]) => !(Math.abs(x!) <= 180 && Math.abs(y!) <= 90));
      expect(off).toEqual([]);
    }
  });
});
