/** Saving as one goes, undo steps over a reload, two windows, a full disk: the app's own keeper in a real browser. */
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
// @ts-expect-error plain script shared with tools that run before the types exist
import { browserArgs, findBrowser } from '../../scripts/browser.mjs';
import { inTrial, openTrial, type Served, serveStoragePage } from './storage-serve.ts';

let served: Served;
let browser: Browser;
let context: BrowserContext;

beforeAll(async () => {
  served = await serveStoragePage();
  const { executablePath, env } = await findBrowser();
  browser = await chromium.launch({ executablePath, env, args: browserArgs });
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
});
beforeEach(async () => {
  await context?.close();
  context = await browser.newContext();
});

async function open(): Promise<Page> {
  const page = await context.newPage();
  await openTrial(page, served.url);
  return page;
}

const saved = (page: Page) => page.waitForFunction(() => 'trial' in globalThis && trialState().saved.at === 'saved');
declare const trialState: () => { saved: { at: string } };
const hooks = `globalThis.trialState = () => trial.store.state;`;

async function make(page: Page, id: string, n = 0): Promise<void> {
  await page.evaluate(hooks);
  await inTrial(page, (trial, [i, c]) => trial.make(i, `Site ${i}`, c), [id, n] as const);
  await saved(page);
}

const count = (page: Page) => inTrial(page, (trial) => trial.count(), null);
const set = (page: Page, n: number) => inTrial(page, (trial, c) => trial.set(c), n);
const mode = (page: Page) => inTrial(page, (trial) => trial.store.state.keeping.mode, null);
const kept = (page: Page, id: string) => inTrial(page, (trial, i) => trial.look(i), id);
const names = (page: Page) =>
  inTrial(page, async (trial) => (await trial.store.shelf.list()).map((e) => e.name).sort(), null);

describe('saving as one goes', () => {
  it('says "saving" at the change and "saved" only when the database has it', async () => {
    const page = await open();
    await make(page, 'a');
    const lies = await inTrial(
      page,
      async (trial) => {
        const found: string[] = [];
        const looks: Promise<void>[] = [];
        trial.store.subscribe((state, before) => {
          if (state.saved === before.saved || state.saved.at !== 'saved') return;
          const wanted = trial.count();
          looks.push(
            trial.store.shelf.copyText('a', 'database').then((text) => {
              const has = text === null ? null : JSON.parse(text).count;
              if (has < (wanted ?? 0)) found.push(`said saved at ${wanted}, had ${has}`);
            }),
          );
        });
        let during = 0;
        for (let n = 1; n <= 40; n++) {
          trial.set(n);
          if (trial.store.state.saved.at !== 'saving') found.push(`after change ${n}: ${trial.store.state.saved.at}`);
          await new Promise((r) => setTimeout(r, 50));
          if (n < 40 && trial.store.state.saved.at === 'saved') during++;
        }
        const revisions = (await trial.look('a')).revisions;
        await trial.flush();
        await Promise.all(looks);
        return { found, during, revisions };
      },
      null,
    );
    expect(lies.found).toEqual([]);
    // Forty changes without a pause: some states between must be kept too, not only the last.
    expect(lies.revisions).toBeGreaterThanOrEqual(2);
    expect(await kept(page, 'a')).toMatchObject({ database: 40, torn: 0, findings: [] });
  });

  it('makes a copy of a demo at its first change, by a name no undo takes away', async () => {
    const page = await open();
    await inTrial(page, (trial) => trial.openSite('yard'), null);
    expect(await inTrial(page, (trial) => trial.store.state.saved.at, null)).toBe('demo');
    expect(await names(page)).toEqual([]);
    await set(page, 1);
    await page.evaluate(hooks);
    await saved(page);
    await set(page, 2);
    await inTrial(page, (trial) => trial.undo(), null);
    await inTrial(page, (trial) => trial.undo(), null);
    await inTrial(page, (trial) => trial.flush(), null);
    expect(await names(page)).toEqual(['Wickett Lane yard (yours)']);
    expect(await inTrial(page, (trial) => trial.store.state.site?.settings.name, null)).toBe(
      'Wickett Lane yard (yours)',
    );
    expect(await inTrial(page, (trial) => trial.store.state.siteId, null)).not.toBe('yard');
    expect(await inTrial(page, (trial) => trial.store.state.site?.features.length, null)).toBeGreaterThan(5);
  });

  it('loses nothing when the page goes right after a change', async () => {
    const page = await open();
    await make(page, 'a');
    for (let n = 1; n <= 8; n++) {
      await set(page, n);
      await openTrial(page, `${served.url}?${n}`);
      await inTrial(page, (trial) => trial.openSite('a'), null);
      expect(await count(page)).toBe(n);
    }
    await set(page, 99);
    await page.close({ runBeforeUnload: true });
    const next = await open();
    await inTrial(next, (trial) => trial.openSite('a'), null);
    expect(await count(next)).toBe(99);
    expect(await kept(next, 'a')).toMatchObject({ torn: 0, findings: [] });
  });
});

