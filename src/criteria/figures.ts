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

type Values<F extends Figures> = Readonly<Record<keyof F, number>>;

/**
 * A reader of one owner's figures: the values in force on a site, `figures["openness.radius"]` of the site file or else the default. A value
 * outside the figure's range counts as the nearer end of it. This is asked for at every post: the values of the last site's figures are kept.
 */
export function reader<F extends Figures>(id: string, figures: F): (site: Pick<SiteSettings, 'figures'>) => Values<F> {
  const prefix = `${id}.`;
  const defaults = Object.fromEntries(Object.entries(figures).map(([name, { value }]) => [name, value])) as Values<F>;
  const read = (all: SiteSettings['figures']): Values<F> => {
    let changed: Record<string, number> | null = null;
    for (const key in all) {
      if (!key.startsWith(prefix)) continue;
      const [name, value] = [key.slice(prefix.length), all[key]!];
      if (!Object.hasOwn(figures, name) || !Number.isFinite(value)) continue;
      changed ??= { ...defaults };
      changed[name] = within(value, figures[name]!);
    }
    return (changed as Values<F> | null) ?? defaults;
  };
  let last: { readonly of: SiteSettings['figures']; readonly values: Values<F> } | null = null;
  return (site) => {
    if (last?.of !== site.figures) last = { of: site.figures, values: read(site.figures) };
    return last.values;
  };
}

/** Every figure of a criterion as it stands on a site: the person's where they changed it, the default elsewhere. */
export function settingsFor({ id, settings }: Pick<Criterion, 'id' | 'settings'>, site: SiteSettings): Values<Figures> {
  return reader(id, settings)(site);
}
