import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { choose } from '../../../src/placement/choose.ts';
import { brokenRules } from '../../../src/placement/verify.ts';
import { leftOutSentence } from '../../../src/placement/why-not.ts';
import { input, loadSolver, randomPosts, scored, spacing } from './posts.ts';

const ids = (choice: Awaited<ReturnType<typeof choose>>) => choice.sites.flatMap((s) => s.posts.map((p) => p.id));

describe('choose', () => {
  it('keeps every rule on random sites, with and without the proof', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 0, max: 60 }),
        fc.integer({ min: 60, max: 700 }),
        fc.integer({ min: 0, max: 1e6 }),
        fc.boolean(),
        fc.boolean(),
        async (count, side, seed, paired, proven) => {
          const wanted = [
            { bird: 'bluebird', sites: 5, paired },
            { bird: 'chickadee', sites: 4 },
          ];
          const scoreAt = () => ({ score: 55, refused: [] });
          const proof = proven ? ('quick' as const) : ('none' as const);
          const asked = input(randomPosts(count, side, seed), { wanted, scoreAt, loadSolver, proof, seed });
          const choice = await choose(asked);
          expect(brokenRules(asked, choice)).toEqual([]);
          if (proven) expect(choice.proof.state).toBe('best-possible');
        },
      ),
      { seed: 3, numRuns: 40 },
    );
  });

  it('gives the same choice for the same seed', async () => {
    const asked = input(randomPosts(300, 800, 4), { wanted: [{ bird: 'bluebird', sites: 20 }] });
    expect(await choose(asked)).toEqual(await choose(asked));
  });

  it('never chooses retired posts and always keeps standing ones', async () => {
    const posts = [
      scored('old', 0, 0, { bluebird: 99 }, { state: 'retired' }),
      scored('standing', 10, 0, { bluebird: 2 }, { state: 'fixed', bird: 'bluebird' }),
      scored('near', 50, 0, { bluebird: 90 }),
      scored('far', 200, 0, { bluebird: 60 }),
    ];
    const choice = await choose(input(posts));
    expect(ids(choice).sort()).toEqual(['far', 'standing']);
    const near = choice.leftOut.find((l) => l.post === 'near')!;
    expect(near).toMatchObject({ code: 'too-close', becauseOf: 'standing' });
    expect(near.metres).toBeCloseTo(40, 9);
    expect(choice.leftOut.find((l) => l.post === 'old')!.code).toBe('retired');
  });

  it('keeps standing boxes that contradict each other, and says so', async () => {
    const posts = [
      scored('a', 0, 0, { bluebird: 50 }, { state: 'fixed', bird: 'bluebird' }),
      scored('b', 30, 0, { bluebird: 50 }, { state: 'fixed', bird: 'bluebird' }),
    ];
    const choice = await choose(input(posts));
    expect(ids(choice)).toEqual(['a', 'b']);
    expect(choice.issues.map((i) => i.id)).toContain('fixed-too-close');
    expect(choice.issues[0].sentence).toContain('30 m apart');
  });

  it('serves several birds, each post one of them', async () => {
    const asked = input(randomPosts(250, 700, 8), {
      wanted: [
        { bird: 'bluebird', sites: 12 },
        { bird: 'chickadee', sites: 6 },
      ],
    });
    const choice = await choose(asked);
    const count = (bird: string) => choice.sites.filter((s) => s.bird === bird).length;
    expect([count('bluebird'), count('chickadee')]).toEqual([12, 6]);
  });

  it('counts a pair as one site of two posts, candidates first, else a place 20 ft off', async () => {
    const posts = [
      scored('a', 0, 0, { bluebird: 80 }),
      scored('b', 6, 0, { bluebird: 70 }),
      scored('c', 300, 0, { bluebird: 60 }),
    ];
    const wanted = [{ bird: 'bluebird', sites: 5, paired: true }];
    const scoreAt = (p: { x: number; y: number }) => (p.y > 0 ? { score: 40 + p.y, refused: [] } : null);
    const choice = await choose(input(posts, { wanted, scoreAt }));
    expect(choice.sites).toHaveLength(2);
    expect(choice.sites.find((s) => s.posts.some((p) => p.id === 'a'))).toMatchObject({ score: 75 });
    const added = choice.sites.flatMap((s) => s.posts).find((p) => p.added)!;
    expect(added.id).toBe('c-pair');
    expect(added.at.y).toBeCloseTo(6.096, 6);
    const without = await choose(input(posts, { wanted }));
    expect(without.leftOut.find((l) => l.post === 'c')).toMatchObject({ code: 'refused' });
  });

  it('lets posts exactly the spacing apart stand, and not a hand nearer', async () => {
    const at = (gap: number) =>
      choose(input([scored('a', 0, 0, { bluebird: 50 }), scored('b', gap, 0, { bluebird: 50 })]));
    expect(ids(await at(91.44))).toHaveLength(2);
    expect(ids(await at(91.4399))).toHaveLength(2);
    expect(ids(await at(91.3))).toHaveLength(1);
  });
});

