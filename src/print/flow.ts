/** Blocks of text, tables and pictures set one under the other, over as many columns and pages as they need. */
import { type Box, group, type Item, line, text } from './display.ts';
import { widthOf, wrap } from './measure.ts';
import { point, type Style } from './style.ts';
import { type Column, drawTable, type TableLook } from './table.ts';

/** Something with a height, drawn at a place. `keep` asks not to be the last on a page (a heading). */
export interface Block {
  readonly height: number;
  readonly keep?: boolean;
  draw(x: number, y: number): Item[];
}

/** Blocks set into areas of one shape; each inner list is one area's items. A block taller than the area stands alone in it. */
export function flow(blocks: readonly Block[], areaAt: (i: number) => Box): Item[][] {
  const pages: Item[][] = [[]];
  let y = areaAt(0).y;
  for (const [i, block] of blocks.entries()) {
    const area = areaAt(pages.length - 1);
    const need = block.keep ? block.height + (blocks[i + 1]?.height ?? 0) : block.height;
    if (y + need > area.y + area.height + 1e-6 && y > area.y) {
      pages.push([]);
      y = areaAt(pages.length - 1).y;
    }
    pages[pages.length - 1]!.push(...block.draw(areaAt(pages.length - 1).x, y));
    y += block.height;
  }
  return pages;
}

/** A heading of a section. */
export function heading(words: string, style: Style): Block {
  const size = style.head;
  return {
    height: size * point * 1.7,
    keep: true,
    draw: (x, y) => [group([text(x, y + size * point * 1.15, words, size, { face: 'serifBold' })], { tag: 'H2' })],
  };
}

/** A paragraph broken to the width; `lead` stands bold before it. */
export function paragraph(words: string, width: number, style: Style, lead = '', size = style.small): Block {
  const step = size * point * 1.28;
  const rows = wrap(lead === '' ? words : `${lead} ${words}`, width, size * (lead === '' ? 1 : 1.02));
  return {
    height: rows.length * step + step * 0.25,
    draw: (x, y) => [
      group(
        rows.flatMap((row, i) => rowText(x, y + i * step + size * point * 0.95, row, i === 0 ? lead : '', size)),
        { tag: 'P' },
      ),
    ],
  };
}

/** A first line whose opening words are bold. */
function rowText(x: number, base: number, row: string, lead: string, size: number): Item[] {
  if (lead === '' || !row.startsWith(lead)) return [text(x, base, row, size)];
  const boldWidth = widthBold(lead, size);
  return [
    text(x, base, lead, size, { face: 'sansBold' }),
    text(x + boldWidth, base, row.slice(lead.length).trimStart(), size),
  ];
}

function widthBold(words: string, size: number): number {
  return widthOf(words, size, 'sansBold') + widthOf(' ', size);
}

/** Empty space. */
export function space(height: number): Block {
  return { height, draw: () => [] };
}

/** A thin line across. */
export function rule(width: number): Block {
  return { height: 3, draw: (x, y) => [line(x, y + 1.5, x + width, y + 1.5, 0.2)] };
}

/** A table cut into pieces of at most `most` rows, the head repeated on each. */
export function tableBlocks<Row>(
  columns: readonly Column<Row>[],
  rows: readonly Row[],
  look: TableLook,
  most: number,
): Block[] {
  const blocks: Block[] = [];
  for (let i = 0; i < rows.length; i += Math.max(1, most)) {
    const some = rows.slice(i, i + Math.max(1, most));
    blocks.push({
      height: look.head + some.length * look.row + 2,
      draw: (x, y) => [drawTable(x, y, columns, some, look)],
    });
  }
  return blocks;
}
