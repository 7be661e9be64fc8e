/** Letters twice as large: nothing cut off, nothing on top of each other, and every page can still be read to its end. */
import { afterEach, describe, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import '../../src/app/elements/notebook/notebook.ts';
import type { Scale } from '../../src/app/elements/scale/scale.ts';
import '../../src/app/elements/scale/scale.ts';
import type { MapView } from '../../src/app/map/map-view.ts';
import { places } from '../../src/app/state.ts';
import { type Alone, crowded, drawn, standAlone, until } from './place.ts';
import { meadow } from './round/meadow.ts';

let alone: Alone;
afterEach(() => {
  alone.remove();
  document.documentElement.style.removeProperty('font-size');
});

/** A map that stands still at this zoom. */
const still = (zoom: number) =>
  ({
    host: { map: { getZoom: () => zoom, getCenter: () => ({ lat: 41 }), on: () => undefined } },
  }) as unknown as MapView;

/** Words of the scale that lie on each other, or reach out of its slip. */
function overlaps(): string[] {
  const slip = alone.place.getBoundingClientRect();
  const words = alone.all('text').map((one) => ({ said: one.textContent ?? '', rect: one.getBoundingClientRect() }));
  const out = words.filter(({ rect }) => rect.left < slip.left || rect.right > slip.right || rect.bottom > slip.bottom);
  const over = words.flatMap((a, i) =>
    words.slice(i + 1).flatMap((b) => {
      const across = Math.min(a.rect.right, b.rect.right) - Math.max(a.rect.left, b.rect.left);
      // Line boxes of letters touch; the letters themselves are lower.
      const down = Math.min(a.rect.bottom, b.rect.bottom) - Math.max(a.rect.top, b.rect.top);
      return across > 0.5 && down > a.rect.height * 0.3 ? [`${a.said} lies on ${b.said}`] : [];
    }),
  );
  return [...out.map(({ said }) => `${said} reaches out`), ...over];
}

describe.each([
  ['a phone', 390, 844],
  ['a desktop', 1440, 900],
])('the scale on %s', (_, width, height) => {
  it.each(['100%', '150%', '200%'])('keeps its words apart at %s letters', async (size) => {
    await page.viewport(width, height);
    document.documentElement.style.setProperty('font-size', size);
    alone = standAlone('mp-scale', meadow({}));
    alone.place.style.flex = 'none';
    alone.place.style.setProperty('--sans', '"Source Sans 3", sans-serif');
    await document.fonts.load('600 12px "Source Sans 3"');
    for (const units of ['us', 'metric'] as const)
      for (const zoom of [13.2, 15.7, 17.1, 18.9, 20]) {
        alone.store.set({ units });
        (alone.place as Scale).view = still(zoom);
        await drawn();
        expect(alone.all('text').length).toBeGreaterThan(2);
        expect(overlaps(), `${units} ${zoom}`).toEqual([]);
      }
  });
});

describe('the notebook 320 px wide with letters twice as large', () => {
  it.each(places)('shows all of %s', async (place) => {
    await page.viewport(320, 640);
    document.documentElement.style.setProperty('font-size', '200%');
    alone = standAlone('mp-notebook', { ...meadow({}), place });
    await until(() => alone.find(`mp-place-${place}`)?.shadowRoot?.querySelector('mp-page, mp-round-way'), place);
    await drawn();
    const cut = alone
      .all('[role=tab]')
      .filter((tab) => tab.scrollWidth > tab.clientWidth + 1 || tab.getBoundingClientRect().right > 320);
    expect(cut.map((tab) => tab.textContent?.trim())).toEqual([]);
    expect(document.documentElement.scrollWidth).toBe(320);
    expect(crowded(alone, 328)).toEqual([]);
    const sheet = alone.find('.page')!;
    expect(sheet.scrollWidth).toBeLessThanOrEqual(sheet.clientWidth + 1);
    // A third of the window at least is the page's own, and its end can be scrolled into it.
    const { top, bottom } = sheet.getBoundingClientRect();
    expect(bottom - top).toBeGreaterThan(640 / 3);
    expect(bottom).toBeLessThanOrEqual(641);
    sheet.scrollTo(0, sheet.scrollHeight);
    await drawn();
    const last = alone
      .all('button:not([role=tab])')
      .filter((one) => one.getBoundingClientRect().height > 0)
      .at(-1)!;
    expect(last.getBoundingClientRect().bottom).toBeLessThanOrEqual(641);
  });
});
