/** A vault that lasts as long as the window: for browsers that keep nothing, and for tests. The same promises, but the last one. */
import { type Head, headOf, type Revision, thinned, thinsAt } from './revision.ts';
import { ChangedElsewhere, type VaultDoor } from './vault.ts';

export function memoryVault(): VaultDoor {
  const heads = new Map<string, Head>();
  const kept = new Map<string, Map<number, Revision>>();
  const extras = new Map<string, unknown>();
  const newestFirst = (site: string) => [...(kept.get(site)?.values() ?? [])].sort((a, b) => b.rev - a.rev);
  return {
    heads: async () => [...heads.values()],
    head: async (site) => heads.get(site) ?? null,
    sites: async () => [...kept.keys()],
    revision: async (site, rev) => kept.get(site)?.get(rev) ?? null,
    revisions: async (site) => newestFirst(site),
    add: async (revision, now) => {
      const { site, rev, parent } = revision;
      if ((heads.get(site)?.rev ?? null) !== parent) throw new ChangedElsewhere();
      const head = headOf(revision);
      heads.set(site, head);
      const revisions = kept.get(site) ?? new Map<number, Revision>();
      kept.set(site, revisions.set(rev, revision));
      if (thinsAt(rev)) for (const old of thinned(newestFirst(site), now)) revisions.delete(old);
      return head;
    },
    mark: async (site, change) => {
      const before = heads.get(site);
      if (!before) throw new Error(`No site "${site}" is kept here.`);
      const head = { ...before, ...change };
      heads.set(site, head);
      return head;
    },
    extra: async <T>(key: string) => (extras.get(key) as T | undefined) ?? null,
    setExtra: async (key, value) => void extras.set(key, value),
    setExtraNow: () => false,
    removeExtra: async (key) => void extras.delete(key),
    extraKeys: async (start) => [...extras.keys()].filter((key) => key.startsWith(start)),
    close: async () => undefined,
  };
}
