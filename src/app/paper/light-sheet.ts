/** A sheet for a picture of thumb size: without the land's patterns and small words, which nobody could see and which take longest to paint. */
import type { Item, Sheet } from '../../print/display.ts';

/** Smallest letters kept, points (ours). */
const leastLetters = 12;

export function lightSheet(sheet: Sheet): Sheet {
  return { ...sheet, items: light(sheet.items, false) };
}

/** Patterns are the groups cut to their land inside a map that is cut to its window. */
function light(items: readonly Item[], inClip: boolean): Item[] {
  return items.flatMap((item): Item[] => {
    if (item.item === 'text') return item.size >= leastLetters ? [item] : [];
    if (item.item === 'path') return [item];
    if (item.clip && inClip) return [];
    return [{ ...item, alt: undefined, items: light(item.items, inClip || item.clip !== undefined) }];
  });
}
