/** Keeps words off discs, lines and other words. */
import { type Box, type TextItem, text } from './display.ts';
import type { Face } from './font-widths.ts';
import { widthOf } from './measure.ts';
import { point } from './style.ts';
import { inside } from './view.ts';

/** What is taken on a map, as boxes in mm. Made for one sheet and thrown away with it. */
export class Taken {
  private readonly boxes: Box[] = [];
  private readonly thin: Box[] = [];
  private readonly window: Box;

  constructor(window: Box) {
    this.window = window;
  }

  add(box: Box): void {
    this.boxes.push(box);
  }

  /** A square around a place. */
  addDisc(x: number, y: number, radius: number): void {
    this.add({ x: x - radius, y: y - radius, width: 2 * radius, height: 2 * radius });
  }

  /** A line as a row of small boxes; a `thin` one only a name keeps off, and only where it can. */
  addLine(x1: number, y1: number, x2: number, y2: number, thin = false): void {
    const half = 0.6;
    const steps = Math.max(1, Math.ceil(Math.hypot(x2 - x1, y2 - y1) / (2 * half)));
    for (let i = 0; i <= steps; i++) {
      const [x, y] = [x1 + ((x2 - x1) * i) / steps, y1 + ((y2 - y1) * i) / steps];
      (thin ? this.thin : this.boxes).push({ x: x - half, y: y - half, width: 2 * half, height: 2 * half });
    }
  }

  /** Whether a box crosses no thin line. */
  clear(box: Box): boolean {
    return !this.thin.some((other) => overlap(box, other));
  }

  /** Whether a box lies in the window and touches nothing that is taken. */
  free(box: Box): boolean {
    const { window: w } = this;
    if (!inside(w, box.x, box.y) || !inside(w, box.x + box.width, box.y + box.height)) return false;
    return !this.boxes.some((other) => overlap(box, other));
  }
}

/** Whether two boxes share ground. */
export function overlap(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

/** Box around one line of text centered at (x, y), mm, with a little air. */
export function labelBox(x: number, y: number, words: string, size: number, face: Face): Box {
  const width = widthOf(words, size, face) + 1;
  const height = size * point * 1.05;
  return { x: x - width / 2, y: y - height / 2, width, height };
}

/** The text centered at (x, y) by its capitals' height. */
export function centered(x: number, y: number, words: string, size: number, more: Partial<TextItem>): TextItem {
  return text(x, y + size * point * 0.34, words, size, { anchor: 'middle', ...more });
}
