/** Due visits as an iCalendar text (RFC 5545): all-day events any calendar can read. */

import { addDays, dayOf } from './days.ts';
import type { Due } from './due.ts';

export interface CalendarDay {
  /** Unique in the world and the same each time the same visit is written: importing twice changes nothing. */
  readonly uid: string;
  /** YYYY-MM-DD. */
  readonly date: string;
  readonly title: string;
  readonly text: string;
}

/** RFC 5545 3.3.11: backslash, semicolon, comma and line break are escaped; other control characters have no place in a text. */
function escapeText(text: string): string {
  return (
    text
      .replace(/\r\n|\r/g, '\n')
      // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is removed
      .replace(/[\u0000-\u0009\u000b-\u001f\u007f]/g, ' ')
      .replace(/[\\;,]/g, (mark) => `\\${mark}`)
      .replaceAll('\n', '\\n')
  );
}

const octets = (character: string) => {
  const point = character.codePointAt(0)!;
  return point < 0x80 ? 1 : point < 0x800 ? 2 : point < 0x10000 ? 3 : 4;
};

/** RFC 5545 3.1: lines of at most 75 octets, a continuation starts with a space; a character is never cut in two. */
function fold(line: string): string {
  let out = '';
  let length = 0;
  for (const character of line) {
    const size = octets(character);
    if (length + size > 75) {
      out += '\r\n ';
      length = 1;
    }
    out += character;
    length += size;
  }
  return out;
}

const compact = (date: string) => date.replaceAll('-', '');

function event(day: CalendarDay, stamp: string): string[] {
  dayOf(day.date);
  return [
    'BEGIN:VEVENT',
    `UID:${escapeText(day.uid)}`,
    `DTSTAMP:${stamp}`,
    `DTSTART;VALUE=DATE:${compact(day.date)}`,
    `DTEND;VALUE=DATE:${compact(addDays(day.date, 1))}`,
    `SUMMARY:${escapeText(day.title)}`,
    `DESCRIPTION:${escapeText(day.text)}`,
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ];
}

/** The calendar text, CRLF and folded. `stamp` is the instant it is made, ISO 8601 in UTC such as `2026-05-01T08:00:00Z`. */
export function calendarText(name: string, days: readonly CalendarDay[], stamp: string): string {
  const made = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2}):(\d{2})(?:\.\d+)?Z$/.exec(stamp);
  if (!made) throw new Error(`the stamp must be an instant in UTC (YYYY-MM-DDTHH:MM:SSZ), not ${stamp}`);
  const utc = `${made[1]}${made[2]}${made[3]}T${made[4]}${made[5]}${made[6]}Z`;
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Meadowpost//Due visits//EN',
    'CALSCALE:GREGORIAN',
    `NAME:${escapeText(name)}`,
    `X-WR-CALNAME:${escapeText(name)}`,
    ...days.flatMap((day) => event(day, utc)),
    'END:VCALENDAR',
  ];
  return `${lines.map(fold).join('\r\n')}\r\n`;
}

/** Due visits as calendar days. `site` goes into the uid, so two sites never share one. */
export function dueCalendar(site: string, due: readonly Due[], stamp: string): string {
  const days = due.map((one) => ({
    uid: `${encodeURIComponent(site)}-${encodeURIComponent(one.post)}-${one.due}@meadowpost.invalid`,
    date: one.due,
    title: `${one.do === 'watch' ? 'Watch' : 'Visit'} box ${one.number ?? one.post} – ${site}`,
    text: one.sentence,
  }));
  return calendarText(`${site}: due visits`, days, stamp);
}
