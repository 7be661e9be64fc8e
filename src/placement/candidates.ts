/** Where a box may stand: the posts drawn, and a grid of suggestions on allowed ground where one is asked for. */
import type { Point } from '../geometry/point.ts';
import { distance } from '../geometry/point.ts';
import type { Bounds } from '../ground/drawn.ts';
import { type LatticePlace, latticeIn } from '../ground/lattice.ts';
import type { Ground } from '../ground/types.ts';
import type { Candidate } from '../plan-types.ts';
import {
  isLocked,
  nameOf,
  postBird,
  postFacing,
  postHoleHeight,
  postNumber,
  postPair,
  postState,
} from '../site/properties.ts';
import type { SiteFeature, SiteSettings } from '../site/types.ts';

/** Suggestions stand no closer than this, metres: finer than anyone sets a post by eye (ours). */
export const finestGrid = 5;

/** Most suggestions: a larger site gets a wider grid (ours; the proof is promised up to 10,000 candidates). */
const mostSuggested = 10_000;
/** A grid that must be wider than asked is made so by steps of a twelfth of a doubling (ours). */
const widening = 2 ** (1 / 12);

/** A place whose surroundings are mostly undrawn cannot be judged, so none is suggested there: metres around, share (ours). */
const surroundings = 40;
const mostUnmapped = 0.5;

/** Drawn posts that have a place, in file order, then suggestions by row from the south-west. */
export function candidatesOf(ground: Ground): Candidate[] {
  const drawn = ground.site.features.flatMap((feature) => {
    const candidate = drawnCandidate(ground, feature);
    return candidate ? [candidate] : [];
  });
  const { suggestGrid } = ground.site.settings;
  return suggestGrid === null ? drawn : [...drawn, ...suggestions(ground, Math.max(finestGrid, suggestGrid), drawn)];
}

/** A drawn post as a candidate; null for anything else and for a post without a place. */
export function drawnCandidate(ground: Ground, feature: SiteFeature): Candidate | null {
  if (feature.kind !== 'post' || feature.geometry?.type !== 'Point') return null;
  const [lon, lat] = feature.geometry.coordinates;
  const at = ground.frame.toPlane([lon, lat]);
  if (!Number.isFinite(at.x) || !Number.isFinite(at.y)) return null;
  return {
    id: feature.id,
    at,
    state: isLocked(feature) ? 'fixed' : postState(feature),
    ...(isLocked(feature) ? { locked: true } : {}),
    bird: postBird(feature),
    facing: postFacing(feature),
    holeHeight: postHoleHeight(feature),
    number: postNumber(feature),
    pair: postPair(feature),
    name: nameOf(feature),
  };
}

/** Hexagonal grid of about `spacing` metres on drawn, allowed ground; wider when the site would get too many. */
function suggestions(ground: Ground, spacing: number, drawn: readonly Candidate[]): Candidate[] {
  const box = suggestionBox(ground);
  if (!box) return [];
  const area = (box.max.x - box.min.x) * (box.max.y - box.min.y);
  const least = Math.max(spacing, Math.sqrt(area / (mostSuggested * Math.sqrt(0.75))));
  const framed = hasFramedIds(ground.site.settings);
  // In steps, so that a site that grows by a little keeps its grid.
  const gap = framed ? least : spacing * widening ** Math.ceil(Math.log(least / spacing) / Math.log(widening) - 1e-9);
  const found: Candidate[] = [];
  for (const { id, at } of framed ? framedLattice(box, gap) : latticeIn(ground.frame, box, gap)) {
    if (maySuggest(ground, at, gap, drawn)) found.push(placeCandidate(id, at));
  }
  return found;
}

/** Whether a site keeps places of the lattice that lay on the site's frame, as files of before the fixed one do: it then keeps that lattice. */
function hasFramedIds({ order, plans }: SiteSettings): boolean {
  const framed = (id: string) => /^grid--?\d+--?\d+$/.test(id);
  return order.some(framed) || plans.some(({ boxes }) => boxes.some(({ post }) => framed(post)));
}

/** The lattice of old: it moves with the middle of everything drawn. */
function* framedLattice({ min, max }: Bounds, gap: number): Generator<LatticePlace> {
  const rise = gap * Math.sqrt(0.75);
  for (let row = Math.ceil(min.y / rise); row * rise <= max.y; row++) {
    const shift = row % 2 === 0 ? 0 : gap / 2;
    for (let column = Math.ceil((min.x - shift) / gap); column * gap + shift <= max.x; column++)
      yield { id: `grid-${column}-${row}`, at: { x: column * gap + shift, y: row * rise } };
  }
}

/** The boundary's box where one is drawn, else everything drawn. */
function suggestionBox(ground: Ground): Bounds | null {
  const corners = ground.site.features
    .filter((f) => f.kind === 'boundary')
    .flatMap((f) =>
      f.geometry?.type === 'Polygon'
        ? f.geometry.coordinates
        : f.geometry?.type === 'MultiPolygon'
          ? f.geometry.coordinates.flat()
          : [],
    )
    .flat()
    .map(([lon, lat]) => ground.frame.toPlane([lon, lat]))
    .filter((p) => Number.isFinite(p.x) && Number.isFinite(p.y));
  if (corners.length === 0) return ground.bounds;
  const least = (of: (p: Point) => number) => corners.reduce((low, p) => Math.min(low, of(p)), Infinity);
  return {
    min: { x: least((p) => p.x), y: least((p) => p.y) },
    max: { x: -least((p) => -p.x), y: -least((p) => -p.y) },
  };
}

/** Allowed, drawn ground, near enough to a path, and no second suggestion for a place already drawn. */
function maySuggest(ground: Ground, at: Point, gap: number, drawn: readonly Candidate[]): boolean {
  if (ground.coverAt(at) === null || ground.forbidden(at) !== null) return false;
  if (ground.shares(at, surroundings).unmapped > mostUnmapped) return false;
  if (drawn.some((c) => c.state !== 'retired' && distance(c.at, at) < gap / 2)) return false;
  const reach = ground.site.settings.reachOfPaths;
  return reach === null || ground.nearest(at, 'path', reach) !== null;
}

/** A place nobody drew, with nothing fixed about it. */
export function placeCandidate(id: string, at: Point): Candidate {
  return {
    id,
    at,
    state: 'candidate',
    bird: null,
    facing: null,
    holeHeight: null,
    number: null,
    pair: null,
    name: null,
  };
}
