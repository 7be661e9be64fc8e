/** An area's outline: closed, without doubled corners, not crossing itself, holes inside, wound as RFC 7946 says. */
import { area, booleanPointInPolygon, pointOnFeature, polygon } from '@turf/turf';
import type { Position } from 'geojson';
import { limits } from './defaults.ts';
import { placeWords, trouble } from './issues.ts';
import { placeOf, samePlace } from './positions.ts';
import { type Contact, ringContacts } from './ring-contacts.ts';
import type { Issue } from './types.ts';

/** Which feature is spoken of: its id, and its name in sentences. */
export interface Who {
  readonly id: string;
  readonly label: string;
}

/** What a check leaves, repaired where it could be, with what it found. */
export interface Checked<T> {
  readonly value: T;
  readonly issues: Issue[];
}

/** Closes a ring and drops corners standing twice in a row. */
function tidyRing(ring: readonly Position[]): { ring: Position[]; closed: boolean; dropped: number } {
  const first = ring[0];
  const closed = first !== undefined && !samePlace(first, ring.at(-1)!);
  const whole = closed ? [...ring, [...first]] : ring;
  const kept = whole.filter((position, i) => i === 0 || !samePlace(position, whole[i - 1]!));
  return { ring: kept, closed, dropped: whole.length - kept.length };
}

/** Twice the signed area on degrees: positive when counter-clockwise. */
function turnOf(ring: readonly Position[]): number {
  const [x, y] = placeOf(ring[0]!);
  let sum = 0;
  for (let i = 1; i < ring.length; i++) {
    const [a, b] = [ring[i - 1]!, ring[i]!];
    sum += (a[0]! - x) * (b[1]! - y) - (b[0]! - x) * (a[1]! - y);
  }
  return sum;
}

/** Whether all corners lie in one line. */
function isFlat(ring: readonly Position[]): boolean {
  const a = ring[0]!;
  const b = ring.find((position) => !samePlace(position, a));
  return !b || ring.every((c) => (b[0]! - a[0]!) * (c[1]! - a[1]!) === (b[1]! - a[1]!) * (c[0]! - a[0]!));
}

/** The same rings wound as RFC 7946 §3.1.6 says: outline counter-clockwise, holes clockwise. */
export function wound(rings: readonly Position[][]): { rings: Position[][]; turned: boolean } {
  const wrong = rings.map((ring, i) => (i === 0 ? turnOf(ring) < 0 : turnOf(ring) > 0));
  return { rings: rings.map((ring, i) => (wrong[i] ? ring.toReversed() : ring)), turned: wrong.includes(true) };
}

/** Checks one polygon. `value` is null when it cannot be used. */
export function checkPolygon(raw: readonly Position[][], who: Who): Checked<Position[][] | null> {
  const tidy = raw.map(tidyRing);
  const rings = tidy.map((one) => one.ring);
  const issues = tidyIssues(tidy, who);
  const short = tooShort(rings, who);
  const contacts = short ? [] : ringContacts(rings);
  const stop = short ?? badContact(contacts, rings, who) ?? badHole(rings, who);
  if (stop) return { value: null, issues: [...issues, stop] };
  const { rings: turned, turned: wasWrong } = wound(rings);
  if (wasWrong) issues.push(turnedIssue(turned, who));
  return { value: turned, issues: [...issues, ...smallThings(contacts, turned, who)] };
}

function tidyIssues(tidy: readonly { ring: Position[]; closed: boolean; dropped: number }[], who: Who): Issue[] {
  const open = tidy.find((one) => one.closed);
  const doubled = tidy.filter((one) => one.dropped > 0);
  const dropped = doubled.reduce((sum, one) => sum + one.dropped, 0);
  const issues: Issue[] = [];
  if (open) issues.push(repair('ring-not-closed', who, open.ring, 'was not closed; it now ends where it starts'));
  if (dropped > 0) {
    const said =
      dropped === 1
        ? 'had a corner standing twice; it was joined'
        : `had ${dropped} corners standing twice; they were joined`;
    issues.push(repair('vertex-twice', who, doubled[0]!.ring, said));
  }
  return issues;
}

function repair(id: 'ring-not-closed' | 'vertex-twice', who: Who, ring: Position[], said: string): Issue {
  const place = placeOf(ring[0]!);
  const sentence = `${who.label} ${said} (near ${placeWords(place)}).`;
  return trouble(id, { feature: who.id, place }, sentence, 'Nothing to do; save the site to keep the repair.');
}

function turnedIssue(rings: Position[][], who: Who): Issue {
  const place = placeOf(rings[0]![0]!);
  const sentence = `${who.label} listed its corners the wrong way round (near ${placeWords(place)}); they were turned.`;
  return trouble(
    'ring-turned',
    { feature: who.id, place },
    sentence,
    'Nothing to do; save the site to keep the repair.',
  );
}

function tooShort(rings: Position[][], who: Who): Issue | null {
  if (rings.length === 0) {
    const sentence = `${who.label} has no outline.`;
    return trouble('ring-too-short', { feature: who.id }, sentence, 'Draw it again or delete it.');
  }
  for (const [i, ring] of rings.entries()) {
    const what = i === 0 ? who.label : `A hole in ${who.label}`;
    const place = ring[0] ? placeOf(ring[0]) : null;
    const near = place ? ` near ${placeWords(place)}` : '';
    const corners = Math.max(0, ring.length - 1);
    if (corners < 3) {
      const sentence = `${what}${near} has ${corners === 1 ? '1 corner' : `${corners} corners`}; an outline needs at least 3.`;
      return trouble('ring-too-short', { feature: who.id, place }, sentence, 'Add the missing corners or delete it.');
    }
    if (isFlat(ring)) {
      const sentence = `${what}${near} has all its corners in one line, so it encloses no area.`;
      return trouble('ring-no-area', { feature: who.id, place }, sentence, 'Move a corner off the line or delete it.');
    }
  }
  return null;
}

