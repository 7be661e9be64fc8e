/** Keeps the built app on the device and remembers how to take a newer one when the person agrees. */
import type { Store } from '../store.ts';
import { keepOffline, type OfflineState } from './register.ts';

let take: (() => void) | null = null;

/** Only for the built app: while building it the browser must always ask for the newest file. */
export async function startOffline(store: Store): Promise<void> {
  const tell = (offline: OfflineState) => store.set({ round: { ...store.state.round, offline } });
  try {
    take = await keepOffline(tell);
  } catch {
    tell('not-possible');
  }
}

/** Takes the waiting version and reloads. */
export function takeUpdate(): void {
  take?.();
}

/** Bytes of the app's own files on this device; null when it cannot be told. */
export async function appSize(): Promise<number | null> {
  if (!('caches' in globalThis)) return null;
  const names = (await caches.keys()).filter((name) => name.startsWith('meadowpost-app-'));
  let bytes = 0;
  for (const name of names) {
    const cache = await caches.open(name);
    for (const request of await cache.keys()) {
      const answer = await cache.match(request);
      bytes += (await answer?.blob())?.size ?? 0;
    }
  }
  return bytes > 0 ? bytes : null;
}
