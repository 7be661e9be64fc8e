/** A land kind's marks scattered over a shape: black on white, the same marks on neighboring sheets, fast for long outlines. */
import { type PlacedMark, placeMarks } from '../../layers/pattern.ts';
import type { Pattern } from '../../layers/types.ts';
import type { Spot } from './clip.ts';
import type { Box, Item, Path } from './display.ts';
import { path } from './display.ts';
import { drawParts, inkOf, moved, type ReadPart, readParts } from './drawing.ts';

/** mm per px of the pattern and the thinnest line, mm, as the layer file's print part says. */
export interface PatternPrint {
  readonly scale: number;
  readonly width: number;
}

/** A pattern with its marks placed and its drawings read, once for a whole map. */
export interface PreparedPattern {
  readonly pattern: Pattern;
  readonly marks: readonly PlacedMark[];
  readonly drawings: readonly { readonly reach: number; readonly parts: readonly ReadPart[] }[];
  /** Thinnest stroke of the drawings, px. */
  readonly thinnest: number;
}

/** Places the marks and reads the drawings. */
export function preparePattern(pattern: Pattern): PreparedPattern {
  const strokes = pattern.marks.flatMap((mark) => mark.parts.flatMap((part) => (part.width > 0 ? [part.width] : [])));
  const drawings = pattern.marks.map((mark) => ({ reach: mark.reach, parts: readParts(mark.parts) }));
  return { pattern, marks: placeMarks(pattern), drawings, thinnest: Math.min(...[10, ...strokes]) };
}

/**
 * The marks whose middle lies in the rings (even-odd, paper mm) and in `box`. `origin` is a place fixed on the ground, so that two
 * sheets of one scale show the same marks. The caller cuts what sticks out.
 */
export function fillWithPattern(
  { pattern, marks, drawings, thinnest }: PreparedPattern,
  print: PatternPrint,
  rings: readonly (readonly Spot[])[],
  box: Box,
  origin: Spot,
): Item[] {
  const tile = pattern.tile * print.scale;
  if (!(tile > 0.5) || rings.length === 0) return [];
  const within = insideTest(rings);
  const pen = print.width / thinnest;
  const items: Item[] = [];
  const merged = new Map<string, { path: (string | number)[]; width: number; color: string }>();
  for (const [left, top] of tilesOver(box, tile, origin))
    for (const mark of marks) {
      const at = {
        x: left + mark.x * print.scale,
        y: top + mark.y * print.scale,
        scale: print.scale * mark.size,
        turn: mark.turn,
      };
      const { parts, reach } = drawings[mark.mark] ?? drawings[0]!;
      if (!within(at.x, at.y) && !(pattern.layout === 'rows' && endsInside(at, reach * at.scale, within))) continue;
      if (parts.some((part) => part.fill !== 'none' && inkOf(part.fill) === '#ffffff'))
        items.push(...drawParts(parts, at, print.width, pen));
      else merge(merged, parts, at, pen);
    }
  for (const { path: d, width, color } of merged.values())
    items.push(path(d, width > 0 ? { stroke: { width, color } } : { fill: color }));
  return items;
}

/** A stroke of a row is drawn when an end of it lies inside, so that hatching runs to the edge. */
function endsInside(
  { x, y, turn }: { x: number; y: number; turn: number },
  reach: number,
  within: (x: number, y: number) => boolean,
): boolean {
  const dx = Math.cos((turn * Math.PI) / 180) * reach;
  const dy = Math.sin((turn * Math.PI) / 180) * reach;
  return [-1, -0.5, 0.5, 1].some((t) => within(x + t * dx, y + t * dy));
}

/** Marks without white under them become one long path for each pen: a field of grass is one item, not ten thousand. */
function merge(
  into: Map<string, { path: (string | number)[]; width: number; color: string }>,
  parts: readonly ReadPart[],
  at: Parameters<typeof moved>[1],
  pen: number,
): void {
  for (const part of parts) {
    const d: Path = moved(part.commands, at);
    const pens: [number, string | undefined][] = [
      [0, inkOf(part.fill)],
      [part.width * pen, inkOf(part.stroke)],
    ];
    for (const [i, [raw, color]] of pens.entries()) {
      if (!color || (i === 1 && raw === 0)) continue;
      const width = Math.round(raw * 50) / 50;
      const key = `${width} ${color}`;
      const line = into.get(key) ?? { path: [], width, color };
      for (const one of d) line.path.push(one);
      into.set(key, line);
    }
  }
}

/** Corners of every upright tile that touches the box, mm. */
function tilesOver(box: Box, tile: number, [ox, oy]: Spot): Spot[] {
  const out: Spot[] = [];
  for (let i = Math.floor((box.x - ox) / tile); ox + i * tile < box.x + box.width; i++)
    for (let j = Math.floor((box.y - oy) / tile); oy + j * tile < box.y + box.height; j++)
      out.push([ox + i * tile, oy + j * tile]);
  return out;
}

/** Height of a band of edges, mm. */
const band = 2;

/** Even-odd test with the edges sorted into level bands: a place looks only at the edges of its own band. */
function insideTest(rings: readonly (readonly Spot[])[]): (x: number, y: number) => boolean {
  const bands = new Map<number, [Spot, Spot][]>();
  for (const ring of rings)
    for (let i = 0; i < ring.length; i++) {
      const a = ring[i]!;
      const b = ring[(i + 1) % ring.length]!;
      const last = Math.floor(Math.max(a[1], b[1]) / band);
      for (let row = Math.floor(Math.min(a[1], b[1]) / band); row <= last; row++) {
        const edges = bands.get(row);
        if (edges) edges.push([a, b]);
        else bands.set(row, [[a, b]]);
      }
    }
  return (x, y) => {
    let odd = false;
    for (const [a, b] of bands.get(Math.floor(y / band)) ?? [])
      if (a[1] > y !== b[1] > y && x < a[0] + ((y - a[1]) * (b[0] - a[0])) / (b[1] - a[1])) odd = !odd;
    return odd;
  };
}
