/** What the written files look like, line by line where it matters to a receiver or a spreadsheet. */
import { describe, expect, it } from 'vitest';
import { birdGuides } from '../../../src/birds/index.ts';
import { writePlacesCsv } from '../../../src/exchange/csv.ts';
import { degrees, plainDecimal, readNumber, shortDecimal } from '../../../src/exchange/decimals.ts';
import { writeGpx } from '../../../src/exchange/gpx.ts';
import { writeKml } from '../../../src/exchange/kml.ts';
import { planGeojson } from '../../../src/exchange/plan-geojson.ts';
import { planThings } from '../../../src/exchange/plan-things.ts';
import { asciiText, cutText } from '../../../src/exchange/safe-text.ts';
import { birdWords, mostWordLetters, shortNames } from '../../../src/exchange/short-names.ts';
import { fixturePlan, frame, metresApart } from './plan-fixture.ts';

const things = planThings(fixturePlan(), frame);

describe('short names', () => {
  it('have the number first, then one word, and are all different', () => {
    const names = [...shortNames(things.things).values()];
    expect(names).toEqual(['01 Bluebird', '02 Swallow', '03 Bluebird', '12 Acre', 'Start 1', 'Left out', 'Left out 2']);
  });

  it('tell birds apart whose last word is the same, for every pair of guides', () => {
    expect(Object.fromEntries(birdWords(['Eastern Bluebird', 'Western Bluebird', 'House Wren']))).toEqual({
      'Eastern Bluebird': 'E Bluebird',
      'Western Bluebird': 'W Bluebird',
      'House Wren': 'Wren',
    });
    for (const word of birdWords(birdGuides.map((guide) => guide.name)).values()) {
      expect(word.length).toBeLessThanOrEqual(mostWordLetters);
      expect(word.length).toBeGreaterThan(1);
    }
  });

  it('grow with the number and never collide, whatever the things are called', () => {
    const many = Array.from({ length: 1200 }, (_, i) => ({
      ...things.things[0]!,
      id: `t${i}`,
      number: i % 2 ? i : null,
      word: i % 3 ? '木' : 'same',
    }));
    const names = [...shortNames(many).values()];
    expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(1200);
    expect(names[1]).toMatch(/^0001 /);
  });
});

describe('GPX', () => {
  const text = writeGpx(things);

  it('has waypoints, then routes, then tracks, and the children of each in the order of the schema', () => {
    const order = [...text.matchAll(/<(wpt|rte|trk)[ >]/g)].map((found) => found[1]);
    expect(order).toEqual(
      [...order].sort((a, b) => ['wpt', 'rte', 'trk'].indexOf(a!) - ['wpt', 'rte', 'trk'].indexOf(b!)),
    );
    expect(text).toContain(
      '<name>01 Bluebird</name>\n<cmt>1 Eastern Bluebird</cmt>\n<desc>face 95° true (E, 103° by the compass), hole 1.5 m (4.9 ft) up; score 81</desc>\n<type>post</type>',
    );
  });

  it('walks the boxes in order from the start and back, with the names of the waypoints', () => {
    const route = text.slice(text.indexOf('<rte>'), text.indexOf('</rte>'));
    const names = [...route.matchAll(/<rtept[^>]*>\n<name>([^<]*)</g)].map((found) => found[1]);
    expect(names).toEqual(['Start 1', '01 Bluebird', '02 Swallow', '03 Bluebird', 'Start 1']);
  });

  it('writes plain decimals and keeps longitude under 180', () => {
    expect(text).not.toMatch(/"[^"]*[eE][+-]?\d[^"]*"/);
    const edge = {
      ...things,
      things: [{ ...things.things[0]!, geometry: { type: 'Point' as const, coordinates: [180, -1e-9] } }],
      rounds: [],
    };
    expect(writeGpx(edge)).toContain('lat="0.0000000" lon="-180.0000000"');
  });

  it('leaves out the left-out posts unless they are asked for', () => {
    expect(text).not.toContain('Left out');
    expect(writeGpx(things, { leftOut: true })).toContain('<name>Left out 2</name>');
  });

  it('of nothing is still a file', () => {
    expect(writeGpx({ name: '', note: '', things: [], rounds: [] })).toContain(
      '<gpx version="1.1" creator="Meadowpost"',
    );
  });
});

