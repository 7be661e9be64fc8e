/** One place of the notebook alone in the page, without map and engine: a store to set, the theme's inks, axe, and the sizes of what is pressed. */
import { ContextProvider } from '@lit/context';
// The rules as text: a dependency met only here would make the test server start over.
import axeSource from '../../node_modules/axe-core/axe.min.js?raw';
import { EngineClient } from '../../src/app/engine/client.ts';
import type { AppState } from '../../src/app/state.ts';
import { memoryShelf } from '../../src/app/storage/memory-shelf.ts';
import { Store, storeContext } from '../../src/app/store.ts';
import { cssOf, type ThemeName } from '../../src/app/theme.ts';
import '../../src/app/styles/page.css';

export async function until<T>(what: () => T | null | undefined | false, words: string): Promise<T> {
  const end = Date.now() + 10_000;
  for (;;) {
    const found = what();
    if (found) return found;
    if (Date.now() > end) throw new Error(`waited 10 s for: ${words}`);
    await new Promise((r) => setTimeout(r, 20));
  }
}

export interface Alone {
  readonly store: Store;
  readonly place: HTMLElement;
  theme(name: ThemeName): void;
  /** The first element under the place, through every shadow, that fits and whose text holds `words`. */
  find<E extends HTMLElement = HTMLElement>(selector: string, words?: string): E | null;
  all(selector: string): HTMLElement[];
  text(): string;
  remove(): void;
}

function* inside(root: ParentNode): Generator<HTMLElement> {
  for (const element of root.querySelectorAll<HTMLElement>('*')) {
    yield element;
    if (element.shadowRoot) yield* inside(element.shadowRoot);
  }
}

/** Text as it is shown, shadows and all. */
function shownText(node: Node): string {
  if (node instanceof HTMLStyleElement) return '';
  if (node instanceof Text) return node.data;
  if (node instanceof HTMLSlotElement) return node.assignedNodes({ flatten: true }).map(shownText).join(' ');
  const root = node instanceof HTMLElement && node.shadowRoot ? node.shadowRoot : node;
  return [...root.childNodes].map(shownText).join(' ');
}

/** `name` is the custom element; it must be imported by the test. */
export function standAlone(name: string, first: Partial<AppState>): Alone {
  const engine = new EngineClient(() => ({
    say: () => undefined,
    hear: () => undefined,
    lost: () => undefined,
    end: () => undefined,
  }));
  const store = new Store(engine, memoryShelf(), first);
  const host = document.createElement('main');
  host.style.cssText =
    'position:fixed;inset:0;display:flex;flex-direction:column;container-type:size;background:var(--paper);color:var(--ink);font:16px var(--sans)';
  const place = document.createElement(name);
  place.style.cssText = 'flex:1;min-height:0';
  new ContextProvider(host, { context: storeContext, initialValue: store }).hostConnected();
  host.append(place);
  document.body.append(host);
  const theme = (ink: ThemeName) => {
    for (const [key, value] of Object.entries(cssOf(ink))) host.style.setProperty(key, value);
    store.set({ theme: ink });
  };
  theme(store.state.theme);
  const all = (selector: string) => [...inside(host)].filter((one) => one.matches(selector));
  return {
    store,
    place,
    theme,
    all,
    find: <E extends HTMLElement>(selector: string, words = '') =>
      (all(selector).find((one) => shownText(one).includes(words)) as E | undefined) ?? null,
    text: () => shownText(place).replace(/\s+/g, ' '),
    remove: () => host.remove(),
  };
}

/** Two frames: what was set is drawn. */
export async function drawn(): Promise<void> {
  await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
}

interface Axe {
  run(options: object): Promise<{
    violations: readonly { id: string; help: string; nodes: readonly { html: string; failureSummary?: string }[] }[];
  }>;
}
const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** "rule: help: element" for every violation on the page. */
export async function axeViolations(): Promise<string[]> {
  const page = globalThis as unknown as { axe?: Axe };
  if (!page.axe) {
    const script = document.createElement('script');
    script.textContent = axeSource;
    document.head.append(script);
  }
  const { violations } = await page.axe!.run({ runOnly: rules });
  return violations.flatMap((one) =>
    one.nodes.map((node) => `${one.id}: ${one.help}: ${node.html.slice(0, 140)} ${node.failureSummary ?? ''}`),
  );
}

/** What is pressed and shown, lower than `tall` or narrower than 44 px. */
export function smallTargets(alone: Alone, tall: number): string[] {
  return alone.all('button, summary, select, input:not([type=checkbox])').flatMap((one) => {
    const { width, height } = one.getBoundingClientRect();
    const small = width > 0 && height > 0 && (width < 43.5 || height < tall - 0.5);
    return small
      ? [`${one.localName} “${one.textContent?.trim().slice(0, 30)}” ${Math.round(width)}×${Math.round(height)}`]
      : [];
  });
}

/** The band of the walk lies over the map, which is not here. */
const overMap = (one: HTMLElement) => (one.getRootNode() as Partial<ShadowRoot>).host?.localName === 'mp-round-way';

/** Buttons that lie on each other, or reach out of the page: `width` of the window. */
export function crowded(alone: Alone, width: number): string[] {
  const shown = alone
    .all('button, select, input:not([type=checkbox])')
    .map((one) => ({ one, rect: one.getBoundingClientRect() }))
    .filter(({ one, rect }) => rect.width > 0 && rect.height > 0 && !one.closest('nav') && !overMap(one));
  const word = ({ one }: { one: HTMLElement }) => `${one.localName} “${one.textContent?.trim().slice(0, 24)}”`;
  const out = shown
    .filter(({ rect }) => rect.left < -0.5 || rect.right > width - 8)
    .map((one) => `${word(one)} reaches out`);
  const over = shown.flatMap((a, i) =>
    shown.slice(i + 1).flatMap((b) => {
      // What is fixed at the foot lies over what scrolls beneath it.
      if ((a.one.slot === 'foot') !== (b.one.slot === 'foot')) return [];
      const across = Math.min(a.rect.right, b.rect.right) - Math.max(a.rect.left, b.rect.left);
      const down = Math.min(a.rect.bottom, b.rect.bottom) - Math.max(a.rect.top, b.rect.top);
      return across > 1 && down > 1 ? [`${word(a)} lies on ${word(b)}`] : [];
    }),
  );
  return [...out, ...over];
}
