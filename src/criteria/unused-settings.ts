/** What a site file sets that nothing reads, or that is brought back into its range: said, never passed over. */
import type { Figure } from '../birds/guide.ts';
import { birdGuides } from '../birds/index.ts';
import type { Issue, SiteSettings } from '../site/types.ts';
import { birdFor } from './bird-for.ts';
import { flagFigures } from './flags.ts';
import { criteria } from './index.ts';
import { pairingFigures } from './pairing.ts';
import { scoreFigures } from './score.ts';

/** Figures by their full name, such as `openness.radius`. */
const figures: ReadonlyMap<string, Figure> = new Map(
  Object.entries({
    ...Object.fromEntries(criteria.map(({ id, settings }) => [id, settings])),
    flags: flagFigures,
    score: scoreFigures,
    pairing: pairingFigures,
  }).flatMap(([owner, own]) => Object.entries(own).map(([name, figure]) => [`${owner}.${name}`, figure] as const)),
);

/** The ends of a curve are taken as they are written: a bird's own curve may reach further than the usual range. */
const isEnd = (key: string): boolean => /\.(zero|full)$/.test(key);

/** Whether a figure is one of a bird's guide: setting it to another value makes another guide. */
function isOfABird(key: string, value: number, settings: SiteSettings): boolean {
  const bird = birdGuides.find(({ id }) => key.startsWith(`${id}.`));
  return bird !== undefined && birdFor(bird, { ...settings, figures: { [key]: value + 1 } }) !== bird;
}

/** Notes on the weights and figures of a site that are set to no use, one each. */
export function unusedSettings(settings: SiteSettings): Issue[] {
  const weights = Object.keys(settings.weights)
    .filter((key) => !criteria.some(({ id }) => id === key))
    .map((key) =>
      issue(
        'unknown-weight',
        `There is no criterion "${key}" to weigh.`,
        `Use one of: ${criteria.map(({ id }) => id).join(', ')}.`,
      ),
    );
  return [...weights, ...Object.entries(settings.figures).flatMap(([key, value]) => figureIssue(key, value, settings))];
}

function figureIssue(key: string, value: number, settings: SiteSettings): Issue[] {
  const figure = figures.get(key);
  if (!figure) {
    if (isOfABird(key, value, settings)) return [];
    return [
      issue('unknown-figure', `There is no figure "${key}".`, 'The names are in docs/criteria.md and docs/birds.md.'),
    ];
  }
  const [least, most] = figure.range ?? [-Infinity, Infinity];
  if (isEnd(key) || (value >= least && value <= most)) return [];
  const used = value < least ? least : most;
  return [
    issue('figure-out-of-range', `${key} is ${value}; ${used} is used.`, `Write a number from ${least} to ${most}.`),
  ];
}

function issue(id: string, sentence: string, fix: string): Issue {
  return { id, severity: 'warning', feature: null, place: null, sentence, fix };
}
