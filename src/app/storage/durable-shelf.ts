/** The shelf that lasts: revisions in the database, a second copy beside it, and a look at both before anything is opened. */
import { sha256 } from '../digest.ts';
import { compareCopies, type Finding } from './compare-copies.ts';
import type { Manifest, Mirror } from './mirror.ts';
import { type Head, type Revision, schema } from './revision.ts';
import type { ShelfEntry, SiteShelf } from './site-shelf.ts';
import { ChangedElsewhere, isFull, type VaultDoor } from './vault.ts';
import { wholeText } from './whole-text.ts';

export interface DurableShelf extends SiteShelf {
  /** Where small things beside the sites are kept. */
  readonly vault: VaultDoor;
  /** Sites in the bin, newest first. */
  bin(): Promise<readonly ShelfEntry[]>;
  /** Takes a site out of the bin. */
  restore(id: string): Promise<ShelfEntry>;
  /** A second site with the same text. */
  duplicate(id: string, copy: { id: string; name: string }): Promise<ShelfEntry>;
  /** Every kept revision of a site without its text, newest first. */
  revisions(id: string): Promise<readonly Omit<Revision, 'body'>[]>;
  /** The text of a revision, or null when it is gone or damaged. */
  openRevision(id: string, rev: number): Promise<string | null>;
  /** The head of a site as the database has it now; null when there is none. */
  head(id: string): Promise<Head | null>;
  /** Compares both copies of every site. */
  check(): Promise<readonly Finding[]>;
  /** The text of one of the two copies as `check` found it; null when it cannot be read. */
  copyText(id: string, which: 'database' | 'mirror'): Promise<string | null>;
  /** Makes one copy the newest revision; the other stays among the older revisions. */
  take(id: string, which: 'database' | 'mirror'): Promise<ShelfEntry>;
  /** Sends a text on its way before this call returns, for a window that is about to close; `open` finds it. */
  rescue(id: string, name: string, text: string, sentence: string): void;
  /** Texts left behind by closing windows become revisions; returns the sites they went to. */
  takeRescues(): Promise<readonly ShelfEntry[]>;
  /** Resolves when the second copies under way are written, or have failed. */
  copied(): Promise<void>;
  /** Why the second copy could not be written the last time, or null. */
  readonly mirrorTrouble: string | null;
}

/** `now` gives milliseconds since 1970. */
export function durableShelf(vault: VaultDoor, mirror: Mirror | null, now: () => number = Date.now): DurableShelf {
  return new Shelf(vault, mirror, now);
}

/** A text that was under way when its window closed, and the revision it stood on. */
interface Rescue {
  readonly parent: number | null;
  readonly name: string;
  readonly text: string;
  readonly sentence: string;
}

class Shelf implements DurableShelf {
  mirrorTrouble: string | null;
  /** Revision each open site stands on, so that a save in another window is noticed and not written over. */
  readonly #standsOn = new Map<string, number>();
  /** Sites whose rescue note is still to be taken away after the next save. */
  readonly #rescued = new Set<string>();
  /** Newest text of each site that the second copy has yet to get. */
  readonly #toCopy = new Map<string, { head: Head; text: string }>();
  #copying: Promise<void> | null = null;
  /** Sites whose copies `check` found to differ: not written until one of them is chosen, so that neither is lost. */
  readonly #differ = new Set<string>();

  constructor(
    readonly vault: VaultDoor,
    private readonly mirror: Mirror | null,
    private readonly now: () => number,
  ) {
    this.mirrorTrouble = mirror ? null : 'this browser keeps no second copy';
  }

  async list(): Promise<ShelfEntry[]> {
    return entries((await this.vault.heads()).filter((head) => head.removed === null));
  }

  async bin(): Promise<ShelfEntry[]> {
    return entries((await this.vault.heads()).filter((head) => head.removed !== null));
  }

  async head(id: string): Promise<Head | null> {
    return this.vault.head(id);
  }

