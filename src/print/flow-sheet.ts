/** Pages made of flowing blocks under a head, one or two columns each. */
import type { Box, Item, SheetKind } from './display.ts';
import type { BookFacts, Draft } from './facts.ts';
import { type Block, flow } from './flow.ts';
import { drawHeader } from './header.ts';
import { headHeight } from './layout.ts';

/** What a flowing page is: `area` is the whole printable box, `columns` side by side. */
export interface FlowPage {
  readonly id: string;
  readonly kind: SheetKind;
  readonly what: string;
  readonly below: string;
  readonly area: Box;
  readonly columns: 1 | 2 | 3;
  readonly numbers: readonly number[];
}

/** Space between two columns, mm. */
const gutter = 6;

/** Width of one column, mm. */
export function columnWidth({ area, columns }: Pick<FlowPage, 'area' | 'columns'>): number {
  return (area.width - gutter * (columns - 1)) / columns;
}

/** As many pages as the blocks need. */
export function flowSheets(facts: BookFacts, page: FlowPage, blocks: readonly Block[]): Draft[] {
  const { area, columns } = page;
  const top = area.y + headHeight(facts.style) + 2;
  const width = columnWidth(page);
  const areaAt = (i: number) => ({
    x: area.x + (i % columns) * (width + gutter),
    y: top,
    width,
    height: area.y + area.height - top,
  });
  const filled = flow(blocks, areaAt);
  const pages: Item[][] = [];
  for (let i = 0; i < filled.length; i += columns) pages.push(filled.slice(i, i + columns).flat());
  return pages.map((items, i) => ({
    id: pages.length > 1 ? `${page.id}-${i + 1}` : page.id,
    kind: page.kind,
    title: `${facts.plan.siteName}: ${page.what}`,
    page: facts.page,
    numbers: page.numbers,
    scale: null,
    draw: (sheet, sheets) => [
      ...drawHeader(
        { ...area, height: headHeight(facts.style) },
        { siteName: facts.plan.siteName, what: page.what, below: page.below, sheet, sheets, ...facts.stamp },
        facts.style,
      ).items,
      ...items,
    ],
  }));
}
