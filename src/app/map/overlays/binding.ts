/** Where the spacing binds, on the map: half-spacing circles that may touch but not overlap, and a tie with its length between the pairs that do. */
import type { Feature, FeatureCollection } from 'geojson';
import type { LayerSpecification } from 'maplibre-gl';
import { lengthText } from '../../../criteria/units.ts';
import { destination } from '../../../geometry/point.ts';
import type { AppState } from '../../state.ts';
import { fontNames } from '../fonts.ts';
import { type MapHost, nothing, type Overlay } from '../host.ts';
import { bindingOf, isBindingShown } from './binding-shapes.ts';

const source = 'binding';
const sides = 72;
const keys = ['plan', 'planOf', 'place', 'selection', 'theme', 'units'] as const;

export function binding(host: MapHost): Overlay {
  let drawn = false;
  return {
    update(state, before) {
      const shown = isBindingShown(state);
      if (before && shown === drawn && keys.every((key) => state[key] === before[key])) return;
      if (before && !shown && !drawn && state.theme === before.theme) return;
      drawn = shown;
      host.source(source, shown ? features(host, state) : nothing);
      for (const layer of layers(host)) host.layer(layer, layer.type === 'symbol' ? 'name' : 'thing');
    },
  };
}

function features(host: MapHost, { plan, planOf, units }: AppState): FeatureCollection {
  const bound = plan && planOf ? bindingOf(plan, planOf.settings) : null;
  const { frame } = host;
  if (!bound || !frame) return nothing;
  const circle = (middle: { x: number; y: number }) =>
    Array.from({ length: sides + 1 }, (_, i) => frame.toLonLat(destination(middle, (i * 360) / sides, bound.radius)));
  const circles = bound.boxes.map(
    ({ at }): Feature => ({
      type: 'Feature',
      geometry: { type: 'LineString', coordinates: circle(at) },
      properties: { role: 'circle' },
    }),
  );
  const ties = bound.pairs.map(
    ({ a, b, metres }): Feature => ({
      type: 'Feature',
      geometry: { type: 'LineString', coordinates: [[...a.position], [...b.position]] },
      properties: { role: 'tie', words: lengthText(metres, units, 100) },
    }),
  );
  return { type: 'FeatureCollection', features: [...circles, ...ties] };
}

function layers({ ink }: MapHost): LayerSpecification[] {
  const of = (role: string) => ['==', ['get', 'role'], role] as never;
  return [
    {
      id: 'binding-circles-halo',
      type: 'line',
      source,
      filter: of('circle'),
      paint: { 'line-color': ink.halo, 'line-width': 3.5, 'line-opacity': 0.7 },
    },
    {
      id: 'binding-circles',
      type: 'line',
      source,
      filter: of('circle'),
      paint: { 'line-color': ink.ink, 'line-width': 1.4, 'line-dasharray': [4, 3] },
    },
    {
      id: 'binding-ties-halo',
      type: 'line',
      source,
      filter: of('tie'),
      paint: { 'line-color': ink.halo, 'line-width': 6, 'line-opacity': 0.85 },
    },
    {
      id: 'binding-ties',
      type: 'line',
      source,
      filter: of('tie'),
      layout: { 'line-cap': 'round' },
      paint: { 'line-color': ink.sky, 'line-width': 3.5, 'line-dasharray': [0.1, 2] },
    },
    {
      id: 'binding-words',
      type: 'symbol',
      source,
      filter: of('tie'),
      minzoom: 15,
      layout: {
        'symbol-placement': 'line-center',
        'text-field': ['get', 'words'],
        'text-font': [fontNames.fontText],
        'text-size': 13,
        'text-offset': [0, 0.9],
      },
      paint: { 'text-color': ink.ink, 'text-halo-color': ink.halo, 'text-halo-width': 2 },
    },
  ];
}
