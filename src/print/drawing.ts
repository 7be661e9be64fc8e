/** Small drawings of the layer files (marks, icons) put on paper: black on white, in millimetres. */
import type { Part } from '../../layers/types.ts';
import { type Item, type Path, path } from './display.ts';

/** Where and how a drawing is put: mm, mm per px, degrees clockwise as seen. */
export interface Placement {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
  readonly turn?: number;
}

/** Paper has two colors: the ground's and the halo's are white, everything else is black. */
export function inkOf(color: string): string | undefined {
  if (color === 'none') return undefined;
  return color === 'ground' || color === 'halo' ? '#ffffff' : '#000000';
}

/** A drawing's path data (absolute M L Q C Z) as commands; anything else in it is passed over. */
export function readPath(data: string): Path {
  const out: (string | number)[] = [];
  for (const [piece] of data.matchAll(/[MLQCZ]|-?(?:\d+\.?\d*|\.\d+)(?:e-?\d+)?/g))
    out.push(/[MLQCZ]/.test(piece) ? piece : Number(piece));
  return out;
}

/** Commands moved, turned and scaled. */
export function moved(commands: Path, { x, y, scale, turn = 0 }: Placement): Path {
  const cos = Math.cos((turn * Math.PI) / 180) * scale;
  const sin = Math.sin((turn * Math.PI) / 180) * scale;
  const out: (string | number)[] = [];
  for (let i = 0; i < commands.length; i++) {
    const one = commands[i]!;
    if (typeof one === 'string') out.push(one);
    else {
      const across = commands[++i] as number;
      out.push(x + one * cos - across * sin, y + one * sin + across * cos);
    }
  }
  return out;
}

/** A part with its path read once. */
export interface ReadPart extends Part {
  readonly commands: Path;
}

/** Parts made ready to be drawn many times. */
export function readParts(parts: readonly Part[]): ReadPart[] {
  return parts.map((part) => ({ ...part, commands: readPath(part.path) }));
}

/** A whole drawing at a place; `thinnest` is the least line width, mm; `pen` mm of line per px of a part's width (the scale, unless given). */
export function drawParts(parts: readonly Part[], at: Placement, thinnest: number, pen = Math.abs(at.scale)): Item[] {
  return parts.map((part) => {
    const color = inkOf(part.stroke);
    const width = Math.max(thinnest, part.width * pen);
    const stroke = color && part.width > 0 ? { width, color } : undefined;
    return path(moved('commands' in part ? (part as ReadPart).commands : readPath(part.path), at), {
      stroke,
      fill: inkOf(part.fill),
    });
  });
}
