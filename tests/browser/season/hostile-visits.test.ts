/** Visits files that are not what they should be, brought in on the Season's page: each is named with what to do, and nothing kept is lost. */
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import '../../../src/app/elements/place-season/place-season.ts';
import { keepVisits, openVisits, useLog } from '../../../src/app/actions/visit-log.ts';
import { firstSeason } from '../../../src/app/season-state.ts';
import { visitLog } from '../../../src/app/storage/visit-log.ts';
import { makePlan } from '../../../src/plan.ts';
import type { Plan } from '../../../src/plan-types.ts';
import { readSite } from '../../../src/site/read.ts';
import { makeVisit, type Visit } from '../../../src/visits/visit.ts';
import { writeVisitFile } from '../../../src/visits/visit-file.ts';
import { type Alone, drawn, standAlone, until } from '../place.ts';
import { smallSite } from '../sites.ts';

const site = readSite(smallSite, 'test').site!;
let plan: Plan;
let alone: Alone;
/** A database for every test: one that is still open cannot be deleted, and would hold up the next. */
let name = '';
let turn = 0;
const visit = (id: string, more: Partial<Visit> = {}): Visit =>
  makeVisit({ id, post: 'p1', box: 1, date: '2026-05-04', time: '10:00', observer: 'Ann', state: 'eggs', ...more });
const mine = visit('mine');
const written = (visits: readonly Visit[], of = 'Test meadow') => writeVisitFile({ site: of, invented: false, visits });
const whole = written([visit('new', { date: '2026-05-11', note: 'Zoë saw it' })]);

beforeAll(async () => {
  plan = await makePlan(site, { proof: 'none' });
});
afterEach(() => {
  alone.remove();
  indexedDB.deleteDatabase(name);
});

/** Brings a file in on the page and waits for what is said of it. */
async function bring(file: File): Promise<string> {
  await page.viewport(390, 844);
  name = `test-hostile-visits-${Date.now()}-${turn++}`;
  alone = standAlone('mp-place-season', {
    siteId: 'test',
    site,
    plan,
    planOf: site,
    place: 'season',
    season: { ...firstSeason, page: 'files' },
  });
  useLog(alone.store, visitLog(null, name));
  await openVisits(alone.store);
  await until(() => alone.store.state.round.logState === 'kept', 'the visits');
  await keepVisits(alone.store, [mine]);
  const input = await until(() => alone.find<HTMLInputElement>('[data-do=bring]'), 'the file field');
  const given = new DataTransfer();
  given.items.add(file);
  input.files = given.files;
  input.dispatchEvent(new Event('change'));
  await until(() => alone.store.state.season.taken, 'a report');
  await drawn();
  return alone.text();
}

const ids = () => alone.store.state.round.log.map((one) => one.id).sort();
const fileOf = (part: BlobPart, as = 'from-ann.json') => new File([part], as);
const sixteen = (text: string) => {
  const bytes = new Uint8Array(2 + 2 * text.length);
  bytes.set([0xff, 0xfe]);
  for (let i = 0; i < text.length; i++) new DataView(bytes.buffer).setUint16(2 + 2 * i, text.charCodeAt(i), true);
  return bytes;
};
const latin = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

/** File, and a word of the fix that must be said with its name. */
const refused: readonly (readonly [string, () => BlobPart, string])[] = [
  ['nonsense', () => 'Dear Ann, box 3 had eggs.', 'Ask for it again'],
  ['nothing', () => '', 'Ask for it again'],
  ['half a file', () => whole.slice(0, whole.length / 2), 'Ask for it again'],
  ['a site file', () => smallSite, 'a site file opens elsewhere'],
  ['another kind of JSON', () => '[1,2,{"visits":[]}]', 'shared from a round'],
  ['a picture', () => Uint8Array.from({ length: 5000 }, (_, i) => (i * 97) % 256), 'Save it again as UTF-8'],
  ['another site’s', () => written([visit('x', { post: 'q9' })], 'Far Hill'), 'Open that site first'],
  ['10 MB of nonsense', () => '{"meadowpostVisits":1,"visits":['.padEnd(10_000_000, '[0,'), 'Ask for it again'],
  ['more than is read', () => new Uint8Array(60_000_001), 'Split it by year'],
];

describe('a visits file', () => {
  it.each(refused)('that is %s is refused by name with what to do; the visits kept stay', async (_, part, fix) => {
    const said = await bring(fileOf(part()));
    expect(said).toContain('from-ann.json');
    expect(said).toContain('Nothing was changed');
    expect(said).toContain(fix);
    expect(ids()).toEqual(['mine']);
  });

  it('of 10 MB is taken whole', async () => {
    const notes = 'x'.repeat(1000);
    const days = Array.from({ length: 10_000 }, (_, i) =>
      visit(`v${i}`, { box: 1 + (i % 3), post: `p${1 + (i % 3)}`, note: notes }),
    );
    const text = written(days);
    expect(text.length).toBeGreaterThan(10_000_000);
    const said = await bring(fileOf(text));
    expect(said).toContain('10000 new visits');
    expect(ids()).toHaveLength(10_001);
  });

  it('in UTF-16 or an old encoding is read with its accents, and the old one is spoken of', async () => {
    await bring(fileOf(sixteen(whole)));
    expect(alone.store.state.round.log.find((one) => one.id === 'new')?.note).toBe('Zoë saw it');
    alone.remove();
    const said = await bring(fileOf(latin(whole)));
    expect(alone.store.state.round.log.find((one) => one.id === 'new')?.note).toBe('Zoë saw it');
    expect(said).toContain('Windows-1252');
  });

  it('with visits that make no sense keeps what can be read, and names the others and the day that is none', async () => {
    const odd = JSON.parse(whole) as { visits: unknown[] };
    odd.visits.push({ id: 7 }, null, 'box 3', { ...visit('far'), date: 'yesterday' });
    const said = await bring(fileOf(JSON.stringify(odd)));
    expect(said).toContain('2 new visits');
    for (const at of [2, 3, 4]) expect(said).toContain(`The ${at}. visit`);
    expect(said).toContain('has the date “yesterday”');
    expect(ids()).toEqual(['far', 'mine', 'new']);
  });

  it('runs nothing that stands in it, nor in its name', async () => {
    const script = '<img src=x onerror="globalThis.wasRun=true"><script>globalThis.wasRun=true</script>';
    const text = written([visit('new', { note: script, observer: script })], script);
    const said = await bring(fileOf(text, `${script.replaceAll('/', '')}.json`));
    expect(said).toContain('<img');
    expect(alone.all('img, script')).toEqual([]);
    await new Promise((done) => setTimeout(done, 50));
    expect('wasRun' in globalThis).toBe(false);
    expect(ids()).toEqual(['mine', 'new']);
  });
});
