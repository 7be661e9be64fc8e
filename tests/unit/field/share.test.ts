/** Rounds out, visits back: places blurred or left out, files read as hostile, four walkers merged. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dueOf, stopsNow } from '../../../src/app/field/box-now.ts';
import { type FieldRound, otherWay, postByNumber, roundOfCode, type Stop } from '../../../src/app/field/field-round.ts';
import { doneChoices, lawRegion, offersFor } from '../../../src/app/field/offers.ts';
import { blurred, readRoundFile, roundForSharing, writeRoundFile } from '../../../src/app/field/round-file.ts';
import { siteOfRound } from '../../../src/app/field/round-site.ts';
import { type Home, takeVisits } from '../../../src/app/field/take-visits.ts';
import { finishDraft, startDraft } from '../../../src/app/field/visit-draft.ts';
import { parseLines } from '../../../src/app/storage/visit-lines.ts';
import { birdById } from '../../../src/birds/index.ts';
import { decodeRound, encodeRound } from '../../../src/print/round-code.ts';
import { inventSeasons } from '../../../src/visits/invent.ts';
import { mergeVisits } from '../../../src/visits/merge.ts';
import { makeVisit, type Visit } from '../../../src/visits/visit.ts';
import { writeVisitFile } from '../../../src/visits/visit-file.ts';

const stop = (number: number): Stop => ({
  number,
  post: `post-${number}`,
  position: [-84.05 + number * 0.001, 40.31 + number * 0.0007],
  bird: 'eastern-bluebird',
  facing: 95,
  way: { metres: 84, minutes: 1.2, bearing: 236 },
});
const round: FieldRound = {
  site: 'Invented Meadow',
  hash: 'abcdef01',
  walker: 1,
  stops: Array.from({ length: 12 }, (_, i) => stop(i + 1)),
  back: { metres: 120, minutes: 2, bearing: 10 },
  metres: 1044,
  minutes: 63,
  blur: 0,
};
const told = { region: 'eastern-north-america', units: 'us' as const, visits: [] };
const home: Home = {
  site: round.site,
  hash: round.hash,
  boxes: round.stops,
  posts: round.stops.map((one) => one.post),
};
const file = (visits: readonly Visit[], site = round.site) => writeVisitFile({ site, invented: true, visits });

describe('a round out', () => {
  it('comes back the same with exact places', () => {
    const read = readRoundFile(writeRoundFile({ round, ...told }, 'exact'));
    expect(read.file?.round.stops).toEqual(round.stops);
    expect(read.file?.round.hash).toBe('abcdef01');
    expect(read.file?.region).toBe('eastern-north-america');
  });

  it('tells no place, way or bearing when asked not to', () => {
    const text = writeRoundFile({ round, ...told }, 'none');
    expect(text).not.toMatch(/place"|"way|84\.0|40\.3/);
    expect(readRoundFile(text).file?.round.stops.map((one) => one.number)).toEqual(
      round.stops.map((one) => one.number),
    );
  });

  it('blurs to one fixed middle within 100 m, so that sharing again tells no more', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -179, max: 179, noNaN: true }),
        fc.double({ min: -80, max: 80, noNaN: true }),
        (lon, lat) => {
          const [x, y] = blurred([lon, lat]);
          const dx = (x - lon) * 111_195 * Math.cos((lat * Math.PI) / 180);
          const dy = (y - lat) * 111_195;
          expect(Math.hypot(dx, dy)).toBeLessThan(75);
          expect(blurred([x, y])).toEqual([x, y]);
        },
      ),
      { seed: 6, numRuns: 300 },
    );
    expect(roundForSharing(round, 'about').stops.every((one) => one.way === null)).toBe(true);
    expect(roundForSharing(round, 'about').blur).toBe(100);
  });

  it('survives a damaged or hostile file with a reason', () => {
    const text = writeRoundFile({ round, ...told }, 'exact');
    for (let cut = 0; cut < text.length; cut += 97) {
      const read = readRoundFile(text.slice(0, cut));
      if (!read.file) expect('reason' in read && read.reason.length).toBeGreaterThan(5);
    }
    const bad = { meadowpostRound: 1, boxes: [{ number: 1, post: 'a', place: [999, 1e308] }, { number: -1 }, null, 7] };
    expect(readRoundFile(JSON.stringify(bad)).file?.round.stops).toMatchObject([{ number: 1, position: null }]);
    expect(readRoundFile(JSON.stringify({ meadowpostRound: 2, boxes: [] })).file).toBeNull();
    expect(readRoundFile('[]').file).toBeNull();
  });

  it('opens from a code as a round with straight ways and as a small site', () => {
    const stops = round.stops.map(({ number, position }) => ({ number, position: position! }));
    const code = decodeRound(encodeRound({ hash: round.hash, stops }));
    if (code.stops === null) throw new Error('the code could not be read');
    const shared = roundOfCode(code, 'Round', 4);
    expect(shared.stops.map((one) => one.number)).toEqual(stops.map((one) => one.number));
    // 0.001° of longitude at 40.3° N and 0.0007° of latitude: 84.8 and 77.8 m.
    expect(shared.stops[3]?.way?.metres).toBeCloseTo(115.2, 0);
    const site = siteOfRound(shared, { region: '', units: 'us', date: '2026-05-01' });
    expect(site.features.length).toBe(12);
    expect(site.settings.region).toBe('eastern-north-america');
  });

  it('walks the other way round with the same numbers and ways turned', () => {
    const other = otherWay(round);
    expect(other.stops.map((one) => one.number)).toEqual([12, 11, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1]);
    expect(other.stops[0]?.way).toEqual({ metres: 120, minutes: 2, bearing: 190 });
    expect(other.back?.bearing).toBe(56);
    expect(otherWay(other)).toEqual(round);
  });
});

describe('visits back', () => {
  const season = inventSeasons({
    boxes: round.stops.map((one) => ({
      post: one.post,
      number: one.number,
      bird: birdById('eastern-bluebird'),
      score: 0.7,
    })),
    firstYear: 2026,
    years: 1,
    seed: 4,
  });
  const walkers = [1, 2, 3, 4].map((walker) => season.filter((one) => one.observer.endsWith(String(walker))));

  it('of four walkers make one log, in any order and any number of times', () => {
    const take = (order: readonly number[]) =>
      order.reduce<readonly Visit[]>((log, i) => mergeVisits(log, takeVisits(log, file(walkers[i]!), home).added), []);
    const once = take([0, 1, 2, 3]);
    expect(once.length).toBe(season.length);
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 3 }), { maxLength: 5 }), (more) => {
        expect(take([...more, 3, 1, 0, 2]).map((one) => one.id)).toEqual(once.map((one) => one.id));
      }),
      { seed: 6, numRuns: 10 },
    );
  });

  it('report what was added, what was here, and what disagrees', () => {
    const first = takeVisits([], file(walkers[0]!), home);
    expect(first.added.length).toBe(walkers[0]!.length);
    expect(first.same).toBe(0);
    const again = takeVisits(first.added, file(walkers[0]!), home);
    expect([again.added.length, again.same, again.conflicts.length]).toEqual([0, walkers[0]!.length, 0]);
    const changed = { ...walkers[0]![0]!, note: 'changed elsewhere' };
    const third = takeVisits(first.added, file([changed]), home);
    expect([third.added.length, third.conflicts.length]).toEqual([1, 1]);
    expect(third.conflicts[0]?.kind).toBe('same-id');
  });

  it('of another site are refused in words, and mixed ones are taken with a warning', () => {
    const strange = [makeVisit({ id: 'x', post: 'elsewhere', date: '2026-05-01', state: 'empty' })];
    const refused = takeVisits([], file(strange, 'Another Park'), home);
    expect(refused.refused).toContain('Another Park');
    expect(refused.added).toEqual([]);
    expect(takeVisits([], 'not json', home).refused).toContain('not JSON');
  });

  it('from a scanned round find their posts by number under the same plan only', () => {
    const by = (hash: string) => [
      makeVisit({ id: hash, post: postByNumber(7, hash), box: 7, date: '2026-05-01', state: 'empty' }),
    ];
    expect(takeVisits([], file(by('abcdef01')), home).added[0]?.post).toBe('post-7');
    expect(takeVisits([], file(by('00000001')), home).refused).not.toBeNull();
  });
});

describe('a visit', () => {
  const pest = startDraft('post-1', 1, 'eggs', null);
  const sparrow = {
    ...pest,
    bird: 'house-sparrow',
    material: ['litter', 'grass', 'feathers'] as const,
    cup: 'dome' as const,
    eggColor: 'grey-white' as const,
    eggPattern: 'blotches' as const,
    eggCount: 5,
  };
  const ids = (draft: typeof pest, region: 'eastern-north-america' | 'europe') =>
    offersFor(draft, region, null).map((offer) => offer.id);

  it('offers removal for a pest only after the second look, never in Europe, never for a native', () => {
    expect(ids(sparrow, 'eastern-north-america')).toContain('second-look');
    expect(ids(sparrow, 'eastern-north-america')).not.toContain('remove-pest-nest');
    const looked = { ...sparrow, secondLook: true };
    expect(ids(looked, 'eastern-north-america')).toContain('remove-pest-nest');
    expect(ids(looked, 'europe')).not.toContain('remove-pest-nest');
    const native = { ...looked, bird: 'eastern-bluebird' };
    expect(ids(native, 'eastern-north-america')).not.toContain('remove-pest-nest');
    expect(doneChoices(native, offersFor(native, 'eastern-north-america', null))).not.toContain('pest-nest-removed');
    expect(doneChoices(looked, offersFor(looked, 'eastern-north-america', null))).toContain('pest-nest-removed');
    expect(lawRegion('atlantis')).toBe('europe');
  });

  it('never offers to clean out a nest with eggs or young', () => {
    for (const state of ['building', 'eggs', 'young'] as const)
      expect(doneChoices({ ...pest, state }, [])).not.toContain('cleaned');
    expect(doneChoices({ ...pest, state: 'fledged' }, [])).toContain('cleaned');
  });

  it('carries the bird of the nest under way, and becomes due in a week', () => {
    const log = [
      makeVisit({
        id: 'a',
        post: 'post-1',
        box: 1,
        date: '2026-05-05',
        state: 'eggs',
        bird: 'eastern-bluebird',
        eggs: { count: 5, color: null, pattern: null, size: null },
      }),
    ];
    const now = stopsNow(round.stops, log, '2026-05-10');
    expect(startDraft('post-1', 1, 'young', now.get('post-1')!).bird).toBe('eastern-bluebird');
    expect(startDraft('post-2', 2, 'young', now.get('post-2')!).bird).toBeNull();
    expect(dueOf(now, '2026-05-20', 'new').find((one) => one.post === 'post-1')?.overdue).toBe(8);
  });

  it('keeps day, minute, zone and device, and leaves time out when noted for another day', () => {
    const now = { date: '2026-05-10', time: '14:06', zone: -240, instant: '2026-05-10T18:06:00Z' };
    const by = { id: 'v', observer: 'Invented', device: 'd', now };
    expect(finishDraft(pest, by)).toMatchObject({ date: '2026-05-10', time: '14:06', zone: -240, eggs: null });
    expect(finishDraft({ ...pest, date: '2026-05-01' }, by)).toMatchObject({
      date: '2026-05-01',
      time: null,
      zone: null,
    });
  });
});

describe('the second copy', () => {
  it('leaves out a line that was cut off, and keeps the others', () => {
    const line = (hash: string) => JSON.stringify({ hash, body: '{}' });
    const text = `${line('a')}\n${line('b')}\n${line('c').slice(0, 9)}`;
    expect(parseLines('s', text).map((record) => record.hash)).toEqual(['a', 'b']);
    expect(parseLines('s', '')).toEqual([]);
  });
});
