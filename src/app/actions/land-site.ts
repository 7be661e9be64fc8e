/** The landowner's way: a new site at a place, the order of drawing, and two posts suggested. */
import { setSetting } from '../../edits/set-setting.ts';
import { ringArea } from '../../geometry/ring.ts';
import { makeFrame } from '../../ground/frame.ts';
import { newSite } from '../../site/new-site.ts';
import type { Kind, LonLat, Site, SiteSettings } from '../../site/types.ts';
import { writeSite } from '../../site/write.ts';
import { wasAborted } from '../engine/client.ts';
import { firstLand } from '../land-state.ts';
import { siteBounds } from '../map/bounds.ts';
import type { Store } from '../store.ts';
import { edit } from './edit.ts';
import { setLand } from './land-state.ts';
import { openSite } from './open.ts';
import { say } from './say.ts';
import { goTo } from './select.ts';
import { freeName } from './shelf-file.ts';
import { freshId } from './shelf-name.ts';

/** The order a yard is drawn in: from what one stands in to what stands around. */
export const guideOrder: readonly Kind[] = ['building', 'short-grass', 'tree', 'woods', 'brush', 'feeder'];

/** The next kind of the order that is neither drawn nor passed over; null when all are. */
export function nextOfGuide(site: Site, passed: readonly Kind[]): Kind | null {
  return guideOrder.find((kind) => !passed.includes(kind) && !site.features.some((f) => f.kind === kind)) ?? null;
}

/** Keeps and opens an empty site of that name with today's date and the region and units given. Says why when it cannot. */
export async function startSite(store: Store, name: string, options: Partial<SiteSettings>): Promise<void> {
  const now = new Date();
  const date = `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, '0')}-${String(now.getDate()).padStart(2, '0')}`;
  const { words } = store.state;
  const own = await freeName(store, name.replace(/\s+/g, ' ').trim().slice(0, 120) || words.land.newSite.unnamed);
  const id = freshId(own);
  await store.shelf.save(id, own, writeSite(newSite(own, { date, ...options })), words.library.newSite);
  await openSite(store, id);
  store.set({ land: { ...firstLand, guide: true }, selection: null, place: 'land' });
}

/** The region a place lies in, by the halves of the two continents the guides know (100° west: common practice of bird books). */
export function regionOf([lon, lat]: LonLat): string {
  if (lon > -30 && lon < 60 && lat > 30) return 'europe';
  return lon < -100 ? 'western-north-america' : 'eastern-north-america';
}

/** A grid fine enough for a yard and coarse enough for a park: about 400 places, from 5 m up (ours). */
export function gridFor(site: Site): number {
  const box = siteBounds(site);
  if (!box) return 5;
  const [west, south, east, north] = box;
  const frame = makeFrame([west, south]);
  const corners: LonLat[] = [
    [west, south],
    [east, south],
    [east, north],
    [west, north],
  ];
  return Math.max(5, Math.round(Math.sqrt(Math.abs(ringArea(corners.map((c) => frame.toPlane(c)))) / 400)));
}

/** Sets the two sites of the birds that suit best, a grid of places, and opens the Posts with the plan. One step of the history. */
export async function suggestTwo(store: Store): Promise<void> {
  const { site, words } = store.state;
  if (!site) return;
  const stop = new AbortController();
  const work = (what: string, done: number | null) =>
    store.set({ engine: { at: 'work', what, done, stop: () => stop.abort() } });
  work(words.land.tryingTwo, 0);
  try {
    const found = await store.engine.call(
      'suggest',
      { site, grid: gridFor(site) },
      { signal: stop.signal, onProgress: (done, what) => work(what, done) },
    );
    store.set({ engine: { at: 'rest' } });
    if (!found) return void say(store, 'trouble', words.land.noSuggestion);
    if (store.state.site !== site) return void say(store, 'trouble', words.land.changedMeanwhile);
    const asked = withSettings(site, { suggestGrid: found.grid, reachOfPaths: null, wanted: found.wanted });
    edit(store, asked, words.land.suggested);
    setLand(store, { guide: false });
    goTo(store, 'posts');
  } catch (error) {
    store.set({ engine: { at: 'rest' } });
    if (!wasAborted(error))
      say(store, 'trouble', words.shell.engineTrouble(error instanceof Error ? error.message : String(error)));
  }
}

/** Several settings at once, each through the gate; a refused one is left as it was. */
export function withSettings(site: Site, settings: Partial<SiteSettings>): Site {
  return Object.entries(settings).reduce((now, [key, value]) => {
    const answer = setSetting(now, key as 'name', value as string);
    return 'site' in answer ? answer.site : now;
  }, site);
}
