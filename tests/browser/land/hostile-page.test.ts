/** Text that is meant to do harm, in every field a person or a file can fill, shown in every place of the page and on every sheet: it stays words. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { choose, openPage } from '../../../src/app/actions/land-state.ts';
import { openText } from '../../../src/app/actions/open.ts';
import { choosePaper, isDrawn } from '../../../src/app/actions/paper-draw.ts';
import { addAddress } from '../../../src/app/actions/picture-add.ts';
import { openPictures } from '../../../src/app/actions/picture-state.ts';
import { goTo, select, setGround } from '../../../src/app/actions/select.ts';
import { setRound } from '../../../src/app/actions/visit-log.ts';
import '../../../src/app/elements/app/app.ts';
import type { App } from '../../../src/app/elements/app/app.ts';
import { picturePng, pictureSvg } from '../../../src/app/paper/picture.ts';
import { places } from '../../../src/app/state.ts';
import type { Visit } from '../../../src/visits/visit.ts';
import { smallSite } from '../sites.ts';

const mark = `<script>window.hit=1</script>"><img src=x onerror="window.hit=1"><iframe srcdoc="x"></iframe>`;
const hostile = `${mark}=cmd|' /C calc'!A0 \u202edesrever \u0000\u0007\u001b ${'long '.repeat(2000)}`;
let app: App;

async function until<T>(what: () => T | null | undefined | false, words: string): Promise<T> {
  const end = Date.now() + 25_000;
  for (;;) {
    const found = what();
    if (found) return found;
    if (Date.now() > end) throw new Error(`waited 25 s for: ${words}`);
    await new Promise((r) => setTimeout(r, 25));
  }
}

/** The site with that text as its name, and as name, note and a word of its own of everything in it. */
function hostileSite(): string {
  const site = JSON.parse(smallSite);
  site.meadowpost.name = hostile;
  site.meadowpost.note = hostile;
  for (const feature of site.features)
    feature.properties = { ...feature.properties, name: hostile, note: hostile, species: hostile, [mark]: hostile };
  return JSON.stringify(site);
}

/** Every root of the page, shadow roots inside each other. */
function* roots(root: ParentNode = document): Generator<ParentNode> {
  yield root;
  for (const element of root.querySelectorAll('*')) if (element.shadowRoot) yield* roots(element.shadowRoot);
}

/** Elements that only the text could have brought, in the whole page. The page's own scripts stand in its head. */
function planted(): string[] {
  return [...roots()].flatMap((root) =>
    [...root.querySelectorAll('body script:not([src]), img[src="x"], iframe[srcdoc], [onerror]')].map(
      (one) => one.outerHTML,
    ),
  );
}

/** All words of the page, as they are read. */
const wordsOfPage = () => [...roots()].map((root) => root.textContent ?? '').join(' ');

function expectWords(): void {
  expect(planted()).toEqual([]);
  expect((window as unknown as { hit?: number }).hit).toBeUndefined();
}

const visit = (post: string, id: string): Visit => ({
  id,
  post,
  box: 1,
  date: '2026-05-02',
  time: null,
  zone: null,
  observer: hostile,
  state: 'eggs',
  bird: null,
  material: [],
  cup: null,
  eggs: null,
  young: null,
  age: null,
  dead: 0,
  trouble: [],
  action: [],
  note: hostile,
  photo: null,
  device: mark,
  madeAt: '2026-05-02T10:00:00Z',
  replaces: null,
});

beforeAll(async () => {
  localStorage.clear();
  localStorage.setItem('meadowpost walk seen', 'yes');
  location.hash = '#site=none&place=land';
  app = document.createElement('mp-app');
  document.body.append(app);
  await until(() => app.hasAttribute('data-map'), 'the map');
  app.store.set({ place: 'land' });
  await openText(app.store, 'test', hostileSite());
  await until(() => app.store.state.plan?.boxes.length, 'the plan');
}, 60_000);
afterAll(() => app.remove());

describe('hostile text', () => {
  it('is words in the list and on the card of a thing', async () => {
    await until(() => wordsOfPage().includes('<script>window.hit=1</script>'), 'the name in the list');
    expectWords();
    for (const feature of app.store.state.site!.features.slice(0, 3)) {
      choose(app.store, feature.id);
      await until(
        () => [...roots()].some((root) => root instanceof ShadowRoot && root.host.localName === 'mp-land-properties'),
        'the card',
      );
      expectWords();
    }
  });

  it.each(['numbers', 'settings', 'issues', 'files'] as const)('is words on the page %s of Land', async (page) => {
    openPage(app.store, page);
    await until(() => wordsOfPage().length > 200, 'the page');
    expectWords();
  });

  it('is words in a file on its way in: names, attributes, values, notes', async () => {
    openPage(app.store, 'import');
    const element = await until(
      () => [...roots()].map((root) => root.querySelector('mp-land-import')).find((one) => one !== null),
      'the import',
    );
    const thing = (geometry: unknown) => ({ type: 'Feature', properties: { name: hostile, [mark]: mark }, geometry });
    const file = { type: 'FeatureCollection', features: [thing({ type: 'Point', coordinates: [0, 40] }), thing(null)] };
    await element.begin(new File([JSON.stringify(file)], `${mark}.geojson`));
    await until(
      () => element.shadowRoot!.querySelector('mp-land-mapping')?.shadowRoot?.textContent?.includes(mark),
      'the attribute',
    );
    expectWords();
  });

  it('is words in the places, with a box chosen and visits noted', async () => {
    const { post, number } = app.store.state.plan!.boxes[0]!;
    for (const place of places) {
      goTo(app.store, place);
      if (place === 'posts') select(app.store, { of: 'box', number } as never);
      if (place === 'round') {
        await until(() => app.store.state.round.logState !== 'reading', 'the log');
        setRound(app.store, { log: [visit(post, 'a'), visit(post, 'b')] });
      }
      await new Promise((r) => setTimeout(r, 250));
      expectWords();
    }
  });

  it('is words in the credit of a picture', async () => {
    goTo(app.store, 'land');
    setGround(app.store, 'photo');
    openPictures(app.store, true);
    await until(() => app.store.state.pictures.of === 'test', 'the list');
    expect(addAddress(app.store, 'https://tiles.example.org/{z}/{x}/{y}.png', hostile)).toBe(true);
    await until(() => wordsOfPage().includes('tiles.example.org'), 'the row');
    expectWords();
  });

  it('is words on every sheet, and in the SVG and the PNG of one', async () => {
    goTo(app.store, 'paper');
    choosePaper(app.store, { sheets: ['index', 'details', 'check', 'cards', 'labels', 'materials', 'landowner'] });
    await until(() => isDrawn(app.store.state) && app.store.state.paper.at === 'rest', 'the sheets');
    const { sheets } = app.store.state.paper.drawn!;
    for (const { svg } of sheets) {
      const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml');
      expect(parsed.querySelector('parsererror, script, image, foreignObject, iframe, [onerror]')).toBeNull();
    }
    expect(sheets.some(({ svg }) => svg.includes('&lt;script&gt;'))).toBe(true);
    const own = await pictureSvg(sheets[0]!);
    expect(new DOMParser().parseFromString(own, 'image/svg+xml').querySelector('parsererror, script')).toBeNull();
    expect((await picturePng(sheets[0]!)).size).toBeGreaterThan(1000);
    expectWords();
  }, 40_000);
});
