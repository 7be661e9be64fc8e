/** What a setting is said to leave alone never reads it, and every other change makes scores or choice anew. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { prepare } from '../../../src/app/engine/prepared.ts';
import { scorePost } from '../../../src/criteria/card.ts';
import { makeSuns } from '../../../src/criteria/suns.ts';
import { prepareGround } from '../../../src/ground/prepare.ts';
import { candidatesOf } from '../../../src/placement/candidates.ts';
import { firstReader, sameForChoice, sameForScores } from '../../../src/plan/same-choice.ts';
import { scoredPost } from '../../../src/plan/scored-posts.ts';
import { type Stage, stageOf } from '../../../src/plan/stage.ts';
import { wantedBirds } from '../../../src/plan/wanted-birds.ts';
import { planOn } from '../../../src/plan.ts';
import { readSite } from '../../../src/site/read.ts';
import type { Site, SiteSettings } from '../../../src/site/types.ts';
import { loadSolver } from '../placement/posts.ts';

const demo = (name: string): Site => readSite(readFileSync(`demo-sites/${name}.geojson`, 'utf8'), name).site!;
const yard = demo('yard');

type Key = keyof SiteSettings;
type Reader = (typeof firstReader)[Key];
const keys = Object.keys(firstReader) as Key[];
const readBy = (...readers: Reader[]) => keys.filter((key) => readers.includes(firstReader[key]));

/** Another value for each setting; fileVersion has only one. */
const other: { readonly [K in Exclude<Key, 'fileVersion'>]-?: SiteSettings[K] } = {
  name: 'Renamed',
  units: yard.settings.units === 'us' ? 'metric' : 'us',
  region: 'europe',
  wanted: [{ bird: 'house-wren', sites: 1 }],
  stormFrom: 77,
  julyMaximum: 39,
  box: 'dark',
  start: 'elsewhere',
  direction: 'counterclockwise',
  date: '2031-03-01',
  suggestGrid: 33,
  reachOfPaths: 44,
  minimumScore: 61,
  walkLimit: 900,
  minutesPerBox: 9,
  walkers: 3,
  seed: 77,
  weights: { openness: 0.25 },
  figures: { 'openness.orchard': 0.5 },
  order: ['b', 'a'],
  plans: [{ name: 'Kept', score: 1, sites: 0, metres: 0, minutes: 0, proof: '', settings: yard.settings, boxes: [] }],
  extra: { note: 'theirs' },
};
const changes = Object.keys(other) as (keyof typeof other)[];
const changed = (site: Site, ...which: readonly (keyof typeof other)[]): Site => ({
  ...site,
  settings: { ...site.settings, ...Object.fromEntries(which.map((key) => [key, other[key]])) },
});
const stageAfter = (before: Site, site: Site): [Stage, Stage] => {
  const first = stageOf(before, undefined, prepare(before));
  return [first, stageOf(site, undefined, prepare(site))];
};

describe('a changed setting', () => {
  it.each(changes)('%s is another value here', (key) => {
    expect(other[key]).not.toEqual(yard.settings[key]);
  });

  it.each(changes)('%s makes anew what reads it, and nothing else', (key) => {
    const [first, next] = stageAfter({ ...yard }, changed(yard, key));
    const reader = firstReader[key];
    expect(next.suns === first.suns, 'scores kept').toBe(reader !== 'scores');
    expect(sameForScores(first.ground.site.settings, next.ground.site.settings)).toBe(reader !== 'scores');
    expect(sameForChoice(first, next), 'choice kept').toBe(reader === 'walk');
  });

  it('is told by value: a copied site has the choice of the first', () => {
    const [first, next] = stageAfter({ ...yard }, { ...yard, settings: structuredClone(yard.settings) });
    expect(next.ground.site.settings).not.toBe(first.ground.site.settings);
    expect(sameForChoice(first, next)).toBe(true);
  });

  it('keeps no choice under a walk limit, and none where a post or the land is another', () => {
    const limited = changed(yard, 'walkLimit');
    expect(sameForChoice(...stageAfter(limited, changed(limited, 'walkers')))).toBe(false);
    const at = yard.features.findIndex(({ kind }) => kind === 'post');
    const withProperty = (place: number, more: object): Site => ({
      ...yard,
      features: yard.features.map((f, k) => (k === place ? { ...f, properties: { ...f.properties, ...more } } : f)),
    });
    for (const more of [
      { state: 'fixed' },
      { state: 'retired' },
      { locked: true },
      { facing: 12 },
      { bird: 'house-wren' },
    ])
      expect(sameForChoice(...stageAfter(yard, withProperty(at, more))), JSON.stringify(more)).toBe(false);
    const land = yard.features.findIndex(({ kind }) => kind !== 'post');
    expect(sameForChoice(...stageAfter(yard, withProperty(land, { height: 7 })))).toBe(false);
  });

  it('that keeps the lattice of old makes the choice anew', () => {
    const site = changed(yard, 'suggestGrid');
    const framed = { ...site, settings: { ...site.settings, order: ['grid-0-0'] } };
    expect(sameForChoice(...stageAfter(site, framed))).toBe(false);
  });
});

/** The site, and the settings read of it since they were last taken. */
function watched(site: Site): { site: Site; taken: () => Key[] } {
  const read = new Set<Key>();
  const settings = new Proxy(site.settings, {
    get(target, key: Key) {
      read.add(key);
      return target[key];
    },
    ownKeys(target) {
      for (const key of keys) read.add(key);
      return Reflect.ownKeys(target);
    },
  });
  const taken = () => {
    const all = [...read];
    read.clear();
    return all;
  };
  return { site: { ...site, settings }, taken };
}

describe.each(['yard', 'swallow-meadow'])('on the %s demo', (name) => {
  const { site, taken } = watched(demo(name));

  it('scores and cards read no setting but theirs', () => {
    const candidates = candidatesOf(prepareGround(site));
    taken();
    const ground = prepareGround(site);
    const { guides } = wantedBirds(site);
    const birdsRead = taken().filter((key) => key !== 'wanted');
    const birds = [...guides.values()];
    const suns = makeSuns(ground, birds);
    for (const candidate of candidates.slice(0, 60)) {
      scoredPost(ground, candidate, birds, suns);
      scorePost(ground, candidate, birds[0]!, suns);
    }
    const read = taken();
    expect(read.length).toBeGreaterThan(5);
    expect(readBy('scores')).toEqual(expect.arrayContaining([...birdsRead, ...read]));
  });

  // Sureness copies all settings before it reads any: that it stays is shown by the planner's twin.
  it('choice and proof read no setting but theirs and the scores’', async () => {
    const stage = stageOf(site);
    let chosenBy: Key[] = [];
    taken();
    const onProgress = (part: string) => {
      if (part === 'walk') chosenBy = taken();
    };
    await planOn(stage, { loadSolver, onProgress });
    expect(chosenBy).toEqual(expect.arrayContaining(['seed', 'minimumScore', 'walkLimit']));
    expect(readBy('scores', 'choice')).toEqual(expect.arrayContaining(chosenBy));
  }, 60_000);
});
