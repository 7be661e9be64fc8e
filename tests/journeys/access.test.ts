/**
 * The accessibility rules over the states of the window, in every theme, wide and narrow; nothing wider than the window down to 320 px and
 * at twice the letter size. One page for all: theme and width are set, not opened anew.
 */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { themeNames } from '../../src/app/theme.ts';
import { axeViolations } from './axe.ts';
import { wasHere } from './land-ways.ts';
import { picture } from './light-map.ts';
import { newPerson, startWalk, type Walk } from './serve.ts';

vi.setConfig({ testTimeout: 600_000 });

/** What is set in the store; `open` presses what the store does not hold; `seen` is there when the state is on the screen. */
interface State {
  readonly set: object;
  readonly seen: string;
  readonly open?: string;
}

const land = (change: object, seen: string): State => ({ set: { place: 'land', land: change }, seen });
const page = (name: string, seen: string) => land({ page: name }, seen);
const posts = (name: string, seen: string, number: number | null = 1): State => ({
  set: {
    place: 'posts',
    selection: number === null ? null : { of: 'box', number },
    posts: { page: name, other: 2 },
  },
  seen,
});
const corners = [
  [-83.5472, 41.21455],
  [-83.5469, 41.21455],
  [-83.5469, 41.21435],
];

const finding = {
  site: 'a',
  name: 'Thistle Field',
  trouble: 'older',
  database: { rev: 3, saved: 1_780_000_000_000, count: 12 },
  mirror: { rev: 5, saved: 1_780_000_900_000, count: 14 },
};

const states: Readonly<Record<string, State>> = {
  'land, all that is drawn': page('list', 'mp-land-list'),
  'land, walk-through': land({ page: 'list', tour: 1 }, 'mp-land-tour h2'),
  'land, kinds': page('kinds', 'mp-land-kinds'),
  'land, drawing in progress': land({ tool: { does: 'draw', kind: 'woods' }, corners }, 'mp-land-draft'),
  'land, exact entry': page('numbers', 'mp-land-numbers'),
  'land, settings': page('settings', 'mp-land-settings'),
  'land, bring in a file': page('import', 'mp-land-import'),
  'land, new site': page('new', 'mp-land-new'),
  'land, site file': page('files', 'mp-land-files'),
  'land, card of an area': {
    set: { place: 'land', selection: { of: 'feature', id: 'back-woods' } },
    seen: 'mp-land-card',
  },
  'posts, list': posts('list', 'mp-box-list', null),
  'posts, card': posts('list', 'mp-post-mount dl'),
  'posts, why here': posts('why', 'mp-posts-why h1'),
  'posts, two side by side': posts('compare', 'mp-posts-compare table'),
  'posts, choice': posts('choose', 'mp-posts-choose', null),
  'round, before the walk': { set: { place: 'round', selection: null }, seen: 'mp-place-round h1' },
  'season, start': { set: { place: 'season', selection: null }, seen: 'mp-place-season h1' },
  'sites kept': { set: { place: 'posts', keeping: { page: 'library' } }, seen: 'mp-site-library h1' },
  'two copies that differ': {
    set: { place: 'posts', keeping: { page: 'recovery', findings: [finding] } },
    seen: 'mp-recovery section',
  },
  'the key': {
    set: { place: 'posts', selection: null, posts: { page: 'list' } },
    seen: 'mp-key',
    open: 'mp-slips .tools button',
  },
};

/** Pictures are kept of these, in every theme. */
const shownInAll = ['posts, card', 'land, drawing in progress'];

let walk: Walk;
let tab: Page;

beforeAll(async () => {
  walk = await startWalk();
  tab = await (await newPerson(walk)).newPage();
  await wasHere(tab);
  await tab.goto(`${walk.url}#site=yard&place=posts`);
  await tab.waitForSelector('mp-app[data-map=ready]', { timeout: 80_000 });
  await tab.locator('mp-box-list li button').first().waitFor({ timeout: 80_000 });
}, 240_000);
afterAll(async () => walk?.close());

