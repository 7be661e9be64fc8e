import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { durableShelf } from '../../../src/app/storage/durable-shelf.ts';
import { memoryVault } from '../../../src/app/storage/memory-vault.ts';
import { thinned } from '../../../src/app/storage/revision.ts';

const hour = 3_600_000;
const day = 24 * hour;
const now = 1_800_000_000_000;

/** Revisions with rising numbers and times, newest last, up to 60 days old. */
const revisions = fc
  .array(fc.integer({ min: 0, max: 60 * day }), { minLength: 1, maxLength: 200 })
  .map((ages) => [...ages].sort((a, b) => b - a).map((age, i) => ({ rev: i + 1, saved: now - age })));

const keptOf = (all: readonly { rev: number; saved: number }[], at = now) => {
  const gone = new Set(thinned(all, at));
  return all.filter((r) => !gone.has(r.rev));
};

describe('thinning', () => {
  it('never drops the newest twenty', () => {
    fc.assert(
      fc.property(revisions, (all) => {
        const kept = new Set(keptOf(all).map((r) => r.rev));
        for (const { rev } of all.slice(-20)) expect(kept.has(rev)).toBe(true);
      }),
      { seed: 1 },
    );
  });

  it('keeps the last of every hour of the last day and of every day of the last thirty', () => {
    fc.assert(
      fc.property(revisions, (all) => {
        const kept = new Set(keptOf(all).map((r) => r.rev));
        const lastOf = (span: number, from: number) => {
          const last = new Map<number, number>();
          for (const { rev, saved } of all) if (now - saved < from) last.set(Math.floor(saved / span), rev);
          return [...last.values()];
        };
        for (const rev of lastOf(hour, day)) expect(kept.has(rev)).toBe(true);
        const older = all.filter((r) => now - r.saved >= day && now - r.saved < 30 * day);
        const days = new Map(older.map(({ rev, saved }) => [Math.floor(saved / day), rev]));
        for (const rev of days.values()) expect(kept.has(rev)).toBe(true);
      }),
      { seed: 2 },
    );
  });

  it('keeps no more than it says, is done after once, and names only what is there', () => {
    fc.assert(
      fc.property(revisions, (all) => {
        const kept = keptOf(all);
        expect(kept.length).toBeLessThanOrEqual(20 + 25 + 30);
        expect(thinned(kept, now)).toEqual([]);
        const known = new Set(all.map((r) => r.rev));
        for (const rev of thinned(all, now)) expect(known.has(rev)).toBe(true);
      }),
      { seed: 3 },
    );
  });

  it('does not mind the order, nor a clock that went back', () => {
    fc.assert(
      fc.property(revisions, fc.integer({ min: 0, max: 90 * day }), (all, back) => {
        expect([...thinned([...all].reverse(), now - back)].sort()).toEqual([...thinned(all, now - back)].sort());
        const newest = all.at(-1)!.rev;
        expect(thinned(all, now - back)).not.toContain(newest);
      }),
      { seed: 4 },
    );
  });
});

describe('a shelf', () => {
  it('gives back every text it was given, in whatever order sites are saved, binned and put back', async () => {
    const act = fc.record({
      site: fc.constantFrom('a', 'b', 'c'),
      does: fc.constantFrom('save', 'save', 'save', 'remove', 'restore', 'rename'),
      text: fc.string(),
    });
    await fc.assert(
      fc.asyncProperty(fc.array(act, { maxLength: 60 }), async (acts) => {
        let clock = now;
        const shelf = durableShelf(memoryVault(), null, () => clock++);
        const texts = new Map<string, string>();
        const binned = new Set<string>();
        for (const { site, does, text } of acts) {
          if (does === 'save') {
            await shelf.save(site, `Site ${site}`, text);
            texts.set(site, text);
            binned.delete(site);
          } else if (texts.has(site)) {
            if (does === 'remove') await shelf.remove(site).then(() => binned.add(site));
            else if (does === 'restore') await shelf.restore(site).then(() => binned.delete(site));
            else await shelf.rename(site, text || 'x');
          }
        }
        for (const [site, text] of texts) expect(await shelf.open(site)).toBe(binned.has(site) ? null : text);
        expect((await shelf.list()).map((e) => e.id).sort()).toEqual(
          [...texts.keys()].filter((s) => !binned.has(s)).sort(),
        );
        expect((await shelf.bin()).map((e) => e.id).sort()).toEqual([...binned].sort());
        expect(await shelf.check()).toEqual([]);
      }),
      { seed: 5, numRuns: 60 },
    );
  });

  it('refuses to write over what another window saved, and both texts are there', async () => {
    const vault = memoryVault();
    const [one, two] = [durableShelf(vault, null), durableShelf(vault, null)];
    await one.save('a', 'A', 'start');
    await two.open('a');
    await one.save('a', 'A', 'one');
    await expect(two.save('a', 'A', 'two')).rejects.toThrow('another window');
    expect(await one.open('a')).toBe('one');
  });

  it('takes the same text of another window for its own', async () => {
    const vault = memoryVault();
    const [one, two] = [durableShelf(vault, null), durableShelf(vault, null)];
    await one.save('a', 'A', 'start');
    await two.open('a');
    await one.save('a', 'A', 'same');
    await two.save('a', 'A', 'same');
    await two.save('a', 'A', 'next');
    expect((await two.revisions('a')).map((r) => r.rev)).toEqual([3, 2, 1]);
  });

  it('opens the newest whole state when the last one is damaged, and says so', async () => {
    const vault = memoryVault();
    const shelf = durableShelf(vault, null);
    await shelf.save('a', 'A', 'good');
    await shelf.save('a', 'A', 'bad');
    Object.assign((await vault.revision('a', 2)) ?? {}, { body: 'baD' });
    expect(await shelf.check()).toMatchObject([{ site: 'a', trouble: 'damaged', database: { rev: 1 }, mirror: null }]);
    expect(await shelf.open('a')).toBe('good');
    await expect(shelf.save('a', 'A', 'more')).rejects.toThrow('differ');
    await shelf.take('a', 'database');
    expect(await shelf.open('a')).toBe('good');
    expect(await shelf.check()).toEqual([]);
  });
});
