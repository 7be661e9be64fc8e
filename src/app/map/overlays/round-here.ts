/** The walker on the map: dot, error circle, rings of known size, and the way to the box. */
import type { FeatureCollection } from 'geojson';
import type { LayerSpecification } from 'maplibre-gl';
import { lengthText } from '../../../criteria/units.ts';
import { makeFrame } from '../../../ground/frame.ts';
import { targetOf, wayTo } from '../../actions/round-view.ts';
import type { AppState } from '../../state.ts';
import { paintPicture } from '../draw-parts.ts';
import { fontNames } from '../fonts.ts';
import type { MapHost } from '../host.ts';
import { hereFeatures } from './round-shapes.ts';

export const hereSource = 'round-here';
const head = (theme: string) => `round-head:${theme}`;

export function hereOf(state: AppState): FeatureCollection['features'] {
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

/** The head of the way, pointing up. */
export function paintHead(host: MapHost, theme: string): void {
  const { halo, sky } = host.ink;
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
}

export function hereLayers(host: MapHost): LayerSpecification[] {
  const { ink } = host;
  const { theme } = host.store.state;
  const of = (role: string) => ['==', ['get', 'role'], role] as never;
  const words = (role: 'you' | 'ring-words'): LayerSpecification => ({
    id: `round-${role}`,
    type: 'symbol',
    source: hereSource,
    filter: of(role),
    layout: {
      'text-field': ['get', 'words'],
      'text-font': [fontNames.fontText],
      'text-size': 14.5,
      // Written toward the box: the walker often stands at the edge of what is shown.
      'text-anchor': role === 'you' ? (['get', 'anchor'] as never) : 'center',
      'text-offset': role === 'you' ? [0, -1.3] : [0, 0],
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
    words('ring-words'),
    words('you'),
  ];
}
