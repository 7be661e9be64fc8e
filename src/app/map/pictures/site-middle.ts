/** The middle of a site and how large it is, for laying a picture over it. */
import { makeFrame } from '../../../ground/frame.ts';
import type { Frame } from '../../../ground/types.ts';
import type { Site } from '../../../site/types.ts';
import { siteBounds } from '../bounds.ts';

/** Metres across where nothing is drawn yet (ours: a park's field). */
const plain = 300;

/** `frame` lies in the middle of the drawn land; a site without land is put at zero degrees. */
export function siteMiddle(site: Site | null): { frame: Frame; width: number; height: number } {
  const box = site && siteBounds(site);
  if (!box) return { frame: makeFrame([0, 0]), width: plain, height: plain };
  const frame = makeFrame([(box[0] + box[2]) / 2, (box[1] + box[3]) / 2]);
  const corner = frame.toPlane([box[2], box[3]]);
  return { frame, width: Math.max(10, 2 * corner.x), height: Math.max(10, 2 * corner.y) };
}