describe('trouble', () => {
  it('no candidates at all', async () => {
    const choice = await choose(input([], { proof: 'quick', loadSolver }));
    expect(choice.sites).toEqual([]);
    expect(choice.issues.map((i) => i.id)).toEqual(['no-candidates']);
  });

  it('all below the least score', async () => {
    const choice = await choose(input([scored('a', 0, 0, { bluebird: 20 })], { proof: 'quick', loadSolver }));
    expect(choice.leftOut[0]).toMatchObject({ code: 'low-score', score: 20 });
    expect(choice.issues[0].sentence).toContain('no other post reaches the least score of 30');
  });

  it('more boxes than fit: the most that do, proven, with the rule that binds', async () => {
    const posts = Array.from({ length: 25 }, (_, k) =>
      scored(`p${k}`, 50 * (k % 5), 50 * Math.floor(k / 5), { bluebird: 50 + k }),
    );
    const asked = input(posts, { wanted: [{ bird: 'bluebird', sites: 40 }], proof: 'quick', loadSolver });
    const choice = await choose(asked);
    expect(choice.sites).toHaveLength(9);
    expect(choice.proof.mostSites).toBe(9);
    expect(choice.proof.sentence).toBe(
      'At most 9 sites fit with 91 m between sites: proven; the spacing rule binds here. Best possible: proven.',
    );
    expect(choice.issues.map((i) => i.id)).toContain('fewer-than-wanted');
  });

  it('counts the sites of all birds together and names the spacing of each', async () => {
    // Two 3 × 3 blocks of posts 50 m apart, 1 km from each other: one for bluebirds (91 m), one for chickadees (40 m).
    const block = (bird: string, east: number) =>
      Array.from({ length: 9 }, (_, k) =>
        scored(`${bird}${k}`, east + 50 * (k % 3), 50 * Math.floor(k / 3), { [bird]: 50 + k }),
      );
    const wanted = [
      { bird: 'bluebird', sites: 8 },
      { bird: 'chickadee', sites: 7 },
    ];
    const posts = [...block('bluebird', 0), ...block('chickadee', 1000)];
    const choice = await choose(input(posts, { wanted, proof: 'quick', loadSolver }));
    // Four corners of the bluebirds' block, and all seven chickadees wanted.
    expect(choice.sites).toHaveLength(11);
    expect(choice.proof.mostSites).toBe(11);
    expect(choice.proof.sentence).toMatch(
      /^At most 11 of the 15 sites wanted for all birds fit under their spacings \(.+ 91 m, .+ 40 m\): proven/,
    );
  });

  it('a solver that cannot be loaded leaves the good choice, said as not proven', async () => {
    const broken = () => Promise.reject(new Error('no file'));
    const choice = await choose(input(randomPosts(80, 500, 2), { proof: 'quick', loadSolver: broken }));
    expect(choice.sites.length).toBeGreaterThan(0);
    expect(choice.proof.state).toBe('not-proven');
    expect(choice.proof.sentence).toContain('could not be loaded');
  });

  it('a solver that breaks down on the way does too', async () => {
    const broken = async () => ({
      name: 'broken',
      withModel: () => {
        throw new Error('out of memory');
      },
    });
    const choice = await choose(input(randomPosts(80, 500, 2), { proof: 'full', loadSolver: broken }));
    expect(choice.proof.sentence).toContain('the solver gave up');
  });

  it('stopped at once, still gives a choice that keeps the rules', async () => {
    const asked = input(randomPosts(200, 500, 2), { proof: 'full', loadSolver, shouldStop: () => true });
    const choice = await choose(asked);
    expect(choice.cancelled).toBe(true);
    expect(choice.sites.length).toBeGreaterThan(0);
    expect(brokenRules(asked, choice)).toEqual([]);
  });

  it('two posts at one place, nothing wanted, a bird nobody scored', async () => {
    const twins = [scored('a', 0, 0, { bluebird: 50 }), scored('b', 0, 0, { bluebird: 60 })];
    expect(ids(await choose(input(twins)))).toEqual(['b']);
    expect(ids(await choose(input(twins, { wanted: [] })))).toEqual([]);
    const nobody = await choose(input(twins, { wanted: [{ bird: 'phoebe', sites: 2 }] }));
    expect(nobody.sites).toEqual([]);
    expect(brokenRules(input(twins, { wanted: [{ bird: 'phoebe', sites: 2 }] }), nobody)).toEqual([]);
  });
});

