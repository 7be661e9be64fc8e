/** Keeps walker and box in view on a phone, and gives the map back as it was when the Round is left. */
import type { PaddingOptions } from 'maplibre-gl';
import type { LonLat } from '../../../site/types.ts';
import { roundOf, targetOf } from '../../actions/round-view.ts';
import type { AppState } from '../../state.ts';
import type { MapHost } from '../host.ts';

/** px kept clear on a phone: tabs and band above, the visit below, the dial at the left. */
const phonePadding = { left: 84, right: 40, top: 250, bottom: 330 };

/** Closer than this the map is not brought by itself: about 150 m across a phone (ours). */
const closest = 18.6;

export function keepInView(host: MapHost, state: AppState, before: AppState | null, phone: boolean): void {
  const entered = state.place === 'round' && before?.place !== 'round';
  if (phone && entered) host.padOwn(roomOn(host));
  if (state.place !== 'round') host.padOwn(null);
  if (state.place !== 'round' || !state.round.follow) return;
  const moved =
    entered ||
    state.selection !== before?.selection ||
    state.round.follow !== before?.round.follow ||
    state.round.shared !== before?.round.shared ||
    (before?.plan === null && state.plan !== null);
  const first = state.round.where.at === 'fix' && before?.round.where.at !== 'fix';
  if (moved || first || (phone && outOfView(host, state))) show(host, state, phone);
}

/** Less where the window is low, so that some map is left. */
function roomOn(host: MapHost): PaddingOptions {
  const height = host.map.getContainer().clientHeight;
  const share = Math.min(1, (height - 160) / (phonePadding.top + phonePadding.bottom));
  return {
    ...phonePadding,
    top: Math.max(0, phonePadding.top * share),
    bottom: Math.max(0, phonePadding.bottom * share),
  };
}

function outOfView(host: MapHost, state: AppState): boolean {
  const { where } = state.round;
  // Without a box to go to the whole round is shown, wherever the walker stands.
  if (where.at !== 'fix' || !targetOf(state)) return false;
  const { x, y } = host.map.project(where.fix.position);
  const { clientWidth, clientHeight } = host.map.getContainer();
  const { left = 0, top = 0, right = 0, bottom = 0 } = host.map.getPadding();
  return x < left - 10 || y < top - 10 || x > clientWidth - right + 10 || y > clientHeight - bottom + 10;
}

function show(host: MapHost, state: AppState, phone: boolean): void {
  const still = matchMedia('(prefers-reduced-motion: reduce)').matches;
  const places = wanted(state, phone);
  if (places.length === 0) return;
  const lons = places.map((p) => p[0]);
  const lats = places.map((p) => p[1]);
  host.map.fitBounds([Math.min(...lons), Math.min(...lats), Math.max(...lons), Math.max(...lats)], {
    padding: phone ? 0 : 40,
    maxZoom: phone ? closest : 17.5,
    duration: still ? 0 : 300,
  });
}

/** The box and the walker; a box alone with its neighbors on the round, so that the map says where it is; without a box the whole round. */
function wanted(state: AppState, phone: boolean): LonLat[] {
  const target = targetOf(state);
  const { where } = state.round;
  const stops = roundOf(state)?.stops ?? [];
  const all = stops.flatMap((stop) => (stop.position ? [stop.position] : []));
  if (!target?.position) return phone || state.round.shared ? all : [];
  // On a desktop the whole walk stays in sight unless the box is looked at from the device's own place.
  if (!phone) return where.at === 'fix' ? [target.position, where.fix.position] : [];
  if (where.at === 'fix' && near(where.fix.position, target.position)) return [target.position, where.fix.position];
  const at = stops.indexOf(target);
  const around = [stops[at - 1]?.position, target.position, stops[at + 1]?.position];
  return around.flatMap((position) => (position ? [position] : []));
}

/** Whether the walker is somewhere on this trail at all: within about 5 km. */
function near(a: LonLat, b: LonLat): boolean {
  return Math.abs(a[1] - b[1]) < 0.05 && Math.abs(a[0] - b[0]) < 0.07;
}
