/** The demo sites through the whole house: rules hold, numbers follow the walk, every score can be explained. */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { birdById } from '../../../src/birds/index.ts';
import { spacingNeeded } from '../../../src/criteria/spacing.ts';
import { distance } from '../../../src/geometry/point.ts';
import { makePlan } from '../../../src/plan.ts';
import type { Plan } from '../../../src/plan-types.ts';
import { readSite } from '../../../src/site/read.ts';
import type { Site } from '../../../src/site/types.ts';

const demos = JSON.parse(readFileSync('demo-sites/index.json', 'utf8')) as { id: string; file: string }[];

function open(file: string): Site {
  const { site, issues } = readSite(readFileSync(`demo-sites/${file}`, 'utf8'), file);
  expect(issues.filter((issue) => issue.severity !== 'note')).toEqual([]);
  return site!;
}

describe.each(demos)('$id', ({ id, file }) => {
  let site: Site;
  let plan: Plan;
  beforeAll(async () => {
    site = open(file);
    plan = await makePlan(site, { proof: 'none' });
  });

  it('places the boxes asked for', () => {
    const asked = site.settings.wanted.reduce((sum, wish) => sum + wish.sites, 0);
    expect(plan.sites).toBe(asked);
    expect(plan.issues.filter((issue) => issue.severity === 'error')).toEqual([]);
    if (id === 'park') expect(plan.boxes.length).toBe(40);
    if (id === 'yard') expect(plan.boxes.length).toBe(2);
    if (id === 'swallow-meadow') expect(plan.boxes.filter((box) => box.pairedWith !== null).length).toBeGreaterThan(6);
  });

  it('keeps every spacing between sites', () => {
    for (const a of plan.boxes)
      for (const b of plan.boxes) {
        if (a.number >= b.number || a.pairedWith === b.number) continue;
        if (a.state === 'standing' && b.state === 'standing') continue;
        const { metres } = spacingNeeded(birdById(a.bird), birdById(b.bird));
        expect(distance(a.at, b.at), `boxes ${a.number} and ${b.number}`).toBeGreaterThanOrEqual(metres - 0.005);
      }
  });

  it('numbers the boxes along the walk', () => {
    expect(plan.boxes.map((box) => box.number)).toEqual(plan.boxes.map((_, index) => index + 1));
    expect(plan.rounds.flatMap((round) => round.boxes)).toEqual(plan.boxes.map((box) => box.number));
    for (const round of plan.rounds) {
      expect(round.legs.length).toBe(round.boxes.length + 1);
      expect(round.metres).toBeCloseTo(
        round.legs.reduce((sum, leg) => sum + leg.metres, 0),
        6,
      );
    }
  });

  it('explains every score', () => {
    for (const { card } of plan.boxes) {
      expect(card.score).toBeGreaterThan(0);
      expect(card.score).toBeLessThanOrEqual(100);
      expect(card.refused).toEqual([]);
      expect(card.weakest.length).toBe(2);
      for (const row of card.rows) {
        expect(row.sentence.length, row.id).toBeGreaterThan(8);
        expect(row.sentence).not.toMatch(/NaN|undefined|null|\bsafe\b|predator-proof|°[CF]/);
        if (row.score !== null) expect(row.sources.length, row.id).toBeGreaterThan(0);
      }
      expect(card.who[0].score).toBeGreaterThanOrEqual(card.who[1].score);
    }
  });

  it('says why every other post was left out', () => {
    for (const out of plan.leftOut) {
      expect(out.sentence).not.toMatch(/NaN|undefined|null/);
      if (out.code === 'too-close') expect(out.becauseOf).not.toBeNull();
    }
  });

  it('is the same plan again', async () => {
    const again = await makePlan(site, { proof: 'none' });
    expect(again.boxes.map((box) => box.post)).toEqual(plan.boxes.map((box) => box.post));
  });
});

describe('the park demo', () => {
  it('is as large as it says', () => {
    const site = open('park.geojson');
    const areas = site.features.filter((f) => f.geometry?.type === 'Polygon');
    const vertices = areas.flatMap((f) => (f.geometry?.type === 'Polygon' ? f.geometry.coordinates.flat() : []));
    expect(areas.length).toBeGreaterThanOrEqual(120);
    expect(vertices.length).toBeGreaterThanOrEqual(5000);
  });
});