describe('the verifier', () => {
  it('finds broken rules', async () => {
    const posts = [scored('a', 0, 0, { bluebird: 50 }), scored('b', 30, 0, { bluebird: 60 })];
    const asked = input(posts);
    const choice = await choose(asked);
    const both = {
      ...choice,
      sites: [
        ...choice.sites,
        { ...choice.sites[0], posts: [{ id: 'a', at: { x: 0, y: 0 }, score: 50, added: false }] },
      ],
    };
    expect(brokenRules(asked, both).join()).toContain('m apart, 91.44 asked');
    expect(brokenRules(asked, both).join()).toContain('accounted for 2 times');
  });
});

describe('why a post was left out', () => {
  const box = (id: string) => `#${id}`;
  const words = (m: number) => `${Math.round(m)} m`;

  it('says each reason in a sentence', async () => {
    const posts = [
      scored('best', 0, 0, { bluebird: 90 }),
      scored('beside', 20, 0, { bluebird: 70 }),
      scored('near', 80, 0, { bluebird: 70 }),
      scored('low', 400, 0, { bluebird: 10 }),
      scored('woods', 500, 0, { bluebird: { score: 60, refused: ['15 m from woods, 46 m asked'] } }),
      scored('wet', 600, 0, {}, {}, { forbidden: 'in water (Long Pond)' }),
      scored('cut off', 700, 0, { bluebird: 80 }, {}, { unreachable: true }),
      scored('spare', 900, 0, { bluebird: 40 }),
    ];
    const choice = await choose(input(posts, { wanted: [{ bird: 'bluebird', sites: 1 }], spacing }));
    const say = (id: string) => leftOutSentence(choice.leftOut.find((l) => l.post === id)!, box, words);
    expect(say('beside')).toBe('Lost to a better neighbor: box #best, 20 m away. It scores 70.');
    expect(say('near')).toBe('Too close to box #best: 80 m apart, 91 m asked. It scores 70.');
    expect(say('low')).toBe('Scores 10, less than the least score asked.');
    expect(say('woods')).toBe('Refused: 15 m from woods, 46 m asked. It scores 60.');
    expect(say('wet')).toBe('No box may stand here: in water (Long Pond).');
    expect(say('cut off')).toContain('No walk leads here');
    expect(say('spare')).toBe('Every box wanted found a place that adds more. It scores 40.');
  });
});
