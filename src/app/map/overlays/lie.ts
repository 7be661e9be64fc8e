/** The lie of the land as a layer under the lines of the land, with the figures on its contours. */
import type { Feature, FeatureCollection } from 'geojson';
import type { LayerSpecification } from 'maplibre-gl';
import type { Frame } from '../../../ground/types.ts';
import type { LandScores } from '../../../placement/lie-of-the-land.ts';
import { followLie } from '../../actions/lie.ts';
import { onceAFrame } from '../../once-a-frame.ts';
import { fontNames } from '../fonts.ts';
import { type MapHost, nothing, type Overlay } from '../host.ts';
import { type LieStep, lieSource, lieSteps } from './lie-steps.ts';

export function lie(host: MapHost): Overlay {
  /** What is to be drawn; a newer picture overtakes one that waits for its turn. */
  let wanted: LandScores | null = null;
  const draw = async () => {
    if (!wanted) return put(host, nothing);
    const shapes = await loadShapes();
    const { frame } = host;
    if (!wanted || !frame) return put(host, nothing);
    const areas = shapes.lieAreas(
      wanted,
      lieSteps(host.ink).map(({ from }) => from),
    );
    const contours = wanted.coarse === 1 ? shapes.lieContours(wanted, areas) : [];
    put(host, {
      type: 'FeatureCollection',
      features: [...areaFeatures(areas, frame), ...contourFeatures(contours, frame)],
    });
  };
  // Not before the last picture is in the map: each costs a picture of the whole map, and a finer one may already be there.
  const follow = onceAFrame(
    () => void draw(),
    () => !host.map.getSource(lieSource) || host.map.isSourceLoaded(lieSource),
  );
  return {
    update(state, before) {
      followLie(host.store);
      const on = state.ground === 'lie';
      if (on) void loadShapes();
      const scores = on ? (state.posts.lie?.scores ?? null) : null;
      if (scores !== wanted) follow();
      wanted = scores;
      if (!before) put(host, nothing);
      else if (state.theme !== before.theme) paint(host);
    },
  };
}

/** Fetched with the first look at the lie of the land, while the engine works on it. */
const loadShapes = () => import('./lie-shapes.ts');

function put(host: MapHost, data: FeatureCollection): void {
  host.source(lieSource, data);
  paint(host);
}

function paint(host: MapHost): void {
  for (const layer of layers(host)) host.layer(layer, layer.type === 'symbol' ? 'name' : 'photo');
}

function areaFeatures(
  areas: readonly { from: number; polygons: readonly (readonly (readonly { x: number; y: number }[])[])[] }[],
  frame: Frame,
): Feature[] {
  return areas.map(
    ({ from, polygons }): Feature => ({
      type: 'Feature',
      geometry: {
        type: 'MultiPolygon',
        coordinates: polygons.map((rings) => rings.map((ring) => ring.map((p) => [...frame.toLonLat(p)]))),
      },
      properties: { from },
    }),
  );
}

function contourFeatures(
  contours: readonly { value: number; line: readonly { x: number; y: number }[] }[],
  frame: Frame,
): Feature[] {
  return contours.map(
    ({ value, line }): Feature => ({
      type: 'Feature',
      geometry: { type: 'LineString', coordinates: line.map((p) => [...frame.toLonLat(p)]) },
      properties: { value: String(value) },
    }),
  );
}

function layers(host: MapHost): LayerSpecification[] {
  const { ink } = host;
  const steps = lieSteps(ink);
  return [
    ...steps.map(
      ({ from, color }: LieStep): LayerSpecification => ({
        id: `lie-${from}`,
        type: 'fill',
        source: lieSource,
        filter: ['==', ['get', 'from'], from],
        paint: { 'fill-color': color },
      }),
    ),
    {
      id: 'lie-contour',
      type: 'line',
      source: lieSource,
      filter: ['has', 'value'],
      paint: { 'line-color': ink.sky, 'line-width': 1 },
    },
    {
      id: 'lie-value',
      type: 'symbol',
      source: lieSource,
      filter: ['has', 'value'],
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
