/** A ground made for one site, used for another that differs in its posts: nothing measured depends on where posts stand. */
import type { Site, SiteFeature } from '../site/types.ts';
import { boundsWith, drawnPoints } from './drawn.ts';
import { middleOf } from './frame.ts';
import type { Ground } from './types.ts';

const land = ({ kind }: SiteFeature) => kind !== 'post';

/** The same ground with `site` in it; null when its land is not made of the very same features, or its frame would lie elsewhere. */
export function groundWithPosts(ground: Ground, site: Site): Ground | null {
  const before = ground.site.features.filter(land);
  const now = site.features.filter(land);
  if (now.length !== before.length || now.some((feature, k) => feature !== before[k])) return null;
  const [lon, lat] = middleOf(site.features);
  if (lon !== ground.frame.centre[0] || lat !== ground.frame.centre[1]) return null;
  const posts = drawnPoints(
    site.features.filter((feature) => !land(feature)),
    ground.frame,
  );
  return { ...ground, site, bounds: boundsWith(ground.landBounds, posts) };
}