describe('undo steps', () => {
  it('survive a reload: back to the byte-equal start and forth again', async () => {
    const page = await open();
    await make(page, 'a');
    const text = () => inTrial(page, (trial) => trial.text(), null);
    const start = await text();
    for (let n = 1; n <= 200; n++) await set(page, n);
    const end = await text();
    for (let n = 0; n < 7; n++) await inTrial(page, (trial) => trial.undo(), null);
    await inTrial(page, (trial) => trial.flush(), null);
    await openTrial(page, `${served.url}?again`);
    await inTrial(page, (trial) => trial.openSite('a'), null);
    expect(await count(page)).toBe(193);
    const steps = await inTrial(page, ({ store }) => [store.state.past.length, store.state.future.length], null);
    expect(steps).toEqual([200 - 7, 7]);
    expect(await inTrial(page, ({ store }) => store.state.past.at(-1)?.sentence, null)).toBe('Count 193.');
    for (let n = 0; n < 193; n++) await inTrial(page, (trial) => trial.undo(), null);
    expect(await text()).toBe(start);
    for (let n = 0; n < 200; n++) await inTrial(page, (trial) => trial.redo(), null);
    expect(await text()).toBe(end);
  });

  it('that are damaged are none, and the site is whole', async () => {
    const page = await open();
    await make(page, 'a');
    await set(page, 5);
    await inTrial(page, (trial) => trial.flush(), null);
    for (const damage of ['{"version":1,"at":0', '{"version":9}', 7]) {
      await inTrial(page, (trial, d) => trial.store.shelf.vault.setExtra('history:a', d), damage);
      await openTrial(page, `${served.url}?${String(damage).length}`);
      await inTrial(page, (trial) => trial.openSite('a'), null);
      expect(await count(page)).toBe(5);
      expect(await inTrial(page, ({ store }) => store.state.past.length, null)).toBe(0);
    }
  });
});

describe('two windows', () => {
  it('one writes, the other looks on until it takes over; edits of neither are lost', async () => {
    const a = await open();
    await make(a, 'a');
    await set(a, 1);
    const b = await open();
    await inTrial(b, (trial) => trial.openSite('a'), null);
    expect([await mode(a), await mode(b)]).toEqual(['write', 'other-window']);
    await set(b, 50);
    expect(await count(b)).not.toBe(50);
    const said = await inTrial(b, ({ store }) => store.state.messages.at(-1)?.act?.word, null);
    expect(said).toBe('Take over');
    await set(a, 2);
    await inTrial(b, (trial) => trial.takeOver(), null);
    expect([await mode(a), await mode(b)]).toEqual(['other-window', 'write']);
    expect(await count(b)).toBe(2);
    await set(a, 70);
    expect(await count(a)).toBe(2);
    await set(b, 3);
    await inTrial(b, (trial) => trial.flush(), null);
    await expect.poll(() => count(a)).toBe(3);
    await inTrial(a, (trial) => trial.takeOver(), null);
    await set(a, 4);
    await inTrial(a, (trial) => trial.flush(), null);
    expect(await kept(a, 'a')).toMatchObject({ database: 4, torn: 0 });
    expect(await names(a)).toEqual(['Site a']);
    await a.close();
    await inTrial(b, (trial) => trial.takeOver(), null);
    await set(b, 5);
    await inTrial(b, (trial) => trial.flush(), null);
    expect(await kept(b, 'a')).toMatchObject({ database: 5, torn: 0 });
  });

  it('keep both branches where the browser has no locks', async () => {
    await context.addInitScript(() => Object.defineProperty(Navigator.prototype, 'locks', { value: undefined }));
    const a = await open();
    await make(a, 'a');
    const b = await open();
    await inTrial(b, (trial) => trial.openSite('a'), null);
    await set(a, 10);
    await inTrial(a, (trial) => trial.flush(), null);
    await set(b, 20);
    await inTrial(b, (trial) => trial.flush(), null);
    expect(await names(b)).toEqual(['Site a', 'Site a (from this window)']);
    expect(await kept(b, 'a')).toMatchObject({ database: 10 });
    expect(await count(b)).toBe(20);
    const id = await inTrial(b, ({ store }) => store.state.siteId ?? '', null);
    expect(await kept(b, id)).toMatchObject({ database: 20, torn: 0 });
    expect(await inTrial(b, ({ store }) => store.state.messages.map((m) => m.sentence).join(), null)).toContain(
      'Both are kept',
    );
  });

  it('a window that does not answer loses the right to write, and keeps what it had', async () => {
    const a = await open();
    await make(a, 'a');
    const b = await open();
    await inTrial(b, (trial) => trial.openSite('a'), null);
    const stuck = inTrial(
      a,
      (trial) => {
        trial.set(10);
        const end = Date.now() + 5500;
        while (Date.now() < end);
      },
      null,
    );
    await inTrial(b, (trial) => trial.takeOver(), null);
    expect(await mode(b)).toBe('write');
    await set(b, 20);
    await inTrial(b, (trial) => trial.flush(), null);
    await stuck;
    await expect.poll(() => names(b), { timeout: 8000 }).toEqual(['Site a', 'Site a (from this window)']);
    expect(await count(a)).toBe(10);
    expect(await kept(b, 'a')).toMatchObject({ database: 20 });
  });
});

