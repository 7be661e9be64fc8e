import { sunOn } from './afternoon-sun-figures.ts';
import type { PostContext } from './criterion.ts';
import { percentText } from './units.ts';

/**
 * Why what stands around cannot be known, where nearly nothing is drawn and nothing tall is near; null where enough is. Ground nobody drew
 * must not count as open, neither for the sun nor for the facing.
 */
export function littleDrawn({ spot, site }: Pick<PostContext, 'spot' | 'site'>): string | null {
  const { mostUnmapped, radius, tallReach } = sunOn(site);
  const { unmapped } = spot.shares(radius);
  if (unmapped <= mostUnmapped) return null;
  const tall = spot.ground.has('tall') ? spot.nearest('tall') : null;
  return tall && tall.distance <= tallReach ? null : `${percentText(unmapped)} of the surroundings is not drawn`;
}

/** Share of the surroundings that is drawn, 0–1: what stands on the rest nobody can know. */
export function drawnShare({ spot, site }: Pick<PostContext, 'spot' | 'site'>): number {
  return 1 - spot.shares(sunOn(site).radius).unmapped;
}
