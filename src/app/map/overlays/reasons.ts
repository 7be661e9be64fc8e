/** What decided the chosen box: its disc, spacing ring, nearest woods and brush, facing wedge, perch, and posts too close to it. */
import type { Feature, FeatureCollection } from 'geojson';
import type { LayerSpecification } from 'maplibre-gl';
import { lengthText } from '../../../criteria/units.ts';
import { destination, type Point, samePoint } from '../../../geometry/point.ts';
import type { PlannedBox } from '../../../plan-types.ts';
import { onceAFrame } from '../../once-a-frame.ts';
import { shownPlan } from '../../shown-plan.ts';
import type { AppState } from '../../state.ts';
import { boxByNumber } from '../box-look.ts';
import { fontNames } from '../fonts.ts';
import { pixelsPerMetre22 } from '../ground-scale.ts';
import { hideable, unlessHidden } from '../hideable.ts';
import { type MapHost, nothing, type Overlay } from '../host.ts';
import { whenDrawn } from '../when-drawn.ts';
import { chosenNumber } from './boxes.ts';
import type { HandSketch } from './hand-sketch.ts';
import { dotLooks, haloOpacity, lineLooks, wordHalo, wordLooks, wordSize } from './reason-looks.ts';
import { type ReasonShape, reasonShapes } from './reason-shapes.ts';

const source = 'reasons';

export function reasons(host: MapHost): Overlay {
  const sketch = sketchUnderHand(host);
  const resting = hideable(host, source);
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
      if (state.posts.hand) {
        if (!before?.posts.hand) resting.hide();
        sketch.follow();
        return;
      }
      const shapes = shapesOf(host);
      if (shapes) sketch.load();
      resting.put(shapes ? featuresOf(shapes, host) : nothing);
      for (const layer of layers(host)) host.layer(layer, 'thing');
      for (const layer of wordLayers(host)) host.layer(layer, 'name');
      if (before?.posts.hand) sketch.putAway();
    },
    remove: () => sketch.remove(),
  };
}

/** While the hand holds the box its reasons are drawn over the map, once a picture; the map takes them back when the hand is empty. */
function sketchUnderHand(host: MapHost) {
  let sketch: HandSketch | null = null;
  let loading = false;
  let forget = () => {};
  const follow = onceAFrame(() => {
    const shapes = host.store.state.posts.hand && shapesOf(host);
    if (shapes) sketch?.show(shapes);
  });
  return {
    /** Fetched with the first box that is chosen: it is there when a hand takes it. */
    async load() {
      if (loading) return;
      loading = true;
      const part = await import('./hand-sketch.ts');
      sketch = new part.HandSketch(host);
    },
    follow() {
      forget();
      follow();
    },
    putAway() {
      forget = whenDrawn(host.map, [source], () => sketch?.show(null));
    },
    remove() {
      forget();
      sketch?.remove();
    },
  };
}

/** Whether the hand is empty in both, or holds the same card. */
function sameCard({ posts: { hand } }: AppState, { posts: { hand: before } }: AppState): boolean {
  return hand === before || (hand?.card === before?.card && hand?.cardAt === before?.cardAt);
}

interface Reasons {
  readonly shapes: readonly ReasonShape[];
  /** Where the box is, meters of the site's frame. */
  readonly middle: Point;
}

/** Of the chosen box; null without one. */
function shapesOf(host: MapHost): Reasons | null {
  const { state } = host.store;
  const plan = shownPlan(state);
  const box = boxByNumber(plan, chosenNumber(state));
  if (!box || !plan || !state.planOf) return null;
  // What was left out because of the box where it stood says nothing while it moves.
  const settled = state.posts.hand ? { ...plan, leftOut: [] } : plan;
  const shapes = [...reasonShapes(box, settled, state.planOf, state.words), ...nudgeShapes(host, box)];
  return { shapes, middle: box.at };
}

function featuresOf({ shapes }: Reasons, { frame }: MapHost): FeatureCollection {
  if (!frame) return nothing;
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
  if (posts.hand || posts.nudge?.post !== box.post || !samePoint(posts.nudge.from, box.at) || !posts.nudge.best)
    return [];
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

function layers({ ink }: MapHost): LayerSpecification[] {
  const of = (role: string) => ['==', ['get', 'role'], role] as never;
  return [
    ...lineLooks.flatMap(({ role, color, width, dash, halo, fill }): LayerSpecification[] => [
      ...(fill
        ? [
            {
              id: `reasons-${role}-fill`,
              type: 'fill' as const,
              source,
              filter: of(role),
              paint: { 'fill-color': ink[fill.color], 'fill-opacity': unlessHidden(fill.opacity) },
            },
          ]
        : []),
      {
        id: `reasons-${role}-halo`,
        type: 'line',
        source,
        filter: of(role),
        layout: { 'line-cap': 'round' },
        paint: { 'line-color': ink.halo, 'line-width': width + halo, 'line-opacity': unlessHidden(haloOpacity) },
      },
      {
        id: `reasons-${role}`,
        type: 'line',
        source,
        filter: of(role),
        paint: {
          'line-color': ink[color],
          'line-width': width,
          'line-opacity': unlessHidden(),
          ...(dash ? { 'line-dasharray': [...dash] } : {}),
        },
      },
    ]),
    ...dotLooks.map(
      ({ role, color, rim, radius, rimWidth }): LayerSpecification => ({
        id: `reasons-${role}-dot`,
        type: 'circle',
        source,
        filter: of(role),
        paint: {
          'circle-radius': radius,
          'circle-color': ink[color],
          'circle-stroke-color': ink[rim],
          'circle-stroke-width': rimWidth,
          'circle-opacity': unlessHidden(),
          'circle-stroke-opacity': unlessHidden(),
        },
      }),
    ),
  ];
}

function wordLayers({ ink }: MapHost): LayerSpecification[] {
  return wordLooks.map(
    ({ role, color, along }): LayerSpecification => ({
      id: `reasons-${role}-words`,
      type: 'symbol',
      source,
      filter: ['all', ['==', ['get', 'role'], role], ['!=', ['get', 'words'], '']],
      layout: {
        'text-field': ['get', 'words'],
        'text-font': [along ? fontNames.fontName : fontNames.fontText],
        'text-size': wordSize,
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
      paint: {
        'text-color': ink[color],
        'text-halo-color': ink.halo,
        'text-halo-width': wordHalo,
        'text-opacity': unlessHidden(),
      },
    }),
  );
}
