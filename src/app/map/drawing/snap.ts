/** Pulls a place onto a drawn corner or border that is near on the screen. */
import type { Position } from 'geojson';
import { type Chain, chainsOf } from '../../../edits/chains.ts';
import type { LonLat, Site, SiteGeometry } from '../../../site/types.ts';

/** `to` says what the place was pulled onto; null = it stayed where it was. */
export interface Snapped {
  readonly at: LonLat;
  readonly to: 'corner' | 'border' | null;
}

/** How near counts, px: corners are meant more often than the border beside them (ours; a fingertip needs more).
 * `own`: a press this near to the first or last corner of the shape in progress finishes it. */
export const reachPixels = {
  mouse: { corner: 12, border: 8, own: 8 },
  touch: { corner: 22, border: 14, own: 12 },
} as const;

/** Degrees of longitude one px covers at a zoom (512 px tiles: the whole earth is 512 px wide at zoom 0). */
export function degreesPerPixel(zoom: number): number {
  return 360 / (512 * 2 ** zoom);
}

/** What can be snapped to: borders and corners of the site's features, points too, and the corners of the shape in progress. */
export function snapChains(site: Site, without: string | null = null): Chain[] {
  return site.features.flatMap((feature) => (feature.id === without ? [] : chainsWithPoints(feature.geometry)));
}

function chainsWithPoints(geometry: SiteGeometry | null): Chain[] {
  return geometry?.type === 'Point' ? [{ corners: [geometry.coordinates], closed: false }] : chainsOf(geometry);
}

/** The nearest corner within reach, else the nearest place of a border, else `at` itself. Reaches in degrees of longitude. */
export function snap(at: LonLat, chains: readonly Chain[], reach: { corner: number; border: number }): Snapped {
  const squash = Math.cos((at[1] * Math.PI) / 180);
  const far = Math.max(reach.corner, reach.border);
  const best = { corner: reach.corner * squash, border: reach.border * squash };
  let corner: Position | null = null;
  let border: LonLat | null = null;
  for (const chain of chains) {
    const count = chain.corners.length;
    for (let i = 0; i < count; i++) {
      const a = chain.corners[i]!;
      const away = Math.hypot((a[0]! - at[0]) * squash, a[1]! - at[1]);
      if (away < best.corner) [corner, best.corner] = [a, away];
      const b = chain.corners[i + 1] ?? (chain.closed ? chain.corners[0] : undefined);
      if (!b || outside(at, a, b, far)) continue;
      const place = onEdge(at, a, b, squash);
      const off = Math.hypot((place[0] - at[0]) * squash, place[1] - at[1]);
      if (off < best.border) [border, best.border] = [place, off];
    }
  }
  if (corner) return { at: [corner[0]!, corner[1]!], to: 'corner' };
  return border ? { at: border, to: 'border' } : { at, to: null };
}

function outside(at: LonLat, a: Position, b: Position, reach: number): boolean {
  return (
    Math.max(a[0]!, b[0]!) < at[0] - reach ||
    Math.min(a[0]!, b[0]!) > at[0] + reach ||
    Math.max(a[1]!, b[1]!) < at[1] - reach ||
    Math.min(a[1]!, b[1]!) > at[1] + reach
  );
}

function onEdge(at: LonLat, a: Position, b: Position, squash: number): LonLat {
  const [dx, dy] = [(b[0]! - a[0]!) * squash, b[1]! - a[1]!];
  const long = dx * dx + dy * dy;
  if (long === 0) return [a[0]!, a[1]!];
  const share = Math.max(0, Math.min(1, ((at[0] - a[0]!) * squash * dx + (at[1] - a[1]!) * dy) / long));
  return [a[0]! + (b[0]! - a[0]!) * share, a[1]! + (b[1]! - a[1]!) * share];
}
