/**
 * What measuring the land costs, in a make-believe park of three sizes, beside the Turf script someone would write for the same work.
 * Processor time in one thread, best of several passes; the Turf script runs on a few posts and rays and is scaled up, as said below.
 */
import type { Point } from '../../src/geometry/point.ts';
import { prepareGround } from '../../src/ground/prepare.ts';
import { targetRows } from '../../src/ground/targets.ts';
import type { Ground, Target } from '../../src/ground/types.ts';
import type { LonLat, Site } from '../../src/site/types.ts';
import { makeSunTable } from '../../src/sky/make-sun-table.ts';
import { best, cost, figure, printTable } from './clock.ts';
import { makePark, type ParkSize, parkCentre, parkPosts, parkSizes } from './park.ts';
import { turfCost, turfItems } from './turf-script.ts';

const eye = 1.5;
const { rays } = makeSunTable(parkCentre, '03-25', '08-10', 2026);
const targets = (Object.keys(targetRows) as Target[]).slice(0, 8);
const parts: readonly [string, (ground: Ground, p: Point) => void][] = [
  ['shares of 40 m', (ground, p) => ground.shares(p, 40)],
  [
    `nearest of ${targets.length} targets`,
    (ground, p) => {
      for (const target of targets) ground.nearest(p, target);
    },
  ],
  ['mean sight, 150 m', (ground, p) => ground.meanSight(p, eye, 150)],
  [`sun, ${rays.azimuth.length} rays`, (ground, p) => ground.shaded(p, eye, rays)],
];
const eachPost = (all: readonly Point[], work: (p: Point) => void): void => {
  for (const p of all) work(p);
};
const everything = (ground: Ground, posts: readonly Point[]): void => {
  for (const p of posts) for (const [, measure] of parts) measure(ground, p);
};

const posts = parkPosts(32);
const sizes: readonly ParkSize[] = ['S', 'M', 'L'];
const sites = new Map<ParkSize, Site>(sizes.map((size) => [size, makePark(size)]));
const perPost = new Map<ParkSize, number[]>();
const builds = new Map<ParkSize, number>();
// Before anything else ran here: what a page pays when it opens a site, with no code warm.
const cold = cost(() => everything(prepareGround(sites.get('M')!), posts.slice(0, 1)));

// All sizes are timed on warm code.
const warm = prepareGround(sites.get('M')!);
for (let pass = 0; pass < 4; pass++) everything(warm, posts);

for (const size of sizes) {
  const site = sites.get(size)!;
  builds.set(
    size,
    best(size === 'L' ? 2 : 6, () => prepareGround(site)),
  );
  const ground = prepareGround(site);
  everything(ground, posts);
  const costs = parts.map(
    ([, measure]) => (1000 * best(7, () => eachPost(posts, (p) => measure(ground, p)))) / posts.length,
  );
  perPost.set(size, costs);
}

console.log('Microseconds a post (1,024 posts):');
const total = (size: ParkSize): number => perPost.get(size)!.reduce((a, b) => a + b, 0);
printTable([
  ['', ...sizes.map((size) => `${size}: ${parkSizes[size].vertices.toLocaleString('en-US')} vertices`)],
  ...parts.map(([name], i) => [name, ...sizes.map((size) => figure(perPost.get(size)![i]!))]),
  ['all of these', ...sizes.map((size) => figure(total(size)))],
]);

console.log('\nMilliseconds:');
printTable([
  ['', ...sizes],
  ['making the ground, warm', ...sizes.map((size) => figure(builds.get(size)!))],
]);

console.log(`from the M site to its first post measured, nothing warm: ${figure(cold)}`);

console.log('\nGrowth:');
const ground = prepareGround(sites.get('M')!);
const few = parkPosts(32);
const many = parkPosts(101);
const [fewCost, manyCost] = [best(8, () => everything(ground, few)), best(4, () => everything(ground, many))];
console.log(`${(many.length / few.length).toFixed(2)} × the posts at M cost ${(manyCost / fewCost).toFixed(2)} ×`);
console.log(
  `10 × the vertices cost ${(total('M') / total('S')).toFixed(2)} × (S to M), ${(total('L') / total('M')).toFixed(2)} × (M to L)`,
);

console.log('\nThe Turf script on the same work (4 kinds sought instead of 8 targets), milliseconds a post:');
for (const size of ['S', 'M'] as const) {
  const items = turfItems(sites.get(size)!);
  const sample = [330, 520, 700].map((i) => ground.frame.toLonLat(posts[i]!) as LonLat);
  const boxed = turfCost(items, sample, true, 36, rays.azimuth.length, cost);
  const plain = turfCost(items, size === 'S' ? sample : sample.slice(0, 1), false, 4, rays.azimuth.length, cost);
  const sum = (c: typeof plain): number => c.shares + c.nearest + c.sight + c.sun;
  const mine = total(size) / 1000;
  printTable([
    [size, 'shares', 'nearest', 'sight', 'sun', 'all', 'ours is faster by'],
    ...(
      [
        ['with a box test', boxed],
        ['plain', plain],
      ] as const
    ).map(([name, c]) => [
      name,
      ...[c.shares, c.nearest, c.sight, c.sun, sum(c)].map(figure),
      `${figure(sum(c) / mine)} ×`,
    ]),
  ]);
}
console.log(
  'Rays of the Turf script are measured on 36 (box test) or 4 (plain) directions and scaled; sun rays as sight of 150 m.',
);
console.log('Plain at M is measured on one post, the others on three.');
