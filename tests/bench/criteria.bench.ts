/**
 * What a score costs: all nine criteria with sun and facing, one bird, in the make-believe parks S, M and L; how that grows; the first score
 * after load; and the same measuring by a Turf script on a few posts. Processor time in one thread, best of several passes, so that other
 * work on the machine counts least; ratios are within this one run. The script's rays are asked in part and scaled up.
 */
import { birdById } from '../../src/birds/index.ts';
import { scorePost } from '../../src/criteria/card.ts';
import { quickScore } from '../../src/criteria/quick-score.ts';
import { makeSuns } from '../../src/criteria/suns.ts';
import type { Point } from '../../src/geometry/point.ts';
import { prepareGround } from '../../src/ground/prepare.ts';
import type { Candidate } from '../../src/plan-types.ts';
import { best, cost, figure, printTable } from './clock.ts';
import { makePark, type ParkSize, parkPosts } from './park.ts';
import { turfCost, turfItems } from './turf-script.ts';

const bird = birdById('eastern-bluebird');
const candidate = (at: Point): Candidate => ({
  id: 'post',
  at,
  state: 'candidate',
  bird: null,
  facing: null,
  holeHeight: null,
  number: null,
  pair: null,
  name: null,
});
/** About a hundred, a thousand and ten thousand posts. */
const posts = [10, 32, 100].map((across) => parkPosts(across).map(candidate)) as [
  Candidate[],
  Candidate[],
  Candidate[],
];
const some = posts[1].filter((_, i) => i % 20 === 0);

function atSize(size: ParkSize) {
  const site = makePark(size);
  const load = () => {
    const ground = prepareGround(site);
    const suns = makeSuns(ground);
    quickScore(ground, candidate({ x: 10, y: 10 }), bird, suns);
  };
  const cold = cost(load);
  const first = best(3, load);
  const ground = prepareGround(site);
  const suns = makeSuns(ground);
  const scoreAll = (list: readonly Candidate[]) => () => {
    for (const post of list) quickScore(ground, post, bird, suns);
  };
  scoreAll(posts[1])();
  const [hundred, thousand, tenThousand] = [
    best(9, scoreAll(posts[0])),
    best(5, scoreAll(posts[1])),
    best(3, scoreAll(posts[2])),
  ];
  const card = (who: boolean) => () => {
    for (const post of some) scorePost(ground, post, bird, suns, { who });
  };
  return {
    size,
    site,
    ground,
    suns,
    cold,
    first,
    hundred,
    thousand,
    tenThousand,
    each: tenThousand / posts[2].length,
    card: best(3, card(false)) / some.length,
    whole: best(3, card(true)) / some.length,
  };
}

const sizes = (['S', 'M', 'L'] as const).map(atSize);
printTable([
  ['ms of processor time', ...sizes.map(({ size, site }) => `${size} (${site.features.length} areas)`)],
  ['a post, of 10,000', ...sizes.map(({ each }) => figure(each))],
  ['100 posts', ...sizes.map(({ hundred }) => figure(hundred))],
  ['1,024 posts', ...sizes.map(({ thousand }) => figure(thousand))],
  ['10,000 posts', ...sizes.map(({ tenThousand }) => figure(tenThousand))],
  ['card of a post', ...sizes.map(({ card }) => figure(card))],
  ['card with every bird of the region', ...sizes.map(({ whole }) => figure(whole))],
  ['load and first score, first time', ...sizes.map(({ cold }) => figure(cold))],
  ['load and first score, best', ...sizes.map(({ first }) => figure(first))],
]);

const [s, m, l] = sizes as [(typeof sizes)[0], (typeof sizes)[0], (typeof sizes)[0]];
console.log(
  `\nten times more posts cost ${figure((10 * m.tenThousand * 1024) / (m.thousand * 10_000))} × at M (at most 11 wanted)`,
);
console.log(
  `ten times more areas cost ${figure(m.each / s.each)} × from S to M, ${figure(l.each / m.each)} × from M to L (at most 5 wanted)`,
);

const items = turfItems(m.site);
const places = parkPosts(32)
  .filter((_, i) => i % 300 === 50)
  .map((p) => m.ground.frame.toLonLat(p));
const sunRays = m.suns.of(bird).altitude.length;
const total = ({ shares, nearest, sight, sun }: ReturnType<typeof turfCost>) => shares + nearest + sight + sun;
const boxed = total(turfCost(items, places, true, 20, sunRays, cost));
const plain = total(turfCost(items, places.slice(0, 2), false, 3, sunRays, cost));
console.log(
  `the Turf script at M with a bounding-box test: ${figure(boxed)} ms a post, ${figure(boxed / m.each)} × ours (1,000 wanted)`,
);
console.log(
  `the Turf script at M, plain: ${figure(plain)} ms a post, ${figure(plain / m.each)} × ours (50,000 wanted)`,
);
