import { describe, expect, it } from 'vitest';
import { declination } from '../../src/sky/declination.ts';

/** ISO instant of a decimal year, counted as the model's own test values are (a year of 365 days). */
function instant(year: number): string {
  const whole = Math.floor(year);
  return new Date(Date.UTC(whole) + (year - whole) * 365 * 86_400_000).toISOString();
}

describe('declination', () => {
  // SOURCE: NOAA/NCEI and British Geological Survey, WMM2025 test values (WMM2025_TEST_VALUES): year, km, lat, lon, D°, dD/dt °/yr.
  it.each([
    [2025.0, 54, 82, 87, 54.89, 0.884574],
    [2025.5, 6, -36, -137, 20.28, 0.025348],
    [2025.5, 44, 33, -118, 11.1, -0.075717],
    [2026.0, 83, 86, -46, -30.61, 1.221388],
    [2026.5, 64, 10, 78, -1.53, 0.031231],
    [2027.0, 44, 22, 174, 6.46, -0.024375],
    [2027.5, 8, 62, 53, 19.39, 0.099601],
    [2027.5, 16, 66, -178, 0.37, -0.327448],
    [2028.0, 21, 6, -32, -14.34, 0.17796],
    [2028.5, 11, 34, 0, 1.57, 0.111314],
    [2029.5, 31, 13, -132, 9.04, -0.039071],
    [2029.5, 33, 17, 5, 0.89, 0.078642],
  ])('in %d at %d km, %d N %d E is %d° and moves %d° a year (± 0.01°)', (year, km, lat, lon, degrees, yearly) => {
    const answer = declination([lon, lat], instant(year), km);
    if (answer.degrees === null) throw new Error(answer.reason);
    expect(Math.abs(answer.degrees - degrees)).toBeLessThanOrEqual(0.01);
    expect(Math.abs(answer.yearly - yearly)).toBeLessThanOrEqual(0.01);
    expect(answer.model).toBe('World Magnetic Model 2025');
    expect(answer.until).toBe('2029-11-13');
  });

  it('gives a reason and no figure after the model’s end, before the first model and beside a magnetic pole', () => {
    expect(declination([-83, 42], '2029-12-01')).toMatchObject({
      degrees: null,
      reason: expect.stringContaining('2029-12-01'),
    });
    expect(declination([-83, 42], '1999-06-01').degrees).toBeNull();
    expect(declination([-154, 87], '2029-01-01').degrees).toBeNull();
  });

  it('still knows the yearly change on the model’s last day', () => {
    const answer = declination([-83, 42], '2029-11-12');
    expect(answer.degrees).not.toBeNull();
    expect('yearly' in answer && Number.isFinite(answer.yearly)).toBe(true);
  });

  it('refuses a text that is no date', () => expect(() => declination([0, 0], 'soon')).toThrow('not a date'));
});
