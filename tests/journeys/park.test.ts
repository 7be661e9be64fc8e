/** A trail designer opens the park demo: forty numbered boxes, and the card of box 17 explains itself. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { picture } from './light-map.ts';
import { type Opened, openApp, startWalk, type Walk } from './serve.ts';

let walk: Walk;
let desk: Opened;

beforeAll(async () => {
  walk = await startWalk();
  desk = await openApp(walk, '#site=park&place=posts');
}, 180_000);
afterAll(async () => walk?.close());

describe('the park demo', () => {
  it('shows forty boxes, numbered 1 to 40, in the list and on the map', async () => {
    const { page } = desk;
    const rows = page.locator('mp-box-list li button');
    expect(await rows.count()).toBe(40);
    const numbers = await rows.evaluateAll((all) => all.map((row) => Number((row as HTMLElement).dataset.box)));
    expect(numbers).toEqual(Array.from({ length: 40 }, (_, i) => i + 1));
    expect(await page.locator('mp-box-keys [role=option]').count()).toBe(40);
    await expect.poll(() => page.locator('mp-place-posts h1').textContent()).toContain('40 boxes');
    await picture(page, 'park-list');
  });

  it('explains box 17 from top to bottom', async () => {
    const { page } = desk;
    await page.locator('mp-box-list button[data-box="17"]').click();
    const card = page.locator('mp-post-card');
    expect(await card.locator('h1').textContent()).toBe('Box 17');
    const plan = await page.evaluate(() => {
      const app = document.querySelector('mp-app') as unknown as {
        store: {
          state: {
            plan: {
              boxes: {
                number: number;
                card: { rows: { sentence: string; weight: number }[]; score: number; facing: { used: number } };
              }[];
            };
          };
        };
      };
      return app.store.state.plan.boxes.find((b) => b.number === 17)!;
    });
    const sentences = await card.locator('mp-reason-rows li > span:first-child').allTextContents();
    const wanted = plan.card.rows.filter((r) => r.weight > 0).map((r) => r.sentence);
    expect(sentences.length).toBe(wanted.length);
    for (const [i, sentence] of wanted.entries()) expect(sentences[i]).toContain(sentence);
    expect(await card.locator('mp-score-disc').getAttribute('aria-label')).toContain(
      String(Math.round(plan.card.score)),
    );
    expect(await card.locator('h2').allTextContents()).toContain('Afternoon sun');
    await card.locator('mp-sun-strip .woods').waitFor({ state: 'attached' });
    expect(await page.evaluate(() => location.hash)).toBe('#site=park&place=posts&box=17');
    await picture(page, 'park-box-17');
  });

  it('says nothing on the console and shows no trouble', async () => {
    expect(desk.said).toEqual([]);
    expect(await desk.page.locator('mp-messages .slip').count()).toBe(0);
  });

  it('opens a box from a link, and moves on with one button', async () => {
    const { page } = desk;
    await page.evaluate(() => {
      location.hash = '#site=park&place=posts&box=40';
    });
    const heading = page.locator('mp-post-card h1');
    await expect.poll(() => heading.textContent()).toBe('Box 40');
    await page.locator('mp-place-posts .ways [data-do=next]').click();
    await expect.poll(() => heading.textContent()).toBe('Box 1');
  });

  it('has targets of at least 44 px', async () => {
    const small = await desk.page.evaluate(() => {
      const found: string[] = [];
      const look = (root: ParentNode) => {
        for (const element of root.querySelectorAll('*')) {
          if (element.shadowRoot) look(element.shadowRoot);
          if (element.localName !== 'button') continue;
          const box = element.getBoundingClientRect();
          const hidden = box.width === 0 || box.right < 0;
          if (!hidden && (box.width < 43.5 || box.height < 43.5))
            found.push(`${element.textContent?.trim()} ${box.width}×${box.height}`);
        }
      };
      look(document);
      return found;
    });
    expect(small).toEqual([]);
  });
});