/** Puts the window into a state and waits until its part is drawn. */
async function show({ set, seen, open }: State): Promise<void> {
  await tab.evaluate((change) => {
    interface Parts {
      land: object;
      posts: object;
      keeping: object;
    }
    const { store } = document.querySelector('mp-app') as unknown as {
      store: { state: Parts; set(change: object): void };
    };
    const { land: landChange, posts: postsChange, keeping, ...rest } = change as Partial<Parts>;
    const calm = { page: 'list', tool: null, corners: [], takenBack: [], corner: null, tour: null, trouble: null };
    store.set({
      selection: null,
      messages: [],
      ...rest,
      keeping: { ...store.state.keeping, page: 'closed', findings: [], ...keeping },
      land: { ...store.state.land, ...calm, ...landChange },
      posts: { ...store.state.posts, ...postsChange },
    });
    // What follows a choice (a page left for it) is done by now; the page asked for comes last.
    if (postsChange) store.set({ posts: { ...store.state.posts, ...postsChange } });
  }, set);
  if (open) {
    await uncover(open);
    await tab.locator(open).first().click();
  }
  await tab.locator(seen).first().waitFor({ timeout: 20_000 });
  await tab.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
}

async function close({ open }: State): Promise<void> {
  if (!open) return;
  await tab.locator(open).first().click();
  const more = tab.locator('mp-notebook .heights button:not([hidden])').last();
  if (lowered && (await more.isVisible())) await more.click();
  lowered = false;
}

/** Where letters are large the sheet has a phone's window to itself: "Less" brings the map back. */
async function uncover(selector: string): Promise<void> {
  const free = await tab.evaluate((wanted) => {
    const element = document.querySelector('mp-app')?.shadowRoot?.querySelector('mp-slips')?.shadowRoot;
    const rect = element?.querySelector(wanted)?.getBoundingClientRect();
    if (!rect) return true;
    const top = document.elementFromPoint(rect.x + rect.width / 2, rect.y + rect.height / 2);
    const deep = top?.shadowRoot?.elementFromPoint(rect.x + rect.width / 2, rect.y + rect.height / 2);
    return deep?.localName !== 'mp-notebook';
  }, selector.split(' ').slice(1).join(' '));
  lowered = !free;
  if (!free) await tab.locator('mp-notebook .heights button:not([hidden])').first().click();
}
let lowered = false;

const keep = (name: string) => picture(tab, name.replace(/\W+/g, '-'));

const setTheme = (theme: string) =>
  tab.evaluate((name) => {
    (document.querySelector('mp-app') as unknown as { store: { set(c: object): void } }).store.set({ theme: name });
  }, theme);

/** What is wider than its room: the window, or a page of the notebook; "" when nothing is. */
function tooWide(): string {
  const found: string[] = [];
  const { scrollWidth } = document.documentElement;
  if (scrollWidth > innerWidth) found.push(`the window by ${scrollWidth - innerWidth} px`);
  const roots: ParentNode[] = [document];
  for (let root = roots.pop(); root; root = roots.pop())
    for (const element of root.querySelectorAll('*')) {
      if (element.shadowRoot) roots.push(element.shadowRoot);
      const over = element.scrollWidth - element.clientWidth;
      if (element.matches('.scroll, .foot, .tabs, .tools') && element.clientWidth > 0 && over > 1)
        found.push(`${element.className} by ${over} px`);
    }
  return found.join(', ');
}

describe('the accessibility rules', () => {
  it.each([
    [1440, 900],
    [390, 844],
  ])('hold in every state and theme at %i × %i', async (width, height) => {
    await tab.setViewportSize({ width, height });
    const faults: string[] = [];
    // Themes outside: the map is painted anew for each, not for each state.
    for (const theme of themeNames) {
      await setTheme(theme);
      for (const [name, state] of Object.entries(states)) {
        await show(state);
        for (const fault of await axeViolations(tab)) faults.push(`${name}, ${theme}: ${fault}`);
        if (shownInAll.includes(name)) await keep(`access-${name}-${width}-${theme}`);
        await close(state);
      }
    }
    await setTheme('light');
    expect(faults).toEqual([]);
  });
});

describe('room', () => {
  it.each([
    ['320 px wide', 320, 640, '100%'],
    ['390 px wide with letters twice as large', 390, 844, '200%'],
  ])('is enough for every state %s', async (_, width, height, size) => {
    await tab.setViewportSize({ width, height });
    await tab.evaluate((s) => document.documentElement.style.setProperty('font-size', s), size);
    const faults: string[] = [];
    for (const [name, state] of Object.entries(states)) {
      await show(state);
      const over = await tab.evaluate(tooWide);
      if (over) faults.push(`${name}: ${over}`);
      await close(state);
      if (/^posts, card|exact/.test(name)) await keep(`room-${name}-${width}-${Number.parseInt(size, 10)}`);
    }
    await tab.evaluate(() => document.documentElement.style.removeProperty('font-size'));
    expect(faults).toEqual([]);
  });
});
