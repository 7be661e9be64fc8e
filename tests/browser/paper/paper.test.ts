/** The Paper place in a real browser: sheets drawn by the engine in its worker, hostile names, the printer's pages, a PDF. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import '../../../src/app/elements/app/app.ts';
import { openText } from '../../../src/app/actions/open.ts';
import { choosePaper, isDrawn, questionOf, setPaper } from '../../../src/app/actions/paper-draw.ts';
import { printing } from '../../../src/app/actions/paper-take.ts';
import { goTo } from '../../../src/app/actions/select.ts';
import { setRound } from '../../../src/app/actions/visit-log.ts';
import type { App } from '../../../src/app/elements/app/app.ts';
import { pressOf } from '../../../src/app/paper/press.ts';
import { fileName } from '../../../src/app/paper/save-file.ts';
import { sheetNode } from '../../../src/app/paper/sheet-node.ts';
import type { Visit } from '../../../src/visits/visit.ts';
import { emptySite, smallSite } from '../sites.ts';

let app: App;

/** A look at an empty box. */
const emptyVisit: Visit = {
  id: 'a',
  post: '',
  box: 1,
  date: '2026-05-02',
  time: null,
  zone: null,
  observer: '',
  state: 'empty',
  bird: null,
  material: [],
  cup: null,
  eggs: null,
  young: null,
  age: null,
  dead: 0,
  trouble: [],
  action: [],
  note: '',
  photo: null,
  device: 'd',
  madeAt: '2026-05-02T10:00:00Z',
  replaces: null,
};

async function until<T>(what: () => T | null | undefined | false, words: string): Promise<T> {
  const end = Date.now() + 40_000;
  for (;;) {
    const found = what();
    if (found) return found;
    if (Date.now() > end) throw new Error(`waited 40 s for: ${words}`);
    await new Promise((r) => setTimeout(r, 25));
  }
}

const place = () =>
  app.renderRoot.querySelector('mp-notebook')?.shadowRoot?.querySelector('mp-place-paper')?.shadowRoot;
const preview = () => place()?.querySelector('mp-sheet-preview')?.shadowRoot;
const sheets = () => app.store.state.paper.drawn?.sheets ?? [];
const drawn = () => until(() => isDrawn(app.store.state) && app.store.state.engine.at === 'rest', 'the sheets');

async function open(text: string, id: string): Promise<void> {
  await openText(app.store, id, text);
  await until(() => app.store.state.plan && app.store.state.engine.at === 'rest', 'the plan');
}

beforeAll(async () => {
  location.hash = '#site=none';
  app = document.createElement('mp-app');
  document.body.append(app);
  await until(() => app.store, 'the store');
  goTo(app.store, 'paper');
  await open(smallSite, 'test');
  await drawn();
}, 90_000);
afterAll(() => app.remove());

