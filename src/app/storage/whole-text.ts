/** A revision's text that is what its own hash says. */
import { sha256 } from '../digest.ts';
import type { VaultDoor } from './vault.ts';

/** Null when the revision is not there, cannot be read, or does not match its hash. */
export async function wholeText(vault: VaultDoor, id: string, rev: number): Promise<string | null> {
  const revision = await vault.revision(id, rev).catch(() => null);
  if (!revision || typeof revision.body !== 'string') return null;
  return (await sha256(revision.body)) === revision.sha256 ? revision.body : null;
}
