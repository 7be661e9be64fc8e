/** Number a box by hand: the walk goes by the numbers, so this sets the order of the walk. */
import type { Site } from '../site/types.ts';
import { type Edit, withFeatures } from './edit.ts';

/**
 * Gives the box of `post` the number `number` (from 1). `walk` are the post ids in walking order as they are numbered now; the boxes
 * between the old and the new number move by one. A number past the last is the last.
 */
export function numberPost(site: Site, walk: readonly string[], post: string, number: number): Edit {
  const from = walk.indexOf(post);
  if (from < 0) throw new Error(`not on the walk: ${post}`);
  if (site.settings.walkers > 1)
    return {
      refused: `The walk is split among ${site.settings.walkers} walkers, and numbers follow their walks. Ask for one walker to number by hand.`,
    };
  if (!Number.isInteger(number) || number < 1)
    return { refused: `A box cannot have the number ${number}. Give a whole number from 1 to ${walk.length}.` };
  const to = Math.min(number, walk.length) - 1;
  const others = walk.filter((id) => id !== post);
  const order = [...others.slice(0, to), post, ...others.slice(to)];
  const settings = { ...site.settings, order };
  return {
    site: withFeatures({ ...site, settings }, site.features),
    sentence: `Box ${from + 1} is now number ${to + 1}`,
  };
}

/** Lets the numbers follow the shortest walk again. */
export function numberByWalk(site: Site): Edit {
  const settings = { ...site.settings, order: [] };
  return {
    site: withFeatures({ ...site, settings }, site.features),
    sentence: 'The numbers follow the shortest walk again',
  };
}
