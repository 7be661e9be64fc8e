/** A box moved by mouse and by keys with its score beside it, the better place taken with one key, two boxes side by side, the pictures of a card; and a woods corner that moves the scores. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { wasHere } from './land-ways.ts';
import { picture } from './light-map.ts';
import { newWindow, startWalk, type Walk } from './serve.ts';

vi.setConfig({ testTimeout: 120_000 });
let walk: Walk;
let page: Page;
let said: readonly string[];

beforeAll(async () => {
  walk = await startWalk();
  ({ page, said } = await newWindow(walk));
  await wasHere(page);
  await page.goto(`${walk.url}#site=yard&place=posts&box=1`);
  await page.waitForSelector('mp-app[data-map=ready]', { timeout: 80_000 });
  await page.locator('mp-post-card h1').waitFor({ timeout: 80_000 });
}, 240_000);
afterAll(async () => walk?.close());

/** Score, meters and steps of the window as plain data. */
function now() {
  return page.evaluate(() => {
    type Box = { number: number; post: string; at: { x: number; y: number }; card: { score: number } };
    const { state } = (
      document.querySelector('mp-app') as unknown as {
        store: {
          state: {
            plan: { boxes: Box[] };
            past: { sentence: string }[];
            selection: { number?: number } | null;
            engine: { at: string };
            posts: { hand: { card: { score: number } | null } | null; nudge: { best: { gain: number } | null } | null };
          };
        };
      }
    ).store;
    return {
      boxes: state.plan.boxes.map(({ number, post, at, card }) => ({ number, post, at, score: card.score })),
      steps: state.past.map(({ sentence }) => sentence),
      chosen: state.selection?.number ?? null,
      hand: state.posts.hand?.card?.score ?? null,
      gain: state.posts.nudge?.best?.gain ?? null,
      resting: state.engine.at === 'rest',
    };
  });
}

/** Where a place of the plan's frame, or of the earth, is on the screen. */
function screen(of: { box: number } | { corner: string }): Promise<{ x: number; y: number }> {
  return page.evaluate((wanted) => {
    const app = document.querySelector('mp-app') as unknown as {
      shadowRoot: ShadowRoot;
      store: {
        state: {
          plan: { boxes: { number: number; position: [number, number] }[] };
          site: { features: { id: string; geometry: { coordinates: [number, number][][] } }[] };
        };
      };
    };
    const { map } = (
      app.shadowRoot.querySelector('mp-map') as unknown as {
        host: {
          map: {
            project(at: [number, number]): { x: number; y: number };
            getContainer(): Element;
            jumpTo(to: object): void;
          };
        };
      }
    ).host;
    const { plan, site } = app.store.state;
    const box = plan.boxes.find(({ number }) => number === ('box' in wanted ? wanted.box : 1))!.position;
    let at = box;
    if ('corner' in wanted) {
      // The corner nearest to box 1, brought into the middle of the map.
      const ring = site.features.find(({ id }) => id === wanted.corner)!.geometry.coordinates[0]!;
      const far = (p: [number, number]) => Math.hypot((p[0] - box[0]) * 0.75, p[1] - box[1]);
      at = [...ring].sort((p, q) => far(p) - far(q))[0]!;
      map.jumpTo({ center: at, zoom: 18 });
    }
    const { x, y } = map.project(at);
    const { left, top } = map.getContainer().getBoundingClientRect();
    return { x: x + left, y: y + top };
  }, of);
}

const resting = () => expect.poll(() => now().then((state) => state.resting), { timeout: 60_000 }).toBe(true);

function choose(number: number): Promise<void> {
  return page.evaluate((n) => {
    (document.querySelector('mp-app') as unknown as { store: { set(c: object): void } }).store.set({
      selection: { of: 'box', number: n },
    });
  }, number);
}

const card = () => page.locator('mp-post-card');
const first = (state: Awaited<ReturnType<typeof now>>) => state.boxes.find(({ number }) => number === state.chosen);

