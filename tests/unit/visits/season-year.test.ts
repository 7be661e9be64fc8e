/** South of the equator birds nest over New Year: no season is split by it. */
import { describe, expect, it } from 'vitest';
import { birdById, birdGuides } from '../../../src/birds/index.ts';
import { seasonDates } from '../../../src/sky/season-dates.ts';
import { dueOfTrail } from '../../../src/visits/due-boxes.ts';
import { inventSeasons } from '../../../src/visits/invent.ts';
import { nestsFrom } from '../../../src/visits/nests.ts';
import { type ReviewBox, reviewSeason } from '../../../src/visits/review.ts';
import { isSouth, localSeason, seasonOf, seasonWords } from '../../../src/visits/season-year.ts';
import { makeVisit } from '../../../src/visits/visit.ts';

const eggs = { count: 5, color: null, pattern: null, size: null };
const bird = 'eastern-bluebird';
const seen = (date: string, state: 'eggs' | 'young' | 'empty' | 'fledged') =>
  makeVisit({ id: date, post: 'p', date, state, bird, ...(state === 'eggs' ? { eggs } : {}) });
const overNewYear = [
  seen('2025-12-20', 'eggs'),
  seen('2025-12-29', 'eggs'),
  seen('2026-01-10', 'young'),
  seen('2026-01-30', 'fledged'),
];

describe('the season of a day', () => {
  it.each([
    ['2026-01-10', false, 2026, '2026'],
    ['2026-01-10', true, 2025, '2025–26'],
    ['2026-06-30', true, 2025, '2025–26'],
    ['2026-07-01', true, 2026, '2026–27'],
    ['1999-12-31', true, 1999, '1999–00'],
  ])('%s, south %s: %i, written %s', (date, south, season, words) => {
    expect(seasonOf(date, south)).toBe(season);
    expect(seasonWords(season, south)).toBe(words);
  });
  it('knows the south by the place', () => {
    expect([isSouth([145, -37]), isSouth([-84, 40]), isSouth(null), isSouth(undefined)]).toEqual([
      true,
      false,
      false,
      false,
    ]);
  });
  it('moves a bird’s season by half a year, as the sun’s season is moved', () => {
    for (const guide of birdGuides) {
      const { from } = localSeason(guide.season, true);
      expect(seasonDates(-37, guide.season.from, guide.season.to, 2026).dates[0]).toBe(`2026-${from}`);
      expect(localSeason(guide.season, false)).toEqual({ from: guide.season.from, to: guide.season.to });
    }
    expect(localSeason({ from: '08-31', to: '12-01' }, true)).toEqual({ from: '02-28', to: '06-01' });
  });
});

describe('a trail south of the equator', () => {
  it('counts two broods around New Year as two of one season', () => {
    const second = [seen('2026-02-10', 'eggs'), seen('2026-03-10', 'young'), seen('2026-04-01', 'fledged')];
    const nests = nestsFrom([...overNewYear, ...second], birdGuides, '2026-08-01', true);
    expect(nests.map(({ year, attempt }) => [year, attempt])).toEqual([
      [2025, 1],
      [2025, 2],
    ]);
  });
  it('is one season in the review, where the calendar would make two', () => {
    const box: ReviewBox = { post: 'p', number: 1, site: 'p', bird, scores: {}, guarded: null, better: null };
    const ask = { boxes: [box], visits: overNewYear, birds: birdGuides, today: '2026-08-01', seed: 1 };
    expect(reviewSeason({ ...ask, south: true })).toMatchObject({ years: [2025], occupancy: { part: 1, of: 1 } });
    expect(reviewSeason(ask)).toMatchObject({ years: [2025, 2026], occupancy: { part: 1, of: 2 } });
  });
  it('is looked at weekly from October to February and rests over the southern winter', () => {
    const due = (today: string) =>
      dueOfTrail(
        [{ post: 'p', number: 1, bird }],
        [makeVisit({ id: 'x', post: 'p', date: today, state: 'empty' })],
        birdGuides,
        today,
        'new',
        true,
      )[0]!.due;
    expect(due('2025-11-10')).toBe('2025-11-17');
    expect(due('2026-01-10')).toBe('2026-01-17');
    // The guide's season Apr 1–Aug 15 is Oct 1–Feb 15 here: last weekly look three weeks later, first one four weeks before.
    expect(due('2026-03-10')).toBe('2026-09-03');
    expect(due('2026-06-10')).toBe('2026-09-03');
  });
  it('gets made-up seasons in its own summer, every nest whole', () => {
    const boxes = [{ post: 'p', number: 1, bird: birdById(bird), score: 0.9 }];
    const visits = inventSeasons({ boxes, firstYear: 2024, years: 2, seed: 4, south: true });
    const months = new Set(visits.map((visit) => Number(visit.date.slice(5, 7))));
    expect([...months].filter((month) => month >= 4 && month <= 9)).toEqual([]);
    expect(months.has(12) && months.has(1)).toBe(true);
    expect([...new Set(visits.map((visit) => seasonOf(visit.date, true)))]).toEqual([2024, 2025]);
  });
});
