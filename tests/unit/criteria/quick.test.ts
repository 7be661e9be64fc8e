/** The quick verdict, which stops at the first hopeless criterion, is the card's own verdict. */
import { describe, expect, it } from 'vitest';
import { birdsOf } from '../../../src/birds/index.ts';
import { scorePost } from '../../../src/criteria/card.ts';
import { quickScore, quickVerdict } from '../../../src/criteria/quick-score.ts';
import { makeSpot } from '../../../src/criteria/spot.ts';
import { seededRandom } from '../../../src/geometry/random.ts';
import type { SiteSettings } from '../../../src/site/types.ts';
import { make, post } from './fixture.ts';

const square = (x: number, y: number, half: number): [number, number][] => [
  [x - half, y - half],
  [x + half, y - half],
  [x + half, y + half],
  [x - half, y + half],
];

/** Ground of every kind, brush higher than some eyes and lower than others, a few lines and points. */
function farm(settings: Partial<SiteSettings>) {
  return make(
    [
      { kind: 'short-grass', rings: [square(0, 0, 260)] },
      { kind: 'woods', rings: [square(-180, 120, 60)] },
      { kind: 'brush', rings: [square(150, 150, 45)], properties: { height: 2 } },
      { kind: 'building', rings: [square(60, -150, 12)] },
      { kind: 'water', rings: [square(-120, -160, 40)] },
      { kind: 'tree', at: [40, 40] },
      { kind: 'feeder', at: [90, -120] },
      { kind: 'perch', at: [-20, 10] },
      {
        kind: 'hedge',
        line: [
          [-200, -40],
          [-20, -60],
        ],
        properties: { height: 1.6 },
      },
    ],
    settings,
  );
}

describe.each([
  ['as the figures stand', {}],
  ['with a floor under every criterion', { figures: { 'score.floor': 0.1 } }],
  ['with a criterion left out', { weights: { 'woods-edge': 0, brush: 0 } }],
] as [string, Partial<SiteSettings>][])('the quick verdict, %s', (_, settings) => {
  it('has the score and the refusals of the card, for every bird', () => {
    const { ground, suns } = farm(settings);
    const random = seededRandom(4);
    let zeros = 0;
    for (let k = 0; k < 12; k++) {
      const candidate = post(520 * random() - 260, 520 * random() - 260, { facing: k % 3 === 0 ? 100 : null });
      const spot = makeSpot(ground, candidate.at);
      for (const bird of birdsOf('eastern-north-america')) {
        const card = scorePost(ground, candidate, bird, suns, { who: false });
        const quick = quickVerdict(spot, candidate, bird, suns);
        expect(quick.refused).toEqual(card.refused);
        expect(quick.score).toBe(card.judged > 0 ? card.score : null);
        expect(quickScore(ground, candidate, bird, suns)).toBe(card.score);
        if (quick.score === 0) zeros++;
      }
    }
    // With a floor only a refusal makes a 0.
    expect(zeros).toBeGreaterThan(settings.figures ? 0 : 5);
  });
});
