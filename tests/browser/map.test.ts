/** The app in a real browser with a real MapLibre map: a small site with a plan made by the engine in its worker. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import '../../src/app/elements/app/app.ts';
import { openText } from '../../src/app/actions/open.ts';
import { select, setTheme } from '../../src/app/actions/select.ts';
import type { App } from '../../src/app/elements/app/app.ts';
import { themeNames } from '../../src/app/theme.ts';
import { emptySite, smallSite } from './sites.ts';

let app: App;

async function until<T>(what: () => T | null | undefined | false, words: string): Promise<T> {
  const end = Date.now() + 20_000;
  for (;;) {
    const found = what();
    if (found) return found;
    if (Date.now() > end) throw new Error(`waited 20 s for: ${words}`);
    await new Promise((r) => setTimeout(r, 25));
  }
}

const map = () => app.renderRoot.querySelector('mp-map')?.host?.map;
const idle = () =>
  new Promise<void>((resolve) => {
    map()?.once('idle', () => resolve());
    map()?.triggerRepaint();
  });
const place = () =>
  app.renderRoot.querySelector('mp-notebook')?.shadowRoot?.querySelector('mp-place-posts')?.shadowRoot;
const card = () => place()?.querySelector('mp-post-card')?.shadowRoot;

/** Opens a site in the one app of these tests: starting a map costs more than the tests themselves. */
async function open(text: string, id: string): Promise<void> {
  app.store.set({ selection: null, place: 'posts', messages: [] });
  await openText(app.store, id, text);
  await until(() => app.store.state.plan && app.store.state.engine.at === 'rest', 'the plan');
  await idle();
}

beforeAll(async () => {
  document.body.style.margin = '0';
  location.hash = '#site=none';
  app = document.createElement('mp-app');
  document.body.append(app);
  await until(() => app.hasAttribute('data-map'), 'the map');
  await open(smallSite, 'test');
}, 60_000);
afterAll(() => app.remove());

describe('the map', () => {
  it('draws the land, the boxes and their reasons, and shows the card of the box that was clicked', async () => {
    const { plan } = app.store.state;
    expect(plan?.boxes.length).toBe(3);
    const drawn = new Set(
      map()
        ?.queryRenderedFeatures()
        .map((f) => f.layer.id),
    );
    for (const layer of ['meadow-fill', 'meadow-marks', 'woods-edge', 'boxes-icon', 'names-area'])
      expect(drawn).toContain(layer);

    const box = plan!.boxes[1]!;
    const at = map()!.project(box.position);
    const rect = map()!.getCanvas().getBoundingClientRect();
    const spot = { clientX: rect.x + at.x, clientY: rect.y + at.y, bubbles: true, button: 0 };
    for (const type of ['mousedown', 'mouseup', 'click']) map()!.getCanvas().dispatchEvent(new MouseEvent(type, spot));
    expect(app.store.state.selection).toEqual({ of: 'box', number: 2 });
    await until(() => card()?.querySelector('h1')?.textContent === 'Box 2', 'the card of box 2');
    await idle();
    const reasons = new Set(
      map()
        ?.queryRenderedFeatures()
        .map((f) => f.layer.id),
    );
    expect(reasons).toContain('reasons-disc');
    expect(reasons).toContain('reasons-woods');
    expect(location.hash).toBe('#site=test&place=posts&box=2');
    expect(app.store.state.messages).toEqual([]);
  });

  it('says on the card what the plan says', async () => {
    select(app.store, { of: 'box', number: 1 });
    const box = app.store.state.plan!.boxes[0]!;
    const first = () => card()?.querySelector('mp-reason-rows')?.shadowRoot?.querySelector('li')?.textContent ?? '';
    await until(() => first().includes(box.card.rows[0]!.sentence), 'the rows of box 1');
    const rows = await until(
      () => card()?.querySelector('mp-reason-rows')?.shadowRoot?.querySelectorAll('li'),
      'its rows',
    );
    const counted = box.card.rows.filter((r) => r.weight > 0);
    expect(rows.length).toBe(counted.length);
    counted.forEach((row, i) => {
      expect(rows[i]?.textContent).toContain(row.sentence);
      if (row.score !== null)
        expect(rows[i]?.querySelector('.number')?.textContent).toContain(String(Math.round(row.score * 100)));
    });
    const strip = await until(
      () => card()?.querySelector('mp-sun-strip')?.shadowRoot?.querySelector('.thick'),
      'the sun strip',
    );
    expect(strip.getAttribute('d')?.length).toBeGreaterThan(20);
    expect(card()?.textContent).toContain(`Face ${Math.round(box.card.facing.used)}°`);
  });

  it.each(themeNames)('takes the %s theme without a word of trouble', async (theme) => {
    setTheme(app.store, theme);
    await idle();
    expect(getComputedStyle(app).getPropertyValue('--paper').toUpperCase()).toBe(
      { light: '#FBF8EF', dark: '#191F20', sunlight: '#FFFFFF' }[theme],
    );
    expect(app.store.state.messages).toEqual([]);
    expect(map()?.getPaintProperty('woods-fill', 'fill-color')).toBe(
      { light: '#B3C8A0', dark: '#26372A', sunlight: '#A9C690' }[theme],
    );
  });

  it('passes a trouble of the map on in words', async () => {
    map()?.fire('error', { error: new Error('a tile is broken') } as never);
    const slips = app.renderRoot.querySelector('mp-messages')?.shadowRoot;
    await until(() => slips?.textContent?.includes('a tile is broken'), 'the message');
    expect(slips?.textContent).toContain('Your site is unchanged');
    app.store.set({ messages: [] });
  });

  it('is walked box by box with the arrow keys from one tab stop', async () => {
    const keys = await until(
      () => app.renderRoot.querySelector('mp-box-keys')?.shadowRoot?.querySelector<HTMLElement>('[role=listbox]'),
      'the list on the map',
    );
    const press = async (key: string) => {
      keys.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
      await app.renderRoot.querySelector('mp-box-keys')?.updateComplete;
    };
    // With a box open the arrows move it: they walk only when none is.
    select(app.store, null);
    await press('Home');
    keys.focus();
    expect(keys.getAttribute('aria-activedescendant')).toBe('box-1');
    await press('ArrowRight');
    await press('ArrowRight');
    expect(keys.getAttribute('aria-activedescendant')).toBe('box-3');
    await press('ArrowRight');
    expect(keys.getAttribute('aria-activedescendant')).toBe('box-1');
    await press('End');
    await press('Enter');
    expect(app.store.state.selection).toEqual({ of: 'box', number: 3 });
    const stops = app.renderRoot.querySelector('mp-box-keys')?.shadowRoot?.querySelectorAll('[tabindex="0"]');
    expect(stops?.length).toBe(1);
  });

  it('opens an empty site and says what belongs there', async () => {
    await open(emptySite, 'empty');
    const words = await until(
      () => place()?.textContent?.includes('Draw the land first') && place()?.textContent,
      'the empty page',
    );
    expect(words).toContain('Go to the land');
    expect(app.store.state.messages).toEqual([]);
  });
});
