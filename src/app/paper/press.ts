/** The engine that draws paper: a worker of its own, so that sheets need not wait for a plan that is still being proven. */
import type { EngineClient } from '../engine/client.ts';
import { startEngine } from '../engine/start.ts';
import type { Store } from '../store.ts';

const presses = new WeakMap<Store, EngineClient>();

/** Started at the first question. */
export function pressOf(store: Store): EngineClient {
  const press = presses.get(store) ?? startEngine();
  presses.set(store, press);
  return press;
}
