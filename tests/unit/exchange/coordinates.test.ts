import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatDecimal, formatDmm, formatDms, formatMgrs, formatUtm } from '../../../src/exchange/coordinate-format.ts';
import { readPosition } from '../../../src/exchange/coordinates.ts';
import type { LonLat } from '../../../src/site/types.ts';

const here: LonLat = [-81.25, 41.5];

describe('every way to write one place', () => {
  it.each([
    '41.5, -81.25',
    '41.5 -81.25',
    '41.5,-81.25',
    '41.5; -81.25',
    '41,5 -81,25',
    '41,5; -81,25',
    '41,5, -81,25',
    '41.5°, −81.25°',
    '41.5N 81.25W',
    'N41.5 W81.25',
    'n 41.5, w 81.25',
    '81.25 W, 41.5 N',
    '41°30′00″N 81°15′00″W',
    '41° 30\' 0.0" N, 81° 15\' 0" W',
    '41 30 0 -81 15 0',
    '41 30 -81 15',
    '41:30:00N, 81:15:00W',
    '41º 30.000’ N 81º 15.000’ W',
    '[-81.25, 41.5]',
    '(41.5, -81.25)',
    'lat 41.5 lon -81.25',
    'lon: -81.25, lat: 41.5',
    'geo:41.5,-81.25;u=30',
    '41.5 north, 81.25 west',
  ])('%s', (text) => {
    const { position, issue } = readPosition(text);
    expect(issue).toBeNull();
    expect(position![0]).toBeCloseTo(here[0], 9);
    expect(position![1]).toBeCloseTo(here[1], 9);
  });

  it('reads longitude first when told, and when nothing else is possible, and says so', () => {
    expect(readPosition('-81.25 41.5', { lonFirst: true }).position).toEqual(here);
    const far = readPosition('-101.5, 41.5');
    expect(far.position).toEqual([-101.5, 41.5]);
    expect(far.said).toContain('longitude first, because');
    expect(readPosition('41.5, -81.25').said).toContain('latitude first');
    expect(readPosition('41.5, -81.25').said).toContain('north of the equator, west of Greenwich');
  });

  it('takes S in UTM for a latitude band where it fits and for the south where it must', () => {
    expect(readPosition('18S 323483 4306479').position![1]).toBeCloseTo(38.8895, 3);
    expect(readPosition('56S 334873 6252266').position![1]).toBeCloseTo(-33.857, 3);
    expect(readPosition('56H 334873 6252266').position![1]).toBeCloseTo(-33.857, 3);
  });
});

it.each([
  ['', 'Nothing'],
  ['banana', 'Two figures'],
  ['41.5', 'Two figures'],
  ['95, 200', 'beyond the poles'],
  ['41.5, 181', 'beyond 180'],
  ['91, 91', 'beyond the poles'],
  ['41 61 0 -81 0 0', 'under 60'],
  ['41.5 30 0 N 81 W', 'decimals'],
  ['41.5N 30S', 'Both figures'],
  ['-41.5 N, 81 W', 'both a sign and a letter'],
  ['NaN, 3', 'not an angle'],
  ['1e5, 1', 'not an angle'],
  ['Infinity, Infinity', 'not an angle'],
  ['17T NE 537 74440', 'as many digits'],
  ['17T NE 537036 744406', 'as many digits'],
  ['61T NE 53703 74440', 'no grid square'],
  ['17T 9 9', 'Two figures'],
  ['17T 999999 99999999', 'no such easting'],
  [`${'9'.repeat(10_000)}`, 'too long'],
])('"%.30s" is no place, and says why', (text, why) => {
  const { position, said, issue } = readPosition(text);
  expect(position).toBeNull();
  expect(said).toBe('');
  expect(issue!.severity).toBe('error');
  expect(issue!.sentence).toContain(why);
});

describe('writing', () => {
  it('writes the forms people know', () => {
    expect(formatDecimal(here)).toBe('41.5000000, -81.2500000');
    expect(formatDms(here)).toBe('41°30′00.0″ N 81°15′00.0″ W');
    expect(formatDmm(here)).toBe('41°30.0000′ N 81°15.0000′ W');
    expect(formatUtm(here)).toMatch(/^17T \d{6} \d{7}$/);
    expect(formatMgrs(here)).toMatch(/^17T M[A-Z] \d{5} \d{5}$/);
  });

  it('never writes 60 minutes or seconds', () => {
    expect(formatDms([-0.99999999, 59.99999999])).toBe('60°00′00.0″ N 1°00′00.0″ W');
    expect(formatDmm([29.9999999999, -1.9999999999])).toBe('2°00.0000′ S 30°00.0000′ E');
  });

  it('has no grid near the poles, and says null', () => {
    expect(formatUtm([10, 85])).toBeNull();
    expect(formatMgrs([10, -81])).toBeNull();
    expect(formatMgrs([Number.NaN, 10])).toBeNull();
  });

  it('reads back what it wrote, anywhere', () => {
    const place = fc.tuple(
      fc.double({ min: -180, max: 179.999, noNaN: true }),
      fc.double({ min: -79.9, max: 83.9, noNaN: true }),
    );
    fc.assert(
      fc.property(place, ([lon, lat]) => {
        const forms = [
          formatDecimal([lon, lat]),
          formatDms([lon, lat], 3),
          formatDmm([lon, lat], 5),
          formatUtm([lon, lat])!,
          formatMgrs([lon, lat])!,
        ];
        const metres = forms.map((text) => {
          const { position } = readPosition(text);
          if (!position) throw new Error(`not read: ${text}`);
          const turn = ((((position[0] - lon + 180) % 360) + 360) % 360) - 180;
          return 111_195 * Math.hypot(position[1] - lat, turn * Math.cos((lat * Math.PI) / 180));
        });
        // UTM and the grid are cut to whole metres.
        return metres.every((off, i) => off < (i < 3 ? 0.05 : 1.6));
      }),
      { seed: 5, numRuns: 500 },
    );
  });
});

it('never throws and never gives a place off the earth, whatever is typed', () => {
  const mix = fc.string({
    unit: fc.constantFrom(...'0123456789.,;:-+ °\'"NSEWnsewTUVX[]()geo:mgrs\u2032\u0000'.split('')),
    maxLength: 40,
  });
  fc.assert(
    fc.property(mix, (text) => {
      const { position, issue } = readPosition(text);
      if (position === null) return issue !== null;
      return Math.abs(position[1]) <= 90 && Math.abs(position[0]) <= 180;
    }),
    { seed: 7, numRuns: 5000 },
  );
});