describe('a full disk', () => {
  /** The browser looks at the quota when it first opens the database, so that is set before the page comes. A quota of 0 lifts it. */
  async function openWithQuota(quotaSize: number) {
    const page = await context.newPage();
    const session = await context.newCDPSession(page);
    const origin = served.url;
    await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize });
    await openTrial(page, origin);
    return { page, lift: () => session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 0 }) };
  }
  const told = (page: Page) =>
    inTrial(
      page,
      ({ store }) => ({ saved: store.state.saved, said: store.state.messages.map((m) => m.sentence).join() }),
      null,
    );

  it.each([1_000_000])(
    'of %i bytes keeps the old state, says so, and saves when there is room again',
    async (quota) => {
      const { page, lift } = await openWithQuota(quota);
      await make(page, 'a', 7);
      await inTrial(page, (trial) => trial.set(8, 2_500_000), null);
      await inTrial(page, (trial) => trial.flush(), null);
      const { saved: state, said } = await told(page);
      expect(state).toEqual({ at: 'failed', why: 'storage is full' });
      expect(said).toContain('stays on the screen');
      expect(await count(page)).toBe(8);
      expect(await kept(page, 'a')).toMatchObject({ database: 7, torn: 0 });
      await lift();
      await inTrial(page, (trial) => trial.flush(), null);
      expect((await told(page)).saved.at).toBe('saved');
      expect((await told(page)).said).not.toContain('stays on the screen');
      expect(await kept(page, 'a')).toMatchObject({ database: 8, torn: 0 });
    },
  );

  it('from the start: nothing is called saved, and the work stays', async () => {
    const { page } = await openWithQuota(1000);
    await inTrial(page, (trial) => trial.make('a', 'A', 7, 100_000), null);
    await inTrial(page, (trial) => trial.flush(), null);
    expect((await told(page)).saved).toEqual({ at: 'failed', why: 'storage is full' });
    expect(await count(page)).toBe(7);
    expect(await names(page)).toEqual([]);
  });
});

describe('a newer program', () => {
  it('made the site: it is shown, and not written over', async () => {
    const page = await open();
    await make(page, 'a', 7);
    await inTrial(
      page,
      async (trial) => {
        const text = (await trial.store.shelf.open('a')) ?? '';
        await trial.store.shelf.save('b', 'Newer', text.replace('"fileVersion": 1', '"fileVersion": 99'));
        await trial.openSite('b');
        trial.set(8);
        await trial.flush();
      },
      null,
    );
    expect(await mode(page)).toBe('newer');
    expect(await kept(page, 'b')).toMatchObject({ database: 7 });
  });
});
