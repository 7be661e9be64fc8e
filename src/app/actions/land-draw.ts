/** A shape in progress: corners put and taken back, finished or given up. Everything here works without a map (keyboard, typed places). */
import { addFeature } from '../../edits/add-feature.ts';
import { addCircle } from '../../edits/circle.ts';
import { cutHole } from '../../edits/cut-hole.ts';
import type { Edit } from '../../edits/edit.ts';
import { reshape } from '../../edits/reshape.ts';
import { splitArea } from '../../edits/split-area.ts';
import { shapeOf } from '../../site/kinds.ts';
import { samePlace } from '../../site/positions.ts';
import type { LonLat, Site, SiteGeometry } from '../../site/types.ts';
import type { Tool } from '../land-state.ts';
import { outlineCrossing } from '../map/drawing/crossing.ts';
import { draws, leastCorners, metresBetween } from '../map/drawing/sketch.ts';
import type { Store } from '../store.ts';
import { change, setLand } from './land-state.ts';
import { warnOfPlace } from './land-warn.ts';

/** Takes a tool in the hand; what was drawn with another is given up. */
export function takeTool(store: Store, tool: Tool | null): void {
  const { selection } = store.state;
  const keeps = tool !== null && 'id' in tool;
  store.set({ selection: keeps ? selection : null });
  setLand(store, { tool, corners: [], takenBack: [], corner: null, trouble: null, offers: [] });
}

/** Puts a corner. A point is finished by it, a circle by its second; a corner on the first or last one finishes the shape. */
export function putCorner(store: Store, at: LonLat): void {
  const { tool, corners } = store.state.land;
  if (!tool || draws(tool) === null) return;
  const wrong = placeTrouble(at, store);
  if (wrong) {
    setLand(store, { trouble: { sentence: wrong, at: null } });
    return;
  }
  const [first, last] = [corners[0], corners.at(-1)];
  const closes = draws(tool) === 'outline' && corners.length >= 3 && first && samePlace(first, at);
  if (closes || (last && samePlace(last, at))) return void finishShape(store);
  setLand(store, { corners: [...corners, at], takenBack: [], trouble: null });
  const how = draws(tool);
  if (how === 'point' || (how === 'round' && corners.length === 1)) finishShape(store);
}

/** Takes the last corner back. */
export function takeCornerBack(store: Store): void {
  const { corners, takenBack } = store.state.land;
  const last = corners.at(-1);
  if (!last) return;
  setLand(store, { corners: corners.slice(0, -1), takenBack: [...takenBack, last], trouble: null });
}

/** Puts the corner taken back last again. */
export function putCornerAgain(store: Store): void {
  const { corners, takenBack } = store.state.land;
  const last = takenBack.at(-1);
  if (!last) return;
  setLand(store, { corners: [...corners, last], takenBack: takenBack.slice(0, -1), trouble: null });
}

/** Gives the shape up. The tool goes back; nothing of the site changes. */
export function giveUp(store: Store): void {
  setLand(store, { tool: null, corners: [], takenBack: [], trouble: null });
}

/** Why the shape cannot be finished yet; null when it can. */
export function cannotFinish(store: Store): string | null {
  const { tool, corners } = store.state.land;
  const { land } = store.state.words;
  if (!tool) return land.noTool;
  const missing = leastCorners(tool) - corners.length;
  return missing > 0 ? land.needsCorners(leastCorners(tool), missing) : null;
}

/** Makes the shape part of the site. When that is refused the corners stay, with the reason. True when it was done. */
export function finishShape(store: Store): boolean {
  const { site, words, land } = store.state;
  const { tool, corners } = land;
  if (!site || !tool) return false;
  const early = cannotFinish(store);
  if (early) return refuse(store, early, null);
  const crossing = draws(tool) === 'outline' ? outlineCrossing(corners) : null;
  if (crossing) return refuse(store, words.land.crosses, crossing);
  const answer = result(site, tool, corners, land.shared);
  if (!change(store, answer)) return false;
  setLand(store, { corners: [], takenBack: [] });
  afterwards(store, tool, site);
  return true;
}

function refuse(store: Store, sentence: string, at: LonLat | null): false {
  setLand(store, { trouble: { sentence, at } });
  return false;
}

function result(site: Site, tool: Tool, corners: readonly LonLat[], shared: boolean): Edit {
  if (tool.does === 'draw')
    return addFeature(site, {
      kind: tool.kind,
      geometry: geometryOf(tool.kind, corners),
      properties: firstProperties(tool.kind),
    });
  if (tool.does === 'circle') return addCircle(site, tool.kind, corners[0]!, metresBetween(corners[0]!, corners[1]!));
  if (tool.does === 'split') return splitArea(site, tool.id, corners, { shared });
  if (tool.does === 'hole') return cutHole(site, tool.id, corners);
  if (tool.does === 'reshape') return reshape(site, tool.id, corners, { shared });
  throw new Error(`no shape is drawn with ${tool.does}`);
}

/** A drawn post is a place to judge. */
function firstProperties(kind: string): Record<string, unknown> {
  return kind === 'post' ? { state: 'candidate' } : {};
}

function geometryOf(kind: Parameters<typeof shapeOf>[0], corners: readonly LonLat[]): SiteGeometry {
  const positions = corners.map((corner) => [...corner]);
  if (shapeOf(kind) === 'area') return { type: 'Polygon', coordinates: [[...positions, [...corners[0]!]]] };
  return shapeOf(kind) === 'line'
    ? { type: 'LineString', coordinates: positions }
    : { type: 'Point', coordinates: positions[0]! };
}

/** After an area or line the new thing is chosen, so that its height and flags can be set; points are put one after the other. */
function afterwards(store: Store, tool: Tool, before: Site): void {
  const { site } = store.state;
  const fresh = site?.features.at(-1);
  const added = fresh && !before.features.some(({ id }) => id === fresh.id) ? fresh : null;
  if (added) warnOfPlace(store, added.id);
  if (tool.does === 'draw' && shapeOf(tool.kind) === 'point') return;
  setLand(store, { tool: null });
  const id = 'id' in tool ? tool.id : added?.id;
  if (id) store.set({ selection: { of: 'feature', id } });
}

/** Why no site can lie there; null for a good place. */
export function placeTrouble([lon, lat]: LonLat, store: Store): string | null {
  const { land } = store.state.words;
  if (!Number.isFinite(lon) || !Number.isFinite(lat)) return land.noPlace;
  if (Math.abs(lat) > 85) return land.nearPole;
  return Math.abs(lon) > 179.99 ? land.nearDateLine : null;
}
