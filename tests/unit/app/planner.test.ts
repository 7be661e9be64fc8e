/** A planner that answered before gives the plan one that never did would give, and leaves the choice alone where it may. */
import { readFileSync } from 'node:fs';
import { describe, expect, it, vi } from 'vitest';
import { makePlanner } from '../../../src/app/engine/calls/plan.ts';
import { changeBetween, changedSite } from '../../../src/app/engine/site-change.ts';
import { keepPlan } from '../../../src/edits/keep-plan.ts';
import { movePost } from '../../../src/edits/move-post.ts';
import { numberByWalk, numberPost } from '../../../src/edits/number-post.ts';
import { setPost } from '../../../src/edits/set-post.ts';
import { setSetting } from '../../../src/edits/set-setting.ts';
import { seededRandom } from '../../../src/geometry/random.ts';
import { keptPlan } from '../../../src/plan/kept.ts';
import type { Plan } from '../../../src/plan-types.ts';
import { readSite } from '../../../src/site/read.ts';
import type { Site } from '../../../src/site/types.ts';
import { done } from '../edits/make.ts';

vi.mock('../../../src/app/engine/load-solver.ts', () => import('../placement/posts.ts'));

const demo = (name: string): Site => readSite(readFileSync(`demo-sites/${name}.geojson`, 'utf8'), name).site!;

/** A planner's side of the house: it hears changes of a site as the worker does, and says how often it chose. */
function listener(first: Site) {
  const planner = makePlanner();
  let [sent, here] = [first, structuredClone(first)];
  let chosen = 0;
  return async (site: Site, stop = new AbortController()): Promise<{ plan: Plan; chose: boolean }> => {
    here = changedSite(here, structuredClone(changeBetween(sent, site)));
    sent = site;
    const before = chosen;
    const partial = () => void chosen++;
    const plan = await planner({ site: here }, { progress: () => undefined, partial, signal: stop.signal });
    return { plan, chose: chosen > before };
  };
}

/** The plan of somebody who never saw the site before; how long a proof took is not part of it. */
const timeless = (plan: Plan) => ({ ...plan, proof: { ...plan.proof, seconds: 0 } });
const afresh = async (site: Site) => (await listener(site)(site)).plan;

type Change = (site: Site, plan: Plan, random: () => number) => Site;
const walkOf = (plan: Plan) => plan.boxes.map(({ post }) => post);
const some = <T>(list: readonly T[], random: () => number): T => list[Math.floor(random() * list.length)]!;
const postsOf = (site: Site) => site.features.filter(({ kind }) => kind === 'post');

/** Edits that leave the choice alone, and edits that do not; by name. */
const walks: Readonly<Record<string, Change>> = {
  number: (site, plan, random) => {
    const walk = walkOf(plan);
    const oneWalker = done(setSetting(site, 'walkers', 1));
    return done(numberPost(oneWalker, walk, some(walk, random), 1 + Math.floor(random() * walk.length)));
  },
  'number by walk': (site) => (site.settings.order.length > 0 ? done(numberByWalk(site)) : site),
  direction: (site, _, random) => done(setSetting(site, 'direction', some(['clockwise', 'counterclockwise'], random))),
  walkers: (site, _, random) => done(setSetting(site, 'walkers', some([1, 2, 3], random))),
  minutes: (site, _, random) => done(setSetting(site, 'minutesPerBox', Math.floor(random() * 20))),
  name: (site, _, random) => done(setSetting(site, 'name', `Name ${random()}`)),
  keep: (site, plan, random) => done(keepPlan(site, keptPlan(site, plan, `Plan ${random()}`))),
  start: (site, _, random) => done(setSetting(site, 'start', some(['nowhere', 'back-door', 'gate'], random))),
};
const choices: Readonly<Record<string, Change>> = {
  seed: (site, _, random) => done(setSetting(site, 'seed', Math.floor(random() * 1000))),
  minimum: (site, _, random) => done(setSetting(site, 'minimumScore', Math.floor(random() * 60))),
  storm: (site, _, random) => done(setSetting(site, 'stormFrom', Math.floor(random() * 360))),
  box: (site, _, random) => done(setSetting(site, 'box', some(['pale', 'natural', 'dark'], random))),
  units: (site, _, random) => done(setSetting(site, 'units', some(['us', 'metric'], random))),
  limit: (site, _, random) => done(setSetting(site, 'walkLimit', some([150, 900, null, null], random))),
  weights: (site, _, random) => done(setSetting(site, 'weights', { openness: random() })),
  wanted: (site, _, random) => {
    const bluebirds = { bird: 'eastern-bluebird', sites: 1, paired: random() < 0.7 };
    return done(setSetting(site, 'wanted', [bluebirds, { bird: 'black-capped-chickadee', sites: 1 }]));
  },
  lock: (site, _, random) =>
    done(setPost(site, some(postsOf(site), random).id, { locked: some([true, null], random) })),
  retire: (site, _, random) =>
    done(setPost(site, some(postsOf(site), random).id, { state: some(['retired', 'candidate'], random) })),
  move: (site, _, random) => {
    const post = some(postsOf(site), random);
    const [lon = 0, lat = 0] = post.geometry?.type === 'Point' ? post.geometry.coordinates : [];
    return done(movePost(site, post.id, [lon + (random() - 0.5) * 1e-4, lat + (random() - 0.5) * 1e-4]));
  },
};

describe('a planner that answered before', () => {
  it.each([1, 2])(
    'gives the plans made from scratch, edits in random order, seed %i',
    async (seed) => {
      const random = seededRandom(seed);
      let site = demo('yard');
      const ask = listener(site);
      let { plan } = await ask(site);
      const answers: { what: string; site: Site; plan: Plan; chose: boolean }[] = [];
      for (let i = 0; i < 16; i++) {
        const [what, change] = some(Object.entries(random() < 0.6 ? walks : choices), random);
        site = change(site, plan, random);
        answers.push({ what, site, ...(await ask(site)) });
        plan = answers.at(-1)!.plan;
      }
      // Afterwards: all planners of a thread share the land prepared last, and would wake each other.
      for (const [i, answer] of answers.entries()) {
        const story = answers.slice(0, i + 1).map(({ what, chose }) => `${what}${chose ? '' : ' (kept)'}`);
        expect(timeless(answer.plan), story.join(', ')).toEqual(timeless(await afresh(answer.site)));
      }
      expect(answers.filter(({ chose }) => !chose).length).toBeGreaterThan(3);
    },
    60_000,
  );

  it('does not choose again after edits that the choice does not read', async () => {
    let site = demo('yard');
    const ask = listener(site);
    const first = await ask(site);
    expect(first.chose).toBe(true);
    expect(first.plan.sureness).not.toBeNull();
    for (const [what, change] of Object.entries(walks)) {
      site = change(site, first.plan, seededRandom(4));
      expect((await ask(site)).chose, what).toBe(false);
    }
  });

  it('chooses again where the last plan was stopped', async () => {
    const site = demo('yard');
    const ask = listener(site);
    const stop = new AbortController();
    stop.abort();
    await ask(site, stop);
    expect((await ask(done(setSetting(site, 'walkers', 2)))).chose).toBe(true);
  });

  it('chooses again at every edit under a walk limit', async () => {
    const site = done(setSetting(demo('yard'), 'walkLimit', 400));
    const ask = listener(site);
    await ask(site);
    const turned = done(setSetting(site, 'direction', 'clockwise'));
    const next = await ask(turned);
    expect(next.chose).toBe(true);
    expect(timeless(next.plan)).toEqual(timeless(await afresh(turned)));
  });
});
