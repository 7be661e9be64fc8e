/** Starts the engine's worker. The only file that names it, so that the bundler finds it. */
import { EngineClient, type Port } from './client.ts';
import workerUrl from './engine.worker.ts?worker&url';
import type { FromWorker } from './protocol.ts';

/** A client whose workers, one for long work and one at hand, start with the first question each. */
export function startEngine(): EngineClient {
  return new EngineClient(startWorker, new EngineClient(startWorker));
}

function startWorker(): Port {
  return portOf(new Worker(workerUrl, { type: 'module' }));
}

function portOf(worker: Worker): Port {
  return {
    say: (message) => worker.postMessage(message),
    hear: (listener) => worker.addEventListener('message', (event: MessageEvent<FromWorker>) => listener(event.data)),
    lost: (listener) =>
      worker.addEventListener('error', (event) => listener(event.message || 'the engine did not start')),
    end: () => worker.terminate(),
  };
}
