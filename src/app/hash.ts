/** The part of the address after `#`: which site, place and box are open, so that a link opens a box. */
import { type Place, places, type Selection } from './state.ts';

export interface HashState {
  readonly site: string | null;
  readonly place: Place | null;
  readonly selection: Selection | null;
  /** Code of a round to open; only read, never written. */
  readonly round?: string;
}

/** Reads `#site=yard&place=posts&box=17`; what cannot be read is null. */
export function readHash(hash: string): HashState {
  const given = new URLSearchParams(hash.replace(/^#/, ''));
  const place = given.get('place');
  return {
    site: given.get('site') || null,
    place: places.find((p) => p === place) ?? null,
    selection: readSelection(given),
    round: given.get('round') || undefined,
  };
}

function readSelection(given: URLSearchParams): Selection | null {
  const box = Number(given.get('box') ?? Number.NaN);
  if (Number.isInteger(box) && box > 0) return { of: 'box', number: box };
  const post = given.get('post');
  if (post) return { of: 'post', id: post };
  const feature = given.get('feature');
  return feature ? { of: 'feature', id: feature } : null;
}

/** Writes the same, members that are null left out. */
export function writeHash(state: HashState): string {
  const out = new URLSearchParams();
  if (state.site) out.set('site', state.site);
  if (state.place) out.set('place', state.place);
  const chosen = state.selection;
  if (chosen) out.set(chosen.of, chosen.of === 'box' ? String(chosen.number) : chosen.id);
  return `#${out}`;
}
