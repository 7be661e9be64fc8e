import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { birdById, birdsOf } from '../../../src/birds/index.ts';
import { sources } from '../../../src/birds/sources.ts';
import { scorePost } from '../../../src/criteria/card.ts';
import { criteria } from '../../../src/criteria/index.ts';
import { quickScore } from '../../../src/criteria/quick-score.ts';
import { combine } from '../../../src/criteria/score.ts';
import { makeSuns } from '../../../src/criteria/suns.ts';
import { seededRandom } from '../../../src/geometry/random.ts';
import { prepareGround } from '../../../src/ground/prepare.ts';
import { readSite } from '../../../src/site/read.ts';
import { rectangle, type Shape } from '../ground/plane-site.ts';
import { make, post } from './fixture.ts';

const farm: Shape[] = [
  { kind: 'short-grass', rings: [rectangle(-200, -200, 120, 200)] },
  { kind: 'woods', rings: [rectangle(120, -200, 300, 200)] },
  { kind: 'brush', rings: [rectangle(-200, 150, 0, 200)] },
  { kind: 'building', rings: [rectangle(-150, -150, -130, -135)], properties: { name: 'Barn' } },
  {
    kind: 'fence',
    line: [
      [40, -200],
      [40, 100],
    ],
  },
  {
    kind: 'road',
    line: [
      [-200, -180],
      [120, -180],
    ],
  },
  {
    kind: 'overhead-wire',
    line: [
      [-100, -200],
      [-100, 200],
    ],
  },
  { kind: 'water', rings: [rectangle(-60, -120, -20, -90)] },
];
const made = make(farm, { units: 'us' });
const bluebird = birdById('eastern-bluebird');
const card = (x: number, y: number, bird = bluebird) => scorePost(made.ground, post(x, y), bird, made.suns);

describe('a card', () => {
  it('is the mean of its own rows, with all nine criteria in order', () => {
    const one = card(20, 0);
    expect(one.rows.map((row) => row.id)).toEqual(criteria.map((criterion) => criterion.id));
    expect(one.score).toBeCloseTo(combine(one.rows).score, 9);
    expect(one.judged).toBe(1);
  });

  it('gives the number of the quick score, on a farm and at 60 places of each demo site for five birds', () => {
    expect(quickScore(made.ground, post(20, 0), bluebird, made.suns)).toBe(card(20, 0).score);
    const random = seededRandom(5);
    const birds = ['eastern-bluebird', 'tree-swallow', 'house-wren', 'purple-martin', 'carolina-chickadee'].map(
      birdById,
    );
    for (const name of ['yard', 'park']) {
      const file = new URL(`../../../demo-sites/${name}.geojson`, import.meta.url);
      const { site } = readSite(readFileSync(file, 'utf8'), name);
      const ground = prepareGround(site!);
      const suns = makeSuns(ground, birds);
      const { min, max } = ground.bounds!;
      for (let i = 0; i < 60; i++) {
        const here = post(min.x + random() * (max.x - min.x), min.y + random() * (max.y - min.y));
        const bird = birds[i % birds.length]!;
        const whole = scorePost(ground, here, bird, suns, { who: false });
        expect(quickScore(ground, here, bird, suns)).toBe(whole.score);
        expect(Number.isFinite(whole.score) && whole.score >= 0 && whole.score <= 100).toBe(true);
        for (const row of whole.rows) {
          if (row.score !== null) expect(row.score >= 0 && row.score <= 1).toBe(true);
          expect(row.sentence).not.toMatch(/NaN|undefined|Infinity|\bsafe\b|predator-proof/);
        }
      }
    }
  });

  it('names the two weakest, lowest first', () => {
    const { rows, weakest } = card(20, 0);
    const scores = rows.filter((row) => row.score !== null && row.weight > 0).map((row) => row.score!);
    const [first, second] = weakest.map((id) => rows.find((row) => row.id === id)!.score!) as [number, number];
    expect([first, second]).toEqual([...scores].sort((a, b) => a - b).slice(0, 2));
  });

  it('says why a hard rule refuses a post, and scores it 0', () => {
    const swallow = card(100, 0, birdById('tree-swallow'));
    expect(swallow.refused).toHaveLength(1);
    expect(swallow.refused[0]).toContain('100 ft from the woods edge is the least for Tree Swallow');
    expect(swallow.score).toBe(0);
  });

  it('ranks every bird of the region by its own score with the hole it needs', () => {
    const { who } = card(20, 0);
    expect(who).toHaveLength(birdsOf('eastern-north-america').length);
    expect(who.map((one) => one.score)).toEqual(who.map((one) => one.score).sort((a, b) => b - a));
    const own = who.find((one) => one.bird === 'eastern-bluebird')!;
    expect(own.score).toBeCloseTo(card(20, 0).score, 9);
    expect(own.hole).toBe('1 1/2 in');
  });

  it('puts a chickadee, not a bluebird, first in a wooded yard', () => {
    const yard = make([
      { kind: 'woods', rings: [rectangle(-200, -200, 200, 200), rectangle(-12, -12, 25, 25)] },
      { kind: 'short-grass', rings: [rectangle(-12, -12, 25, 25)] },
    ]);
    const { who } = scorePost(yard.ground, post(-8, 0), bluebird, yard.suns);
    const place = (id: string) => who.findIndex((one) => one.bird === id);
    expect(place('carolina-chickadee')).toBeLessThan(place('eastern-bluebird'));
    expect(who[0]!.score).toBeGreaterThan(50);
  });

  it('flags a road in front, a wire, sprayed and grazed ground, and ground not drawn', () => {
    const flagged = scorePost(made.ground, post(-95, -165, { facing: 180 }), bluebird, made.suns, {
      who: false,
    }).flags.join('\n');
    expect(flagged).toContain('Road 49 ft in front of the hole');
    expect(flagged).toContain('Overhead wire 16 ft off');
    expect(card(-190, 0).flags.join('\n')).toMatch(/\d+ % of the 131 ft around is not drawn/);
    const turned = scorePost(made.ground, post(-95, -165, { facing: 0 }), bluebird, made.suns, {
      who: false,
    }).flags.join('\n');
    expect(turned).not.toContain('in front of the hole');
    const marked = make([
      { kind: 'crop', rings: [rectangle(10, -100, 100, 100)], properties: { sprayed: true } },
      { kind: 'short-grass', rings: [rectangle(-100, -100, 10, 100)], properties: { grazed: true } },
    ]);
    const flags = scorePost(marked.ground, post(), bluebird, marked.suns, { who: false }).flags.join('\n');
    expect(flags).toContain('Ground marked as sprayed 10 m off');
    expect(flags).toContain('animals rub on posts');
  });

  it('says so where no box may stand', () => {
    expect(card(-40, -100).flags[0]).toBe('No box may stand here: in water.');
  });

  it('judges nothing on a site with nothing drawn, and still advises a facing', () => {
    const bare = make([]);
    const one = scorePost(bare.ground, post(), bluebird, bare.suns);
    expect(one.rows.every((row) => row.score === null)).toBe(true);
    expect(one).toMatchObject({ score: 0, judged: 0 });
    expect(one.rows.find((row) => row.id === 'entrance')!.sentence).toContain('by the latitude alone');
    expect(one.facing.best).toBeGreaterThan(0);
    expect(one.weakest).toEqual([]);
    expect(one.unmapped).toBe(1);
    expect(one.sun.hours).toBeCloseTo(5, 9);
  });

  it('uses weights and heights a person set', () => {
    const heavy = make(farm, { weights: { openness: 9, brush: 0 } });
    const rows = scorePost(heavy.ground, post(20, 0, { holeHeight: 3 }), bluebird, heavy.suns).rows;
    expect(rows[0]!.weight).toBe(9);
    expect(rows.find((row) => row.id === 'brush')!.weight).toBe(0);
  });

  it('scores a bird of another region when it was asked for, and says so when it was not', () => {
    const tit = birdById('great-tit');
    const winter = { ...tit, season: { ...tit.season, from: '01-01', to: '01-31' } };
    expect(() => scorePost(made.ground, post(), winter, made.suns)).toThrow('no sun for great-tit');
    const suns = makeSuns(made.ground, [tit]);
    expect(scorePost(made.ground, post(20, 0), tit, suns).score).toBeGreaterThanOrEqual(0);
  });
});

