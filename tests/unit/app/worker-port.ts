/** A port to an engine in this same thread: what is said is copied and comes later, as with a worker. */
import type { Port } from '../../../src/app/engine/client.ts';
import type { FromWorker } from '../../../src/app/engine/protocol.ts';
import { type Handlers, serve } from '../../../src/app/engine/serve.ts';

export function workerPort(handlers: Handlers): Port {
  const listeners: ((m: FromWorker) => void)[] = [];
  const hear = serve(handlers, (m) => setTimeout(() => listeners.forEach((l) => void l(structuredClone(m)))));
  return {
    say: (m) => void setTimeout(() => hear(structuredClone(m))),
    hear: (l) => void listeners.push(l),
    lost: () => undefined,
    end: () => undefined,
  };
}