it('KML has a folder for each group and longitude first', () => {
  const text = writeKml(things);
  expect([...text.matchAll(/<Folder>\n<name>([^<]*)/g)].map((found) => found[1])).toEqual([
    'boxes',
    'walk',
    'left out',
  ]);
  const [lon, lat] = fixturePlan().boxes[0]!.position;
  expect(text).toContain(`<coordinates>${lon.toFixed(7)},${lat.toFixed(7)}</coordinates>`);
});

it('CSV starts as spreadsheets and mapping programs expect', () => {
  const [head, first] = writePlacesCsv(things).split('\r\n');
  expect(head).toBe(
    '\ufeffname,lat,lon,number,kind,id,note,bird,state,facing,holeHeight,score,sureness,pairedWith,leftOut',
  );
  const [lon, lat] = fixturePlan().boxes[0]!.position;
  expect(first).toBe(
    `1 Eastern Bluebird,${shortDecimal(lat, 7)},${shortDecimal(lon, 7)},1,post,p1,"face 95° true (E, 103° by the compass), hole 1.5 m (4.9 ft) up; score 81",eastern-bluebird,fixed,95,1.5,81.4,0.93,,`,
  );
});

describe('plan GeoJSON', () => {
  const json = planGeojson(fixturePlan(), frame);

  it('has boxes, starts, legs and left-out posts with their reasons', () => {
    const count = (what: string) => json.features.filter((one) => one.properties!.what === what).length;
    expect([count('box'), count('start'), count('leg'), count('left-out')]).toEqual([4, 1, 4, 2]);
    expect(json.features.find((one) => one.id === 'p9')!.properties).toMatchObject({
      note: 'Too close to 1. Long Acre',
      leftOut: 'too-close',
      score: 77,
    });
    expect(json.plan).toMatchObject({ boxes: 4, sites: 3, leftOut: 2, metres: 400, minutes: 24 });
  });

  it('has legs that start and end at their stops, to the centimetre', () => {
    const leg = json.features.find((one) => one.properties!.what === 'leg' && one.properties!.from === 1)!;
    const line = leg.geometry.type === 'LineString' ? leg.geometry.coordinates : [];
    const plan = fixturePlan();
    expect(metresApart(line[0] as [number, number], plan.boxes[0]!.position)).toBeLessThan(0.011);
    expect(metresApart(line.at(-1) as [number, number], plan.boxes[1]!.position)).toBeLessThan(0.011);
  });
});

describe('numbers and words', () => {
  it('are written without exponent or minus nought', () => {
    expect(degrees(-1e-12)).toBe('0.0000000');
    expect(plainDecimal(1e-10, 7)).toBe('0.0000000');
    expect(shortDecimal(-81.5, 7)).toBe('-81.5');
    expect(() => degrees(Number.NaN)).toThrow();
    expect(() => plainDecimal(1e22, 2)).toThrow();
  });

  it('are read only when they are numbers', () => {
    expect([' 41.5 ', '-.5', '+3', '4.1e1', '5.'].map(readNumber)).toEqual([41.5, -0.5, 3, 41, 5]);
    expect(['', 'NaN', '1e999', 'Infinity', '0x10', '12 m', '1,5', '1.2.3'].map(readNumber)).toEqual([
      null,
      null,
      null,
      null,
      null,
      null,
      null,
      null,
    ]);
  });

  it('are cut on whole characters and spelled in plain letters', () => {
    expect(cutText('🦉🦉🦉', 2)).toBe('🦉…');
    expect(cutText('short', 10)).toBe('short');
    expect(asciiText('Ærø Straße, Žluť — 木')).toBe('AEro Strasse Zlut');
  });
});
