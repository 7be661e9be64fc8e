/** UTM and grid references against published examples and an independent program's figures. */
import { describe, expect, it } from 'vitest';
import { formatMgrs, formatUtm } from '../../src/exchange/coordinate-format.ts';
import { readPosition } from '../../src/exchange/coordinates.ts';
import { fromUtm, toUtm } from '../../src/exchange/utm.ts';
import { transverseMercator } from '../../src/ground/frame.ts';
import type { LonLat } from '../../src/site/types.ts';

/**
 * SOURCE: GeoConvert (GeographicLib C++ 2.1.2), WGS84. Latitude, longitude, zone, hemisphere, easting, northing, MGRS at 1 m (truncated).
 * South-west Norway and Svalbard are rows 7–10; both sides of the antimeridian and the equator are in.
 */
const rows: readonly (readonly [number, number, number, 'n' | 's', number, number, string])[] = [
  [-30.902713, -165.08699, 3, 's', 491686.987, 6581176.587, '03JVF9168681176'],
  [-70.963525, -77.935499, 18, 's', 393174.056, 2124083.68, '18DUG9317424083'],
  [-1.465304, -178.556874, 1, 's', 326793.744, 9837979.34, '01MCU2679337979'],
  [-4.539947, 175.296064, 60, 's', 310957.825, 9497966.365, '60MUV1095797966'],
  [40.418862, -80.366976, 17, 'n', 553703.31, 4474440.844, '17TNE5370374440'],
  [-44.335425, 163.846727, 58, 's', 408059.712, 5090224.444, '58GDR0805990224'],
  [60.5, 5.5, 32, 'n', 307793.019, 6712209.068, '32VLN0779312209'],
  [59.9999, 3.0001, 32, 'n', 165644.884, 6666581.96, '32VJM6564466581'],
  [73.2, 21.1, 35, 'n', 309939.662, 8132168.289, '35XLB0993932168'],
  [69.618654, 35.746918, 36, 'n', 606735.874, 7725746.342, '36WXC0673525746'],
  [0.000001, 3, 31, 'n', 500000, 0.111, '31NEA0000000000'],
  [43.05, -89.4, 16, 'n', 304534.667, 4769162.674, '16TCN0453469162'],
  [-34.657517, -91.60193, 15, 's', 628110.004, 6164046.99, '15HXB2811064046'],
  [54.367103, 23.354766, 34, 'n', 652978.795, 6026922.585, '34UFF5297826922'],
];

describe('against GeoConvert', () => {
  it.each(rows)('%d, %d', (lat, lon, zone, half, easting, northing, mgrs) => {
    const utm = toUtm([lon, lat])!;
    expect(utm.zone).toBe(zone);
    expect(utm.band < 'N').toBe(half === 's');
    expect(Math.abs(utm.easting - easting)).toBeLessThan(0.001);
    expect(Math.abs(utm.northing - northing)).toBeLessThan(0.001);
    expect(formatMgrs([lon, lat])!.replaceAll(' ', '')).toBe(mgrs);
    const back = fromUtm(utm)!;
    expect(Math.abs(back[0] - lon)).toBeLessThan(1e-9);
    expect(Math.abs(back[1] - lat)).toBeLessThan(1e-9);
  });

  it('comes back from the text of either form within the metre it is cut to', () => {
    for (const [lat, lon] of rows) {
      for (const text of [formatUtm([lon, lat])!, formatMgrs([lon, lat])!]) {
        const { position } = readPosition(text);
        const metres = 111_195 * Math.hypot(position![1] - lat, (position![0] - lon) * Math.cos((lat * Math.PI) / 180));
        expect(metres, text).toBeLessThan(1.5);
      }
    }
  });
});

describe('against FGDC-STD-011-2001, United States National Grid, 5.2.2: the Washington Monument', () => {
  // UTM 18N 323483.168 E 4306479.498 N on NAD83; the latitude and longitude by PROJ 9.3 of that place.
  const monument: LonLat = [-77.0352402156242, 38.889467309501576];

  it('has the UTM of the standard within a centimetre', () => {
    const { zone, band, easting, northing } = toUtm(monument)!;
    expect([zone, band]).toEqual([18, 'S']);
    expect(Math.abs(easting - 323483.168)).toBeLessThan(0.01);
    expect(Math.abs(northing - 4306479.498)).toBeLessThan(0.01);
  });

  it.each([
    [5, '18SUJ2348306479'],
    [4, '18SUJ23480647'],
    [3, '18SUJ234064'],
    [2, '18SUJ2306'],
  ])('is truncated, never rounded, at %d digits', (digits, text) => {
    expect(formatMgrs(monument, digits)!.replaceAll(' ', '')).toBe(text);
  });
});

it('Snyder, Map Projections: A Working Manual (USGS Professional Paper 1395, 1987), pp. 269–270, Clarke 1866', () => {
  const frame = transverseMercator([-75, 0], { scale: 0.9996, earth: '+ellps=clrk66' });
  const { x, y } = frame.toPlane([-73.5, 40.5]);
  // Printed: x = 127,106.5 m, y = 4,484,124.4 m.
  expect(Math.abs(x - 127106.5)).toBeLessThan(0.1);
  expect(Math.abs(y - 4484124.4)).toBeLessThan(0.1);
});
