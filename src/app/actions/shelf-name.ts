/** The open site goes on under another id and name: a demo that was changed, or what two windows did to one site. */
import { type History, present, startHistory } from '../../edits/history.ts';
import type { Site } from '../../site/types.ts';
import type { Store } from '../store.ts';
import { stepsOf } from './edit.ts';
import { replan } from './plan.ts';

/** A site under another name; the text it was read from no longer fits. */
export function named({ readFrom: _, ...site }: Site, name: string): Site {
  return { ...site, settings: { ...site.settings, name } };
}

/** Gives the open site another id, and its name through all of its history, so that no undo brings the old name back. */
export function becomes(store: Store, id: string, from: string, to: string): void {
  const { site, history } = store.state;
  if (!site) return;
  // The id first and alone: the map flies to a site that comes with a new id, and this one is on the screen already.
  store.set({ siteId: id });
  rename(store, history && present(history) === site ? history : startHistory(site), from, to);
}

function rename(store: Store, history: History, from: string, to: string): void {
  const before = present(history);
  const steps = history.steps.map((step) =>
    step.site.settings.name === from ? { ...step, site: named(step.site, to) } : step,
  );
  const renamed = { ...history, steps };
  const site = present(renamed);
  const planned = store.state.planOf === before;
  store.set({ site, history: renamed, ...stepsOf(renamed), planOf: planned ? site : store.state.planOf });
  if (!planned) void replan(store);
}

/** A readable id that no other site has. */
export function freshId(name: string): string {
  const word = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 40);
  const random = [...crypto.getRandomValues(new Uint8Array(4))].map((b) => b.toString(16).padStart(2, '0')).join('');
  return `${word || 'site'}-${random}`;
}