describe('a box', () => {
  it('shows the pictures of its reasons: curves with its place, the sky around it, the rose, and the words for the spade', async () => {
    await card().locator('mp-sun-strip .woods').waitFor({ state: 'attached' });
    expect(await card().locator('mp-curve-spark svg').count()).toBeGreaterThan(3);
    expect(await card().locator('mp-curve-spark circle').count()).toBeGreaterThan(3);
    expect(await card().locator('mp-sun-strip path').count()).toBeGreaterThan(4);
    expect(await card().locator('mp-facing-rose svg').getAttribute('aria-label')).toMatch(/\d+°/);
    const mount = card().locator('mp-post-mount');
    await mount.locator('dl').waitFor();
    expect(await mount.locator('[data-fact=Tape]').textContent()).toMatch(/ from .+, and .+ from /);
    expect(await mount.locator('[data-fact=Guard]').textContent()).toContain('pipe');
    await picture(page, 'posts-card');
  });

  it('is moved by the mouse: its score follows while it is held, and letting go is one step', async () => {
    const before = await now();
    const { x, y } = await screen({ box: 1 });
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 30, y + 10, { steps: 4 });
    const slip = page.locator('mp-hand-disc [data-score]');
    await slip.waitFor();
    const scores = new Set<string>();
    for (let step = 1; step <= 6; step++) {
      await page.mouse.move(x + 30 + 12 * step, y + 10 + 4 * step);
      await expect.poll(() => now().then(({ hand }) => hand)).not.toBeNull();
      scores.add(JSON.stringify((await now()).hand));
    }
    expect(scores.size).toBeGreaterThan(1);
    expect((await now()).steps).toEqual(before.steps);
    await picture(page, 'posts-in-the-hand');
    await page.mouse.up();
    await expect.poll(() => now().then(({ steps }) => steps.length)).toBe(before.steps.length + 1);
    expect((await now()).steps.at(-1)).toMatch(/^Box \d+ moved .+ (east|east-southeast|southeast)\. It .*scores \d+/);
    await page.keyboard.press('Control+z');
    await expect.poll(() => now().then(({ steps }) => steps.length)).toBe(before.steps.length);
  });

  it('goes to the better place near it with one key', async () => {
    // From where it was planned nothing near is better; 5 m to the east is worse.
    await resting();
    await choose(1);
    const planned = await now();
    await page.locator('mp-box-keys [role=listbox]').focus();
    for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowRight');
    await expect.poll(() => now().then(({ steps }) => steps.length)).toBe(planned.steps.length + 1);
    await resting();
    const { gain, word } = await findGain();
    expect(word).toMatch(/\d/);
    const before = await now();
    await page.keyboard.press('n');
    await expect.poll(() => now().then(({ steps }) => steps.length)).toBe(before.steps.length + 1);
    const sentence = (await now()).steps.at(-1)!;
    expect(sentence).toMatch(/^Box \d+ moved /);
    expect(gain).toBeGreaterThanOrEqual(1);
    for (const left of [before, planned]) {
      await page.keyboard.press('Control+z');
      await expect.poll(() => now().then(({ steps }) => steps.length)).toBe(left.steps.length);
    }
  });

  it('is moved by arrow keys on the map, 1 m a press', async () => {
    await resting();
    await choose(1);
    const before = await now();
    await page.locator('mp-box-keys [role=listbox]').focus();
    const box = first(before)!;
    for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowRight');
    await expect.poll(() => now().then(({ steps }) => steps.length)).toBe(before.steps.length + 1);
    const moved = (await now()).boxes.find(({ number }) => number === box.number)!;
    expect(Math.hypot(moved.at.x - box.at.x, moved.at.y - box.at.y)).toBeCloseTo(5, 1);
    await page.keyboard.press('Control+z');
    await expect.poll(() => now().then(({ steps }) => steps.length)).toBe(before.steps.length);
  });

  it('is found by list and by map alike', async () => {
    await page.keyboard.press('Escape');
    const rows = page.locator('mp-box-list li button');
    await rows.first().waitFor();
    const listed = await rows.evaluateAll((all) => all.map((row) => (row as HTMLElement).dataset.box));
    const onMap = await page
      .locator('mp-box-keys [role=option]')
      .evaluateAll((all) => all.map((option) => option.id.replace('box-', '')));
    expect(onMap).toEqual(listed);
    const { x, y } = await screen({ box: 2 });
    await page.mouse.click(x, y);
    await expect.poll(() => card().locator('h1').textContent()).toBe('Box 2');
    await page.locator('[data-do=all]').first().click();
    await rows.first().click();
    await expect.poll(() => card().locator('h1').textContent()).toBe('Box 1');
  });

  it('stands beside another, figure by figure', async () => {
    await page.locator('[data-do=compare]').click();
    const table = page.locator('mp-posts-compare table');
    await table.waitFor();
    expect(await table.locator('mp-score-disc').count()).toBe(2);
    expect(await table.locator('tbody tr').count()).toBeGreaterThan(8);
    await picture(page, 'posts-compare');
    await page.locator('[data-do=list]').click();
  });
});

