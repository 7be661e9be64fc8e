/** What decided the chosen box: its disc, spacing ring, nearest woods and brush, facing wedge, perch, and posts too close to it. */
import type { Feature, FeatureCollection } from 'geojson';
import type { LayerSpecification } from 'maplibre-gl';
import { lengthText } from '../../../criteria/units.ts';
import { destination } from '../../../geometry/point.ts';
import type { PlannedBox } from '../../../plan-types.ts';
import { onceAFrame } from '../../once-a-frame.ts';
import { shownPlan } from '../../shown-plan.ts';
import type { AppState } from '../../state.ts';
import { boxByNumber } from '../box-look.ts';
import { fontNames } from '../fonts.ts';
import { pixelsPerMetre22 } from '../ground-scale.ts';
import { type MapHost, nothing, type Overlay } from '../host.ts';
import { chosenNumber } from './boxes.ts';
import { type ReasonShape, reasonShapes } from './reason-shapes.ts';

const source = 'reasons';

export function reasons(host: MapHost): Overlay {
  // Under the hand only the shapes change: once a picture, and not before the last ones are in the map.
  const follow = onceAFrame(
    () => host.map.getSource(source) && host.source(source, featuresOf(host)),
    () => !host.map.getSource(source) || host.map.isSourceLoaded(source),
  );
  return {
    update(state, before) {
      const same =
        before &&
        state.plan === before.plan &&
        state.selection === before.selection &&
        state.theme === before.theme &&
        sameCard(state, before) &&
        state.posts.nudge === before.posts.nudge &&
        state.units === before.units;
      if (same) return;
      if (before && state.posts.hand && before.posts.hand) {
        follow();
        return;
      }
      host.source(source, featuresOf(host));
      for (const layer of layers(host)) host.layer(layer, 'thing');
      for (const layer of wordLayers(host)) host.layer(layer, 'name');
    },
  };
}

/** Whether the hand is empty in both, or holds the same card. */
function sameCard({ posts: { hand } }: AppState, { posts: { hand: before } }: AppState): boolean {
  return hand === before || (hand?.card === before?.card && hand?.cardAt === before?.cardAt);
}

function featuresOf(host: MapHost): FeatureCollection {
  const { state } = host.store;
  const plan = shownPlan(state);
  const box = boxByNumber(plan, chosenNumber(state));
  if (!box || !plan || !state.planOf || !host.frame) return nothing;
  const { frame } = host;
  // What was left out because of the box where it stood says nothing while it moves.
  const settled = state.posts.hand ? { ...plan, leftOut: [] } : plan;
  const shapes = [...reasonShapes(box, settled, state.planOf, state.words), ...nudgeShapes(host, box)];
  const features = shapes.map((shape): Feature => {
    const line = shape.points.map((p) => [...frame.toLonLat(p)]);
    const geometry: Feature['geometry'] =
      shape.as === 'area'
        ? { type: 'Polygon', coordinates: [line] }
        : shape.as === 'place'
          ? { type: 'Point', coordinates: line[0] ?? [] }
          : { type: 'LineString', coordinates: line };
    return { type: 'Feature', geometry, properties: { role: shape.role, words: shape.words ?? '' } };
  });
  return { type: 'FeatureCollection', features };
}

/** The better place near the box, on a stem. Where it would hide under the disc it is pushed out, with the true distance written on it. */
function nudgeShapes(host: MapHost, box: PlannedBox): ReasonShape[] {
  const { posts, units } = host.store.state;
  if (posts.hand || posts.nudge?.post !== box.post || posts.nudge.from !== box.at || !posts.nudge.best) return [];
  const { bearing, metres } = posts.nudge.best;
  const at = destination(box.at, bearing, Math.max(metres, clearOfDisc / pixelsPerMetre(host, box)));
  return [
    { as: 'line', role: 'nudge', points: [box.at, at] },
    { as: 'place', role: 'nudge-end', points: [at], words: lengthText(metres, units) },
  ];
}

/** px from the middle of a disc that its beak and ring do not reach. */
const clearOfDisc = 40;

