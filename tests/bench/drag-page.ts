/** Drags a box of the park by real pointer input and takes the times in the page. */
import type { Page } from 'playwright-core';
import type { Walk } from '../journeys/serve.ts';
import { figure } from './clock.ts';

/** Milliseconds, one for each move: until the score of that place, or of a newer one, stands in the page on the slip beside the post. */
export interface Measured {
  readonly heard: number[];
  readonly sent: number[];
  readonly asked: number[];
  /** Pictures of the map painted meanwhile. */
  readonly painted: number;
}

const moves = 90;
/** ms between two moves of the mouse: 125 a second, as a common mouse does. */
const pause = 8;

async function open(walk: Walk, hash: string): Promise<Page> {
  const page = await walk.browser.newPage({ viewport: { width: 1440, height: 900 }, serviceWorkers: 'block' });
  // The runner wraps every named function of what is sent to the page in a call of this name.
  await page.addInitScript('globalThis.__name = (f) => f');
  await page.goto(`${walk.url}${hash}`);
  await page.waitForSelector('mp-app[data-map=ready]', { timeout: 60_000 });
  return page;
}

/** The park as a visitor finds it, nothing chosen, two seconds after its first plan. */
export async function openBare(walk: Walk): Promise<Page> {
  const page = await open(walk, '#site=park');
  await page.waitForFunction(() => {
    const app = document.querySelector('mp-app') as unknown as { store: { state: { planOf: unknown } } };
    return app.store.state.planOf !== null;
  });
  await page.waitForTimeout(2000);
  return page;
}

/** The park with box 17 chosen, as soon as there is a first plan: its proof goes on. */
export async function openPark(walk: Walk): Promise<Page> {
  const page = await open(walk, '#site=park&place=posts&box=17');
  await page.locator('mp-post-card h1').waitFor({ timeout: 60_000 });
  // Nobody drags before having looked: the card's sky and the better place near are worked out meanwhile.
  await page.waitForTimeout(2500);
  return page;
}

/** ms until scores are in the page, and until the map has painted them. */
export interface LieTime {
  readonly first: number;
  readonly firstPainted: number;
  readonly whole: number;
  readonly wholePainted: number;
}

/** From choosing the lie of the land for a bird to its first coarse picture, and to cells of 10 m. */
export function lieTimes(page: Page, bird: string): Promise<LieTime> {
  return page.evaluate(async (wanted) => {
    interface Lie {
      bird: string;
      scores: { coarse: number };
    }
    interface State {
      posts: { lie: Lie | null };
    }
    const app = document.querySelector('mp-app') as unknown as {
      store: { state: State; set(c: object): void; subscribe(f: (s: State) => void): () => void };
      shadowRoot: ShadowRoot;
    };
    const { map } = (
      app.shadowRoot.querySelector('mp-map') as unknown as {
        host: {
          map: {
            on(what: string, f: (e: { sourceId?: string }) => void): void;
            off(what: string, f: (e: { sourceId?: string }) => void): void;
            isSourceLoaded(id: string): boolean;
            querySourceFeatures(id: string, which: object): unknown[];
          };
        };
      }
    ).host;
    const start = performance.now();
    const times = { first: 0, firstPainted: 0, whole: 0, wholePainted: 0 };
    let changed = false;
    const stop = app.store.subscribe(({ posts: { lie } }) => {
      if (lie?.bird !== wanted) return;
      times.first ||= performance.now() - start;
      if (lie.scores.coarse === 1) times.whole ||= performance.now() - start;
    });
    const onData = ({ sourceId }: { sourceId?: string }) => {
      if (times.first > 0 && sourceId === 'lie') changed = true;
    };
    map.on('sourcedata', onData);
    await new Promise<void>((done) => {
      // A contour has figures only where the picture is finished.
      map.on('render', function look() {
        if (!changed || !map.isSourceLoaded('lie')) return;
        times.firstPainted ||= performance.now() - start;
        if (times.whole === 0 || map.querySourceFeatures('lie', { filter: ['has', 'value'] }).length === 0) return;
        times.wholePainted = performance.now() - start;
        map.off('render', look);
        done();
      });
      app.store.set({ ground: 'lie', posts: { ...app.store.state.posts, lieBird: wanted } });
    });
    map.off('sourcedata', onData);
    stop();
    return times;
  }, bird);
}

export async function stopPlanning(page: Page): Promise<void> {
  await page.evaluate(() => {
    const app = document.querySelector('mp-app') as unknown as { store: { state: { engine: { stop?(): void } } } };
    app.store.state.engine.stop?.();
  });
  await page.waitForTimeout(600);
}