/** The first box that has a better place near it. */
async function findGain(): Promise<{ gain: number; word: string }> {
  const { boxes } = await now();
  for (const { number } of boxes) {
    await choose(number);
    const word = await page
      .locator('[data-do=nudge]')
      .textContent({ timeout: 8_000 })
      .catch(() => null);
    const { gain } = await now();
    if (word !== null && gain !== null) return { gain, word };
  }
  throw new Error('no box of the yard has a better place near it');
}

describe('a woods corner', () => {
  it('takes the scores along while it is dragged, and gives them back when it goes back', async () => {
    await resting();
    await page.evaluate(() => {
      (document.querySelector('mp-app') as unknown as { store: { set(c: object): void } }).store.set({
        place: 'land',
        selection: { of: 'feature', id: 'back-woods' },
      });
    });
    await page.locator('mp-land-card h1').waitFor();
    const before = await now();
    const from = await screen({ corner: 'back-woods' });
    const box = await screen({ box: 1 });
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    for (const share of [0.2, 0.4, 0.6])
      await page.mouse.move(from.x + (box.x - from.x) * share, from.y + (box.y - from.y) * share, { steps: 3 });
    await expect
      .poll(() => now().then(({ boxes }) => boxes.map(({ score }) => score)), { timeout: 20_000 })
      .not.toEqual(before.boxes.map(({ score }) => score));
    expect((await now()).steps).toEqual(before.steps);
    await picture(page, 'land-corner-in-the-hand');
    await page.mouse.move(from.x, from.y, { steps: 3 });
    await expect
      .poll(() => now().then(({ boxes }) => boxes.map(({ score }) => Math.round(score))), { timeout: 20_000 })
      .toEqual(before.boxes.map(({ score }) => Math.round(score)));
    await page.mouse.up();
  });

  it('and the whole area goes with a drag inside it, in one step that can be undone', async () => {
    const before = await now();
    const middle = await page.evaluate(() => {
      const app = document.querySelector('mp-app') as unknown as { shadowRoot: ShadowRoot };
      const { map } = (
        app.shadowRoot.querySelector('mp-map') as unknown as {
          host: { map: { project(at: number[]): { x: number; y: number }; getContainer(): Element } };
        }
      ).host;
      const { store } = document.querySelector('mp-app') as unknown as {
        store: {
          state: { site: { features: { id: string; geometry: { coordinates: number[][][] } }[] } };
          set(c: object): void;
        };
      };
      store.set({ selection: { of: 'feature', id: 'shed' } });
      const ring = store.state.site.features.find(({ id }) => id === 'shed')!.geometry.coordinates[0]!.slice(0, -1);
      const at = [0, 1].map((axis) => ring.reduce((sum, p) => sum + p[axis]!, 0) / ring.length);
      map.project(at);
      const { left, top } = map.getContainer().getBoundingClientRect();
      (map as unknown as { jumpTo(o: object): void }).jumpTo({ center: at, zoom: 20.5 });
      const { x, y } = map.project(at);
      return { x: x + left, y: y + top };
    });
    await page.mouse.move(middle.x, middle.y);
    await page.mouse.down();
    await page.mouse.move(middle.x + 60, middle.y, { steps: 6 });
    await page.mouse.up();
    await expect.poll(() => now().then(({ steps }) => steps.length)).toBe(before.steps.length + 1);
    expect((await now()).steps.at(-1)).toMatch(/^Moved Building “Shed”/);
    await page.keyboard.press('Control+z');
    await expect.poll(() => now().then(({ steps }) => steps.length)).toBe(before.steps.length);
  });

  it('said nothing untoward on the way', () => {
    expect(said).toEqual([]);
  });
});
