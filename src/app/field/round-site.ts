/** A shared round as a site: its boxes as standing posts, nothing else drawn, so that map, units and law text have what they need. */
import { isRegion } from '../../birds/regions.ts';
import { newSite } from '../../site/new-site.ts';
import type { Site, SiteFeature, Units } from '../../site/types.ts';
import type { FieldRound } from './field-round.ts';

export interface RoundSite {
  readonly region: string;
  readonly units: Units;
  /** ISO day, for the needle's declination. */
  readonly date: string;
}

export function siteOfRound(round: FieldRound, { region, units, date }: RoundSite): Site {
  const known = isRegion(region) ? { region } : {};
  const site = newSite(round.site, { units, date, ...known });
  const features = round.stops.map(
    (stop): SiteFeature => ({
      id: stop.post,
      kind: 'post',
      geometry: stop.position ? { type: 'Point', coordinates: [...stop.position] } : null,
      properties: { kind: 'post', state: 'fixed', number: stop.number, ...(stop.bird ? { bird: stop.bird } : {}) },
    }),
  );
  return { ...site, features };
}
