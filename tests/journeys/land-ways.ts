/** Steps the Land journeys share. */
import type { Locator, Page } from 'playwright-core';

/** What the window holds, as plain data. */
export interface Held {
  readonly kinds: readonly string[];
  readonly corners: number;
  readonly sentences: readonly string[];
  readonly place: string;
  readonly boxes: number;
  readonly trouble: string | null;
  readonly last: { readonly kind: string; readonly corners: number } | null;
}

export function held(page: Page): Promise<Held> {
  return page.evaluate(() => {
    type Feature = { kind: string; geometry: { type: string; coordinates: unknown[][] } | null };
    const { state } = (
      document.querySelector('mp-app') as unknown as {
        store: {
          state: {
            site: { features: Feature[] } | null;
            land: { corners: unknown[]; trouble: { sentence: string } | null };
            past: { sentence: string }[];
            place: string;
            plan: { boxes: unknown[] } | null;
          };
        };
      }
    ).store;
    const last = state.site?.features.at(-1);
    return {
      kinds: state.site?.features.map((f) => f.kind) ?? [],
      corners: state.land.corners.length,
      sentences: state.past.map((s) => s.sentence),
      place: state.place,
      boxes: state.plan?.boxes.length ?? 0,
      trouble: state.land.trouble?.sentence ?? null,
      last: last
        ? { kind: last.kind, corners: last.geometry?.type === 'Polygon' ? last.geometry.coordinates[0]!.length - 1 : 0 }
        : null,
    };
  });
}

/** No walk is offered: these people were here before. */
export async function wasHere(page: Page): Promise<void> {
  await page.context().addInitScript(() => localStorage.setItem('meadowpost walk seen', 'yes'));
}

/** Presses Tab until the wanted element has the focus; the way a person without a mouse goes. */
export async function tabTo(page: Page, wanted: Locator, most = 200): Promise<number> {
  const handle = await wanted.elementHandle({ timeout: 20_000 });
  for (let pressed = 0; pressed <= most; pressed++) {
    const there = await page.evaluate((element) => {
      let active: Element | null = document.activeElement;
      while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
      return active === element;
    }, handle);
    if (there) return pressed;
    await page.keyboard.press('Tab');
  }
  throw new Error(`not reached with ${most} presses of Tab: ${wanted}`);
}

/** Points on a circle around a place of the screen, in order. */
export function around(x: number, y: number, radius: number, count: number): [number, number][] {
  return Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count;
    return [Math.round(x + radius * Math.sin(angle)), Math.round(y - radius * Math.cos(angle))];
  });
}
