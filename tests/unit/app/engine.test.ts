import { describe, expect, it, vi } from 'vitest';
import { EngineClient, type Port, wasAborted } from '../../../src/app/engine/client.ts';
import type { FromWorker, ToWorker } from '../../../src/app/engine/protocol.ts';
import { type Handlers, serve } from '../../../src/app/engine/serve.ts';
import type { Site } from '../../../src/site/types.ts';

const site = { settings: {}, features: [] } as unknown as Site;

/** A worker in the same thread: messages are cloned and arrive later, as a real worker's do. `deaf` hears nothing but its first call. */
function fakeWorker(handlers: Partial<Handlers>, said: ToWorker[] = [], deaf = false) {
  let started = 0;
  const start = (): Port => {
    started++;
    const mine = started;
    const listeners: ((m: FromWorker) => void)[] = [];
    let ended = false;
    const hear = serve(handlers as Handlers, (m) =>
      queueMicrotask(() => !ended && listeners.forEach((l) => void l(structuredClone(m)))),
    );
    return {
      say: (m) => {
        said.push(m);
        if (deaf && mine === 1 && m.say === 'cancel') return;
        queueMicrotask(() => !ended && hear(structuredClone(m)));
      },
      hear: (l) => void listeners.push(l),
      lost: () => undefined,
      end: () => {
        ended = true;
      },
    };
  };
  return { start, count: () => started };
}

const answer = (over: Partial<Handlers>): Partial<Handlers> => over;

describe('the engine client', () => {
  it('brings the answer, progress and early answers to who asked', async () => {
    const heard: unknown[] = [];
    const { start } = fakeWorker(
      answer({
        plan: (_input, tools) => {
          tools.progress(0.5, 'half');
          tools.partial('early');
          return 'plan' as never;
        },
      }),
    );
    const client = new EngineClient(start);
    const plan = await client.call(
      'plan',
      { site },
      { onProgress: (done, words) => heard.push([done, words]), onPartial: (p) => heard.push(p) },
    );
    expect(plan).toBe('plan');
    expect(heard).toEqual([[0.5, 'half'], 'early']);
  });

  it('sends a site once, then names it; forgets old ones', async () => {
    const said: ToWorker[] = [];
    const seen: unknown[] = [];
    const { start } = fakeWorker(answer({ plan: ({ site: s }) => (seen.push(s) ? 'ok' : '') as never }), said);
    const client = new EngineClient(start);
    await client.call('plan', { site });
    await client.call('plan', { site });
    expect(said.filter((m) => m.say === 'site')).toHaveLength(1);
    expect(seen).toEqual([site, site]);
    for (let i = 0; i < 8; i++) await client.call('plan', { site: { ...site } });
    expect(said.filter((m) => m.say === 'forget').length).toBe(3);
    // A forgotten site is sent again.
    await client.call('plan', { site });
    expect(said.filter((m) => m.say === 'site')).toHaveLength(10);
    expect(seen.at(-1)).toEqual(site);
  });

  it('tells a failure in words', async () => {
    const { start } = fakeWorker(
      answer({
        plan: () => {
          throw new Error('no land');
        },
      }),
    );
    await expect(new EngineClient(start).call('plan', { site })).rejects.toThrow('no land');
  });

  it('says so when it does not know a call', async () => {
    const { start } = fakeWorker({});
    await expect(new EngineClient(start).call('plan', { site })).rejects.toThrow('knows no call "plan"');
  });

  it('lets go at once when cancelled, and a handler that listens hears it', async () => {
    const stop = new AbortController();
    let heard = false;
    const { start } = fakeWorker(
      answer({
        plan: (_input, tools) =>
          new Promise((resolve) => {
            tools.signal.addEventListener('abort', () => {
              heard = true;
              resolve('late' as never);
            });
          }),
      }),
    );
    const asked = new EngineClient(start).call('plan', { site }, { signal: stop.signal });
    await Promise.resolve();
    stop.abort();
    await expect(asked).rejects.toSatisfy(wasAborted);
    await new Promise((r) => setTimeout(r, 5));
    expect(heard).toBe(true);
  });

  it('starts a new worker when the old one cannot hear, and asks the others again', async () => {
    vi.useFakeTimers();
    const stop = new AbortController();
    const worker = fakeWorker(
      answer({ plan: () => new Promise<never>(() => undefined), skyView: () => 'sky' as never }),
      [],
      true,
    );
    const client = new EngineClient(worker.start);
    const asked = client.call('plan', { site }, { signal: stop.signal });
    const refused = expect(asked).rejects.toSatisfy(wasAborted);
    stop.abort();
    await refused;
    await vi.advanceTimersByTimeAsync(500);
    vi.useRealTimers();
    expect(await client.call('skyView', { site, x: 0, y: 0, eye: 1, bird: '' })).toBe('sky');
    expect(worker.count()).toBe(2);
  });
});
