/** Ticks and figures around a map. */
import { type Item, line, text } from './display.ts';
import type { EdgeTicks, Tick } from './grid.ts';
import { widthOf } from './measure.ts';
import type { Style } from './style.ts';
import type { View } from './view.ts';

/** Ticks with their figures outside the window; a figure that would stick out past a corner is left out, its tick stays. */
export function drawEdge({ window: w }: View, ticks: EdgeTicks, style: Style): Item[] {
  const size = style.small;
  const out = 1.1;
  const fits = (tick: Tick, length: number) => {
    const half = widthOf(tick.words, size) / 2;
    return tick.at > half && tick.at < length - half;
  };
  const items: Item[] = [];
  for (const [row, y, sign] of [
    [ticks.top, w.y, -1],
    [ticks.bottom, w.y + w.height, 1],
  ] as const)
    for (const tick of row) {
      const x = w.x + tick.at;
      items.push(line(x, y - sign * 1.6, x, y + sign * out, 0.3));
      if (!fits(tick, w.width)) continue;
      const base = sign < 0 ? y - 1.5 : y + 1.5 + size * 0.25;
      items.push(text(x, base, tick.words, size, { anchor: 'middle' }));
    }
  for (const [row, x, sign] of [
    [ticks.left, w.x, -1],
    [ticks.right, w.x + w.width, 1],
  ] as const)
    for (const tick of row) {
      const y = w.y + tick.at;
      items.push(line(x - sign * 1.6, y, x + sign * out, y, 0.3));
      if (!fits(tick, w.height)) continue;
      const base = sign < 0 ? x - 1.5 : x + 1.5 + size * 0.25;
      items.push(text(base, y, tick.words, size, { anchor: 'middle', turn: -90 }));
    }
  return items;
}
