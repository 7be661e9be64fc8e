/** The lie of the land as a layer under the lines of the land, with the figures on its contours. */
import type { Feature, FeatureCollection } from 'geojson';
import type { LayerSpecification } from 'maplibre-gl';
import type { Frame } from '../../../ground/types.ts';
import type { LandScores } from '../../../placement/lie-of-the-land.ts';
import { followLie } from '../../actions/lie.ts';
import { fontNames } from '../fonts.ts';
import { type MapHost, nothing, type Overlay } from '../host.ts';
import { type LieStep, lieSteps } from './lie-steps.ts';

const areaSource = 'lie-areas';
const lineSource = 'lie-lines';

export function lie(host: MapHost): Overlay {
  /** What is drawn now; a newer picture overtakes one whose shapes are still being fetched. */
  let drawn: LandScores | null = null;
  let round = 0;
  const draw = async (scores: LandScores | null) => {
    const mine = ++round;
    if (!scores) return put(host, nothing, nothing);
    const shapes = await import('./lie-shapes.ts');
    const { frame } = host;
    if (mine !== round || !frame) return;
    const areas = shapes.lieAreas(
      scores,
      lieSteps(host.ink).map(({ from }) => from),
    );
    const contours = scores.coarse === 1 ? shapes.lieContours(scores, areas) : [];
    put(host, areaFeatures(areas, frame), contourFeatures(contours, frame));
  };
  return {
    update(state, before) {
      followLie(host.store);
      const on = state.ground === 'lie';
      const scores = on ? (state.posts.lie?.scores ?? null) : null;
      const repaint = !before || state.theme !== before.theme;
      if (scores !== drawn || !before) {
        drawn = scores;
        void draw(scores);
      }
      if (repaint || on !== (before.ground === 'lie'))
        for (const layer of layers(host)) host.layer(layer, layer.type === 'symbol' ? 'name' : 'photo');
    },
  };
}

function put(host: MapHost, areas: FeatureCollection, lines: FeatureCollection): void {
  host.source(areaSource, areas);
  host.source(lineSource, lines);
  for (const layer of layers(host)) host.layer(layer, layer.type === 'symbol' ? 'name' : 'photo');
}

function areaFeatures(
  areas: readonly { from: number; polygons: readonly (readonly (readonly { x: number; y: number }[])[])[] }[],
  frame: Frame,
): FeatureCollection {
  const features = areas.map(
    ({ from, polygons }): Feature => ({
      type: 'Feature',
      geometry: {
        type: 'MultiPolygon',
        coordinates: polygons.map((rings) => rings.map((ring) => ring.map((p) => [...frame.toLonLat(p)]))),
      },
      properties: { from },
    }),
  );
  return { type: 'FeatureCollection', features };
}

function contourFeatures(
  contours: readonly { value: number; line: readonly { x: number; y: number }[] }[],
  frame: Frame,
): FeatureCollection {
  const features = contours.map(
    ({ value, line }): Feature => ({
      type: 'Feature',
      geometry: { type: 'LineString', coordinates: line.map((p) => [...frame.toLonLat(p)]) },
      properties: { value: String(value) },
    }),
  );
  return { type: 'FeatureCollection', features };
}

function layers(host: MapHost): LayerSpecification[] {
  const { ink } = host;
  const steps = lieSteps(ink);
  return [
    ...steps.map(
      ({ from, color }: LieStep): LayerSpecification => ({
        id: `lie-${from}`,
        type: 'fill',
        source: areaSource,
        filter: ['==', ['get', 'from'], from],
        paint: { 'fill-color': color },
      }),
    ),
    {
      id: 'lie-contour',
      type: 'line',
      source: lineSource,
      paint: { 'line-color': ink.sky, 'line-width': 1 },
    },
    {
      id: 'lie-value',
      type: 'symbol',
      source: lineSource,
      layout: {
        'symbol-placement': 'line',
        'symbol-spacing': 280,
        'text-field': ['get', 'value'],
        'text-font': [fontNames.fontBold],
        'text-size': 12.5,
        'text-max-angle': 40,
      },
      paint: { 'text-color': ink.ink, 'text-halo-color': ink.halo, 'text-halo-width': 1.6 },
    },
  ];
}
