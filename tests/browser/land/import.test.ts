/** A foreign file on its way in: read in the worker, shown, mapped by hand, taken as one step, taken back. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { undo } from '../../../src/app/actions/edit.ts';
import { openPage } from '../../../src/app/actions/land-state.ts';
import { openText } from '../../../src/app/actions/open.ts';
import '../../../src/app/elements/app/app.ts';
import type { App } from '../../../src/app/elements/app/app.ts';
import { smallSite } from '../sites.ts';

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

const place = () => app.renderRoot.querySelector('mp-notebook')?.shadowRoot?.querySelector('mp-place-land')?.shadowRoot;
const page = () => place()?.querySelector('mp-land-import');

const kml = `<?xml version="1.0"?><kml xmlns="http://www.opengis.net/kml/2.2"><Document>
<Placemark><name>Oak stand</name><ExtendedData><Data name="cover"><value>oakwood</value></Data></ExtendedData>
<Polygon><outerBoundaryIs><LinearRing><coordinates>0.003,40 0.004,40 0.004,40.001 0.003,40</coordinates></LinearRing></outerBoundaryIs></Polygon></Placemark>
<Placemark><name>Stake 1</name><Point><coordinates>0.001,40.0002</coordinates></Point></Placemark>
<Placemark><name>Lost</name><Point><coordinates>north,of here</coordinates></Point></Placemark>
</Document></kml>`;

beforeAll(async () => {
  localStorage.clear();
  localStorage.setItem('meadowpost walk seen', 'yes');
  location.hash = '#site=none&place=land';
  app = document.createElement('mp-app');
  document.body.append(app);
  await until(() => app.hasAttribute('data-map'), 'the map');
  app.store.set({ place: 'land' });
  await openText(app.store, 'test', smallSite);
}, 60_000);
afterAll(() => app.remove());

describe('bringing in a file', () => {
  it('accounts for everything, lets a word become a kind, and is one step that can be undone', async () => {
    const before = app.store.state.site!;
    openPage(app.store, 'import');
    const element = await until(page, 'the page');
    await element.begin(new File([kml], 'woods.kml'));
    const report = () => element.shadowRoot!.querySelector('[data-report]')?.textContent ?? '';
    await until(() => report() !== '', 'the report');
    expect(report()).toMatch(/Read 3 things: 1 kept, 2 left out/);
    expect(element.shadowRoot!.textContent).toContain('Lost');
    expect(app.store.state.site).toBe(before);
    expect(app.store.state.land.preview.length).toBe(1);

    const mapping = await until(() => element.shadowRoot!.querySelector('mp-land-mapping')?.shadowRoot, 'the mapping');
    const row = await until(
      () => [...mapping.querySelectorAll('label')].find((one) => one.textContent?.includes('oakwood')),
      'the row of the word',
    );
    const select = row.querySelector('select')!;
    select.value = 'woods';
    select.dispatchEvent(new Event('change'));
    await until(() => /2 kept, 1 left out/.test(report()), 'the new account');
    const take = await until(() => element.shadowRoot!.querySelector<HTMLElement>('[data-do=take]'), 'the button');
    take.click();
    await until(() => app.store.state.past.length === 1, 'the step');
    const { site, past } = app.store.state;
    expect(site!.features.length).toBe(before.features.length + 2);
    expect(site!.features.map((f) => f.kind).slice(-2)).toEqual(['woods', 'post']);
    expect(site!.features.at(-2)!.properties.name).toBe('Oak stand');
    expect(past.length).toBe(1);
    undo(app.store);
    expect(app.store.state.site).toBe(before);
  });

  it('remembers what the word became for the next file of this sort', async () => {
    openPage(app.store, 'import');
    const element = await until(page, 'the page');
    await element.begin(new File([kml], 'other.kml'));
    const report = () => element.shadowRoot!.querySelector('[data-report]')?.textContent ?? '';
    await until(() => /2 kept, 1 left out/.test(report()), 'the account');
  });

  it('says so when a file cannot be read, and changes nothing', async () => {
    const before = app.store.state.site!;
    openPage(app.store, 'import');
    const element = await until(page, 'the page');
    await element.begin(new File([new Uint8Array([1, 2, 3, 250, 9])], 'thing.xyz'));
    await until(() => element.shadowRoot!.querySelector('.wash'), 'the trouble');
    expect(element.shadowRoot!.querySelector('.wash')!.textContent!.length).toBeGreaterThan(20);
    expect(app.store.state.site).toBe(before);
  });
});
