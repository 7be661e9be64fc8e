/** Where closed rings meet: crossings, stretches they share, and corners where they only touch. */
import type { Position } from 'geojson';
import { placeOf, samePlace } from './positions.ts';
import type { LonLat } from './types.ts';

/** A place where rings meet. */
export interface Contact {
  readonly how: 'crosses' | 'overlaps' | 'touches';
  readonly place: LonLat;
  /** Which of the given rings meet; the same twice when a ring meets itself. */
  readonly rings: readonly [number, number];
}

interface Edge {
  readonly ring: number;
  readonly index: number;
  readonly a: Position;
  readonly b: Position;
  readonly low: number;
  readonly high: number;
}

/** Twice the area of a, b, c: positive when c lies left of a → b. Planar on degrees: only its sign is used. */
function side(a: Position, b: Position, c: Position): number {
  return (b[0]! - a[0]!) * (c[1]! - a[1]!) - (b[1]! - a[1]!) * (c[0]! - a[0]!);
}

/** Edges of all rings sorted along the longer side of their box, so that only near ones are compared. */
function sortedEdges(rings: readonly Position[][]): Edge[] {
  const axis = longerAxis(rings);
  const edges = rings.flatMap((ring, r) =>
    ring.slice(1).map((b, index) => {
      const a = ring[index]!;
      const low = Math.min(a[axis]!, b[axis]!);
      return { ring: r, index, a, b, low, high: Math.max(a[axis]!, b[axis]!) };
    }),
  );
  return edges.sort((one, other) => one.low - other.low);
}

function longerAxis(rings: readonly Position[][]): 0 | 1 {
  const span = [0, 1].map((axis) => {
    let low = Infinity;
    let high = -Infinity;
    for (const ring of rings) {
      for (const position of ring) {
        low = Math.min(low, position[axis]!);
        high = Math.max(high, position[axis]!);
      }
    }
    return high - low;
  });
  return span[0]! >= span[1]! ? 0 : 1;
}

/** Whether c (known to be in line with a and b) lies on the edge, ends included. */
function within(a: Position, b: Position, c: Position): boolean {
  return (
    Math.min(a[0]!, b[0]!) <= c[0]! &&
    c[0]! <= Math.max(a[0]!, b[0]!) &&
    Math.min(a[1]!, b[1]!) <= c[1]! &&
    c[1]! <= Math.max(a[1]!, b[1]!)
  );
}

function boxesApart(one: Edge, other: Edge): boolean {
  return (
    Math.max(one.a[1]!, one.b[1]!) < Math.min(other.a[1]!, other.b[1]!) ||
    Math.min(one.a[1]!, one.b[1]!) > Math.max(other.a[1]!, other.b[1]!) ||
    Math.max(one.a[0]!, one.b[0]!) < Math.min(other.a[0]!, other.b[0]!) ||
    Math.min(one.a[0]!, one.b[0]!) > Math.max(other.a[0]!, other.b[0]!)
  );
}

function meetingPlace(one: Edge, d3: number, d4: number): LonLat {
  const part = d3 / (d3 - d4);
  return [one.a[0]! + part * (one.b[0]! - one.a[0]!), one.a[1]! + part * (one.b[1]! - one.a[1]!)];
}

/** How two edges meet, or null. */
function meeting(one: Edge, other: Edge, rings: readonly Position[][]): Contact | null {
  if (boxesApart(one, other)) return null;
  const d1 = side(one.a, one.b, other.a);
  const d2 = side(one.a, one.b, other.b);
  const d3 = side(other.a, other.b, one.a);
  const d4 = side(other.a, other.b, one.b);
  const between: [number, number] = [one.ring, other.ring];
  if (d1 * d2 < 0 && d3 * d4 < 0) return { how: 'crosses', place: meetingPlace(one, d3, d4), rings: between };
  if (d1 === 0 && d2 === 0) return sharedStretch(one, other);
  if (neighbours(one, other, rings)) return null;
  const place = touchingCorner(one, other, [d1, d2, d3, d4]);
  if (!place) return null;
  const how = passesThrough(one, other, place, rings) ? 'crosses' : 'touches';
  return { how, place: placeOf(place), rings: between };
}

