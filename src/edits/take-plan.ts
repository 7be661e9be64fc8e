/** Take a kept plan up again: its settings, and its posts where they stood. The land stays as it is now. */
import type { KeptBox } from '../site/kept-plan.ts';
import { isLocked, postState } from '../site/properties.ts';
import type { Site, SiteFeature } from '../site/types.ts';
import { type Edit, rounded, settle, withGeometry } from './edit.ts';
import { withProperty } from './set-property.ts';

/**
 * The site the plan of that name is made of. Boxes that stand now go on standing and retired ones stay retired, since that is so on the
 * land; candidates locked since are free again, those of the plan go back to their places, and deleted ones come back.
 */
export function takePlan(site: Site, name: string): Edit {
  const kept = site.settings.plans.find((plan) => plan.name === name);
  if (!kept) throw new Error(`no such kept plan: ${name}`);
  const boxes = new Map(kept.boxes.map((box) => [box.post, box]));
  const there = new Set(site.features.map(({ id }) => id));
  const features = site.features.map((feature) =>
    feature.kind === 'post' && postState(feature) === 'candidate' ? asKept(feature, boxes.get(feature.id)) : feature,
  );
  const gone = kept.boxes.filter((box) => !box.suggested && !there.has(box.post)).map(asPost);
  const settings = { ...site.settings, ...kept.settings };
  return settle({ ...site, settings, features }, gone, `Took up the plan “${name}”`);
}

function asKept(post: SiteFeature, box: KeptBox | undefined): SiteFeature {
  const free = isLocked(post) ? withProperty(withProperty(post, 'locked', undefined), 'facing', undefined) : post;
  if (!box) return free;
  const placed = isAt(post, box) ? free : withGeometry(free, { type: 'Point', coordinates: rounded(box.at) });
  if (box.state !== 'locked') return placed;
  return isLocked(post) && placed === free
    ? post
    : withProperty(withProperty(placed, 'locked', true), 'bird', box.bird);
}

/** Within a centimeter: the kept place is rounded to that. */
function isAt({ geometry }: SiteFeature, { at }: KeptBox): boolean {
  if (geometry?.type !== 'Point') return false;
  const [lon, lat] = geometry.coordinates;
  return Math.abs(lon! - at[0]) <= 1e-7 && Math.abs(lat! - at[1]) <= 1e-7;
}

/** A drawn post that was deleted since. One that stood then is a candidate now: nobody knows whether it still stands. */
function asPost({ post, at, bird, state }: KeptBox): SiteFeature {
  return {
    id: post,
    kind: 'post',
    geometry: { type: 'Point', coordinates: rounded(at) },
    properties: { state: 'candidate', bird, ...(state === 'new' ? {} : { locked: true }) },
  };
}
