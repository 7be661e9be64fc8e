/** The chosen corner by keyboard: from corner to corner, and moved by metres. */
import { type Corner, chainsOf, positionAt } from '../../edits/chains.ts';
import { moveFeatures } from '../../edits/move-feature.ts';
import { movePost } from '../../edits/move-post.ts';
import { moveVertex } from '../../edits/move-vertex.ts';
import { makeFrame } from '../../ground/frame.ts';
import type { LonLat, SiteGeometry } from '../../site/types.ts';
import type { Store } from '../store.ts';
import { change, chooseCorner, chosenId } from './land-state.ts';
import { warnOfPlace } from './land-warn.ts';

/** All corners of a geometry in order. */
export function cornersOf(geometry: SiteGeometry | null): Corner[] {
  return chainsOf(geometry).flatMap(({ corners }, chain) => corners.map((_, corner) => ({ chain, corner })));
}

/** Chooses the next (1) or the one before (−1), around all outlines of the chosen thing. */
export function stepCorner(store: Store, by: number): void {
  const { site, land } = store.state;
  const all = cornersOf(site?.features.find(({ id }) => id === chosenId(store))?.geometry ?? null);
  if (all.length === 0) return;
  const at = all.findIndex((c) => c.chain === land.corner?.chain && c.corner === land.corner.corner);
  const next = at < 0 ? (by > 0 ? 0 : all.length - 1) : (at + by + all.length) % all.length;
  chooseCorner(store, all[next] ?? null);
}

/** Moves the chosen corner, or the chosen point, by metres east and north; an area or line without a chosen corner moves whole. */
export function nudge(store: Store, east: number, north: number): void {
  const { site, land } = store.state;
  const chosen = site?.features.find(({ id }) => id === chosenId(store));
  if (!site || !chosen?.geometry) return;
  const isPoint = chosen.geometry.type === 'Point';
  const { shared, corner } = land;
  const from = isPoint ? (chosen.geometry.coordinates as LonLat) : firstOf(chosen.geometry, corner);
  const to = makeFrame([from[0], from[1]]).toLonLat({ x: east, y: north });
  const answer = isPoint
    ? movePost(site, chosen.id, to)
    : corner
      ? moveVertex(site, chosen.id, corner, to, { shared })
      : moveFeatures(site, [chosen.id], [to[0] - from[0], to[1] - from[1]], { shared });
  if (change(store, answer)) warnOfPlace(store, chosen.id);
}

function firstOf(geometry: SiteGeometry, corner: Corner | null): LonLat {
  return positionAt(geometry, corner ?? { chain: 0, corner: 0 }) as LonLat;
}