export async function dragBox(page: Page): Promise<Measured> {
  const start = await page.evaluate(prepare);
  await page.mouse.move(start.x, start.y);
  await page.mouse.down();
  for (let i = 0; i < moves; i++) {
    const angle = (i / 40) * 2 * Math.PI;
    // Not waited for: a mouse does not wait for the page either.
    void page.mouse.move(start.x + 50 * Math.sin(angle) + i / 10, start.y + 30 - 30 * Math.cos(angle));
    await page.waitForTimeout(pause);
  }
  await page.mouse.move(start.x + 30, start.y + 30);
  await page.waitForTimeout(500);
  const measured = (await page.evaluate(collect)) as Measured;
  await page.keyboard.press('Escape');
  await page.mouse.up();
  return measured;
}

/** Runs in the page: listens, and says where the chosen box is on the screen. */
function prepare(): { x: number; y: number } {
  type Place = { x: number; y: number };
  type Held = { at: Place; cardAt: Place; card: { score: number } };
  interface State {
    plan: { boxes: { number: number; position: [number, number] }[] };
    posts: { hand: Held | null };
  }
  const app = document.querySelector('mp-app') as unknown as {
    store: { state: State; subscribe(f: (now: State, before: State) => Promise<void>): () => void };
    shadowRoot: ShadowRoot;
  };
  const { map } = (
    app.shadowRoot.querySelector('mp-map') as unknown as {
      host: {
        map: { project(at: [number, number]): Place; getContainer(): Element; on(what: string, f: () => void): void };
      };
    }
  ).host;
  type Disc = HTMLElement & { updateComplete: Promise<unknown> };
  const log = {
    moves: [] as { at: Place; heard: number; sent: number }[],
    scores: [] as { at: Place; time: number }[],
    painted: 0,
  };
  Object.assign(globalThis, { dragLog: log });
  map.on('render', () => log.painted++);
  let last = { heard: 0, sent: 0 };
  for (const move of ['pointermove', 'pointerrawupdate'])
    addEventListener(move, (e) => (last = { heard: performance.now(), sent: e.timeStamp }), { capture: true });
  app.store.subscribe(async ({ posts: { hand } }, { posts: { hand: before } }) => {
    if (!hand || !before) return;
    if (hand.at !== before.at) log.moves.push({ at: hand.at, ...last });
    if (hand.cardAt === before.cardAt) return;
    const disc = map.getContainer().querySelector('mp-hand-disc') as Disc;
    await disc.updateComplete;
    const slip = disc.shadowRoot?.querySelector('[data-score]')?.getAttribute('data-score');
    // Where a newer score has overtaken this one, that one's own line counts.
    if (slip === String(Math.round(hand.card.score))) log.scores.push({ at: hand.cardAt, time: performance.now() });
  });
  const box = app.store.state.plan.boxes.find((b) => b.number === 17);
  if (!box) throw new Error('there is no box 17');
  const at = map.project(box.position);
  const { left, top } = map.getContainer().getBoundingClientRect();
  return { x: at.x + left, y: at.y + top };
}

function collect(): { heard: number[]; sent: number[]; asked: number[]; painted: number } {
  type Place = object;
  const { moves, scores, painted } = (
    globalThis as unknown as {
      dragLog: {
        moves: { at: Place; heard: number; sent: number }[];
        scores: { at: Place; time: number }[];
        painted: number;
      };
    }
  ).dragLog;
  const order = new Map(moves.map(({ at }, i) => [at, i]));
  const answered = moves.map(() => Number.POSITIVE_INFINITY);
  for (const { at, time } of scores) {
    const upTo = order.get(at) ?? -1;
    for (let i = upTo; i >= 0 && answered[i] === Number.POSITIVE_INFINITY; i--) answered[i] = time;
  }
  const own = moves.flatMap((m, i) => (scores.some(({ at }) => at === m.at) ? [answered[i]! - m.heard] : []));
  return {
    heard: moves.map((m, i) => answered[i]! - m.heard),
    sent: moves.map((m, i) => answered[i]! - m.sent),
    asked: own,
    painted,
  };
}

/** The value that a share of all lie under, as text. */
export function share(values: readonly number[], part: number): string {
  const sorted = [...values].sort((a, b) => a - b);
  return figure(sorted[Math.floor(part * (sorted.length - 1))] ?? Number.NaN);
}
