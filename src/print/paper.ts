/** Papers and the box on them that every printer reaches. */
import type { Box } from './display.ts';

export type Paper = 'letter' | 'a4';
export type Orientation = 'portrait' | 'landscape';

/** Width and height upright, mm (ANSI/ASME Y14.1 Letter; ISO 216 A4). */
const sizes: Readonly<Record<Paper, readonly [number, number]>> = { letter: [215.9, 279.4], a4: [210, 297] };

/** Fits on both papers with a margin, so that the wrong paper in the tray cuts nothing off (ours). Short and long side, mm. */
const safeSides = [190, 259] as const;

/** Room a clipboard's clamp takes at the top of the paper, mm (ours). */
export const clipboard = 25;

export interface Page {
  readonly width: number;
  readonly height: number;
  readonly safe: Box;
}

/** A paper laid one way round, with its safe box in the middle. */
export function pageOf(paper: Paper, orientation: Orientation): Page {
  const [short, long] = sizes[paper];
  const [width, height] = orientation === 'portrait' ? [short, long] : [long, short];
  const [safeWidth, safeHeight] = orientation === 'portrait' ? safeSides : [safeSides[1], safeSides[0]];
  const safe = { x: (width - safeWidth) / 2, y: (height - safeHeight) / 2, width: safeWidth, height: safeHeight };
  return { width, height, safe };
}

/** The safe box below the clipboard's clamp. */
export function belowClamp({ safe }: Page): Box {
  const y = Math.max(safe.y, clipboard);
  return { ...safe, y, height: safe.y + safe.height - y };
}
