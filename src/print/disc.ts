/** The beaked disc: a box with its number, its score as a ring filled clockwise from noon, and a beak where the hole faces. */
import { circle, group, type Item, type Path, path } from './display.ts';
import { centered } from './labels.ts';
import { widthOf } from './measure.ts';
import { point } from './style.ts';

const ink = '#000000';
/** Pale part of a ring: need not be seen to read the sheet. */
const pale = '#d2d2d2';
/** Width of the score ring, gap to the second ring of a standing box, length of the beak past the rim, mm. */
const ring = 1.1;
const second = 0.95;
const beak = 2.3;

/** How a box is drawn: `size` of its number in points, `radius` of the rim in mm (see `discRadius`). */
export interface DiscLook {
  readonly size: number;
  readonly radius: number;
}

/** What a disc says. `score` 0–100; `facing` degrees clockwise from north. */
export interface DiscFacts {
  readonly number: number;
  readonly score: number;
  readonly facing: number;
  readonly standing: boolean;
}

/** One look for all boxes of a book: the rim leaves room for the longest number. */
export function discLook(numbers: readonly number[], size: number): DiscLook {
  const widest = Math.max(...[8, ...numbers].map((one) => widthOf(String(one), size, 'serifBold')));
  const inner = Math.hypot(widest / 2, (size * point * 0.67) / 2) + 0.35;
  return { size, radius: Math.max(inner, size * point * 0.62) + ring };
}

/** Space a disc takes around its middle, mm: rim, second ring and beak are inside it. */
export function discReach(look: DiscLook): number {
  return look.radius + second + beak;
}

/** Room a disc's rim takes from its middle, with half the gap to its neighbor, mm: two discs this far apart do not touch. */
export function discRoom(look: DiscLook, standing: boolean): number {
  return look.radius + (standing ? second : 0) + 0.4;
}

/** A box at (x, y), mm. */
export function drawDisc(x: number, y: number, facts: DiscFacts, look: DiscLook): Item {
  const { radius } = look;
  const rim = facts.standing ? radius + second : radius;
  const middle = radius - ring / 2;
  const tip = beakPath(x, y, facts.facing, rim);
  const items: Item[] = [
    path(circle(x, y, rim + 0.6), { fill: '#ffffff' }),
    path(tip, { stroke: { width: 1.1, color: '#ffffff' } }),
    path(tip, { fill: ink, stroke: { width: 0.2, color: ink } }),
  ];
  if (facts.standing) items.push(path(circle(x, y, rim), { fill: '#ffffff', stroke: { width: 0.4, color: ink } }));
  items.push(path(circle(x, y, radius), { fill: pale, stroke: { width: 0.3, color: ink } }));
  const share = Math.min(1, Math.max(0, facts.score / 100));
  // Flat ends: a round one would add its half width to the score.
  if (share > 0) items.push(path(band(x, y, middle, share), { fill: ink }));
  items.push(path(circle(x, y, radius - ring), { fill: '#ffffff', stroke: { width: 0.3, color: ink } }));
  items.push(centered(x, y, String(facts.number), look.size, { face: 'serifBold' }));
  return group(items);
}

/** Part of the ring from noon clockwise, as an area. */
function band(x: number, y: number, middle: number, share: number): Path {
  const outer = arc(x, y, middle + ring / 2, 0, share * 360);
  const inner = arc(x, y, middle - ring / 2, share * 360, 0);
  return [...outer, ...inner.map((one, i) => (i === 0 ? 'L' : one)), 'Z'];
}

function beakPath(x: number, y: number, facing: number, rim: number): Path {
  const at = (degrees: number, r: number) => polar(x, y, degrees, r);
  const half = 24;
  const [tip, a, b] = [at(facing, rim + beak), at(facing - half, rim - 0.15), at(facing + half, rim - 0.15)];
  return ['M', ...tip, 'L', ...a, 'L', ...b, 'Z'];
}

/** Place at compass degrees and a distance from a middle, on paper. */
export function polar(x: number, y: number, degrees: number, r: number): [number, number] {
  const turn = (degrees * Math.PI) / 180;
  return [x + Math.sin(turn) * r, y - Math.cos(turn) * r];
}

/** Arc from one compass bearing to another (either way round), as curves of at most 45°. */
export function arc(x: number, y: number, r: number, from: number, to: number): (string | number)[] {
  const steps = Math.max(1, Math.ceil(Math.abs(to - from) / 45));
  const step = (to - from) / steps;
  const handle = (4 / 3) * Math.tan((step * Math.PI) / 720) * r;
  const out: (string | number)[] = ['M', ...polar(x, y, from, r)];
  for (let i = 0; i < steps; i++) {
    const [a, b] = [from + i * step, from + (i + 1) * step];
    const [ax, ay] = polar(x, y, a, r);
    const [bx, by] = polar(x, y, b, r);
    const [adx, ady] = polar(0, 0, a + 90, handle);
    const [bdx, bdy] = polar(0, 0, b + 90, handle);
    out.push('C', ax + adx, ay + ady, bx - bdx, by - bdy, bx, by);
  }
  return out;
}
