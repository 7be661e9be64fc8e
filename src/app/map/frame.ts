/** The frame of a site, for overlays that get meters from the plan. */
import { makeFrame, middleOf } from '../../ground/frame.ts';
import type { Frame } from '../../ground/types.ts';
import type { Site } from '../../site/types.ts';

/** The same frame the engine uses for this site; null when it cannot be made. */
export function frameOf(site: Site): Frame | null {
  return site.features.length > 0 ? makeFrame(middleOf(site.features)) : null;
}
