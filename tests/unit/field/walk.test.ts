/** The walk's own logic: next box, position, heading, clock, keypad, paper rows. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Stop } from '../../../src/app/field/field-round.ts';
import { arrowTurn, eased, headingOf } from '../../../src/app/field/heading.ts';
import { pressed } from '../../../src/app/field/keypad.ts';
import { clockDoubt, type LocalTime, localTime } from '../../../src/app/field/local-time.ts';
import { nextStop, seenOn } from '../../../src/app/field/next-box.ts';
import { readPaperRow } from '../../../src/app/field/paper-row.ts';
import { boxesWithin, courseOf, type Fix, gradeOf, isFix, isStale, wayThere } from '../../../src/app/field/position.ts';
import { isReady, type ReadyFacts, readyRows, sizeText } from '../../../src/app/field/ready.ts';
import { makeFrame } from '../../../src/ground/frame.ts';
import { makeVisit } from '../../../src/visits/visit.ts';

const stop = (number: number): Stop => ({
  number,
  post: `p${number}`,
  position: [-84 + number / 1000, 40],
  bird: null,
  facing: null,
  way: null,
});
const stops = [1, 2, 3, 4, 5].map(stop);
const set = (...numbers: number[]) => new Set(numbers.map((n) => `p${n}`));

describe('the next box', () => {
  it('follows the round, passes over seen ones and comes back to skipped ones', () => {
    expect(nextStop(stops, set(), set(), null)?.number).toBe(1);
    expect(nextStop(stops, set(1), set(), 'p1')?.number).toBe(2);
    expect(nextStop(stops, set(1), set(2), 'p2')?.number).toBe(3);
    expect(nextStop(stops, set(1, 3, 4, 5), set(2), 'p5')?.number).toBe(2);
    expect(nextStop(stops, set(4, 5), set(), 'p5')?.number).toBe(1);
    expect(nextStop(stops, set(1, 2, 3, 4, 5), set(), 'p5')).toBeNull();
    expect(nextStop([], set(), set(), null)).toBeNull();
  });

  it('reaches every box once, whatever is skipped and wherever one begins', () => {
    fc.assert(
      fc.property(
        fc.array(fc.boolean(), { minLength: 5, maxLength: 5 }),
        fc.integer({ min: 0, max: 4 }),
        (skips, from) => {
          const seen = new Set<string>();
          const skipped = new Set<string>();
          const visited: number[] = [];
          let at: Stop | null = stops[from]!;
          for (let i = 0; i < 40 && at; i++) {
            if (skips[at.number - 1] && !skipped.has(at.post)) skipped.add(at.post);
            else {
              seen.add(at.post);
              visited.push(at.number);
            }
            at = nextStop(stops, seen, skipped, at.post);
          }
          expect([...visited].sort()).toEqual([1, 2, 3, 4, 5]);
        },
      ),
      { seed: 6, numRuns: 100 },
    );
  });

  it('counts only that day, and not what a correction took elsewhere', () => {
    const log = [
      makeVisit({ id: 'a', post: 'p1', date: '2026-05-01', state: 'empty' }),
      makeVisit({ id: 'b', post: 'p2', date: '2026-05-02', state: 'empty' }),
      makeVisit({ id: 'c', post: 'p3', date: '2026-05-02', state: 'empty', replaces: 'b' }),
    ];
    expect([...seenOn(log, '2026-05-02')]).toEqual(['p3']);
  });
});

describe('the position', () => {
  const frame = makeFrame([-84, 40]);
  const fix = (x: number, y: number, more: Partial<Fix> = {}): Fix => ({
    position: frame.toLonLat({ x, y }),
    accuracy: 5,
    time: 0,
    heading: null,
    speed: null,
    ...more,
  });

  it('says distance and bearing, and "within" only inside the circle', () => {
    const way = wayThere({ x: 0, y: 0 }, 8, { x: -70, y: -46.6 });
    expect(way.metres).toBeCloseTo(84.1, 1);
    expect(way.bearing).toBeCloseTo(236.3, 1);
    expect(way.within).toBe(false);
    expect(wayThere({ x: 0, y: 0 }, 8, { x: 5, y: 6 }).within).toBe(true);
    expect(wayThere({ x: 0, y: 0 }, 8, { x: 50, y: 60 }, 100).within).toBe(true);
  });

  it('names every box of the circle, and none when the circle is too wide to mean anything', () => {
    const boxes = [
      { number: 16, at: { x: 7, y: 0 } },
      { number: 17, at: { x: 3, y: 0 } },
      { number: 18, at: null },
      { number: 19, at: { x: 30, y: 0 } },
    ];
    expect(boxesWithin({ x: 0, y: 0 }, 8, boxes)).toEqual([17, 16]);
    expect(boxesWithin({ x: 0, y: 0 }, 500, boxes)).toEqual([]);
  });

  it('takes the course from the device only while walking, else from two fixes far enough apart', () => {
    expect(courseOf(null, fix(0, 0, { heading: 120, speed: 1.2 }), frame.toPlane)).toBe(120);
    expect(courseOf(null, fix(0, 0, { heading: 120, speed: 0 }), frame.toPlane)).toBeNull();
    expect(courseOf(fix(0, 0), fix(0, 6), frame.toPlane)).toBeNull();
    expect(courseOf(fix(0, 0), fix(20, 20), frame.toPlane)).toBeCloseTo(45, 3);
  });

  it('grades, ages and refuses', () => {
    expect([gradeOf(5), gradeOf(20), gradeOf(80)]).toEqual(['good', 'fair', 'poor']);
    expect(isStale(fix(0, 0), 29_000)).toBe(false);
    expect(isStale(fix(0, 0), 31_000)).toBe(true);
    expect(isFix(fix(0, 0))).toBe(true);
    expect(isFix(fix(0, 0, { accuracy: Number.NaN }))).toBe(false);
    expect(isFix(fix(0, 0, { position: [200, 40] }))).toBe(false);
  });
});

describe('the compass', () => {
  it('reads alpha against the clock, and only when absolute', () => {
    expect(headingOf({ alpha: 90, absolute: true }, -8, 0)).toEqual({ degrees: 270, kind: 'compass' });
    expect(headingOf({ alpha: 90, absolute: false }, -8, 0)).toBeNull();
    expect(headingOf({ alpha: null, absolute: true }, null, 0)).toBeNull();
  });

  it('turns a magnetic heading to true north and distrusts a bad one', () => {
    const told = { alpha: null, absolute: false, webkitCompassHeading: 98, webkitCompassAccuracy: 10 };
    expect(headingOf(told, -8, 0)).toEqual({ degrees: 90, kind: 'magnetic' });
    expect(headingOf(told, null, 0)?.degrees).toBe(98);
    expect(headingOf({ ...told, webkitCompassAccuracy: -1 }, -8, 0)).toBeNull();
    expect(headingOf({ ...told, webkitCompassHeading: 2 }, -8, 0)?.degrees).toBe(354);
  });

  it('points the arrow ahead when the box lies ahead, and smooths over north', () => {
    expect(arrowTurn(236, { degrees: 236, kind: 'compass' })).toBe(0);
    expect(arrowTurn(236, null)).toBe(236);
    expect(eased(350, 10, 0.5)).toBeCloseTo(0, 6);
    expect(eased(null, 77)).toBe(77);
  });
});

describe('the clock', () => {
  const at = (date: string, zone = -240): LocalTime => ({ date, time: '10:00', zone, instant: `${date}T14:00:00Z` });
  const log = [makeVisit({ id: 'a', post: 'p1', date: '2026-05-20', state: 'empty' })];

  it('is doubted when a visit lies ahead of it or its zone is far off the sun', () => {
    expect(clockDoubt(at('2026-05-20'), log, -84)).toBeNull();
    expect(clockDoubt(at('2020-01-01'), log, -84)).toEqual({ kind: 'behind', today: '2020-01-01', last: '2026-05-20' });
    expect(clockDoubt(at('2026-05-21', 60), log, -84)).toEqual({ kind: 'zone', hours: 7 });
    expect(clockDoubt(at('2026-05-21', 60), log, null)).toBeNull();
    // Across the date line: UTC+13 at 175° W.
    expect(clockDoubt(at('2026-05-21', 780), log, -175)).toBeNull();
  });

  it('writes day and minute as a visit does', () => {
    expect(localTime(new Date(2026, 4, 3, 9, 5)).date).toBe('2026-05-03');
    expect(localTime(new Date(2026, 4, 3, 9, 5)).time).toBe('09:05');
  });
});

describe('counts and rows', () => {
  it('types a count of one or two digits', () => {
    expect(pressed(null, '5')).toBe(5);
    expect(pressed(1, '2')).toBe(12);
    expect(pressed(12, '3')).toBe(3);
    expect(pressed(12, 'back')).toBe(1);
    expect(pressed(4, 'back')).toBeNull();
    expect(pressed(4, 'clear')).toBeNull();
    expect(pressed(4, 'x')).toBe(4);
  });

  it.each([
    ['e', { state: 'empty', eggs: null, young: null, trouble: [] }],
    [' G5 ', { state: 'eggs', eggs: 5, young: null, trouble: [] }],
    ['y4+1 w', { state: 'young', eggs: 1, young: 4, trouble: ['wasps'] }],
    ['n wm', { state: 'building', eggs: null, young: null, trouble: ['wasps', 'mice'] }],
    ['f3', { state: 'fledged', eggs: null, young: 3, trouble: [] }],
  ])('reads “%s”', (text, row) => expect(readPaperRow(text)).toEqual({ row, wrong: null }));

  it.each(['q', 'e5', 'g5+2', 'g5 z', '5', 'g555'])('names what is wrong in “%s”', (text) => {
    expect(readPaperRow(text).row).toBeNull();
    expect(readPaperRow(text).wrong).not.toBeNull();
  });

  it('never throws and never takes an empty row for a visit', () => {
    expect(readPaperRow('  ')).toEqual({ row: null, wrong: null });
    fc.assert(
      fc.property(fc.string(), (text) => {
        const { row } = readPaperRow(text);
        if (row) expect(row.eggs === null || row.eggs <= 99).toBe(true);
      }),
      { seed: 6, numRuns: 300 },
    );
  });
});

describe('ready for the field', () => {
  const facts: ReadyFacts = {
    offline: 'ready',
    built: true,
    hash: 'abcdef01',
    boxes: 40,
    planIsCurrent: true,
    persisted: true,
    used: 10e6,
    room: 2e9,
    appSize: 9e6,
    picture: { kept: 1, bytes: 4e6, lost: 0, servers: [], files: [] },
    visitsKept: 'kept',
    where: 'fix',
  };

  it('says yes only when nothing says no', () => {
    expect(isReady(readyRows(facts))).toBe(true);
    expect(readyRows(facts).every((row) => row.state === 'yes')).toBe(true);
    for (const bad of [
      { offline: 'filling' },
      { boxes: 0 },
      { visitsKept: 'memory' },
      { where: 'denied' },
      { room: 20e6 },
    ] as const)
      expect(isReady(readyRows({ ...facts, ...bad }))).toBe(false);
  });

  it('says "look" where the walk still works', () => {
    const state = (more: Partial<ReadyFacts>, id: string) =>
      readyRows({ ...facts, ...more }).find((row) => row.id === id)?.state;
    expect(state({ persisted: false }, 'storage')).toBe('careful');
    expect(state({ planIsCurrent: false }, 'plan')).toBe('careful');
    const none = { kept: 0, bytes: 0, lost: 0, servers: [], files: [] };
    expect(state({ picture: none }, 'picture')).toBe('yes');
    for (const missing of [{ lost: 1 }, { servers: ['tiles.example'] }, { files: ['park.pmtiles'] }])
      expect(state({ picture: { ...none, ...missing } }, 'picture')).toBe('careful');
    expect(state({ picture: null }, 'picture')).toBe('careful');
    expect(isReady(readyRows({ ...facts, persisted: null, room: null, where: 'none' }))).toBe(true);
  });

  it('writes sizes', () => {
    expect([sizeText(900), sizeText(12_345), sizeText(9_300_000), sizeText(1.5e9)]).toEqual([
      '900 B',
      '12 kB',
      '9.3 MB',
      '1.5 GB',
    ]);
  });
});
