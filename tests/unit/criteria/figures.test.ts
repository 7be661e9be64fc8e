import { describe, expect, it } from 'vitest';
import type { BirdGuide } from '../../../src/birds/guide.ts';
import { birdById } from '../../../src/birds/index.ts';
import { birdFor } from '../../../src/criteria/bird-for.ts';
import { bend, plateau, stretch, wantsText } from '../../../src/criteria/curve-shape.ts';
import { settingsFor } from '../../../src/criteria/figures.ts';
import { criteria } from '../../../src/criteria/index.ts';
import { openness } from '../../../src/criteria/openness.ts';
import { quickScore } from '../../../src/criteria/quick-score.ts';
import { weightOf } from '../../../src/criteria/score.ts';
import { measurePost, trialScore, trialUnder } from '../../../src/criteria/trial.ts';
import { bearingText, lengthText, percentText, spanText } from '../../../src/criteria/units.ts';
import { defaultSettings } from '../../../src/site/defaults.ts';
import type { SiteSettings } from '../../../src/site/types.ts';
import { rectangle } from '../ground/plane-site.ts';
import { make, post } from './fixture.ts';

const site = (figures: Record<string, number> = {}): SiteSettings => ({ ...defaultSettings, name: 'Test', figures });

describe('units', () => {
  it.each([
    [0, '0 ft', '0 m'],
    [1.524, '5 ft', '1.5 m'],
    [46, '151 ft', '46 m'],
    [91.44, '100 yd', '91 m'],
    [293, '320 yd', '293 m'],
    [2000, '1.2 miles', '2.0 km'],
  ])('%d m is %s or %s', (metres, us, metric) => {
    expect(lengthText(metres, 'us')).toBe(us);
    expect(lengthText(metres, 'metric')).toBe(metric);
  });

  it('keeps one unit in a comparison', () => {
    expect(lengthText(36.576, 'us', 91.44)).toBe('40 yd');
    expect(spanText(7.62, 30.48, 'us')).toBe('25–100 ft');
    expect(percentText(0.914)).toBe('91 %');
    expect(bearingText(-0.4)).toBe('0°');
    expect(bearingText(359.7)).toBe('0°');
  });
});

describe('figures', () => {
  it('are the default until a person sets them; nonsense is passed over', () => {
    expect(settingsFor(openness, site()).radius).toBe(40);
    expect(settingsFor(openness, site({ 'openness.radius': 50 })).radius).toBe(50);
    expect(settingsFor(openness, site({ 'openness.radius': Number.NaN })).radius).toBe(40);
    expect(settingsFor(openness, site({ 'openness.radius': -5 })).radius).toBe(20);
  });

  it('of a bird are replaced by path, in a copy, and left alone where the path leads nowhere', () => {
    const bird = birdById('eastern-bluebird');
    expect(birdFor(bird, site())).toBe(bird);
    expect(birdFor(bird, site({ 'tree-swallow.spacing.same': 1 }))).toBe(bird);
    expect(birdFor(bird, site({ 'eastern-bluebird.no.such.thing': 1, 'eastern-bluebird.name': 3 }))).toBe(bird);
    const mine = birdFor(
      bird,
      site({ 'eastern-bluebird.spacing.same': 120, 'eastern-bluebird.habitat.woodsEdge.1.0': 60 }),
    );
    expect(mine.spacing.same.value).toBe(120);
    expect(mine.habitat.woodsEdge.value[1]).toEqual([60, 1]);
    expect(bird.spacing.same.value).toBeCloseTo(91.44, 9);
    expect(bird.habitat.woodsEdge.value[1]![0]).toBe(45);
  });
});

describe('curves', () => {
  const edge = [
    [-60, 0.4],
    [0, 1],
    [20, 1],
    [80, 0.3],
  ] as const;
  const open = [
    [15, 0],
    [45, 1],
  ] as const;

  it('say what they ask for', () => {
    expect(plateau(open)).toEqual([45, Number.POSITIVE_INFINITY]);
    expect(wantsText(open, 'metric', 46)).toBe('wants 45 m');
    expect(wantsText(edge, 'metric', 5)).toBe('wants 0–20 m');
    expect(
      wantsText(
        [
          [-60, 1],
          [0, 1],
          [15, 0.8],
        ],
        'metric',
        5,
      ),
    ).toBe('wants to be inside');
    expect(
      wantsText(
        [
          [0, 1],
          [15, 1],
          [60, 0],
        ],
        'metric',
        5,
      ),
    ).toBe('wants at most 15 m');
    expect(wantsText([[0, 1]], 'metric', 5)).toBe('any distance will do');
  });

  it('bend and stretch and stay strictly rising in raw', () => {
    expect(bend(open, 10, 30)).toEqual([
      [10, 0],
      [30, 1],
    ]);
    expect(stretch(open, 2)).toEqual([
      [30, 0],
      [90, 1],
    ]);
    const bent = bend(
      [
        [0, 0],
        [10, 1],
        [20, 0.5],
      ],
      0,
      40,
    );
    for (let i = 1; i < bent.length; i++) expect(bent[i]![0]).toBeGreaterThan(bent[i - 1]![0]);
    expect(bend(open, 30, 30)).toBe(open);
  });
});

/** A trial that changes nothing. */
const plain = (bird: BirdGuide, settings: SiteSettings) => ({
  bird,
  site: settings,
  weights: Object.fromEntries(criteria.map((criterion) => [criterion.id, weightOf(criterion, settings, bird)])),
});

describe('trial scores', () => {
  const { ground, suns } = make([
    { kind: 'short-grass', rings: [rectangle(-200, -200, 30, 200)] },
    { kind: 'woods', rings: [rectangle(30, -200, 200, 200)] },
  ]);
  const bird = birdById('eastern-bluebird');
  const measured = measurePost(ground, post(), bird, suns);

  it('with nothing changed are the score itself', () => {
    const same = trialScore(measured, plain(bird, ground.site.settings));
    const middle = trialUnder(bird, ground.site.settings, { weight: {}, knee: { openness: 1 } });
    expect(trialScore(measured, middle)).toBeCloseTo(same, 9);
    expect(same).toBeGreaterThan(0);
    expect(same).toBeCloseTo(quickScore(ground, post(), bird, suns), 9);
  });

  it('move with the weights and knees, and leave the post as it was', () => {
    const { settings } = ground.site;
    const usual = trialScore(measured, plain(bird, settings));
    const heavier = trialUnder(bird, settings, { weight: { 'woods-edge': 1.25 }, knee: {} });
    expect(heavier.site.weights['woods-edge']).toBeCloseTo(2.5, 9);
    expect(trialScore(measured, heavier)).toBeLessThan(usual);
    const stricter = trialUnder(bird, settings, { weight: {}, knee: { 'woods-edge': 1.2 } });
    expect(stricter.bird.habitat.woodsEdge.value[1]![0]).toBeCloseTo(54, 9);
    expect(trialScore(measured, stricter)).toBeLessThan(usual);
    expect(trialScore(measured, plain(bird, settings))).toBe(usual);
  });
});
