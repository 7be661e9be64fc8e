/** The site's frame against published transverse Mercator examples and against the geodesic. */
import geodesic from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import { bearing, distance } from '../../src/geometry/point.ts';
import { seededRandom } from '../../src/geometry/random.ts';
import { makeFrame, middleOf, transverseMercator } from '../../src/ground/frame.ts';
import type { LonLat } from '../../src/site/types.ts';

const { WGS84 } = geodesic.Geodesic;

const metres = (a: LonLat, b: LonLat): number => WGS84.Inverse(a[1], a[0], b[1], b[0]).s12!;

describe('published transverse Mercator examples, through the same code', () => {
  it('Snyder, USGS Professional Paper 1395 (1987), pp. 269-270: Clarke 1866, k 0.9996', () => {
    const earth = '+a=6378206.4 +b=6356583.8';
    const { x, y } = transverseMercator([-75, 0], { scale: 0.9996, earth }).toPlane([-73.5, 40.5]);
    // Printed to 0.1 m.
    expect(Math.abs(x - 127106.5)).toBeLessThan(0.06);
    expect(Math.abs(y - 4484124.4)).toBeLessThan(0.06);
  });

  it('IOGP Guidance Note 7-2, Transverse Mercator example: Airy 1830, British National Grid', () => {
    const earth = '+a=6377563.396 +rf=299.32496';
    const figures = { scale: 0.9996012717, falseEasting: 400000, falseNorthing: -100000, earth };
    const frame = transverseMercator([-2, 49], figures);
    const { x, y } = frame.toPlane([0.5, 50.5]);
    // Printed to 0.01 m.
    expect(Math.abs(x - 577274.99)).toBeLessThan(0.01);
    expect(Math.abs(y - 69740.5)).toBeLessThan(0.01);
    const [lon, lat] = frame.toLonLat({ x, y });
    expect(lon).toBeCloseTo(0.5, 10);
    expect(lat).toBeCloseTo(50.5, 10);
  });
});

describe('lengths within 5 km agree with the geodesic within 1 mm per 100 m (GeographicLib, Karney 2013)', () => {
  for (const latitude of [0, 12, -33.9, 43, 51.5, -46.4, 60.2, 69.6, -77.8, 84.9]) {
    it(`at ${latitude}°`, () => {
      const random = seededRandom(Math.round(latitude * 10) + 1000);
      const centre: LonLat = [-179 + 358 * random(), latitude];
      const frame = makeFrame(centre);
      let worst = 0;
      for (let i = 0; i < 200; i++) {
        const start = { x: 7000 * (random() - 0.5), y: 7000 * (random() - 0.5) };
        const length = 10 + 140 * random();
        const end = { x: start.x + length * Math.cos(i), y: start.y + length * Math.sin(i) };
        const [a, b] = [frame.toLonLat(start), frame.toLonLat(end)];
        worst = Math.max(worst, Math.abs(metres(a, b) - length) / length);
        expect(distance(frame.toPlane(a), start)).toBeLessThan(1e-6);
      }
      expect(worst).toBeLessThan(1e-5);
      // What the projection itself allows: r² / 2R² at 4.95 km is 3e-7.
      expect(worst).toBeLessThan(4e-7);
    });
  }

  it('a line of 5 km from the centre out', () => {
    for (const latitude of [-44, 5, 66]) {
      const frame = makeFrame([20, latitude]);
      for (const degrees of [0, 37, 90, 213]) {
        const end = WGS84.Direct(latitude, 20, degrees, 5000);
        const point = frame.toPlane([end.lon2!, end.lat2!]);
        expect(Math.abs(Math.hypot(point.x, point.y) - 5000)).toBeLessThan(0.05);
        expect(Math.abs(Math.hypot(point.x, point.y) - 5000)).toBeLessThan(0.002);
        expect(Math.abs(bearing({ x: 0, y: 0 }, point) - degrees)).toBeLessThan(0.001);
      }
    }
  });
});

/** SOURCE: GeodSolve of GeographicLib C++ 2.1.2, WGS84: lat, lon, lat, lon, metres (printed to 1 µm). */
const shortLines: readonly (readonly [number, number, number, number, number])[] = [
  [5.604736, -79.7008359, 5.6022139, -79.700951, 279.197453],
  [43.1838533, -107.8145087, 43.1852591, -107.8129737, 199.911291],
  [-44.9830461, -109.084655, -44.9842371, -109.0838527, 146.705421],
  [59.4411015, -143.679666, 59.4399644, -143.6813064, 157.193646],
  [-58.4454052, 49.9262196, -58.4454109, 49.924346, 109.414074],
  [3.8982526, -158.7645709, 3.8982875, -158.764937, 40.843139],
  [-5.854277, -84.9557354, -5.8676999, -84.9216232, 4058.806806],
  [57.8729887, -175.8982731, 57.8837451, -175.8483679, 3194.204769],
];

describe('lengths of posts apart against GeodSolve', () => {
  for (const [lat1, lon1, lat2, lon2, length] of shortLines) {
    it(`${length} m at ${lat1.toFixed(1)}°`, () => {
      const frame = makeFrame([(lon1 + lon2) / 2, (lat1 + lat2) / 2]);
      const measured = distance(frame.toPlane([lon1, lat1]), frame.toPlane([lon2, lat2]));
      expect(Math.abs(measured - length)).toBeLessThan(1e-5 * length);
      expect(Math.abs(measured - length)).toBeLessThan(3e-6 + 3e-8 * length);
    });
  }
});

describe('where the frame is centred', () => {
  it('at the middle of the box around everything drawn, and at 0, 0 when nothing is', () => {
    expect(middleOf([])).toEqual([0, 0]);
    const point = (id: string, coordinates: LonLat) =>
      ({ id, kind: 'post', geometry: { type: 'Point', coordinates }, properties: {} }) as const;
    const [lon, lat] = middleOf([point('a', [10, 50]), point('b', [10.02, 50.01])]);
    expect(lon).toBeCloseTo(10.01, 12);
    expect(lat).toBeCloseTo(50.005, 12);
    expect(middleOf([{ ...point('c', [0, 0]), geometry: null }])).toEqual([0, 0]);
  });

  it('refuses what is no place', () => {
    expect(() => makeFrame([0, 91])).toThrow('no such place');
    expect(() => makeFrame([Number.NaN, 0])).toThrow('no such place');
  });
});
