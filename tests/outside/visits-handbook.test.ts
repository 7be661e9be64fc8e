/** Trade facts of a season as printed; each says where. */
import { describe, expect, test } from 'vitest';
import { birdById, birdGuides, birdsOf } from '../../src/birds/index.ts';
import { celsius, fahrenheit, heatLimits, pairAgrees } from '../../src/birds/temperature.ts';
import { offeredActions } from '../../src/visits/actions.ts';
import { adviceFor } from '../../src/visits/advice.ts';
import { clockFromFirstEgg } from '../../src/visits/clock.ts';
import { addDays } from '../../src/visits/days.ts';
import { nextVisit } from '../../src/visits/due.ts';
import { identifyNest } from '../../src/visits/key.ts';
import type { Evidence } from '../../src/visits/key-clues.ts';
import { lastOpening, openingAdvice } from '../../src/visits/opening.ts';
import { makeVisit } from '../../src/visits/visit.ts';

const bluebird = birdById('eastern-bluebird');
const clock = clockFromFirstEgg(bluebird, '2026-05-01', 5);

describe('the clock', () => {
  // SOURCE: trail pages: one egg a day, 13–14 days of incubation, 16–21 days in the nest; last opening on day 12 (Woolwine House Bluebird Trail).
  test('Eastern Bluebird, first egg 1 May, 5 eggs', () => {
    expect(clock.lastEgg).toEqual({ earliest: '2026-05-05', latest: '2026-05-05' });
    expect(clock.hatch).toEqual({ earliest: '2026-05-18', latest: '2026-05-19' });
    expect(clock.fledge).toEqual({ earliest: '2026-06-03', latest: '2026-06-09' });
    expect(lastOpening(bluebird, clock, 'new')).toEqual({ earliest: '2026-05-30', latest: '2026-05-31' });
  });
  // SOURCE: Woolwine House Bluebird Trail, Virginia.
  test('day 16 after hatching is refused, day 10 allowed', () => {
    expect(openingAdvice(bluebird, clock, addDays(clock.hatch!.earliest, 16), 'experienced').do).toBe('watch');
    expect(openingAdvice(bluebird, clock, addDays(clock.hatch!.latest, 10), 'new').do).toBe('open');
  });
  // SOURCE: once a week in several trail texts.
  test('8 days after an active nest is overdue, 7 is not', () => {
    const visits = [makeVisit({ id: 'v', post: 'p', date: '2026-05-10', state: 'eggs', bird: bluebird.id })];
    const box = { post: 'p', number: 1, bird: bluebird, clock, visits };
    expect(nextVisit(box, '2026-05-17', 'new').overdue).toBe(0);
    expect(nextVisit(box, '2026-05-18', 'new').overdue).toBe(1);
  });
  // SOURCE: handbook table 1c, column "first egg → fledge", itself arithmetic on the columns before it.
  test.each([
    ['eastern-bluebird', 31, 41],
    ['tree-swallow', 35, 42],
    ['house-wren', 32, 38],
    ['prothonotary-warbler', 24, 29],
    ['black-capped-chickadee', 32, 36],
    ['white-breasted-nuthatch', 43, 48],
    ['house-sparrow', 28, 32],
  ])('%s fledges within %d–%d days of the first egg, give or take 2', (id, least, most) => {
    const bird = birdById(id);
    const [small, large] = bird.eggs.count.value;
    const early = clockFromFirstEgg(bird, '2026-05-01', small).fledge!.earliest;
    const late = clockFromFirstEgg(bird, '2026-05-01', large).fledge!.latest;
    expect(early >= addDays('2026-05-01', least - 2) && early <= addDays('2026-05-01', least + 2), early).toBe(true);
    expect(late >= addDays('2026-05-01', most - 2) && late <= addDays('2026-05-01', most + 2), late).toBe(true);
  });
});

describe('common practice: what a nest says', () => {
  const nothing: Evidence = {
    region: 'eastern-north-america',
    material: [],
    cup: null,
    eggColor: null,
    eggPattern: null,
    eggSize: null,
    eggCount: null,
    hole: null,
  };
  test.each<[string, Partial<Evidence>, string]>([
    ['moss', { material: ['moss'] }, 'black-capped-chickadee'],
    ['feathers', { material: ['feathers', 'grass'] }, 'tree-swallow'],
    [
      'a grass cup with plain blue eggs',
      { material: ['grass'], cup: 'neat-cup', eggColor: 'blue', eggPattern: 'plain' },
      'eastern-bluebird',
    ],
    ['sticks', { material: ['twigs'] }, 'house-wren'],
    ['overfilled with anything', { material: ['grass', 'litter', 'feathers'], cup: 'dome' }, 'house-sparrow'],
  ])('%s', (_, evidence, bird) => {
    expect(identifyNest({ ...nothing, ...evidence }).ranked[0]!.id).toBe(bird);
  });
});

describe('law and honesty', () => {
  // SOURCE: US Fish & Wildlife Service, news release of 19 April 2002: House Sparrow and European Starling are not covered by the Migratory Bird Treaty Act.
  test('only House Sparrow and Starling may ever be offered for removal in North America, nothing in Europe', () => {
    const offered = (['eastern-north-america', 'western-north-america', 'europe'] as const).flatMap((region) =>
      birdGuides
        .filter((bird) =>
          offeredActions({ region, bird, keyAgrees: true, secondLook: true, state: 'eggs', trouble: [] }).some(
            (offer) => offer.id === 'remove-pest-nest',
          ),
        )
        .map((bird) => `${bird.id} ${region}`),
    );
    expect(offered.sort()).toEqual([
      'european-starling eastern-north-america',
      'european-starling western-north-america',
      'house-sparrow eastern-north-america',
      'house-sparrow western-north-america',
    ]);
    expect(birdsOf('europe', { pests: true }).some((bird) => bird.pest)).toBe(false);
  });
  // SOURCE: Bailey & Bonter 2017, Wildlife Society Bulletin: guarded boxes +6.7 %.
  test('a guard is shown as +6.7 %, never as predator-proof', () => {
    const [advice] = adviceFor({
      name: 'Box 1',
      seasons: 1,
      usedSeasons: 1,
      fledged: 0,
      failed: 1,
      causes: { predator: 1 },
      pestNests: 0,
      rivalNests: 0,
      rivalShare: 0,
      paired: false,
      pairs: true,
      guarded: false,
      entrance: null,
      better: null,
    });
    expect(advice!.kind).toBe('guard');
    expect(advice!.sentence).toContain('6.7 %');
    expect(advice!.sentence).not.toMatch(/predator-?proof/i);
  });
  // SOURCE: 107 °F printed as 41 °C (Conley Black project via wildlifemanagementpro.com); 9/5 and 32 by definition.
  test('107 °F is 41.7 °C, 41 °C is 105.8 °F: the printed pair is not equal', () => {
    expect(celsius(107).toFixed(1)).toBe('41.7');
    expect(fahrenheit(41).toFixed(1)).toBe('105.8');
    expect(pairAgrees(107, 41)).toBe(false);
    expect(pairAgrees(105.8, 41)).toBe(true);
    for (const { limit, printed } of heatLimits) {
      if (printed !== null && !pairAgrees(printed, limit.value)) expect(limit.note).toMatch(/which is/);
    }
  });
});