function pixelsPerMetre(host: MapHost, box: PlannedBox): number {
  return pixelsPerMetre22(box.position[1]) * 2 ** (host.map.getZoom() - 22);
}

function layers(host: MapHost): LayerSpecification[] {
  const { ink } = host;
  const line = (role: string, color: string, width: number, dash?: number[], halo = 3): LayerSpecification[] => [
    {
      id: `reasons-${role}-halo`,
      type: 'line',
      source,
      filter: ['==', ['get', 'role'], role],
      layout: { 'line-cap': 'round' },
      paint: { 'line-color': ink.halo, 'line-width': width + halo, 'line-opacity': 0.85 },
    },
    {
      id: `reasons-${role}`,
      type: 'line',
      source,
      filter: ['==', ['get', 'role'], role],
      paint: { 'line-color': color, 'line-width': width, ...(dash ? { 'line-dasharray': dash } : {}) },
    },
  ];
  const fill = (role: string, color: string, opacity: number): LayerSpecification => ({
    id: `reasons-${role}-fill`,
    type: 'fill',
    source,
    filter: ['==', ['get', 'role'], role],
    paint: { 'fill-color': color, 'fill-opacity': opacity },
  });
  const dot = (role: string, color: string): LayerSpecification => ({
    id: `reasons-${role}-dot`,
    type: 'circle',
    source,
    filter: ['==', ['get', 'role'], `${role}-end`],
    paint: { 'circle-radius': 3.5, 'circle-color': color, 'circle-stroke-color': ink.halo, 'circle-stroke-width': 1.5 },
  });
  return [
    fill('disc', ink.paper, 0.16),
    ...line('disc', ink.ink, 1.4, [1.2, 1.6]),
    ...line('ring', ink.ink, 1.2, [6, 5]),
    fill('wedge', ink.sky, 0.2),
    ...line('wedge', ink.sky, 1.5, undefined, 2),
    ...line('close', ink.rust, 2, [3, 2.2]),
    ...line('woods', ink.ink, 1.8),
    ...line('brush', ink.rust, 1.8),
    ...line('perch', ink.ink, 2.2),
    ...line('nudge', ink.sky, 2),
    dot('woods', ink.ink),
    dot('brush', ink.rust),
    dot('close', ink.raised),
    {
      id: 'reasons-nudge-dot',
      type: 'circle',
      source,
      filter: ['==', ['get', 'role'], 'nudge-end'],
      paint: {
        'circle-radius': 6,
        'circle-color': ink.raised,
        'circle-stroke-color': ink.sky,
        'circle-stroke-width': 2.5,
      },
    },
  ];
}

function wordLayers(host: MapHost): LayerSpecification[] {
  const { ink } = host;
  const words = (role: string, color: string, along: boolean): LayerSpecification => ({
    id: `reasons-${role}-words`,
    type: 'symbol',
    source,
    filter: ['all', ['==', ['get', 'role'], role], ['!=', ['get', 'words'], '']],
    layout: {
      'text-field': ['get', 'words'],
      'text-font': [along ? fontNames.fontName : fontNames.fontText],
      'text-size': 13.5,
      'text-padding': 2,
      // The nudge is what can be done next: its figure is shown whatever else is there.
      'text-allow-overlap': role === 'nudge-end',
      ...(along
        ? { 'symbol-placement': 'line', 'symbol-spacing': 600, 'text-max-angle': 35, 'text-offset': [0, 0.9] }
        : {
            'text-variable-anchor': ['left', 'right', 'top', 'bottom', 'top-left', 'bottom-right'],
            'text-radial-offset': 0.7,
          }),
    },
    paint: { 'text-color': color, 'text-halo-color': ink.halo, 'text-halo-width': 2 },
  });
  return [
    words('ring', ink.ink, true),
    words('disc-end', ink.ink, false),
    words('close-end', ink.rust, false),
    words('close-mid', ink.rust, false),
    words('nudge-end', ink.sky, false),
    words('brush-end', ink.rust, false),
    words('woods-end', ink.ink, false),
  ];
}
