/** Steps the layout journeys share. */
import type { Page } from 'playwright-core';
import type { MapHost } from '../../src/app/map/host.ts';
import type { AppState } from '../../src/app/state.ts';

/** The app's element and the map's, as the journeys look at them. */
export interface App {
  readonly store: { readonly state: AppState; set(change: Partial<AppState>): void };
}
export interface Shown {
  readonly host: MapHost;
}

interface PlanHeld {
  readonly at: string;
  readonly fresh: boolean;
  readonly saved: string;
  readonly boxes: readonly { post: string; bird: string; number: number; locked: boolean }[];
  readonly sites: number;
  readonly value: number;
  readonly proof: string;
  readonly state: string;
  readonly metres: number;
  readonly limit: number | null;
  readonly kept: readonly string[];
  readonly leftOut: readonly { post: string; sentence: string; code: string; at: { x: number; y: number } }[];
}

/** The plan on the screen as plain data. Runs in the page. */
export function planHeld(page: Page): Promise<PlanHeld> {
  return page.evaluate(() => {
    const { state } = (document.querySelector('mp-app') as unknown as App).store;
    const { plan, site } = state;
    if (!plan || !site) throw new Error('there is no plan');
    return {
      at: state.engine.at,
      fresh: state.planOf === site,
      saved: state.saved.at,
      boxes: plan.boxes.map((b) => ({ post: b.post, bird: b.bird, number: b.number, locked: b.locked === true })),
      sites: plan.sites,
      value: plan.proof.value,
      proof: plan.proof.sentence,
      state: plan.proof.state,
      metres: plan.rounds.reduce((sum, round) => sum + round.metres, 0),
      limit: site.settings.walkLimit,
      kept: site.settings.plans.map((one) => one.name),
      leftOut: plan.leftOut.map(({ post, sentence, code, at }) => ({ post, sentence, code, at })),
    };
  });
}

/** Waits until the plan is that of the site as it is now; with `proof`, until the engine is at rest too. */
export async function planned(page: Page, proof = false): Promise<void> {
  await page.waitForFunction(
    (done) => {
      const { state } = (document.querySelector('mp-app') as unknown as App).store;
      return state.plan && state.planOf === state.site && (!done || state.engine.at === 'rest');
    },
    proof,
    { timeout: 120_000 },
  );
}

/** Stops whatever is being proven, as a person in a hurry does. */
export async function stopped(page: Page): Promise<void> {
  const stop = page.locator('mp-notebook .progress button');
  if (await stop.count()) await stop.click({ timeout: 5000 }).catch(() => undefined);
  await planned(page, true);
}

/** Waits until the site is on the shelf. */
export async function saved(page: Page): Promise<void> {
  await page.waitForFunction(
    () => (document.querySelector('mp-app') as unknown as App).store.state.saved.at === 'saved',
    null,
    { timeout: 30_000 },
  );
}

/** Sets members of the window's state: theme, place, selection, the Posts page. */
export function show(page: Page, change: object, posts: object = {}): Promise<void> {
  return page.evaluate(
    ([more, own]) => {
      const { store } = document.querySelector('mp-app') as unknown as App;
      // In two steps: a new choice leaves the pages about the whole plan.
      store.set(more);
      store.set({ posts: { ...store.state.posts, ...own } });
    },
    [change, posts] as const,
  );
}

/** A page of the Posts place, by its button. */
export async function openPosts(page: Page, what: 'choose' | 'kept' | 'numbers' | 'left'): Promise<void> {
  const back = page.locator('mp-place-posts [data-do=list], mp-place-posts [data-do=all]');
  if (await back.count()) await back.first().click();
  await page.locator(`mp-place-posts [data-do=${what}]`).click();
}

/** Where a place of the site's frame is on the screen, px. */
export function onScreen(page: Page, at: { x: number; y: number }): Promise<{ x: number; y: number }> {
  return page.locator('mp-map').evaluate((view, point) => {
    const { host } = view as unknown as Shown;
    const { x, y } = host.map.project(host.toLonLat(point)!);
    const { left, top } = host.map.getCanvas().getBoundingClientRect();
    return { x: x + left, y: y + top };
  }, at);
}
