/** Box numbers to cut out and put on, big enough to read from the path. */
import { type Box, group, type Item, path, rectangle, text } from '../display.ts';
import { type BookFacts, birdName, type Draft } from '../facts.ts';
import { plain, shorten } from '../measure.ts';
import { point } from '../style.ts';

/** Least size of a label, mm. */
const least = { width: 60, height: 40 } as const;

/** Height of the figures, points. */
const figures = 72;

/** As many pages as the boxes need. */
export function numberLabels({ plan, page, style }: BookFacts): Draft[] {
  const { safe } = page;
  const columns = Math.floor(safe.width / least.width);
  const rows = Math.floor((safe.height - 8) / least.height);
  const perPage = columns * rows;
  const size = { width: safe.width / columns, height: (safe.height - 8) / rows };
  const boxes = [...plan.boxes].sort((a, b) => a.number - b.number);
  return Array.from({ length: Math.ceil(boxes.length / perPage) }, (_, i) => {
    const some = boxes.slice(i * perPage, (i + 1) * perPage);
    return {
      id: `labels-${i + 1}`,
      kind: 'labels',
      title: `${plan.siteName}: box numbers, page ${i + 1}`,
      page,
      numbers: some.map((box) => box.number),
      scale: null,
      draw: (sheet, sheets) => [
        group(
          [
            text(
              safe.x,
              safe.y + style.small * point,
              shorten(
                `Box numbers of ${plain(plan.siteName)}. Cut out, cover with clear film, put on the side of the box. Sheet ${sheet} of ${sheets}.`,
                safe.width,
                style.small,
              ),
              style.small,
            ),
          ],
          { tag: 'P' },
        ),
        ...some.map((box, c) => {
          const cell = {
            x: safe.x + (c % columns) * size.width,
            y: safe.y + 8 + Math.floor(c / columns) * size.height,
            ...size,
          };
          return label(cell, String(box.number), shorten(birdName(box), size.width - 4, style.small), style.small);
        }),
      ],
    };
  });
}

function label(cell: Box, number: string, bird: string, small: number): Item {
  const { x, y, width, height } = cell;
  return group(
    [
      path(rectangle(cell), { stroke: { width: 0.2, color: '#000000', dash: [1.5, 1.5] } }),
      text(x + width / 2, y + height / 2 + figures * point * 0.28, number, figures, {
        face: 'serifBold',
        anchor: 'middle',
      }),
      text(x + width / 2, y + height - 2.4, bird, small, { anchor: 'middle' }),
    ],
    { tag: 'P' },
  );
}
