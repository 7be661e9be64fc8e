/** Options that several commands share, read with care. */
import { birdGuides } from '../birds/index.ts';
import type { Site, SiteSettings, Wanted } from '../site/types.ts';
import { type Invocation, Refusal } from './command.ts';

type Options = Invocation['options'];

/** A number option within a range, or undefined when it is not given. */
export function numberOption(options: Options, name: string, least: number, most: number): number | undefined {
  const text = options[name];
  if (typeof text !== 'string') return undefined;
  const value = Number(text);
  if (text.trim() === '' || !Number.isFinite(value) || value < least || value > most)
    throw new Refusal(`--${name} wants a number from ${least} to ${most}; it was given "${text}".`);
  return value;
}

/** One of a few words, or undefined when it is not given. */
export function wordOption<Word extends string>(
  options: Options,
  name: string,
  words: readonly Word[],
): Word | undefined {
  const text = options[name];
  if (typeof text !== 'string') return undefined;
  const found = words.find((word) => word === text);
  if (!found) throw new Refusal(`--${name} wants ${words.join(' or ')}; it was given "${text}".`);
  return found;
}

/** `--want "eastern-bluebird 30, house-wren 4"`; a bird written `eastern-bluebird 9 pairs` is paired. */
export function wantedOption(options: Options): Wanted[] | undefined {
  const text = options.want;
  if (typeof text !== 'string') return undefined;
  return text.split(',').map((part) => {
    const found = /^\s*([a-z-]+)\s+(\d{1,5})(\s+pairs?)?\s*$/.exec(part);
    if (!found)
      throw new Refusal(
        `--want wants "BIRD COUNT" or "BIRD COUNT pairs", with commas between; it was given "${part.trim()}".`,
      );
    const [, bird, count, paired] = found;
    if (!birdGuides.some((guide) => guide.id === bird))
      throw new Refusal(`There is no bird "${bird}". There are: ${birdGuides.map((g) => g.id).join(', ')}.`);
    return { bird, sites: Number(count), ...(paired ? { paired: true } : {}) };
  });
}

/** The site with settings replaced from the command line. Such a site is no longer the text it was read from. */
export function withSettings(site: Site, change: Partial<SiteSettings>): Site {
  const given = Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined));
  if (Object.keys(given).length === 0) return site;
  const { readFrom: _, ...rest } = site;
  return { ...rest, settings: { ...site.settings, ...given } };
}
