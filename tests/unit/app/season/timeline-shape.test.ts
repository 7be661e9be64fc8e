import { describe, expect, it } from 'vitest';
import { timelineOf } from '../../../../src/app/elements/season-timeline/timeline-shape.ts';
import { birdGuides } from '../../../../src/birds/index.ts';
import { inventSeasons } from '../../../../src/visits/invent.ts';
import { nestsFrom } from '../../../../src/visits/nests.ts';

const bird = birdGuides.find((one) => one.id === 'eastern-bluebird')!;
const boxes = Array.from({ length: 40 }, (_, i) => ({ post: `p${i}`, number: i + 1, bird, score: (i % 10) / 10 }));
const visits = inventSeasons({ boxes, firstYear: 2025, years: 2, seed: 3 });
const nests = nestsFrom(visits, birdGuides, '2026-12-31');

describe('the timeline of a box', () => {
  it('draws each stretch forward, eggs before young, nothing past the day the end was seen', () => {
    let bars = 0;
    for (const { post } of boxes)
      for (const year of [2025, 2026]) {
        const own = nests.filter((nest) => nest.post === post);
        const line = timelineOf(
          year,
          own,
          visits.filter((one) => one.post === post),
        )!;
        expect(line.rows.length).toBe(own.filter((nest) => nest.year === year).length);
        for (const { stretches, end } of line.rows)
          for (const one of stretches) {
            bars++;
            expect(one.to).toBeGreaterThan(one.from);
            expect(one.from).toBeGreaterThanOrEqual(line.from);
            expect(one.to).toBeLessThanOrEqual(line.to);
            if (end !== null) expect(one.to).toBeLessThanOrEqual(end + 1);
          }
      }
    expect(bars).toBeGreaterThan(100);
  });
  it('is nothing for a year without a look', () => {
    expect(timelineOf(2030, nests, visits)).toBeNull();
  });
});
