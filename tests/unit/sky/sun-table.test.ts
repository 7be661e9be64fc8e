import { describe, expect, it } from 'vitest';
import { makeSunTable } from '../../../src/sky/make-sun-table.ts';

const ohio = makeSunTable([-83, 40], '04-01', '08-15', 2026);

/** Hours of one day of a table with the sun up. */
const hoursUp = (table: typeof ohio, day: number) =>
  table.altitude.reduce((sum, h, i) => sum + (table.day[i] === day && h > 0 ? table.step : 0), 0);

describe('the sun of a season', () => {
  it('samples every 7th day and thirty midpoints a day, which sum to exactly five hours', () => {
    expect(ohio.dates[0]).toBe('2026-04-01');
    expect(ohio.dates[1]).toBe('2026-04-08');
    expect(ohio.dates).toHaveLength(20);
    expect(ohio.rays.azimuth).toHaveLength(600);
    for (let day = 0; day < 20; day++) expect(hoursUp(ohio, day)).toBeCloseTo(5, 12);
    expect(Math.min(...ohio.hour)).toBeCloseTo(12 + 1 / 12, 12);
    expect(Math.max(...ohio.hour)).toBeCloseTo(17 - 1 / 12, 12);
    expect(ohio.note).toBeNull();
  });

  it.each([
    ['Ohio', -83, 40],
    ['the equator', 20, 0],
    ['New South Wales', 150, -33],
    ['Patagonia across noon', -70, -45],
    ['Tromsø', 19, 69.6],
    ['the date line', 180, 52],
  ])('has strictly rising azimuths over %s', (_, lon, lat) => {
    const { azimuth } = makeSunTable([lon, lat], '04-01', '08-15', 2026).rays;
    for (let i = 1; i < azimuth.length; i++) expect(azimuth[i]!).toBeGreaterThan(azimuth[i - 1]!);
    expect(azimuth[0]).toBeGreaterThanOrEqual(0);
    expect(azimuth.at(-1)).toBeLessThan(360.001);
  });

  it('keeps each ray with its own height, day and hour through the sorting', () => {
    for (const i of [0, 17, 300, 599]) {
      expect(ohio.rays.tangent[i]).toBeCloseTo(Math.tan((ohio.altitude[i]! * Math.PI) / 180), 12);
    }
    const byHour = [...ohio.hour].map((hour, i) => ({ hour, day: ohio.day[i], azimuth: ohio.rays.azimuth[i]! }));
    const firstDay = byHour.filter((ray) => ray.day === 0).sort((a, b) => a.hour - b.hour);
    const azimuths = firstDay.map((ray) => ray.azimuth);
    expect(azimuths).toEqual([...azimuths].sort((a, b) => a - b));
  });

  it('moves a northern season by half a year south of the equator, over New Year, and says so', () => {
    const south = makeSunTable([150, -33], '04-01', '08-15', 2026);
    expect(south.dates[0]).toBe('2026-10-01');
    expect(south.dates.at(-1)).toBe('2027-02-11');
    expect(south.note).toContain('half a year');
    const noon = south.rays.azimuth.filter((_, i) => south.hour[i]! < 12.2);
    expect(noon.every((a) => a < 30 || a > 300)).toBe(true);
  });

  it('handles a season that already runs over New Year and a day its month does not have', () => {
    expect(makeSunTable([0, 40], '11-20', '01-10', 2026).dates).toHaveLength(8);
    expect(makeSunTable([0, -40], '08-31', '09-05', 2026).dates[0]).toBe('2026-02-28');
  });

  it('notes polar summer and polar night; a day without sun carries no beam', () => {
    expect(makeSunTable([20, 70], '05-20', '07-20', 2026).note).toContain('Polar summer');
    const dark = makeSunTable([20, 75], '12-01', '12-20', 2026);
    expect(dark.note).toContain('Polar night');
    expect(Math.max(...dark.beam)).toBe(0);
    expect(dark.altitude.every((h) => h < 0)).toBe(true);
  });

  it('refuses a text that is no month and day', () => {
    expect(() => makeSunTable([0, 0], 'April', '08-01', 2026)).toThrow('not a month and day');
  });
});
