/** The round on the map, only while the Round is open: legs in walking order, and in the field the walker and the way to the box. */
import type { FeatureCollection } from 'geojson';
import type { LayerSpecification } from 'maplibre-gl';
import { hollowCore, walkerPatterns } from '../../../../layers/walkers.ts';
import { lengthText } from '../../../criteria/units.ts';
import { setRound } from '../../actions/visit-log.ts';
import type { AppState } from '../../state.ts';
import { paintPicture } from '../draw-parts.ts';
import { fontNames } from '../fonts.ts';
import { type MapHost, nothing, type Overlay } from '../host.ts';
import { hereLayers, hereOf, hereSource, paintHead } from './round-here.ts';
import { legFeatures, sharedFeatures } from './round-shapes.ts';
import { keepInView } from './round-view-port.ts';

const walkSource = 'round-walk';
const arrow = (theme: string) => `round-arrow:${theme}`;

/** Narrower windows are held in the hand: the phone's frame. */
const phone = () => matchMedia('(max-width: 719px)').matches;

export function round(host: MapHost): Overlay {
  const painted = new Set<string>();
  const handsOff = () => {
    if (host.store.state.round.follow) setRound(host.store, { follow: false });
  };
  host.map.on('dragstart', handsOff);
  return {
    update(state, before) {
      const away = state.place !== 'round' && (before === null || before.place !== 'round');
      if (before && away) {
        if (state.theme !== before.theme) ink(host, state, painted);
        return;
      }
      if (!before || walkChanged(state, before)) showWalk(host, state);
      if (!before || hereChanged(state, before)) showHere(host, state);
      if (!before || state.theme !== before.theme) ink(host, state, painted);
      if (!before || state.place !== before.place) hideReasons(host, state.place === 'round');
      keepInView(host, state, before, phone());
    },
    remove: () => host.map.off('dragstart', handsOff),
  };
}

function walkChanged(state: AppState, before: AppState): boolean {
  return (
    state.place !== before.place ||
    state.plan !== before.plan ||
    state.theme !== before.theme ||
    state.units !== before.units ||
    state.selection !== before.selection ||
    state.round.shared !== before.round.shared
  );
}

function hereChanged(state: AppState, before: AppState): boolean {
  return walkChanged(state, before) || state.round.where !== before.round.where;
}

const collection = (features: FeatureCollection['features']): FeatureCollection => ({
  type: 'FeatureCollection',
  features,
});

function showWalk(host: MapHost, state: AppState): void {
  const { plan, units, place } = state;
  // 200 m are told in yards: all legs then have one unit.
  const say = (metres: number) => lengthText(metres, units, 200);
  const { shared } = state.round;
  const chosen = state.selection?.of === 'box' ? state.selection.number : null;
  const features =
    place !== 'round'
      ? []
      : shared
        ? sharedFeatures(shared, chosen, say)
        : plan && host.frame
          ? legFeatures(plan, host.frame, say)
          : [];
  host.source(walkSource, collection(features));
}

/** The layers in the ink of the theme. */
function ink(host: MapHost, state: AppState, painted: Set<string>): void {
  paintArrow(host, state.theme, painted);
  for (const layer of legLayers(host, state)) host.layer(layer, 'thing');
  for (const layer of [...stopLayers(host), ...hereLayers(host)]) host.layer(layer, 'post');
}

function showHere(host: MapHost, state: AppState): void {
  host.source(hereSource, state.place === 'round' ? collection(hereOf(state)) : nothing);
}

/** What decided a box belongs to the Posts place: here it would hide the way. */
function hideReasons(host: MapHost, hidden: boolean): void {
  for (const { id } of host.map.getStyle().layers)
    if (id.startsWith('reasons-')) host.map.setLayoutProperty(id, 'visibility', hidden ? 'none' : 'visible');
}

