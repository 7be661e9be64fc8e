/** The worker's side of the engine: runs calls, passes progress on, hears cancel. Apart from the worker file so that tests can run it. */
import type { Site } from '../../site/types.ts';
import type { Calls } from './calls.ts';
import type { CallName, CallTools, FromWorker, ToWorker } from './protocol.ts';
import { changedSite } from './site-change.ts';

export type Handlers = {
  readonly [Name in CallName]: (
    input: Calls[Name]['input'],
    tools: CallTools,
  ) => Calls[Name]['output'] | Promise<Calls[Name]['output']>;
};

/** Returns what is to be done with each message heard. */
export function serve(handlers: Handlers, say: (message: FromWorker) => void): (heard: ToWorker) => void {
  const running = new Map<number, AbortController>();
  const sites = new Map<number, Site>();
  return (heard) => {
    if (heard.say === 'site') {
      sites.set(heard.token, 'from' in heard ? changedSite(sites.get(heard.from)!, heard.change) : heard.site);
      return;
    }
    if (heard.say === 'forget') {
      sites.delete(heard.token);
      return;
    }
    if (heard.say === 'cancel') {
      running.get(heard.id)?.abort();
      say({ say: 'failed', id: heard.id, sentence: 'cancelled' });
      return;
    }
    const { id } = heard;
    const stop = new AbortController();
    running.set(id, stop);
    const finish = (message: FromWorker) => {
      running.delete(id);
      if (!stop.signal.aborted) say(message);
    };
    run(handlers, heard, sites, toolsFor(id, stop, say)).then(
      (output) => finish({ say: 'done', id, output }),
      (error: unknown) =>
        finish({ say: 'failed', id, sentence: error instanceof Error ? error.message : String(error) }),
    );
  };
}

async function run(
  handlers: Handlers,
  heard: ToWorker & { say: 'call' },
  sites: ReadonlyMap<number, Site>,
  tools: CallTools,
): Promise<unknown> {
  const handler = handlers[heard.name] as ((input: unknown, tools: CallTools) => unknown) | undefined;
  if (!handler) throw new Error(`The engine knows no call "${heard.name}".`);
  const site = heard.token === null ? {} : { site: sites.get(heard.token) };
  return handler({ ...(heard.input as object), ...site }, tools);
}

function toolsFor(id: number, stop: AbortController, say: (message: FromWorker) => void): CallTools {
  const alive = () => !stop.signal.aborted;
  return {
    progress: (done, sentence) => alive() && say({ say: 'progress', id, done, sentence }),
    partial: (output) => alive() && say({ say: 'partial', id, output }),
    signal: stop.signal,
  };
}