function badContact(contacts: readonly Contact[], rings: Position[][], who: Who): Issue | null {
  const bad = contacts.find((contact) => contact.how !== 'touches');
  return bad ? contactIssue(bad, rings, who) : null;
}

function contactIssue(contact: Contact, rings: Position[][], who: Who): Issue {
  const where = { feature: who.id, place: contact.place };
  const near = `near ${placeWords(contact.place)}`;
  const [a, b] = contact.rings;
  if (a === b) {
    const what = a === 0 ? who.label : `A hole in ${who.label}`;
    const did = contact.how === 'overlaps' ? 'runs back over itself' : 'crosses itself';
    const bowTie =
      rings[a]!.length === 5 && contact.how === 'crosses' ? ' (a bow-tie: two corners are in the wrong order)' : '';
    const fix = 'Move one of the corners so that the outline does not cross.';
    return trouble('ring-crosses-itself', where, `${what} ${did} ${near}${bowTie}.`, fix);
  }
  const fix = 'Move the corners of the hole.';
  if (a === 0 || b === 0) {
    return trouble(
      'hole-crosses',
      where,
      `A hole in ${who.label} crosses the outline ${near}.`,
      `${fix} It has to lie inside.`,
    );
  }
  return trouble('holes-overlap', where, `Two holes in ${who.label} overlap ${near}.`, `${fix} Or make them one hole.`);
}

function inside(position: Position, ring: Position[]): boolean {
  return booleanPointInPolygon(position, polygon([ring]), { ignoreBoundary: true });
}

/** Outside, and not on the outline either. */
function outside(position: Position, ring: Position[]): boolean {
  return !booleanPointInPolygon(position, polygon([ring]));
}

function badHole(rings: Position[][], who: Who): Issue | null {
  const [outline, ...holes] = rings as [Position[], ...Position[][]];
  for (const [i, hole] of holes.entries()) {
    const out = hole.find((corner) => outside(corner, outline));
    if (out) {
      const sentence = `A hole in ${who.label} lies outside it near ${placeWords(out)}.`;
      const fix = 'Move the hole inside, or draw it as an area of its own.';
      return trouble('hole-outside', { feature: who.id, place: placeOf(out) }, sentence, fix);
    }
    const other = holes.find((one, j) => j !== i && hole.some((corner) => inside(corner, one)));
    if (other) {
      const place = placeOf(hole[0]!);
      const sentence = `Two holes in ${who.label} overlap near ${placeWords(place)}.`;
      return trouble('holes-overlap', { feature: who.id, place }, sentence, 'Make them one hole.');
    }
  }
  return null;
}

function smallThings(contacts: readonly Contact[], rings: Position[][], who: Who): Issue[] {
  const issues: Issue[] = [];
  const touch = contacts.find(({ rings: [a, b] }) => a === b);
  if (touch) {
    const sentence = `${who.label} touches itself at a corner near ${placeWords(touch.place)}.`;
    const fix = 'Move the corner a little, or split the area there.';
    issues.push(trouble('ring-touches-itself', { feature: who.id, place: touch.place }, sentence, fix));
  }
  const size = area(polygon(rings));
  if (size < limits.tinyArea) {
    const place = placeOf(rings[0]![0]!);
    const sentence = `${who.label} near ${placeWords(place)} covers ${size.toFixed(2)} square meters.`;
    const fix = 'Delete it if it was drawn by accident.';
    issues.push(trouble('area-tiny', { feature: who.id, place }, sentence, fix));
  }
  return issues;
}

/** Checks the parts of a MultiPolygon one by one and against each other. */
export function checkParts(raw: readonly Position[][][], who: Who): Checked<Position[][][] | null> {
  const parts = raw.map((part) => checkPolygon(part, who));
  const issues = parts.flatMap((part) => part.issues);
  const good = parts.flatMap((part) => (part.value ? [part.value] : []));
  if (good.length === 0 && raw.length === 0) return { value: null, issues: [tooShort([], who)!] };
  if (good.length < raw.length) return { value: null, issues };
  const overlap = partsOverlap(good, who);
  return overlap ? { value: null, issues: [...issues, overlap] } : { value: good, issues };
}

function partsOverlap(parts: Position[][][], who: Who): Issue | null {
  const outlines = parts.map((part) => part[0]!);
  const crossing = ringContacts(outlines).find(({ how, rings: [a, b] }) => a !== b && how === 'crosses');
  const place = crossing?.place ?? partInPart(parts);
  if (!place) return null;
  const sentence = `Two parts of ${who.label} overlap near ${placeWords(place)}.`;
  return trouble('parts-overlap', { feature: who.id, place }, sentence, 'Merge the parts into one outline.');
}

function partInPart(parts: Position[][][]): [number, number] | null {
  for (const [i, part] of parts.entries()) {
    const within = placeOf(pointOnFeature(polygon(part)).geometry.coordinates);
    const around = parts.some(
      (other, j) => j !== i && booleanPointInPolygon(within, polygon(other), { ignoreBoundary: true }),
    );
    if (around) return within;
  }
  return null;
}
