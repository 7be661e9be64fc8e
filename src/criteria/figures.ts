/** How the figures of a criterion are read: its defaults, or what the person set instead. */
import type { Figure } from '../birds/guide.ts';
import type { SiteSettings } from '../site/types.ts';
import type { Criterion } from './criterion.ts';

type Figures = Readonly<Record<string, Figure>>;

/** A figure of this project's own reading; a published one is written out with its source. */
export function ours(value: number, unit: string, range: readonly [number, number], note?: string): Figure {
  return { value, unit, source: ['ours'], grade: 'ours', range, ...(note ? { note } : {}) };
}

/** A person's value kept within what the figure may be, so that no setting can turn a score into nonsense. */
function within(value: number, { range }: Figure): number {
  return range ? Math.min(range[1], Math.max(range[0], value)) : value;
}

/**
 * The values in force on a site for a criterion's figures: `figures["openness.radius"]` of the site file, else the default. One outside the
 * figure's range counts as the nearer end of it.
 */
export function valuesOn<F extends Figures>(id: string, figures: F, site: SiteSettings): Record<keyof F, number> {
  const values = {} as Record<keyof F, number>;
  for (const name in figures) {
    const set = site.figures[`${id}.${name}`];
    values[name] = Number.isFinite(set) ? within(set!, figures[name]!) : figures[name]!.value;
  }
  return values;
}

/** A reader of one criterion's figures that makes its defaults once: most sites change none, and this is asked for at every post. */
export function reader<F extends Figures>(id: string, figures: F): (site: SiteSettings) => Record<keyof F, number> {
  const defaults = Object.freeze(valuesOn(id, figures, { figures: {} } as SiteSettings));
  return (site) => {
    for (const key in site.figures) if (key.startsWith(`${id}.`)) return valuesOn(id, figures, site);
    return defaults;
  };
}

/** Every figure of a criterion as it stands on a site: the person's where they changed it, the default elsewhere. */
export function settingsFor(criterion: Pick<Criterion, 'id' | 'settings'>, site: SiteSettings): Record<string, number> {
  return valuesOn(criterion.id, criterion.settings, site);
}
