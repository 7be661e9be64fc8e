import { describe, expect, it } from 'vitest';
import { faceBeams } from '../../src/sky/face-beams.ts';
import { makeSunTable } from '../../src/sky/make-sun-table.ts';

/** One real day, 21 June 2026: the sun's declination is 23.43–23.44°, so the handbook's idealized figures must come out again. */
const midsummer = (lat: number) => makeSunTable([-83, lat], '06-21', '06-21', 2026);

describe('the season’s sun on one midsummer day', () => {
  // SOURCE: trade handbook §5c, worked for declination 23.44° (arithmetic, two decimals). Measured difference here: under 0.01 kWh/m².
  it.each([
    [33, [2.21, 1.7, 1.46, 0.33, 0.04, 0, 0.14], 3.5],
    [40, [2.21, 1.99, 1.24, 0.67, 0.11, 0, 0.06], 3.44],
    [48, [2.2, 2.31, 1.01, 1.09, 0.22, 0, 0.02], 3.29],
  ])('at %d° north warms W, SW, NW, S, SE, E, N and roof as worked by hand (± 0.015 kWh/m²)', (lat, worked, roof) => {
    const table = midsummer(lat);
    const faces = faceBeams(table, null);
    [270, 225, 315, 180, 135, 90, 0].forEach((facing, i) => {
      expect(Math.abs(faces[facing]! - worked[i]!), `${facing}°`).toBeLessThan(0.015);
    });
    expect(Math.abs(table.roof.reduce((a, b) => a + b, 0) - roof)).toBeLessThan(0.015);
  });

  // SOURCE: trade handbook §5c and §9 item 20: 40° N at 15 h, elevation 48.82°, azimuth 260.2°. The table's midpoints lie at 14 h 55 and 15 h 05.
  it('stands at 48.82° and 260.2° at 15 h, 40° north, between its two midpoints (± 0.05°)', () => {
    const table = midsummer(40);
    const at = (hour: number) => table.hour.findIndex((one) => Math.abs(one - hour) < 1e-6);
    const [before, after] = [at(15 - 1 / 12), at(15 + 1 / 12)];
    expect(Math.abs((table.altitude[before]! + table.altitude[after]!) / 2 - 48.82)).toBeLessThan(0.05);
    expect(Math.abs((table.rays.azimuth[before]! + table.rays.azimuth[after]!) / 2 - 260.2)).toBeLessThan(0.05);
  });

  it('is the same day turned over south of the equator: faces at 40° S in December mirror those at 40° N in June', () => {
    const north = faceBeams(midsummer(40), null);
    const south = faceBeams(makeSunTable([-83, -40], '06-21', '06-21', 2026), null);
    for (let facing = 0; facing < 360; facing += 15) {
      expect(Math.abs(south[(540 - facing) % 360]! - north[facing]!)).toBeLessThan(0.02);
    }
  });
});
