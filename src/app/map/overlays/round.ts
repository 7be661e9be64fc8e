/** The round on the map, only while the Round is open: legs in walking order, and in the field the walker and the way to the box. */
import type { FeatureCollection } from 'geojson';
import type { LayerSpecification } from 'maplibre-gl';
import { lengthText } from '../../../criteria/units.ts';
import { makeFrame } from '../../../ground/frame.ts';
import { targetOf, wayTo } from '../../actions/round-view.ts';
import { setRound } from '../../actions/visit-log.ts';
import type { AppState } from '../../state.ts';
import { paintPicture } from '../draw-parts.ts';
import { fontNames } from '../fonts.ts';
import { type MapHost, nothing, type Overlay } from '../host.ts';
import { hereFeatures, legFeatures, sharedFeatures } from './round-shapes.ts';
import { keepInView } from './round-view-port.ts';

const walkSource = 'round-walk';
const hereSource = 'round-here';
const head = (theme: string) => `round-head:${theme}`;
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

function hereOf(state: AppState): FeatureCollection['features'] {
  const { where } = state.round;
  if (where.at !== 'fix') return [];
  const { fix } = where;
  const target = targetOf(state);
  const { words, units } = state;
  const rings = units === 'us' ? [200, 400].map((feet) => feet * 0.3048) : [50, 100];
  return hereFeatures({
    fix,
    frame: makeFrame(fix.position),
    target: target?.position ?? null,
    rings: rings.map((metres) => ({
      metres,
      words: units === 'us' ? `${Math.round(metres / 0.3048)} ft` : `${metres} m`,
    })),
    words: words.round.youWithin(lengthText(fix.accuracy, units)),
    within: (target && wayTo(state, target)?.within) ?? false,
  });
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
  const { ink, halo, sky } = host.ink;
  host.picture(
    head(theme),
    paintPicture(34, 34, 2, (context) => {
      const tip = new Path2D('M17 4 L29 29 L17 23 L5 29 Z');
      context.strokeStyle = halo;
      context.lineWidth = 5;
      context.stroke(tip);
      context.fillStyle = sky;
      context.fill(tip);
    }),
  );
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

const dashes: Readonly<Record<string, number[] | null>> = {
  solid: null,
  dashed: [5, 3],
  dotted: [0.1, 2.2],
  'dash-dot': [6, 2.5, 0.1, 2.5],
};

function legLayers(host: MapHost, { theme }: AppState): LayerSpecification[] {
  const { ink } = host;
  const color: Readonly<Record<string, string>> = {
    solid: ink.ink,
    dashed: ink.sky,
    dotted: ink.rust,
    'dash-dot': ink.moss,
  };
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
    ...Object.entries(dashes).map(
      ([look, dash]): LayerSpecification => ({
        id: `round-legs-${look}`,
        type: 'line',
        source: walkSource,
        filter: ['all', ['==', ['get', 'role'], 'leg'], ['==', ['get', 'look'], look]],
        layout: { 'line-join': 'round', 'line-cap': 'round' },
        paint: {
          'line-color': color[look]!,
          'line-width': look === 'dotted' ? 3.5 : 2,
          ...(dash ? { 'line-dasharray': dash } : {}),
        },
      }),
    ),
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

function hereLayers(host: MapHost): LayerSpecification[] {
  const { ink } = host;
  const { theme } = host.store.state;
  const of = (role: string) => ['==', ['get', 'role'], role] as never;
  const words = (role: string, anchor: 'bottom' | 'center'): LayerSpecification => ({
    id: `round-${role}`,
    type: 'symbol',
    source: hereSource,
    filter: of(role),
    layout: {
      'text-field': ['get', 'words'],
      'text-font': [fontNames.fontText],
      'text-size': 14.5,
      'text-anchor': anchor,
      'text-offset': anchor === 'bottom' ? [0, -1.3] : [0, 0],
      'text-allow-overlap': role === 'you',
    },
    paint: { 'text-color': ink.ink, 'text-halo-color': ink.halo, 'text-halo-width': 2.2 },
  });
  return [
    {
      id: 'round-rings',
      type: 'line',
      source: hereSource,
      filter: of('ring'),
      paint: { 'line-color': ink.ink, 'line-width': 1.5, 'line-dasharray': [2, 2.5] },
    },
    {
      id: 'round-error',
      type: 'fill',
      source: hereSource,
      filter: of('error'),
      paint: { 'fill-color': ink.sky, 'fill-opacity': 0.22 },
    },
    {
      id: 'round-error-edge',
      type: 'line',
      source: hereSource,
      filter: of('error'),
      paint: { 'line-color': ink.sky, 'line-width': 2 },
    },
    {
      id: 'round-way-halo',
      type: 'line',
      source: hereSource,
      filter: of('way'),
      paint: { 'line-color': ink.halo, 'line-width': 11 },
    },
    {
      id: 'round-way',
      type: 'line',
      source: hereSource,
      filter: of('way'),
      paint: { 'line-color': ink.sky, 'line-width': 6 },
    },
    {
      id: 'round-way-head',
      type: 'symbol',
      source: hereSource,
      filter: of('head'),
      layout: {
        'icon-image': head(theme),
        'icon-rotate': ['get', 'turn'],
        'icon-rotation-alignment': 'map',
        'icon-offset': [0, 38],
        'icon-allow-overlap': true,
        'icon-ignore-placement': true,
      },
    },
    {
      id: 'round-you-dot',
      type: 'circle',
      source: hereSource,
      filter: of('you'),
      paint: {
        'circle-radius': 7,
        'circle-color': ink.sky,
        'circle-stroke-color': ink.halo,
        'circle-stroke-width': 3,
      },
    },
    words('ring-words', 'center'),
    words('you', 'bottom'),
  ];
}
