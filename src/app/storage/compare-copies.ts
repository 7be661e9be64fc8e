/** Compares what the database holds with the second copies: a damaged database can open as an empty one without a word. */
import type { Manifest, Mirror } from './mirror.ts';
import { type Head, schema } from './revision.ts';
import type { VaultDoor } from './vault.ts';
import { wholeText } from './whole-text.ts';

/** One copy that is whole: when it was saved (milliseconds since 1970), its revision, and how many revisions stand with it. */
export interface CopyFound {
  readonly saved: number;
  readonly rev: number;
  readonly count: number;
}

/** A site whose two copies do not agree: what is wrong and what each holds. Nothing is deleted; the person chooses. */
export interface Finding {
  readonly site: string;
  readonly name: string;
  readonly trouble: 'missing' | 'older' | 'damaged' | 'newer-schema';
  /** The newest whole revision in the database; null = none. */
  readonly database: CopyFound | null;
  readonly mirror: CopyFound | null;
}

export async function compareCopies(vault: VaultDoor, mirror: Mirror | null): Promise<Finding[]> {
  const heads = new Map((await vault.heads()).map((head) => [head.site, head]));
  const copies = new Map(((await mirror?.list()) ?? []).map((copy) => [copy.site, copy]));
  const ids = new Set([...heads.keys(), ...copies.keys(), ...(await vault.sites())]);
  const findings: Finding[] = [];
  for (const id of ids) {
    const finding = await compare(vault, mirror, id, heads.get(id) ?? null, copies.get(id) ?? null);
    if (finding) findings.push(finding);
  }
  return findings;
}

async function compare(
  vault: VaultDoor,
  mirror: Mirror | null,
  site: string,
  head: Head | null,
  manifest: Manifest | null,
): Promise<Finding | null> {
  const trouble = await troubleOf(vault, mirror, head, manifest, site);
  if (!trouble) return null;
  const revisions = await vault.revisions(site);
  let database: CopyFound | null = null;
  for (const { rev, saved } of revisions) {
    if ((await wholeText(vault, site, rev)) === null) continue;
    database = { rev, saved, count: revisions.length };
    break;
  }
  const copy = manifest && (await mirror?.read(manifest)) != null;
  const name = head?.name ?? manifest?.name ?? revisions[0]?.name ?? site;
  const second = manifest && copy ? { rev: manifest.rev, saved: manifest.saved, count: 1 } : null;
  return { site, name, trouble, database, mirror: second };
}

/** A second copy that lags behind a whole database is no trouble: the next save brings it up. */
async function troubleOf(
  vault: VaultDoor,
  mirror: Mirror | null,
  head: Head | null,
  manifest: Manifest | null,
  site: string,
): Promise<Finding['trouble'] | null> {
  if (head && head.schema > schema) return 'newer-schema';
  if (head && (await wholeText(vault, site, head.rev)) === null) return 'damaged';
  if (!head && (await vault.revisions(site)).length > 0) return 'damaged';
  const ahead = manifest && (!head || manifest.rev > head.rev || manifest.saved > head.saved);
  if (!manifest || !ahead || manifest.sha256 === head?.sha256) return null;
  if ((await mirror?.read(manifest)) == null) return null;
  return head ? 'older' : 'missing';
}
