/** The Season alone in the page: what it says of three made-up years, its pages by the rules in every theme, and the draft. */

import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import '../../../src/app/elements/place-season/place-season.ts';
import { setSeason } from '../../../src/app/actions/season-review.ts';
import { useLog } from '../../../src/app/actions/visit-log.ts';
import { firstSeason, type SeasonPage } from '../../../src/app/season-state.ts';
import { visitLog } from '../../../src/app/storage/visit-log.ts';
import { themeNames } from '../../../src/app/theme.ts';
import { birdGuides } from '../../../src/birds/index.ts';
import { makeSuns } from '../../../src/criteria/suns.ts';
import { prepareGround } from '../../../src/ground/prepare.ts';
import { inventForPlan } from '../../../src/plan/invented-trail.ts';
import { reviewTrail, type TrailReview } from '../../../src/plan/review-trail.ts';
import { makePlan } from '../../../src/plan.ts';
import type { Plan } from '../../../src/plan-types.ts';
import { readSite } from '../../../src/site/read.ts';
import type { Visit } from '../../../src/visits/visit.ts';
import { type Alone, axeViolations, crowded, drawn, smallTargets, standAlone, until } from '../place.ts';
import { smallSite } from '../sites.ts';

const site = readSite(smallSite, 'test').site!;
let plan: Plan;
let trail: TrailReview;
let visits: readonly Visit[];
let alone: Alone;
const name = `test-season-${Date.now()}`;

beforeAll(async () => {
  plan = await makePlan(site, { proof: 'none' });
  visits = inventForPlan(plan, 3, 5);
  const ground = prepareGround(site);
  const suns = makeSuns(ground, birdGuides);
  trail = reviewTrail({ ground, suns, plan, visits, today: '2026-12-01', seed: 1 });
});
afterEach(() => {
  alone.remove();
  indexedDB.deleteDatabase(name);
});

async function open(at: SeasonPage, size: readonly [number, number], seasons = true): Promise<void> {
  await page.viewport(...size);
  const season = seasons
    ? {
        ...firstSeason,
        page: at,
        box: plan.boxes[1]!.post,
        invented: { siteId: 'test', visits },
        trail,
        trailOf: { plan, visits, year: null },
      }
    : firstSeason;
  alone = standAlone('mp-place-season', { siteId: 'test', site, plan, planOf: site, place: 'season', season });
  useLog(alone.store, visitLog(null, name));
  await until(() => alone.find('h1'), 'a heading');
  await drawn();
}
const phone = [390, 844] as const;
const desktop = [1000, 800] as const;
const states: readonly (readonly [string, SeasonPage, boolean, string])[] = [
  ['nothing yet', 'review', false, 'No visits yet'],
  ['the review', 'review', true, 'What told success from failure here'],
  ['one box', 'box', true, 'Rests on'],
  ['next year', 'draft', true, 'Plan of 2027'],
  ['the files', 'files', true, 'Take the season along'],
];

describe.each([
  ['a phone', phone, 56],
  ['a desktop', desktop, 44],
] as const)('the Season on %s', (_, size, tall) => {
  it.each(states)('%s', async (_state, at, seasons, words) => {
    await open(at, size, seasons);
    expect(alone.text()).toContain(words);
    expect(alone.all('h1')).toHaveLength(1);
    const found: string[] = [];
    for (const theme of themeNames) {
      alone.theme(theme);
      await drawn();
      found.push(...(await axeViolations()).map((one) => `${theme}: ${one}`));
    }
    expect(found).toEqual([]);
    expect(smallTargets(alone, tall)).toEqual([]);
    expect(crowded(alone, size[0])).toEqual([]);
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(size[0]);
  });
});

describe('what the Season says', () => {
  it('marks every page of a made-up season as invented', async () => {
    for (const at of ['review', 'box', 'draft', 'files'] as const) {
      await open(at, desktop);
      expect(alone.find('.stamp')?.textContent).toBe('INVENTED');
      alone.remove();
    }
    await open('review', desktop);
  });
  it('shows each box with its advice, and what the advice rests on', async () => {
    await open('review', desktop);
    expect(alone.all('mp-season-boxes li button, [data-box]').length).toBeGreaterThanOrEqual(3);
    for (const box of trail.review.boxes) {
      setSeason(alone.store, { page: 'box', box: box.post });
      await drawn();
      for (const advice of box.advice) expect(alone.text()).toContain(advice.sentence);
      expect(alone.all('mp-season-timeline').length).toBe(box.seasons.length);
    }
    expect(alone.text()).not.toContain("This project's own reading");
  });
  it('strikes a change from the draft and puts it back', async () => {
    await open('draft', desktop);
    const ticks = alone.all('input[type=checkbox]') as HTMLInputElement[];
    expect(ticks.length).toBeGreaterThan(0);
    const button = () => alone.find('button.filled')!.textContent!.trim();
    const before = button();
    ticks[0]!.click();
    await drawn();
    expect(button()).not.toBe(before);
    ticks[0]!.click();
    await drawn();
    expect(button()).toBe(before);
  });
  it('says that the season could not be looked back on, and that the visits are unchanged', async () => {
    await open('review', desktop);
    setSeason(alone.store, { trouble: 'out of memory' });
    await drawn();
    expect(alone.text()).toContain('out of memory. Your visits are unchanged.');
  });
});
