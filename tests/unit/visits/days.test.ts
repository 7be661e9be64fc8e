import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, dateOf, dayOf, dayOrNull, daysBetween, spanWords } from '../../../src/visits/days.ts';

describe('days', () => {
  test.each([
    '2026-02-29',
    '2026-13-01',
    '2026-1-1',
    '',
    'May 1',
    '2026-05-01T00:00',
    '2026-04-31',
    '0026-05-01',
    '9999-12-31',
  ])('“%s” is no date', (text) => {
    expect(dayOrNull(text)).toBeNull();
    expect(() => dayOf(text)).toThrow(/not a date/);
  });
  test('leap day and month ends', () => {
    expect(addDays('2024-02-28', 1)).toBe('2024-02-29');
    expect(addDays('2026-02-28', 1)).toBe('2026-03-01');
    expect(daysBetween('2026-05-01', '2026-06-03')).toBe(33);
    expect(daysBetween('2026-06-03', '2026-05-01')).toBe(-33);
  });
  test('there and back for any day', () => {
    fc.assert(
      fc.property(fc.integer({ min: -20_000, max: 40_000 }), (day) => dayOf(dateOf(day)) === day),
      { seed: 1 },
    );
  });
  test.each([
    [{ earliest: '2026-05-18', latest: '2026-05-19' }, 'May 18–19'],
    [{ earliest: '2026-05-30', latest: '2026-06-02' }, 'May 30–Jun 2'],
    [{ earliest: '2026-05-30', latest: '2026-05-30' }, 'May 30'],
    [{ earliest: '2025-05-30', latest: '2026-05-31' }, 'May 30–May 31'],
  ])('%o is %s', (span, words) => expect(spanWords(span)).toBe(words));
});
