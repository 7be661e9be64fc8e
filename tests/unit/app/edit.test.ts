import { describe, expect, it } from 'vitest';
import { edit, redo, undo } from '../../../src/app/actions/edit.ts';
import { openText } from '../../../src/app/actions/open.ts';
import { say, unsay } from '../../../src/app/actions/say.ts';
import { EngineClient } from '../../../src/app/engine/client.ts';
import { memoryShelf } from '../../../src/app/storage/memory-shelf.ts';
import { Store } from '../../../src/app/store.ts';
import { newSite } from '../../../src/site/new-site.ts';
import type { Site } from '../../../src/site/types.ts';

const deaf = () => ({ say: () => undefined, hear: () => undefined, lost: () => undefined, end: () => undefined });
const named = (name: string): Site => newSite(name);
const open = (site: Site) => new Store(new EngineClient(deaf), memoryShelf(), { siteId: 'x', site });

describe('undo and redo', () => {
  it('go back to the very same sites, 200 steps there and back', () => {
    const start = named('start');
    const store = open(start);
    const steps = [start];
    for (let i = 0; i < 200; i++) {
      const next = named(`step ${i}`);
      steps.push(next);
      edit(store, next, `Step ${i}.`);
    }
    for (let i = 199; i >= 0; i--) {
      expect(store.state.past.at(-1)?.sentence).toBe(`Step ${i}.`);
      undo(store);
      expect(store.state.site).toBe(steps[i]);
    }
    undo(store);
    expect(store.state.site).toBe(start);
    for (let i = 1; i <= 200; i++) {
      redo(store);
      expect(store.state.site).toBe(steps[i]);
    }
  });

  it('a live drag is one step', () => {
    const start = named('start');
    const store = open(start);
    edit(store, named('a'), 'Moved 1 m.');
    edit(store, named('b'), 'Moved 2 m.', true);
    edit(store, named('c'), 'Moved 3 m.', true);
    expect(store.state.past).toHaveLength(1);
    expect(store.state.past[0]?.sentence).toBe('Moved 3 m.');
    undo(store);
    expect(store.state.site).toBe(start);
  });

  it('a new change drops what could be made again', () => {
    const store = open(named('start'));
    edit(store, named('a'), 'A.');
    undo(store);
    edit(store, named('b'), 'B.');
    expect(store.state.future).toEqual([]);
    redo(store);
    expect(store.state.site?.settings.name).toBe('b');
  });
});

describe('openText', () => {
  it('leaves the open site alone when the text is no site', async () => {
    const start = named('start');
    const store = open(start);
    await expect(openText(store, 'y', '{"type":"FeatureCollection","feat')).rejects.toThrow();
    expect(store.state.site).toBe(start);
    expect(store.state.siteId).toBe('x');
  });
});

describe('say', () => {
  it('keeps one trouble of a kind and only the newest of the others', () => {
    const store = open(named('start'));
    say(store, 'trouble', 'The map.');
    say(store, 'trouble', 'The map.');
    say(store, 'tell', 'one');
    say(store, 'tell', 'two');
    expect(store.state.messages.map((m) => m.sentence)).toEqual(['The map.', 'two']);
  });
});

describe('what is said', () => {
  it('never has an id twice, so that a message that is gone cannot end the time of another', () => {
    const store = open(named('start'));
    const first = say(store, 'undo', 'Box 1: empty. Kept.');
    unsay(store, first);
    const second = say(store, 'undo', 'Box 2: empty. Kept.');
    expect(second).not.toBe(first);
    expect(store.state.messages.map((one) => one.id)).toEqual([second]);
  });
});
