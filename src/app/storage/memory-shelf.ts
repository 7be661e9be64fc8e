/** A shelf that lasts as long as the window: for demos, private windows and tests. */
import { type DurableShelf, durableShelf } from './durable-shelf.ts';
import { memoryVault } from './memory-vault.ts';

/** `now` gives milliseconds since 1970. */
export function memoryShelf(now: () => number = Date.now): DurableShelf {
  return durableShelf(memoryVault(), null, now);
}