  async open(id: string): Promise<string | null> {
    await this.#takeRescue(id);
    const head = await this.vault.head(id);
    if (head?.removed) return null;
    if (head) this.#standsOn.set(id, head.rev);
    else this.#standsOn.delete(id);
    const body = head && (await wholeText(this.vault, id, head.rev));
    if (body !== null && !this.#differ.has(id)) this.#queueCopy(head as Head, body);
    return body ?? (await this.copyText(id, 'mirror')) ?? this.copyText(id, 'database');
  }

  async openRevision(id: string, rev: number): Promise<string | null> {
    return wholeText(this.vault, id, rev);
  }

  async revisions(id: string): Promise<Omit<Revision, 'body'>[]> {
    return (await this.vault.revisions(id)).map(({ body: _, ...rest }) => rest);
  }

  async save(id: string, name: string, text: string, sentence = ''): Promise<ShelfEntry> {
    return this.#save(id, name, text, sentence, 0);
  }

  /** `above`: the revision's number is at least one more than this. */
  async #save(id: string, name: string, text: string, sentence: string, above: number): Promise<ShelfEntry> {
    const before = await this.vault.head(id);
    if (before && before.schema > schema)
      throw new Error('This site was saved by a newer Meadowpost. Reload the page before you go on.');
    if (this.#differ.has(id)) throw new Error('its two copies differ, choose one of them first');
    const parent = this.#standsOn.get(id) ?? before?.rev ?? null;
    const hash = await sha256(text);
    const revision: Revision = {
      site: id,
      rev: Math.max(parent ?? 0, above) + 1,
      parent,
      schema,
      name,
      sentence,
      saved: this.now(),
      sha256: hash,
      body: text,
    };
    const same =
      before?.rev === parent && before?.sha256 === hash && before.name === name && before.removed === null && !above;
    const head = same && before ? before : await this.#add(revision);
    this.#standsOn.set(id, head.rev);
    this.#queueCopy(head, text);
    if (this.#rescued.delete(id)) await this.vault.removeExtra(rescueKey(id)).catch(() => undefined);
    return entryOf(head);
  }

  rescue(id: string, name: string, text: string, sentence: string): void {
    const note: Rescue = { parent: this.#standsOn.get(id) ?? null, name, text, sentence };
    if (this.vault.setExtraNow(rescueKey(id), note)) this.#rescued.add(id);
  }

  async rename(id: string, name: string): Promise<ShelfEntry> {
    return entryOf(await this.vault.mark(id, { name }));
  }

  async remove(id: string): Promise<void> {
    await this.vault.mark(id, { removed: this.now() });
  }

  async restore(id: string): Promise<ShelfEntry> {
    return entryOf(await this.vault.mark(id, { removed: null }));
  }

  async duplicate(id: string, copy: { id: string; name: string }): Promise<ShelfEntry> {
    const head = await this.vault.head(id);
    const text = (head && (await wholeText(this.vault, id, head.rev))) ?? (await this.copyText(id, 'mirror'));
    if (text === null) throw new Error(`No site "${id}" is kept here.`);
    return this.save(copy.id, copy.name, text, 'Duplicated');
  }

  async check(): Promise<Finding[]> {
    const findings = await compareCopies(this.vault, this.mirror);
    this.#differ.clear();
    for (const { site } of findings) this.#differ.add(site);
    return findings;
  }

  async copyText(id: string, which: 'database' | 'mirror'): Promise<string | null> {
    if (which === 'mirror') {
      const manifest = await this.#manifest(id);
      return (manifest && (await this.mirror?.read(manifest))) ?? null;
    }
    for (const { rev } of await this.vault.revisions(id)) {
      const body = await wholeText(this.vault, id, rev);
      if (body !== null) return body;
    }
    return null;
  }

  async take(id: string, which: 'database' | 'mirror'): Promise<ShelfEntry> {
    const other = which === 'mirror' ? 'database' : 'mirror';
    const [wanted, spare, manifest, head] = [
      await this.copyText(id, which),
      await this.copyText(id, other),
      await this.#manifest(id),
      await this.vault.head(id),
    ];
    if (wanted === null) throw new Error('That copy cannot be read.');
    this.#standsOn.delete(id);
    this.#differ.delete(id);
    const name = head?.name ?? manifest?.name ?? id;
    const revs = (await this.vault.revisions(id)).map((r) => r.rev);
    const above = Math.max(0, manifest?.rev ?? 0, ...revs);
    // The database keeps its own older revisions; the second copy has only one place, so it is moved into the database first.
    if (which === 'database' && spare !== null) await this.#save(id, name, spare, 'The second copy', above);
    return this.#save(id, name, wanted, 'Chosen when the two copies differed', above + 1);
  }

  async #manifest(id: string): Promise<Manifest | null> {
    return (await this.mirror?.list())?.find((m) => m.site === id) ?? null;
  }

  async #add(revision: Revision): Promise<Head> {
    try {
      return await this.vault.add(revision, revision.saved);
    } catch (error) {
      if (isFull(error)) throw new StorageFull();
      const head = error instanceof ChangedElsewhere ? await this.vault.head(revision.site) : null;
      if (head?.sha256 === revision.sha256 && head.name === revision.name) return head;
      throw error;
    }
  }

  async takeRescues(): Promise<ShelfEntry[]> {
    const found: ShelfEntry[] = [];
    for (const key of await this.vault.extraKeys(rescueKey(''))) {
      const entry = await this.#takeRescue(key.slice(rescueKey('').length));
      if (entry) found.push(entry);
    }
    return found;
  }

  /** A text left behind by a closing window becomes the newest revision, or a site beside it when the site went on elsewhere. */
  async #takeRescue(id: string): Promise<ShelfEntry | null> {
    const note = await this.vault.extra<Rescue>(rescueKey(id)).catch(() => null);
    if (!note || typeof note.text !== 'string') return null;
    let entry: ShelfEntry | null = null;
    const head = await this.vault.head(id);
    const hash = await sha256(note.text);
    const known = (await this.vault.revisions(id)).some((r) => r.sha256 === hash);
    if (!known && (head?.rev ?? null) === note.parent) entry = await this.save(id, note.name, note.text, note.sentence);
    else if (!known)
      entry = await this.save(`${id}-${hash.slice(0, 6)}`, `${note.name} (other window)`, note.text, note.sentence);
    await this.vault.removeExtra(rescueKey(id));
    return entry;
  }

