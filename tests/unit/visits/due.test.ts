import { describe, expect, test } from 'vitest';
import { birdById } from '../../../src/birds/index.ts';
import { clockFromFirstEgg } from '../../../src/visits/clock.ts';
import { type BoxNow, dueVisits, nextVisit } from '../../../src/visits/due.ts';
import { makeVisit } from '../../../src/visits/visit.ts';

const bluebird = birdById('eastern-bluebird');
const clock = clockFromFirstEgg(bluebird, '2026-05-01', 5);
const seen = (date: string, state: 'eggs' | 'young' | 'empty', post = 'p7') =>
  makeVisit({ id: `${post}${date}`, post, date, state });
const box = (change: Partial<BoxNow>): BoxNow => ({
  post: 'p7',
  number: 7,
  visits: [],
  bird: bluebird,
  clock,
  ...change,
});

describe('next visit', () => {
  test('a week after the last; a day later it is overdue', () => {
    const now = box({ visits: [seen('2026-05-10', 'eggs'), seen('2026-05-03', 'eggs')] });
    expect(nextVisit(now, '2026-05-17', 'new')).toMatchObject({
      due: '2026-05-17',
      overdue: 0,
      active: true,
      do: 'open',
    });
    const late = nextVisit(now, '2026-05-18', 'new');
    expect(late).toMatchObject({ due: '2026-05-17', overdue: 1 });
    expect(late.sentence).toBe('Box 7: next visit May 17, overdue by 1 day; last seen May 10 (eggs).');
  });
  test('due after the last opening: watch, do not open', () => {
    const due = nextVisit(box({ visits: [seen('2026-05-27', 'young')] }), '2026-05-28', 'new');
    expect(due).toMatchObject({ due: '2026-06-03', do: 'watch' });
    expect(due.sentence).toMatch(/Do not open until Jun 9/);
  });
  test('the outcome is looked at the day after the latest fledging', () => {
    expect(nextVisit(box({ visits: [seen('2026-06-05', 'young')] }), '2026-06-05', 'new').due).toBe('2026-06-10');
  });
  test('a visit due long ago is judged by today: after fledging it may be opened', () => {
    expect(nextVisit(box({ visits: [seen('2026-05-27', 'young')] }), '2026-06-20', 'new').do).toBe('open');
  });
  test('young of a bird nobody named are watched, not opened; so are eggs seen long ago', () => {
    const unnamed = (date: string, state: 'eggs' | 'young' | 'empty') =>
      box({ bird: null, clock: null, visits: [seen(date, state)] });
    expect(nextVisit(unnamed('2026-05-20', 'young'), '2026-05-21', 'new').do).toBe('watch');
    expect(nextVisit(unnamed('2026-05-20', 'eggs'), '2026-05-21', 'new').do).toBe('open');
    expect(nextVisit(unnamed('2026-05-10', 'eggs'), '2026-05-21', 'new').do).toBe('watch');
    expect(nextVisit(unnamed('2026-05-10', 'empty'), '2026-05-21', 'new').do).toBe('open');
  });
  test('never visited: today, not overdue', () => {
    const due = nextVisit(box({ clock: null }), '2026-05-01', 'new');
    expect(due).toMatchObject({ due: '2026-05-01', overdue: 0, active: false });
    expect(due.sentence).toMatch(/not visited yet/);
  });
});

describe('in the quiet months', () => {
  const season = { from: '04-01', to: '08-15' };
  const due = (date: string, state: 'empty' | 'eggs') =>
    nextVisit(box({ season, clock: null, bird: null, visits: [seen(date, state)] }), date, 'new').due;
  test('an empty box rests until four weeks before the next eggs', () => {
    expect(due('2026-08-29', 'empty')).toBe('2026-09-05');
    expect(due('2026-08-30', 'empty')).toBe('2027-03-04');
    expect(due('2026-12-30', 'empty')).toBe('2027-03-04');
    expect(due('2026-02-01', 'empty')).toBe('2026-03-04');
  });
  test('a nest never does', () => expect(due('2026-09-20', 'eggs')).toBe('2026-09-27'));
});

test('the list: most overdue first, then by day, active before empty, then by number', () => {
  const boxes = [
    box({ post: 'a', number: 3, visits: [seen('2026-05-20', 'empty', 'a')] }),
    box({ post: 'b', number: 2, visits: [seen('2026-05-01', 'empty', 'b')] }),
    box({ post: 'c', number: 4, visits: [seen('2026-05-20', 'eggs', 'c')] }),
    box({ post: 'd', number: 1, visits: [seen('2026-05-20', 'empty', 'd')] }),
  ];
  expect(dueVisits(boxes, '2026-05-21', 'new').map((due) => due.post)).toEqual(['b', 'c', 'd', 'a']);
  expect(dueVisits([...boxes].reverse(), '2026-05-21', 'new').map((due) => due.post)).toEqual(['b', 'c', 'd', 'a']);
});
