/** Finds out where this browser lets us keep sites, and whether what it kept is whole. */
import type { Finding } from './compare-copies.ts';
import { type DurableShelf, durableShelf } from './durable-shelf.ts';
import { memoryVault } from './memory-vault.ts';
import { type Mirror, privateFilesMirror } from './mirror.ts';
import type { ShelfEntry } from './site-shelf.ts';
import { Vault, type VaultDoor } from './vault.ts';

export interface StartedShelf {
  readonly shelf: DurableShelf;
  /** Why sites last no longer than this window; null where they last. */
  readonly why: string | null;
  readonly findings: readonly Finding[];
  /** Sites whose last change was still under way when their window closed, and was found again. */
  readonly rescued: readonly ShelfEntry[];
}

/** Milliseconds a database may take to answer the first time (ours). */
const patience = 5000;

/** Never rejects: a browser that keeps nothing gets a shelf in memory. */
export async function startShelf(name?: string): Promise<StartedShelf> {
  const mirror = await privateFilesMirror(name).catch(() => null);
  const vault = new Vault(name);
  try {
    await inTime(vault.heads());
    return await looked(vault, mirror, null);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return looked(memoryVault(), mirror, why);
  }
}

async function looked(vault: VaultDoor, mirror: Mirror | null, why: string | null): Promise<StartedShelf> {
  const shelf = durableShelf(vault, mirror);
  const findings = await shelf.check();
  const rescued = await shelf.takeRescues().catch(() => []);
  return { shelf, why, findings, rescued };
}

function inTime<T>(work: Promise<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error('the database does not answer')), patience);
    work.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}
