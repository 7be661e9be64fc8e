/** The browser is killed in the midst of a save, twenty times on one profile: nothing it called saved may be missing or torn. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { newProfile, startBrowser } from './own-browser.ts';
import { inTrial, openTrial, type Served, serveStoragePage } from './storage-serve.ts';

const kills = 20;
/** Characters of a site: about as much as the park. */
const weight = 200_000;

let served: Served;
let profile: string;
let remove: () => void;

beforeAll(async () => {
  served = await serveStoragePage();
  [profile, remove] = newProfile();
});
afterAll(async () => {
  await served?.close();
  remove?.();
});

describe('a browser killed in mid-save', () => {
  it(`has everything it called saved, ${kills} times`, async () => {
    let acknowledged = 0;
    let saves = 0;
    const lost: string[] = [];
    let lateMirrors = 0;
    for (let round = 0; round <= kills; round++) {
      const { page, kill } = await startBrowser(profile);
      await openTrial(page, served.url);
      if (round === 0) {
        await inTrial(page, (trial, w) => trial.make('kill', 'Kill', 0, w), weight);
        await inTrial(page, (trial) => trial.flush(), null);
      } else {
        const found = await inTrial(page, (trial) => trial.look('kill'), null);
        const note = `round ${round}: acknowledged ${acknowledged}, found ${JSON.stringify(found)}`;
        // More than acknowledged are saves whose word was still on its way out of the browser.
        if (found.database === null || found.database < acknowledged) lost.push(note);
        if (found.torn > 0 || found.findings.length > 0) lost.push(note);
        if (found.mirror !== found.database) lateMirrors++;
        await inTrial(page, (trial) => trial.openSite('kill'), null);
        expect(await inTrial(page, (trial) => trial.count(), null)).toBe(found.database);
        acknowledged = found.database ?? 0;
      }
      if (round === kills) {
        await kill();
        break;
      }
      const first = new Promise<void>((resolve) =>
        page.on('console', (message) => {
          const said = /^saved (\d+)$/.exec(message.text())?.[1];
          if (!said) return;
          acknowledged = Number(said);
          saves++;
          resolve();
        }),
      );
      void inTrial(page, (trial, w) => trial.work(w), weight).catch(() => undefined);
      await first;
      await new Promise((r) => setTimeout(r, (round * 37) % 210));
      await kill();
    }
    console.log(`${kills} kills, ${saves} saves acknowledged, ${lateMirrors} second copies one save behind`);
    expect(lost).toEqual([]);
    expect(saves).toBeGreaterThan(kills);
  }, 90_000);
});
