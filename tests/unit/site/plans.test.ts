/** Kept plans and the walking order in the file: read with care, written back, never a reason not to open it. */
import { describe, expect, it } from 'vitest';
import { keepPlan } from '../../../src/edits/keep-plan.ts';
import type { KeptPlan } from '../../../src/site/kept-plan.ts';
import { planSettings } from '../../../src/site/kept-plan.ts';
import { readSite } from '../../../src/site/read.ts';
import type { Site } from '../../../src/site/types.ts';
import { writeSite } from '../../../src/site/write.ts';
import { cleanFeatures, file } from './make.ts';

const read = (settings: object) =>
  readSite(file(cleanFeatures(), { name: 'Hill', region: 'europe', ...settings }), 'try');
const box = { number: 1, post: 'p', bird: 'great-tit', at: [-81, 41], score: 80, state: 'new' };
const plan = { name: 'A', score: 80, sites: 1, metres: 900, minutes: 20, proof: 'Proven.', settings: {}, boxes: [box] };

describe('kept plans in the file', () => {
  it('come back as they were written, with what a newer program added', () => {
    const { site, issues } = read({ plans: [{ ...plan, color: 'red' }] });
    expect(issues).toEqual([]);
    const [one] = site!.settings.plans;
    expect(one).toMatchObject({ ...plan, color: 'red', settings: { walkers: 1, minimumScore: 40, order: [] } });
    const again = readSite(writeSite({ ...site!, readFrom: undefined }), 'again');
    expect(again.issues).toEqual([]);
    expect(again.site!.settings).toEqual(site!.settings);
  });

  it('are written only where there are any, one a line', () => {
    const none = writeSite({ ...read({}).site!, readFrom: undefined });
    expect(none).not.toContain('"plans"');
    const text = writeSite({ ...read({ plans: [plan, { ...plan, name: 'B' }] }).site!, readFrom: undefined });
    expect(text.split('\n').filter((line) => line.startsWith('    {"name"'))).toHaveLength(2);
  });

  it.each([
    [{ ...plan, name: ' ' }, /has no name/],
    [{ ...plan, score: 'high' }, /gives no score/],
    [{ ...plan, metres: -1 }, /gives no metres/],
    [{ ...plan, settings: null }, /has no settings/],
    [{ ...plan, settings: { walkers: 0 } }, /walkers/],
    [{ ...plan, boxes: [{ ...box, at: [-81] }] }, /box that cannot be read, the 1\./],
    [{ ...plan, boxes: [box, { ...box, state: 'gone' }] }, /the 2\./],
    [{ ...plan, boxes: [{ ...box, at: [null, 41] }] }, /cannot be read/],
    [null, /has no name/],
  ])('one that cannot be read is named and left out: %j', (bad, sentence) => {
    const { site, issues } = read({ plans: [bad, plan, plan] });
    expect(issues.map(({ id }) => id)).toEqual(['plan-unreadable', 'plan-unreadable']);
    expect(issues[0]!.sentence).toMatch(sentence);
    expect(issues[1]!.sentence).toMatch(/name that is taken/);
    expect(site!.settings.plans.map(({ name }) => name)).toEqual(['A']);
  });

  it('an order keeps each id once and names the rest', () => {
    const { site, issues } = read({ order: ['a', 'b', 'a', null, 7] });
    expect(issues.map(({ id }) => id)).toEqual(['order-unreadable']);
    expect(issues[0]!.sentence).toContain('2 of the 5');
    expect(site!.settings.order).toEqual(['a', 'b', '7']);
  });
});

describe('keeping', () => {
  const site = read({}).site as Site;
  const kept = (name: string): KeptPlan => ({
    ...(plan as unknown as KeptPlan),
    name,
    settings: planSettings(site.settings),
  });

  it('replaces a plan of the same name in its place, and needs a name', () => {
    const names = ['A', 'B', ' A '].reduce((now, name) => {
      const done = keepPlan(now, { ...kept(name), score: name.length });
      if ('refused' in done) throw new Error(done.refused);
      return done.site;
    }, site);
    expect(names.settings.plans.map(({ name, score }) => [name, score])).toEqual([
      ['A', 3],
      ['B', 1],
    ]);
    expect(keepPlan(site, kept('  '))).toHaveProperty('refused');
  });

  it('stops at 20 and says so', () => {
    const plans = Array.from({ length: 20 }, (_, i) => kept(`Plan ${i}`));
    const full = { ...site, settings: { ...site.settings, plans } };
    expect(keepPlan(full, kept('one more'))).toEqual({ refused: expect.stringContaining('20 plans') });
    expect(keepPlan(full, kept('Plan 3'))).toHaveProperty('site');
  });
});
