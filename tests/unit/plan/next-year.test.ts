/** A small planned trail with hand-made visits: what the review says of it and what next year's draft does. */
import { describe, expect, it } from 'vitest';
import { birdGuides } from '../../../src/birds/index.ts';
import { makeSuns } from '../../../src/criteria/suns.ts';
import { prepareGround } from '../../../src/ground/prepare.ts';
import { inventForPlan } from '../../../src/plan/invented-trail.ts';
import { changesOf, draftNextYear } from '../../../src/plan/next-year.ts';
import { reviewTrail } from '../../../src/plan/review-trail.ts';
import { makePlan } from '../../../src/plan.ts';
import { readSite } from '../../../src/site/read.ts';
import { isInvented } from '../../../src/visits/invent.ts';
import { makeVisit, type Visit } from '../../../src/visits/visit.ts';
import { smallSite } from '../../browser/sites.ts';

const site = readSite(smallSite, 'small').site!;
const plan = await makePlan(site, { proof: 'none' });
const ground = prepareGround(site);
const suns = makeSuns(ground, birdGuides);
const [first, second, third] = plan.boxes;

const see = (post: string, date: string, more: Partial<Visit>) =>
  makeVisit({ id: `${post} ${date}`, post, date, state: 'empty', bird: null, ...more });
const eggs = { count: 5, color: null, pattern: null, size: null };
const bird = 'eastern-bluebird';
/** The first box lost a nest to a predator each year, the second was never used, the third fledged. */
const visits = [2024, 2025, 2026].flatMap((year) => [
  see(first!.post, `${year}-04-10`, {}),
  see(first!.post, `${year}-05-01`, { state: 'eggs', bird, eggs }),
  see(first!.post, `${year}-05-08`, { state: 'failed', bird, trouble: ['predator-sign'] }),
  see(second!.post, `${year}-05-01`, {}),
  see(third!.post, `${year}-05-01`, { state: 'eggs', bird, eggs }),
  see(third!.post, `${year}-05-20`, { state: 'young', bird, young: 5 }),
  see(third!.post, `${year}-06-08`, { state: 'fledged', bird }),
]);
const trail = reviewTrail({ ground, suns, plan, visits, today: '2026-11-01', seed: 1 });
const changes = changesOf(trail, plan);
const of = (post: string) => changes.filter((one) => one.post === post).map((one) => one.kind);

describe('the review of a planned trail', () => {
  it('counts sites used and advises each box', () => {
    expect(trail.review.occupancy).toMatchObject({ part: 6, of: 9 });
    expect(trail.review.boxes.map((box) => box.post)).toEqual(plan.boxes.map((box) => box.post));
    expect(trail.review.told.kind).toBe('too-few');
    expect(trail.review.boxes[0]!.advice.map((one) => one.kind)).toContain('guard');
    expect(of(third!.post)).toEqual(['keep']);
    expect(['move', 'retire']).toContain(of(second!.post)[0]);
  });

  it('looks for better spots only for boxes that did badly, and keeps the spacing there', () => {
    expect(Object.keys(trail.moves)).not.toContain(third!.post);
    for (const [post, spot] of Object.entries(trail.moves)) {
      expect(spot.gain).toBeGreaterThanOrEqual(1);
      const at = ground.frame.toPlane(spot.position);
      expect(ground.forbidden(at)).toBeNull();
      for (const other of plan.boxes.filter((box) => box.post !== post))
        expect(Math.hypot(other.at.x - at.x, other.at.y - at.y)).toBeGreaterThan(91);
    }
  });

  it('lists a post with visits that is no longer in the plan', () => {
    const old = see('old-post', '2026-05-01', { box: 9 });
    const { review } = reviewTrail({ ground, suns, plan, visits: [...visits, old], today: '2026-11-01', seed: 1 });
    expect(review.boxes.at(-1)).toMatchObject({ post: 'old-post', number: 9 });
  });
});

describe('next year’s draft', () => {
  it('is one change of the site: boxes that stay stand, a guard is noted, the year is the next', () => {
    const { edit, refused } = draftNextYear(site, plan, trail, changes, 2027);
    expect(refused).toEqual([]);
    if ('refused' in edit) throw new Error(edit.refused);
    const post = (id: string) => edit.site.features.find((one) => one.id === id)!;
    expect(edit.site.settings.date).toBe('2027-06-15');
    expect(post(third!.post).properties.state).toBe('fixed');
    expect(edit.sentence).toContain('2027');
    expect(site.features.find((one) => one.id === third!.post)!.properties.state).toBe('candidate');
    if (of(first!.post).includes('guard')) expect(post(first!.post).properties.note).toBe('guard to be put up');
  });

  it('does only what is ticked, and refuses an empty draft', () => {
    const kept = changes.filter((one) => one.post === third!.post);
    const { edit } = draftNextYear(site, plan, trail, kept, 2027);
    if ('refused' in edit) throw new Error(edit.refused);
    expect(edit.site.features.filter((one) => one.properties.state === 'fixed').map((one) => one.id)).toEqual([
      third!.post,
    ]);
    expect('refused' in draftNextYear(site, plan, trail, [], 2027).edit).toBe(true);
  });
});

describe('made-up seasons of a plan', () => {
  it('end with the plan’s year, are the same for the same seed, and are all marked', () => {
    const made = inventForPlan(plan, 2, 7);
    expect(made).toEqual(inventForPlan(plan, 2, 7));
    expect(made.every(isInvented)).toBe(true);
    expect([...new Set(made.map((one) => one.date.slice(0, 4)))].sort()).toEqual(['2025', '2026']);
  });
});
