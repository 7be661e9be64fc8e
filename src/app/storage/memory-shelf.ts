/** A shelf that lasts as long as the window: for demos, private windows and tests. */
import type { ShelfEntry, SiteShelf } from './site-shelf.ts';

/** `now` gives milliseconds since 1970. */
export function memoryShelf(now: () => number = Date.now): SiteShelf {
  const kept = new Map<string, { entry: ShelfEntry; text: string }>();
  const put = (id: string, name: string, text: string): ShelfEntry => {
    const entry = { id, name, saved: now() };
    kept.set(id, { entry, text });
    return entry;
  };
  return {
    list: async () => [...kept.values()].map((k) => k.entry),
    open: async (id) => kept.get(id)?.text ?? null,
    save: async (id, name, text) => put(id, name, text),
    rename: async (id, name) => {
      const found = kept.get(id);
      if (!found) throw new Error(`No site "${id}" is kept here.`);
      return put(id, name, found.text);
    },
    remove: async (id) => void kept.delete(id),
  };
}
