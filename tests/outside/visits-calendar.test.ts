/** The calendar text against RFC 5545, read by an independent parser (ical.js). */
import fc from 'fast-check';
import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { birdById } from '../../src/birds/index.ts';
import { calendarText, dueCalendar } from '../../src/visits/calendar.ts';
import { clockFromFirstEgg } from '../../src/visits/clock.ts';
import { dueVisits } from '../../src/visits/due.ts';
import { makeVisit } from '../../src/visits/visit.ts';

const stamp = '2026-05-01T08:00:00Z';

function parse(text: string): { name: string | null; events: ICAL.Event[] } {
  const calendar = new ICAL.Component(ICAL.parse(text));
  return {
    name: calendar.getFirstPropertyValue('name') as string | null,
    events: calendar.getAllSubcomponents('vevent').map((event) => new ICAL.Event(event)),
  };
}

describe('an independent parser reads', () => {
  test('days, words and stamps as given', () => {
    const { name, events } = parse(
      calendarText(
        'Alder Flat; due, visits',
        [{ uid: 'x@y', date: '2026-12-31', title: 'Box 7, "north"; \\ slash', text: 'Line one\nLine two: ä € 🐦' }],
        stamp,
      ),
    );
    // NAME is of RFC 7986, which the parser does not know: it hands the TEXT over as written, escapes and all.
    expect(name).toBe('Alder Flat\\; due\\, visits');
    expect(events).toHaveLength(1);
    const [event] = events;
    expect([event!.uid, event!.summary, event!.description]).toEqual([
      'x@y',
      'Box 7, "north"; \\ slash',
      'Line one\nLine two: ä € 🐦',
    ]);
    expect(event!.startDate.isDate).toBe(true);
    expect([event!.startDate.toString(), event!.endDate.toString()]).toEqual(['2026-12-31', '2027-01-01']);
    expect(String(event!.component.getFirstPropertyValue('dtstamp'))).toBe('2026-05-01T08:00:00Z');
  });
  test('any words survive, and every line is CRLF-ended, at most 75 octets, of whole characters', () => {
    const words = fc.string({ unit: 'grapheme', maxLength: 200 });
    fc.assert(
      fc.property(words, words, (title, text) => {
        const made = calendarText('x', [{ uid: 'u', date: '2026-05-01', title, text }], stamp);
        expect(made.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
        for (const line of made.split('\r\n')) {
          expect(Buffer.byteLength(line, 'utf8')).toBeLessThanOrEqual(75);
          expect(Buffer.from(line, 'utf8').toString('utf8')).toBe(line);
        }
        const [event] = parse(made).events;
        const control = (mark: string) => mark !== '\n' && (mark.charCodeAt(0) < 32 || mark.charCodeAt(0) === 127);
        const allowed = (value: string) =>
          [...value.replace(/\r\n?/g, '\n')].map((mark) => (control(mark) ? ' ' : mark)).join('');
        expect(event!.summary ?? '').toBe(allowed(title));
        expect(event!.description ?? '').toBe(allowed(text));
      }),
      { seed: 5545, numRuns: 300 },
    );
  });
  test('required properties stand in the order and form RFC 5545 3.6 asks for', () => {
    const lines = calendarText('x', [], stamp).split('\r\n');
    expect(lines.slice(0, 2)).toEqual(['BEGIN:VCALENDAR', 'VERSION:2.0']);
    expect(lines.filter((line) => line.startsWith('PRODID:'))).toHaveLength(1);
    expect(lines.slice(-2)).toEqual(['END:VCALENDAR', '']);
  });
  test('the due visits of a trail: one event a box, the same uid each time', () => {
    const bluebird = birdById('eastern-bluebird');
    const clock = clockFromFirstEgg(bluebird, '2026-05-01', 5);
    const boxes = [7, 8].map((number) => ({
      post: `post ${number}`,
      number,
      bird: bluebird,
      clock,
      visits: [makeVisit({ id: `v${number}`, post: `post ${number}`, date: '2026-05-27', state: 'young' })],
    }));
    const due = dueVisits(boxes, '2026-05-28', 'new');
    const text = dueCalendar('Alder Flat', due, stamp);
    const { events } = parse(text);
    expect(events.map((event) => event.summary)).toEqual(['Watch box 7 – Alder Flat', 'Watch box 8 – Alder Flat']);
    expect(new Set(events.map((event) => event.uid)).size).toBe(2);
    expect(parse(dueCalendar('Alder Flat', due, '2026-05-29T08:00:00Z')).events.map((event) => event.uid)).toEqual(
      events.map((event) => event.uid),
    );
    expect(events[0]!.startDate.toString()).toBe('2026-06-03');
  });
});

test('a stamp that is no instant in UTC, or a day that is none, is a mistake', () => {
  expect(() => calendarText('x', [], '2026-05-01')).toThrow(/instant in UTC/);
  expect(() => calendarText('x', [{ uid: 'u', date: '2026-02-30', title: '', text: '' }], stamp)).toThrow(/not a date/);
});