/** A plain arrowhead that looks along the line. */
function paintArrow(host: MapHost, theme: string, painted: Set<string>): void {
  if (painted.has(theme)) return;
  painted.add(theme);
  const { ink, halo } = host.ink;
  paintHead(host, theme);
  host.picture(
    arrow(theme),
    paintPicture(22, 22, 2, (context) => {
      const head = new Path2D('M6 5 L17 11 L6 17 L8.5 11 Z');
      context.strokeStyle = halo;
      context.lineWidth = 4;
      context.stroke(head);
      context.fillStyle = ink;
      context.fill(head);
    }),
  );
}

function patternLayer(
  id: string,
  filter: unknown[],
  color: string,
  width: number,
  dash: readonly number[] | null,
): LayerSpecification {
  return {
    id,
    type: 'line',
    source: walkSource,
    filter: filter as never,
    layout: { 'line-join': 'round', 'line-cap': 'round' },
    paint: { 'line-color': color, 'line-width': width, ...(dash ? { 'line-dasharray': [...dash] } : {}) },
  };
}

function legLayers(host: MapHost, { theme }: AppState): LayerSpecification[] {
  const { ink } = host;
  const color = ['match', ['get', 'ink'], 'sky', ink.sky, 'rust', ink.rust, 'moss', ink.moss, ink.ink] as never;
  const filter = ['==', ['get', 'role'], 'leg'] as never;
  return [
    {
      id: 'round-legs-halo',
      type: 'line',
      source: walkSource,
      filter,
      layout: { 'line-join': 'round', 'line-cap': 'round' },
      paint: { 'line-color': ink.halo, 'line-width': 6, 'line-opacity': 0.85 },
    },
    ...walkerPatterns.flatMap(({ id, width, dash }) => [
      patternLayer(`round-legs-${id}`, ['==', ['get', 'look'], id], color, width, dash),
      patternLayer(
        `round-cores-${id}`,
        ['all', ['==', ['get', 'look'], id], ['get', 'hollow']],
        ink.halo,
        width * hollowCore,
        // Told in widths of the line: the core's dashes must be as long as the line's.
        dash?.map((part) => part / hollowCore) ?? null,
      ),
    ]),
    {
      id: 'round-arrows',
      type: 'symbol',
      source: walkSource,
      filter,
      minzoom: 14,
      layout: {
        'symbol-placement': 'line-center',
        'icon-image': arrow(theme),
        'icon-allow-overlap': true,
        'icon-ignore-placement': true,
      },
    },
    {
      id: 'round-lengths',
      type: 'symbol',
      source: walkSource,
      filter,
      minzoom: 15.2,
      layout: {
        'symbol-placement': 'line-center',
        'text-field': ['get', 'words'],
        'text-font': [fontNames.fontText],
        'text-size': 13,
        'text-offset': [0, 1],
        'text-padding': 2,
      },
      paint: { 'text-color': ink.ink, 'text-halo-color': ink.halo, 'text-halo-width': 2 },
    },
  ];
}

function stopLayers(host: MapHost): LayerSpecification[] {
  const { ink } = host;
  const filter = ['==', ['get', 'role'], 'stop'] as never;
  const chosen = (yes: string, no: string) => ['case', ['get', 'chosen'], yes, no] as never;
  return [
    {
      id: 'round-stops',
      type: 'circle',
      source: walkSource,
      filter,
      paint: {
        'circle-radius': 14,
        'circle-color': chosen(ink.ink, ink.raised),
        'circle-stroke-color': chosen(ink.sky, ink.ink),
        'circle-stroke-width': 3,
      },
    },
    {
      id: 'round-stop-numbers',
      type: 'symbol',
      source: walkSource,
      filter,
      layout: {
        'text-field': ['get', 'number'],
        'text-font': [fontNames.fontBold],
        'text-size': 14,
        'text-allow-overlap': true,
      },
      paint: { 'text-color': chosen(ink.raised, ink.ink) },
    },
  ];
}