/** Edges in one line: do they share more than an end? */
function sharedStretch(one: Edge, other: Edge): Contact | null {
  const shared = [
    ...[other.a, other.b].filter((corner) => within(one.a, one.b, corner)),
    ...[one.a, one.b].filter((corner) => within(other.a, other.b, corner)),
  ];
  const far = shared.find((corner) => !samePlace(corner, shared[0]!));
  return far ? { how: 'overlaps', place: placeOf(far), rings: [one.ring, other.ring] } : null;
}

function neighbours(one: Edge, other: Edge, rings: readonly Position[][]): boolean {
  if (one.ring !== other.ring) return false;
  const count = rings[one.ring]!.length - 1;
  const apart = Math.abs(one.index - other.index);
  return apart === 1 || apart === count - 1;
}

function touchingCorner(one: Edge, other: Edge, d: readonly [number, number, number, number]): Position | null {
  if (d[0] === 0 && within(one.a, one.b, other.a)) return other.a;
  if (d[1] === 0 && within(one.a, one.b, other.b)) return other.b;
  if (d[2] === 0 && within(other.a, other.b, one.a)) return one.a;
  return d[3] === 0 && within(other.a, other.b, one.b) ? one.b : null;
}

/** The corners before and after `place` on the way an edge belongs to. */
function arms(edge: Edge, place: Position, rings: readonly Position[][]): [Position, Position] {
  const ring = rings[edge.ring]!;
  const count = ring.length - 1;
  if (samePlace(place, edge.a)) return [ring[(edge.index + count - 1) % count]!, edge.b];
  return samePlace(place, edge.b) ? [edge.a, ring[(edge.index + 2) % count]!] : [edge.a, edge.b];
}

/** Whether one way goes through the other at a shared corner instead of only touching it. */
function passesThrough(one: Edge, other: Edge, place: Position, rings: readonly Position[][]): boolean {
  const [before, after] = arms(one, place, rings);
  const [p, q] = arms(other, place, rings);
  if ([before, after].some((arm) => sameWay(place, arm, p) || sameWay(place, arm, q))) return false;
  return leftOf(before, place, after, p) !== leftOf(before, place, after, q);
}

function sameWay(from: Position, a: Position, b: Position): boolean {
  const dot = (a[0]! - from[0]!) * (b[0]! - from[0]!) + (a[1]! - from[1]!) * (b[1]! - from[1]!);
  return side(from, a, b) === 0 && dot > 0;
}

/** Whether p lies on the left of the way before → corner → after. */
function leftOf(before: Position, corner: Position, after: Position, p: Position): boolean {
  const leftOfFirst = side(before, corner, p) > 0;
  const leftOfSecond = side(corner, after, p) > 0;
  return side(before, corner, after) >= 0 ? leftOfFirst && leftOfSecond : leftOfFirst || leftOfSecond;
}

/** Of each way to meet, this many are listed. */
const most = 50;

/**
 * Contacts between closed rings (first = last position, no corner twice in a row), at most 50 of each way.
 * Corners that neighboring edges share by nature are no contact.
 */
export function ringContacts(rings: readonly Position[][]): Contact[] {
  const found: Record<Contact['how'], Contact[]> = { crosses: [], overlaps: [], touches: [] };
  const edges = sortedEdges(rings);
  for (let i = 0; i < edges.length && found.crosses.length < most; i++) {
    const one = edges[i]!;
    for (let j = i + 1; j < edges.length && edges[j]!.low <= one.high; j++) {
      const contact = meeting(one, edges[j]!, rings);
      if (contact && found[contact.how].length < most) found[contact.how].push(contact);
    }
  }
  return [...found.crosses, ...found.overlaps, ...found.touches];
}
