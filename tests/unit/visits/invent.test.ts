import { describe, expect, test } from 'vitest';
import { birdById, birdGuides } from '../../../src/birds/index.ts';
import { checkVisits } from '../../../src/visits/check-visits.ts';
import { inventSeasons, isInvented } from '../../../src/visits/invent.ts';
import { nestsFrom } from '../../../src/visits/nests.ts';

const boxes = Array.from({ length: 20 }, (_, i) => ({
  post: `p${i}`,
  number: i + 1,
  bird: birdById('eastern-bluebird'),
  score: i / 19,
}));
const plan = { boxes, firstYear: 2025, years: 2, seed: 5 };
const visits = inventSeasons(plan);

describe('invented seasons', () => {
  test('same seed, same visits; another seed, others', () => {
    expect(inventSeasons(plan)).toEqual(visits);
    expect(inventSeasons({ ...plan, seed: 6 })).not.toEqual(visits);
  });
  test('every one says that it is invented, and no walker is a real name', () => {
    expect(
      visits.every(
        (visit) => isInvented(visit) && /^Invented /.test(visit.note) && /^Invented walker \d$/.test(visit.observer),
      ),
    ).toBe(true);
    expect(new Set(visits.map((visit) => visit.id)).size).toBe(visits.length);
  });
  test('are visits without trouble', () => {
    const known = boxes.map(({ post, number }) => ({ post, number, since: '2025-01-01' }));
    expect(checkVisits(visits, { boxes: known, birds: birdGuides, today: '2027-01-01', zone: null })).toEqual([]);
  });
  test.each(birdGuides.filter((bird) => !bird.pest).map((bird) => [bird.id, bird] as const))(
    '%s: dates fit its own clock',
    (_, bird) => {
      const made = inventSeasons({ boxes: boxes.map((box) => ({ ...box, bird })), firstYear: 2026, years: 1, seed: 3 });
      const nests = nestsFrom(made, birdGuides, '2027-01-01');
      expect(nests.length).toBeGreaterThan(5);
      expect(nests.filter((nest) => nest.clock?.conflict)).toEqual([]);
    },
  );
  test('better boxes do better, and not when the effect is off', () => {
    const rate = (effect: number) => {
      const nests = nestsFrom(inventSeasons({ ...plan, years: 8, effect }), birdGuides, '2040-01-01');
      const share = (half: (n: number) => boolean) => {
        const own = nests.filter(
          (nest) => half(nest.box!) && (nest.outcome === 'fledged' || nest.outcome === 'failed'),
        );
        return own.filter((nest) => nest.outcome === 'fledged').length / own.length;
      };
      return share((number) => number > 10) - share((number) => number <= 10);
    };
    expect(rate(1)).toBeGreaterThan(0.15);
    expect(Math.abs(rate(0))).toBeLessThan(0.12);
  });
});
