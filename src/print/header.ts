/** The head of a sheet: what it is, of what day and revision, and which of how many. */

import type { Box } from './display.ts';
import { group, type Item, line, text } from './display.ts';
import { plain, shorten, widthOf } from './measure.ts';
import { point, type Style } from './style.ts';

/** What is stamped on every sheet; passed in, so that no clock takes part. */
export interface HeaderFacts {
  readonly siteName: string;
  readonly what: string;
  readonly date: string;
  readonly revision: string;
  readonly hash: string;
  readonly sheet: number;
  readonly sheets: number;
  /** A line of its own under the title. */
  readonly below: string;
}

/** Day, revision (when it is known) and the first 8 letters of the fingerprint. */
export function stampWords(
  { date, revision, hash }: Pick<HeaderFacts, 'date' | 'revision' | 'hash'>,
  word = 'revision',
): string {
  const rev = plain(revision);
  return [date, rev && `${word} ${rev}`, plain(hash).slice(0, 8)].filter(Boolean).join(' · ');
}

/** Title at the left, "Sheet 2 of 5" at the right, the stamp under it; within the top of `box`. Returns the height used. */
export function drawHeader(box: Box, facts: HeaderFacts, style: Style): { items: Item[]; height: number } {
  const right = box.x + box.width;
  const base = box.y + style.title * point * 0.78;
  const count = `Sheet ${facts.sheet} of ${facts.sheets}`;
  const countWidth = widthOf(count, style.sub, 'serifBold') + 4;
  const room = box.width - countWidth;
  const whatWidth = Math.min(widthOf(facts.what, style.sub, 'serifItalic'), room / 2);
  const title = shorten(plain(facts.siteName) || 'Unnamed site', room - whatWidth - 3, style.title, 'serifBold');
  const after = box.x + widthOf(title, style.title, 'serifBold') + 3;
  const second = base + style.smallLine + 1.6;
  const stamp = stampWords(facts);
  const stampWidth = widthOf(stamp, style.small);
  // Large letters need a line each; headHeight counts it.
  const third = style.variant === 'large-print' ? second + style.smallLine : second;
  const below = shorten(facts.below, third > second ? box.width : box.width - stampWidth - 5, style.small);
  const items: Item[] = [
    group(
      [
        text(box.x, base, title, style.title, { face: 'serifBold' }),
        text(after, base, shorten(facts.what, right - countWidth - after, style.sub, 'serifItalic'), style.sub, {
          face: 'serifItalic',
        }),
      ],
      { tag: 'H1' },
    ),
    group(
      [
        text(right, base, count, style.sub, { face: 'serifBold', anchor: 'end' }),
        text(box.x, second, below, style.small),
        text(right, third, stamp, style.small, { anchor: 'end' }),
      ],
      { tag: 'P' },
    ),
    line(box.x, third + 1.7, right, third + 1.7, 0.3),
  ];
  return { items, height: third + 1.7 - box.y };
}
