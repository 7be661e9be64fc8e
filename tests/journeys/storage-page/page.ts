/** The app's own store, shelf and keeper without map and notebook, so that a test can start it twenty times. */
import { edit, redo, undo } from '../../../src/app/actions/edit.ts';
import { openSite, openText } from '../../../src/app/actions/open.ts';
import { takeOver } from '../../../src/app/actions/shelf-open.ts';
import { startKeeping } from '../../../src/app/actions/shelf-start.ts';
import { EngineClient } from '../../../src/app/engine/client.ts';
import { memoryShelf } from '../../../src/app/storage/memory-shelf.ts';
import { Store } from '../../../src/app/store.ts';
import { newSite } from '../../../src/site/new-site.ts';
import type { Site } from '../../../src/site/types.ts';
import { canonicalText, writeSite } from '../../../src/site/write.ts';

const deaf = () => ({ say: () => undefined, hear: () => undefined, lost: () => undefined, end: () => undefined });
const store = new Store(new EngineClient(deaf), memoryShelf());

/** A site whose count is `n`, about `weight` characters long, which no compression makes smaller. */
function counted(name: string, n: number, weight = 0): Site {
  return { ...newSite(name), extra: { count: n, ballast: noise(weight) } };
}

function noise(length: number): string {
  const bytes = new Uint8Array(Math.ceil(length / 2));
  for (let i = 0; i < bytes.length; i += 65_536) crypto.getRandomValues(bytes.subarray(i, i + 65_536));
  let text = '';
  for (const byte of bytes) text += byte.toString(16).padStart(2, '0');
  return text;
}

const trial = {
  store,
  openSite: (id: string) => openSite(store, id),
  make: (id: string, name: string, n: number, weight = 0) => openText(store, id, writeSite(counted(name, n, weight))),
  count: () => (store.state.site?.extra?.count as number | undefined) ?? null,
  set(n: number, weight = 0) {
    const { site } = store.state;
    if (site) edit(store, counted(site.settings.name, n, weight), `Count ${n}.`);
  },
  /** The open site as the one text it has. */
  text: () => (store.state.site ? canonicalText(store.state.site) : null),
  undo: () => undo(store),
  redo: () => redo(store),
  takeOver: () => takeOver(store),
  flush: () => store.keeper?.flush(),
  /** Saves one state after the other and says on the console which were acknowledged. */
  async work(weight: number) {
    for (let n = (trial.count() ?? 0) + 1; ; n++) {
      trial.set(n, weight);
      await store.keeper?.flush();
      if (store.state.saved.at !== 'saved') throw new Error(`not saved: ${JSON.stringify(store.state.saved)}`);
      console.log(`saved ${n}`);
    }
  },
  /** Count in each copy, and how many kept revisions are not what their hash says. */
  async look(id: string) {
    const { shelf } = store;
    const countOf = (text: string | null) => (text === null ? null : (JSON.parse(text).count as number));
    const revisions = await shelf.revisions(id);
    const bodies = await Promise.all(revisions.map(({ rev }) => shelf.openRevision(id, rev)));
    return {
      database: countOf(await shelf.copyText(id, 'database')),
      mirror: countOf(await shelf.copyText(id, 'mirror')),
      torn: bodies.filter((body) => body === null).length,
      revisions: revisions.length,
      findings: store.state.keeping.findings.filter((f) => f.site === id),
    };
  },
};

export type Trial = typeof trial;

await startKeeping(store);
Object.assign(globalThis, { trial });