describe('the Paper place', () => {
  it('draws what suits three boxes in a yard, and shows one sheet large', async () => {
    expect(new Set(sheets().map((sheet) => sheet.name))).toEqual(new Set(['check', 'cards', 'materials', 'landowner']));
    await until(() => preview()?.querySelector('.sheet svg'), 'the sheet');
    expect(preview()?.querySelectorAll('[role=option]').length).toBe(sheets().length);
    expect(place()?.textContent).toContain(`${sheets().length} sheets for 3 boxes`);
  });

  it('draws anew what is chosen, and says when nothing is', async () => {
    choosePaper(app.store, { sheets: ['index', 'details'], orientation: 'portrait', paper: 'letter' });
    await drawn();
    expect(sheets().map((sheet) => sheet.name)).toContain('details');
    for (const sheet of sheets()) expect([sheet.width, sheet.height]).toEqual([215.9, 279.4]);
    choosePaper(app.store, { sheets: [] });
    await until(() => place()?.textContent?.includes('No sheet is chosen'), 'the warning');
    const buttons = [...(place()?.querySelectorAll<HTMLButtonElement>('button[slot=foot]') ?? [])];
    expect(buttons.map((button) => button.disabled)).toEqual([true, true]);
    choosePaper(app.store, { sheets: null, orientation: 'landscape', paper: null });
    await drawn();
  });

  it('prints when each box was seen and is due, and the revision as the shelf counts it', async () => {
    const words = () =>
      new DOMParser().parseFromString(sheets()[0]?.svg ?? '', 'image/svg+xml').documentElement.textContent ?? '';
    choosePaper(app.store, { sheets: ['check'] });
    await drawn();
    expect(words()).toContain('revision not saved');
    expect(words()).not.toContain('Due');
    const { plan } = app.store.state;
    const post = plan!.boxes[0]!.post;
    await app.store.shelf.save('test', 'Test meadow', smallSite);
    app.store.set({ saved: { at: 'saved', time: 0 } });
    setRound(app.store, { log: [{ ...emptyVisit, post }] });
    await drawn();
    await until(() => words().includes('Due'), 'the column');
    expect(words()).toMatch(/revision 1 · [0-9a-f]{8}/);
    expect(words()).toMatch(/05-02/);
    setRound(app.store, { log: [] });
    choosePaper(app.store, { sheets: null });
    await drawn();
  });

  it('lays one page a sheet for the printer, and takes them away again', async () => {
    const stop = printing(app.store);
    window.dispatchEvent(new Event('beforeprint'));
    const pages = [...document.querySelectorAll<HTMLElement>('.mp-page')];
    // The place listens too: each lays its own set, so there is a whole number of books.
    expect(pages.length % sheets().length).toBe(0);
    expect(pages.length).toBeGreaterThan(0);
    expect(pages[0]?.querySelector('svg')?.getAttribute('width')).toBe(`${sheets()[0]?.width}mm`);
    window.dispatchEvent(new Event('afterprint'));
    expect(document.querySelectorAll('.mp-page').length).toBe(0);
    stop();
  });

  it('writes a PDF in its worker', async () => {
    const bytes = await pressOf(app.store).call('pdf', (await questionOf(app.store))!);
    expect(new TextDecoder().decode(bytes.subarray(0, 5))).toBe('%PDF-');
    const text = new TextDecoder('latin1').decode(bytes);
    expect(text.match(/\/Type \/Page\b/g)?.length).toBe(sheets().length);
  });

  it('shows names that are no names as words', async () => {
    const name = `<script>window.hit=1</script>"><img src=x onerror="window.hit=1">`;
    const site = JSON.parse(smallSite);
    site.meadowpost.name = name + 'a'.repeat(10_000);
    for (const feature of site.features) feature.properties.name = name;
    await open(JSON.stringify(site), 'hostile');
    await drawn();
    await until(() => preview()?.querySelector('.sheet svg')?.textContent?.includes('<script>'), 'the name as words');
    expect(preview()?.querySelector('script, img[src=x], foreignObject')).toBeNull();
    expect((window as unknown as { hit?: number }).hit).toBeUndefined();
    for (const sheet of sheets()) expect(sheet.what.length).toBeLessThanOrEqual(200);
  });

  it('says what went wrong, and tries again', async () => {
    setPaper(app.store, { drawn: null, trouble: 'the ink is dry' });
    const alert = await until(() => place()?.querySelector('[role=alert]'), 'the trouble');
    expect(alert.textContent).toContain('the ink is dry. Your site is unchanged.');
    alert.querySelector('button')?.click();
    await drawn();
    await until(() => !place()?.querySelector('[role=alert]'), 'the trouble gone');
  });

  it('says what belongs here when there is no box', async () => {
    await open(emptySite, 'empty');
    await until(() => place()?.textContent?.includes('nothing to print'), 'the empty page');
    expect(preview()).toBeUndefined();
  });
});

describe('what is let through', () => {
  it('keeps shapes and words, and drops everything that could act', () => {
    const node = sheetNode(
      `<svg xmlns="http://www.w3.org/2000/svg" onload="window.hit=1" viewBox="0 0 9 9"><script>window.hit=1</script>
       <foreignObject><p xmlns="http://www.w3.org/1999/xhtml">x</p></foreignObject><use href="https://example.org/a.svg"/>
       <path d="M0 0" fill="url(https://example.org)" onclick="window.hit=1"/><g clip-path="url(https://example.org#a)"/>
       <a href="javascript:window.hit=1"><text x="1">words</text></a></svg>`,
    );
    expect([...node.querySelectorAll('*')].map((one) => one.localName)).toEqual(['path', 'g', 'a', 'text']);
    const attributes = [node, ...node.querySelectorAll('*')].flatMap((one) => [...one.attributes].map((a) => a.name));
    expect(new Set(attributes)).toEqual(new Set(['xmlns', 'viewBox', 'd', 'x']));
    expect(() => sheetNode('<svg')).toThrow('could not be read back');
  });

  it('makes file names that every system takes', () => {
    expect(fileName('Tansy Hollow Park', '.pdf')).toBe('tansy-hollow-park.pdf');
    expect(fileName('../../etc/<script>', '.csv')).toBe('etc-script.csv');
    expect(fileName('', '.gpx')).toBe('site.gpx');
    expect(fileName('x'.repeat(10_000), '.kml')).toHaveLength(64);
    expect(fileName('Łąka 森', '.kml')).toBe('łąka-森.kml');
  });
});
