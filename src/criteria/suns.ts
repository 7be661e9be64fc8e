/** What every score on a site shares: its birds with the site's own figures, the sun of each bird's season, the needle. */
import type { BirdGuide } from '../birds/guide.ts';
import { birdsOf } from '../birds/index.ts';
import { isRegion } from '../birds/regions.ts';
import type { Ground } from '../ground/types.ts';
import type { SiteSettings } from '../site/types.ts';
import { type DeclinationAnswer, declination } from '../sky/declination.ts';
import { makeSunTable } from '../sky/make-sun-table.ts';
import type { SunTable } from '../sky/sun-table.ts';
import { birdFor } from './bird-for.ts';
import { type FacingGrounds, facingGrounds } from './facing-wish.ts';

export interface Suns {
  /** Birds of the site's region in display order, with the figures the person changed. */
  readonly birds: readonly BirdGuide[];
  /** The afternoon sun of a bird's season. Throws for a bird that was neither of the region nor asked for. */
  of(bird: BirdGuide): SunTable;
  /** Whether the bird's season is one of those named. */
  knows(bird: BirdGuide): boolean;
  /** What the facing advice rests on wherever a post stands. */
  readonly facing: FacingGrounds;
  /** Declination on the plan's day at the site's centre. */
  readonly needle: DeclinationAnswer;
}

const seasonOf = ({ season }: BirdGuide) => `${season.from}/${season.to}`;

/** Birds of a region word; none for a word that is no region. */
function regionBirds({ region }: SiteSettings): readonly BirdGuide[] {
  return isRegion(region) ? birdsOf(region) : [];
}

/** Made once for a site; a season's sun when it is first asked for. `extra` are birds to be scored that are not of the site's region. */
export function makeSuns(ground: Ground, extra: readonly BirdGuide[] = []): Suns {
  const { settings } = ground.site;
  const { centre } = ground.frame;
  const year = Number(settings.date.slice(0, 4));
  const birds = regionBirds(settings).map((bird) => birdFor(bird, settings));
  const seasons = new Set([...birds, ...extra].map(seasonOf));
  const tables = new Map<string, SunTable>();
  return {
    birds,
    of(bird) {
      const season = seasonOf(bird);
      const made = tables.get(season);
      if (made) return made;
      if (!seasons.has(season)) throw new Error(`no sun for ${bird.id}: name the bird when the suns are made`);
      const table = makeSunTable(centre, bird.season.from, bird.season.to, year);
      tables.set(season, table);
      return table;
    },
    knows: (bird) => seasons.has(seasonOf(bird)),
    facing: facingGrounds(centre[1], settings),
    needle: declination(centre, settings.date),
  };
}
