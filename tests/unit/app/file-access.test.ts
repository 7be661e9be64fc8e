/** Writing a site to a file the person chooses, and the browser's promise to keep sites: what is said for every answer. The browser's own parts are stubs; the words and the seal are ours. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import { canWriteFiles, chooseSiteFile, lookForOwnFile, saveToFile } from '../../../src/app/actions/own-file.ts';
import { sealHolds } from '../../../src/app/actions/shelf-file.ts';
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

/** A disk of one file that may be opened and written; `leave` is what the person answers. */
function disk(text: string, leave: PermissionState = 'granted') {
  const file = { text, gone: false, written: 0 };
  const handle = {
    name: 'mine.geojson',
    getFile: async () => {
      if (file.gone) throw new DOMException('A requested file could not be found.', 'NotFoundError');
      return new File([file.text], 'mine.geojson');
    },
    createWritable: async () => ({
      write: async (now: string) => {
        file.text = now;
        file.written++;
      },
      close: async () => undefined,
    }),
    queryPermission: async () => 'prompt' as PermissionState,
    requestPermission: async () => leave,
  };
  const save = vi.fn(async () => handle);
  vi.stubGlobal('showOpenFilePicker', async () => [handle]);
  vi.stubGlobal('showSaveFilePicker', save);
  return { file, save };
}

function changeScore(store: Store, minimumScore: number) {
  const { site } = store.state;
  store.set({ site: { ...site!, settings: { ...site!.settings, minimumScore } } });
}

describe('a site file opened from the disk', () => {
  it('is written back to without being asked for again, also by a later visit', async () => {
    const store = opened();
    const { file, save } = disk(smallSite);
    await chooseSiteFile(store);
    expect(store.state.keeping.ownFile).toMatchObject({ name: 'mine.geojson', changed: false });
    changeScore(store, 41);
    await saveToFile(store);
    expect(save).not.toHaveBeenCalled();
    expect(readSite(file.text, 'mine.geojson').site?.settings.minimumScore).toBe(41);
    expect(await sealHolds(file.text)).toBe(true);
    store.set({ keeping: { ...store.state.keeping, ownFile: null } });
    await lookForOwnFile(store);
    expect(store.state.keeping.ownFile?.name).toBe('mine.geojson');
    changeScore(store, 42);
    await saveToFile(store);
    expect(file.written).toBe(2);
  });

  it('that something else changed since is left alone until it is said to be written over', async () => {
    const store = opened();
    const { file } = disk(smallSite);
    await chooseSiteFile(store);
    file.text = `${smallSite} `;
    await saveToFile(store);
    expect([file.written, store.state.keeping.ownFile?.changed]).toEqual([0, true]);
    expect(said(store).at(-1)).toBe(`trouble: ${store.state.words.library.own.changed('mine.geojson')}`);
    await saveToFile(store, { over: true });
    expect([file.written, store.state.keeping.ownFile?.changed]).toEqual([1, false]);
  });

  it('that is damaged is opened as a copy and never written over', async () => {
    const store = opened();
    const { file } = disk(smallSite);
    await chooseSiteFile(store);
    await saveToFile(store);
    const broken = file.text.replace('Test meadow', 'Best meadow');
    const again = disk(broken);
    await chooseSiteFile(store);
    expect(store.state.site?.settings.name).toContain('damaged');
    expect(store.state.keeping.ownFile?.site).not.toBe(store.state.siteId);
    await saveToFile(store);
    expect(again.save).toHaveBeenCalledTimes(1);
  });

  it('that may not be written, or is gone, is said to be so; the site stays', async () => {
    const store = opened();
    const { file } = disk(smallSite, 'denied');
    await chooseSiteFile(store);
    await saveToFile(store);
    expect([file.written, said(store).at(-1)]).toEqual([
      0,
      `trouble: ${store.state.words.library.own.refused('mine.geojson')}`,
    ]);
    const other = opened();
    const lost = disk(smallSite);
    await chooseSiteFile(other);
    lost.file.gone = true;
    await saveToFile(other);
    expect(said(other).at(-1)).toBe(`trouble: ${other.state.words.library.own.gone('mine.geojson')}`);
    expect([other.state.keeping.ownFile, other.state.site?.settings.name]).toEqual([null, 'Test meadow']);
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