  async copied(): Promise<void> {
    await this.#copying;
  }

  #queueCopy(head: Head, text: string): void {
    this.#toCopy.set(head.site, { head, text });
    this.#copying ??= this.#copyAll();
  }

  async #copyAll(): Promise<void> {
    for (;;) {
      const [next] = this.#toCopy.entries();
      if (!next) break;
      this.#toCopy.delete(next[0]);
      await this.#copy(next[1].head, next[1].text);
    }
    this.#copying = null;
  }

  /** The site is saved already when this runs: a failing second copy is told, not thrown. */
  async #copy(head: Head, text: string): Promise<void> {
    try {
      const { site, rev, name, saved, sha256: hash } = head;
      await this.mirror?.write({ site, rev, name, saved, sha256: hash }, text);
      if (this.mirror) this.mirrorTrouble = null;
    } catch (error) {
      this.mirrorTrouble = (error as Error).message;
    }
  }
}

/** The browser gives no more room; what was saved before is still there. */
export class StorageFull extends Error {
  constructor() {
    super('storage is full');
  }
}

function rescueKey(id: string): string {
  return `rescue:${id}`;
}

function entryOf(head: Head): ShelfEntry {
  return { id: head.site, name: head.name, saved: head.saved };
}

function entries(heads: readonly Head[]): ShelfEntry[] {
  return heads.map(entryOf).sort((a, b) => b.saved - a.saved);
}
