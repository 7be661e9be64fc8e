/** The database on the disk is deleted, emptied or cut: the second copy is offered, nothing starts empty in silence, nothing is deleted. */
import { readdirSync, rmSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { newProfile, type OwnBrowser, startBrowser } from './own-browser.ts';
import { inTrial, openTrial, type Served, serveStoragePage } from './storage-serve.ts';

let served: Served;
beforeAll(async () => {
  served = await serveStoragePage();
});
afterAll(async () => served?.close());

/** Folder of our database in a profile. */
function database(profile: string): string {
  const all = join(profile, 'Default', 'IndexedDB');
  const ours = readdirSync(all).find((name) => name.endsWith('.indexeddb.leveldb'));
  if (!ours) throw new Error(`no database in ${all}`);
  return join(all, ours);
}

const filesOf = (folder: string) =>
  readdirSync(folder)
    .map((name) => join(folder, name))
    .filter((path) => statSync(path).isFile());

const damages: readonly [string, (folder: string) => void][] = [
  ['deleted', (folder) => rmSync(folder, { recursive: true })],
  ['cut to half', (folder) => filesOf(folder).forEach((path) => void truncateSync(path, statSync(path).size >> 1))],
  ['emptied', (folder) => filesOf(folder).forEach((path) => void truncateSync(path, 0))],
  [
    'overwritten',
    (folder) => filesOf(folder).forEach((path) => void writeFileSync(path, Buffer.alloc(statSync(path).size, 0x5a))),
  ],
];

async function withBrowser<T>(profile: string, work: (own: OwnBrowser) => Promise<T>): Promise<T> {
  const own = await startBrowser(profile);
  try {
    await openTrial(own.page, served.url);
    return await work(own);
  } finally {
    await own.close();
  }
}

describe.each(damages)('a database that was %s', (_name, damage) => {
  it('is noticed, and the second copy brings the site back', async () => {
    const [profile, remove] = newProfile();
    try {
      await withBrowser(profile, async ({ page }) => {
        await inTrial(page, (trial) => trial.make('a', 'A', 1, 100_000), null);
        await inTrial(page, (trial) => trial.flush(), null);
        for (const n of [2, 3, 4, 5]) {
          await inTrial(page, (trial, c) => trial.set(c, 100_000), n);
          await inTrial(page, (trial) => trial.flush(), null);
        }
        await inTrial(page, ({ store }) => store.shelf.copied(), null);
      });
      damage(database(profile));
      await withBrowser(profile, async ({ page }) => {
        const { findings, mirror, database: left } = await inTrial(page, (trial) => trial.look('a'), null);
        expect(mirror).toBe(5);
        expect(findings).toHaveLength(1);
        expect(await inTrial(page, ({ store }) => store.state.keeping.page, null)).toBe('recovery');
        expect(findings[0]?.mirror).toMatchObject({ rev: 5 });
        expect(['missing', 'older', 'damaged']).toContain(findings[0]?.trouble);
        console.log(`${_name}: ${findings[0]?.trouble}, the database still had ${left}`);
        // Until one is chosen the site is only looked at, so that no save can write over the good copy.
        await inTrial(page, (trial) => trial.openSite('a'), null);
        await inTrial(page, (trial) => trial.set(9), null);
        await inTrial(page, (trial) => trial.flush(), null);
        expect((await inTrial(page, (trial) => trial.look('a'), null)).mirror).toBe(5);
        await inTrial(page, ({ store }) => store.shelf.take('a', 'mirror'), null);
        await inTrial(page, ({ store }) => store.shelf.copied(), null);
        expect(await inTrial(page, (trial) => trial.look('a'), null)).toMatchObject({
          database: 5,
          mirror: 5,
          torn: 0,
        });
        await openTrial(page, `${served.url}?again`);
        expect(await inTrial(page, ({ store }) => store.state.keeping.findings, null)).toEqual([]);
        await inTrial(page, (trial) => trial.openSite('a'), null);
        expect(await inTrial(page, (trial) => trial.count(), null)).toBe(5);
      });
    } finally {
      remove();
    }
  }, 60_000);
});