describe('the words of a card', () => {
  it('promise nothing and name no temperature, for every bird of every region, in both units', () => {
    for (const region of ['eastern-north-america', 'western-north-america', 'europe'] as const) {
      for (const units of ['us', 'metric'] as const) {
        const there = make(farm, { region, units, box: 'dark', julyMaximum: 35, stormFrom: 250 });
        for (const bird of there.suns.birds) {
          const one = scorePost(there.ground, post(60, 20, { facing: 200 }), bird, there.suns, { who: false });
          const texts = [
            ...one.rows.map((row) => row.sentence),
            ...one.flags,
            ...one.refused,
            one.facing.sentence,
            one.sun.sentence,
            ...one.sun.help,
          ];
          for (const text of texts) {
            expect(text).not.toMatch(/NaN|undefined|Infinity|\bsafe\b|predator-proof|°\s?[CF]\b|null/);
            expect(text.length).toBeGreaterThan(10);
          }
          const other = units === 'us' ? /\d (m|km)\b/ : /\d (ft|yd|miles)\b/;
          for (const { sentence } of one.rows) expect(sentence).not.toMatch(other);
        }
      }
    }
  });
});

describe('the list of criteria', () => {
  it('gives every figure a unit, a source that is known, and a range that holds it', () => {
    const known = new Set(sources.map((source) => source.key));
    for (const { id, weight, settings } of criteria) {
      for (const [name, figure] of Object.entries({ weight, ...settings })) {
        expect(figure.unit, `${id}.${name}`).not.toBe('');
        expect(figure.source.length, `${id}.${name}`).toBeGreaterThan(0);
        for (const key of figure.source) expect(known.has(key as never), `${id}.${name}: ${key}`).toBe(true);
        if (figure.range)
          expect(figure.value >= figure.range[0] && figure.value <= figure.range[1], `${id}.${name}`).toBe(true);
      }
    }
  });

  it('names only known sources in the rows of a card', () => {
    const known = new Set(sources.map((source) => source.key));
    for (const row of card(20, 0).rows)
      for (const key of row.sources) expect(known.has(key as never), `${row.id}: ${key}`).toBe(true);
  });
});
