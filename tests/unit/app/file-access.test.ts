/** Writing a site to a file the person chooses, and the browser's promise to keep sites: what is said for every answer. The browser's own parts are stubs; the words and the seal are ours. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import { canWriteFiles, saveToFile, sealHolds } from '../../../src/app/actions/shelf-file.ts';
import { Keeper } from '../../../src/app/actions/shelf-keeper.ts';
import { EngineClient } from '../../../src/app/engine/client.ts';
import { memoryShelf } from '../../../src/app/storage/memory-shelf.ts';
import { Store } from '../../../src/app/store.ts';
import { readSite } from '../../../src/site/read.ts';
import { smallSite } from '../../browser/sites.ts';

const silent = () =>
  new EngineClient(() => ({
    say: () => undefined,
    hear: () => undefined,
    lost: () => undefined,
    end: () => undefined,
  }));

function opened() {
  const { site } = readSite(smallSite, 'test.geojson');
  const store = new Store(silent(), memoryShelf());
  store.set({ site, siteId: 'test' });
  return store;
}

/** A file of the person's; `back` is what it reads back as. */
function picker(back: (written: string) => string = (text) => text) {
  const written: string[] = [];
  const handle = {
    name: 'chosen.geojson',
    createWritable: async () => ({
      write: async (text: string) => void written.push(text),
      close: async () => undefined,
    }),
    getFile: async () => ({ text: async () => back(written.join('')) }),
  };
  return { written, pick: vi.fn(async (_options: { suggestedName: string }) => handle) };
}

async function saveWith(showSaveFilePicker: unknown, store: Store): Promise<void> {
  vi.stubGlobal('showSaveFilePicker', showSaveFilePicker);
  await saveToFile(store);
}

const said = (store: Store) => store.state.messages.map(({ kind, sentence }) => `${kind}: ${sentence}`);

afterEach(() => vi.unstubAllGlobals());

describe('a file the person chooses', () => {
  it('gets the sealed site under its name, is read back, and is spoken of', async () => {
    const store = opened();
    const { written, pick } = picker();
    await saveWith(pick, store);
    expect(pick.mock.calls[0]?.[0].suggestedName).toBe('Test meadow.geojson');
    expect(await sealHolds(written.join(''))).toBe(true);
    expect(said(store)).toEqual([`tell: ${store.state.words.library.writtenTo('chosen.geojson')}`]);
    expect(store.state.keeping.exported).not.toBeNull();
  });

  it('that reads back differently, or cannot be written, is no copy: that is said, and the site stays', async () => {
    const store = opened();
    const { site } = store.state;
    await saveWith(picker((text) => text.slice(0, -5)).pick, store);
    expect(said(store)).toEqual([`trouble: ${store.state.words.library.notWritten('it reads back differently')}`]);
    await saveWith(async () => {
      throw new Error('the disk is gone');
    }, store);
    expect(said(store).at(-1)).toContain('the disk is gone');
    expect(store.state.keeping.exported).toBeNull();
    expect(store.state.site).toBe(site);
  });

  it('that was not chosen after all is nothing to speak of', async () => {
    const store = opened();
    await saveWith(async () => {
      throw new DOMException('The user aborted a request.', 'AbortError');
    }, store);
    expect(said(store)).toEqual([]);
  });

  it('is not offered where the browser has no such thing', async () => {
    vi.stubGlobal('showSaveFilePicker', undefined);
    expect(canWriteFiles()).toBe(false);
  });
});

describe('the promise of the browser', () => {
  it.each([true, false])('is asked for once, after the first save, and the answer %s is kept', async (answer) => {
    const persist = vi.fn(async () => answer);
    vi.stubGlobal('navigator', { storage: { persist } });
    vi.stubGlobal('document', { addEventListener: () => undefined, visibilityState: 'visible' });
    vi.stubGlobal('addEventListener', () => undefined);
    const { site } = readSite(smallSite, 'test.geojson');
    const store = new Store(silent(), memoryShelf());
    const keeper = new Keeper(store, { reread: () => undefined, takeOver: () => undefined });
    await keeper.claim('test');
    store.set({
      site,
      siteId: 'test',
      saved: { at: 'saved', time: 1 },
      keeping: { ...store.state.keeping, where: 'lasting' },
    });
    expect(persist).not.toHaveBeenCalled();
    expect(store.state.keeping.promised).toBeNull();
    for (const minimumScore of [11, 12]) {
      const { site: now } = store.state;
      store.set({ site: { ...now!, settings: { ...now!.settings, minimumScore } } });
      await keeper.flush();
    }
    await vi.waitFor(() => expect(store.state.keeping.promised).toBe(answer));
    expect(persist).toHaveBeenCalledTimes(1);
  });
});
