/** The shelf that lasts: revisions in the database, a second copy beside it, and a look at both before anything is opened. */
import { sha256 } from '../digest.ts';
import type { Manifest, Mirror } from './mirror.ts';
import { type Head, type Revision, schema } from './revision.ts';
import type { ShelfEntry, SiteShelf } from './site-shelf.ts';
import { isFull, type Vault } from './vault.ts';

/** A site whose two copies do not agree: what is wrong and what each holds. Nothing is deleted; the person chooses. */
export interface Finding {
  readonly site: string;
  readonly name: string;
  readonly trouble: 'missing' | 'older' | 'damaged' | 'newer-schema';
  /** Milliseconds since 1970 of what the database holds that is whole, and of the second copy; null = none. */
  readonly database: { readonly saved: number; readonly rev: number } | null;
  readonly mirror: { readonly saved: number; readonly rev: number } | null;
}

export interface DurableShelf extends SiteShelf {
  /** Sites in the bin, newest first. */
  bin(): Promise<readonly ShelfEntry[]>;
  /** Takes a site out of the bin. */
  restore(id: string): Promise<ShelfEntry>;
  duplicate(id: string, copy: { id: string; name: string }): Promise<ShelfEntry>;
  /** Every kept revision of a site without its text, newest first. */
  revisions(id: string): Promise<readonly Omit<Revision, 'body'>[]>;
  /** The text of a revision, or null when it is gone or damaged. */
  openRevision(id: string, rev: number): Promise<string | null>;
  /** Compares both copies of every site. */
  check(): Promise<readonly Finding[]>;
  /** Makes the second copy the newest revision. */
  takeMirror(id: string): Promise<ShelfEntry>;
  /** Why the second copy could not be written the last time, or null. */
  readonly mirrorTrouble: string | null;
}

export function durableShelf(vault: Vault, mirror: Mirror | null, now: () => number = Date.now): DurableShelf {
  return new Shelf(vault, mirror, now);
}

class Shelf implements DurableShelf {
  mirrorTrouble: string | null;
  /** Revision each open site stands on, so that a save in another window is noticed and not written over. */
  readonly #standsOn = new Map<string, number>();

  constructor(
    private readonly vault: Vault,
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

  async open(id: string): Promise<string | null> {
    const head = await this.vault.head(id);
    if (!head) return this.#openFromMirror(id);
    this.#standsOn.set(id, head.rev);
    const body = await this.#whole(id, head.rev);
    return body ?? (await this.#openFromMirror(id)) ?? this.#lastWhole(id);
  }

  async openRevision(id: string, rev: number): Promise<string | null> {
    return this.#whole(id, rev);
  }

  async revisions(id: string): Promise<Omit<Revision, 'body'>[]> {
    return (await this.vault.revisions(id)).map(({ body: _, ...rest }) => rest);
  }

  async save(id: string, name: string, text: string, sentence = ''): Promise<ShelfEntry> {
    const before = await this.vault.head(id);
    if (before && before.schema > schema)
      throw new Error('This site was saved by a newer Meadowpost. Reload the page before you go on.');
    const parent = this.#standsOn.get(id) ?? before?.rev ?? null;
    const hash = await sha256(text);
    if (before && before.rev === parent && before.sha256 === hash && before.name === name && before.removed === null)
      return entryOf(before);
    const saved = this.now();
    const rev = (parent ?? 0) + 1;
    const revision: Revision = { site: id, rev, parent, schema, name, sentence, saved, sha256: hash, body: text };
    const head = await this.vault.add(revision, saved).catch((error: unknown) => {
      throw isFull(error) ? new Error('storage is full') : error;
    });
    this.#standsOn.set(id, head.rev);
    await this.#copy(head, text);
    return entryOf(head);
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
    const text = await this.open(id);
    if (text === null) throw new Error(`No site "${id}" is kept here.`);
    return this.save(copy.id, copy.name, text, 'Duplicated');
  }

  async check(): Promise<Finding[]> {
    const heads = await this.vault.heads();
    const copies = new Map((await this.mirror?.list())?.map((m) => [m.site, m]) ?? []);
    const ids = new Set([...heads.map((h) => h.site), ...copies.keys()]);
    const findings: Finding[] = [];
    for (const id of ids) {
      const head = heads.find((h) => h.site === id) ?? null;
      const finding = await this.#compare(id, head, copies.get(id) ?? null);
      if (finding) findings.push(finding);
    }
    return findings;
  }

  async takeMirror(id: string): Promise<ShelfEntry> {
    const manifest = (await this.mirror?.list())?.find((m) => m.site === id);
    const body = manifest ? await this.mirror?.read(manifest) : null;
    if (!manifest || !body) throw new Error('The second copy cannot be read.');
    this.#standsOn.delete(id);
    return this.save(id, manifest.name, body, 'Taken from the second copy');
  }

  async #compare(id: string, head: Head | null, manifest: Manifest | null): Promise<Finding | null> {
    const copy =
      manifest && (await this.mirror?.read(manifest)) != null ? { saved: manifest.saved, rev: manifest.rev } : null;
    const whole = head && (await this.#whole(id, head.rev)) !== null ? { saved: head.saved, rev: head.rev } : null;
    const finding = (trouble: Finding['trouble']): Finding => ({
      site: id,
      name: head?.name ?? manifest?.name ?? id,
      trouble,
      database: whole,
      mirror: copy,
    });
    if (head && head.schema > schema) return finding('newer-schema');
    if (!head) return copy ? finding('missing') : null;
    if (!whole) return finding('damaged');
    return copy && copy.rev > head.rev ? finding('older') : null;
  }

  /** The text of a revision, or null when it is not there or does not match its own hash. */
  async #whole(id: string, rev: number): Promise<string | null> {
    const revision = await this.vault.revision(id, rev).catch(() => null);
    if (!revision || typeof revision.body !== 'string') return null;
    return (await sha256(revision.body)) === revision.sha256 ? revision.body : null;
  }

  async #lastWhole(id: string): Promise<string | null> {
    for (const { rev } of await this.vault.revisions(id)) {
      const body = await this.#whole(id, rev);
      if (body !== null) return body;
    }
    return null;
  }

  async #openFromMirror(id: string): Promise<string | null> {
    const manifest = (await this.mirror?.list())?.find((m) => m.site === id);
    return (manifest && (await this.mirror?.read(manifest))) ?? null;
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

function entryOf(head: Head): ShelfEntry {
  return { id: head.site, name: head.name, saved: head.saved };
}

function entries(heads: readonly Head[]): ShelfEntry[] {
  return heads.map(entryOf).sort((a, b) => b.saved - a.saved);
}
