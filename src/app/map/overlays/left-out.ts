/** Posts that were left out: suggested places as small hollow dots when seen from near; the chosen one tied to the box in its way. */
import type { Feature, FeatureCollection } from 'geojson';
import type { LayerSpecification } from 'maplibre-gl';
import { birdById, isBird } from '../../../birds/index.ts';
import { spacing } from '../../../criteria/spacing.ts';
import { lengthText } from '../../../criteria/units.ts';
import { distance } from '../../../geometry/point.ts';
import type { LeftOut, Plan } from '../../../plan-types.ts';
import { select } from '../../actions/select.ts';
import type { AppState } from '../../state.ts';
import { boxByNumber, boxSizes } from '../box-look.ts';
import { fontNames } from '../fonts.ts';
import { type MapHost, nothing, type Overlay } from '../host.ts';

const source = 'left-out';
const chosenSource = 'left-out-chosen';

/** From this zoom suggested places are drawn and can be pressed (ours: nearer, dots 25 m apart keep clear of each other); while their list or one of them is open, from any. */
const near = 16.2;

function dotsFrom(state: AppState): number {
  return state.posts.page === 'left' || chosenLeft(state) ? 0 : near;
}

export function leftOut(host: MapHost): Overlay {
  return {
    update(state, before) {
      const same = before && keys.every((key) => state[key] === before[key]);
      if (same && held(state) === held(before) && state.posts.page === before.posts.page) return;
      const open = state.place === 'posts';
      // The dots are many: a choice or a post in the hand leaves them as they are.
      if (!before || dotKeys.some((key) => state[key] !== before[key]))
        host.source(source, open && state.plan ? dots(host, state.plan, state) : nothing);
      host.source(chosenSource, open ? chosenFeatures(host, state) : nothing);
      for (const layer of layers(host)) host.layer(layer, layer.type === 'symbol' ? 'name' : 'thing');
      host.map.setLayerZoomRange('left-out-dots', dotsFrom(state), 24);
    },
    press(press) {
      const left = host.store.state.place === 'posts' ? leftOutAt(host, press) : null;
      if (left) select(host.store, { of: 'post', id: left.post });
      return left !== null;
    },
  };
}

/** The post in the hand: while it moves nothing changes here. */
const held = ({ posts }: AppState) => posts.hand?.post;

const keys = ['plan', 'selection', 'theme', 'place', 'site', 'units'] as const;
const dotKeys = ['plan', 'place', 'site'] as const;

/** The left-out post nearest to a press, within its target; suggested ones only where they are drawn. */
export function leftOutAt(host: MapHost, press: { readonly x: number; readonly y: number }): LeftOut | null {
  const { plan, site } = host.store.state;
  if (!plan || !site || !host.frame) return null;
  const seen = host.map.getZoom() >= dotsFrom(host.store.state);
  const drawn = new Set(site.features.map(({ id }) => id));
  let least = boxSizes.target / 2;
  let best: LeftOut | null = null;
  for (const left of plan.leftOut) {
    if (!seen && !drawn.has(left.post)) continue;
    const at = host.map.project(host.frame.toLonLat(left.at));
    const away = Math.hypot(at.x - press.x, at.y - press.y);
    if (away <= least) [best, least] = [left, away];
  }
  return best;
}

/** The left-out post that a pointer may take along: a drawn one, or the chosen one. Suggested dots lie so close that the map could else not be moved. */
export function takableAt(host: MapHost, press: { readonly x: number; readonly y: number }): LeftOut | null {
  const left = leftOutAt(host, press);
  if (!left) return null;
  const { site, selection } = host.store.state;
  const chosen = selection?.of === 'post' && selection.id === left.post;
  return chosen || site?.features.some(({ id }) => id === left.post) ? left : null;
}

/** The chosen post that is no box, or null. */
export function chosenLeft({ plan, selection }: AppState): LeftOut | null {
  return selection?.of === 'post' ? (plan?.leftOut.find((left) => left.post === selection.id) ?? null) : null;
}

function dots(host: MapHost, plan: Plan, { site }: AppState): FeatureCollection {
  const drawn = new Set(site?.features.map(({ id }) => id) ?? []);
  const features = plan.leftOut
    .filter(({ post }) => !drawn.has(post))
    .flatMap(({ at }): Feature[] => {
      const position = host.toLonLat(at);
      return position
        ? [{ type: 'Feature', geometry: { type: 'Point', coordinates: [...position] }, properties: {} }]
        : [];
    });
  return { type: 'FeatureCollection', features };
}

function chosenFeatures(host: MapHost, state: AppState): FeatureCollection {
  const left = chosenLeft(state);
  const { frame } = host;
  if (!left || !frame || state.posts.hand) return nothing;
  const here = [...frame.toLonLat(left.at)];
  const ring: Feature = {
    type: 'Feature',
    geometry: { type: 'Point', coordinates: here },
    properties: { role: 'ring' },
  };
  const box = boxByNumber(state.plan, left.becauseOf);
  if (!box) return { type: 'FeatureCollection', features: [ring] };
  const line: Feature = {
    type: 'Feature',
    geometry: { type: 'LineString', coordinates: [here, [...box.position]] },
    properties: { role: 'way' },
  };
  const words: Feature = { ...ring, properties: { role: 'words', words: wayWords(left, box.bird, box.at, state) } };
  return { type: 'FeatureCollection', features: [ring, line, words] };
}

/** "78 m, needs 91" where spacing stands in the way, else the distance alone. */
function wayWords(left: LeftOut, bird: string, at: LeftOut['at'], { site, units, words }: AppState): string {
  const apart = distance(left.at, at);
  const guide = isBird(bird) ? birdById(bird) : null;
  const needed =
    site && guide
      ? spacing({ at: left.at, bird: guide, pairedWithOther: false }, { at, bird: guide }, site.settings).needed
      : 0;
  if (left.code !== 'too-close' || needed <= apart) return lengthText(apart, units);
  return words.posts.tooClose(lengthText(apart, units, needed), lengthText(needed, units, needed));
}

function layers(host: MapHost): LayerSpecification[] {
  const { ink } = host;
  return [
    {
      id: 'left-out-dots',
      type: 'circle',
      source,
      paint: {
        'circle-radius': ['interpolate', ['linear'], ['zoom'], 13.5, 0.8, 16, 2.4, 18, 4],
        'circle-color': ink.raised,
        'circle-opacity': 0.7,
        'circle-stroke-color': ink.line,
        'circle-stroke-width': ['interpolate', ['linear'], ['zoom'], 13.5, 0.6, 16, 1.2],
      },
    },
    {
      id: 'left-out-way-halo',
      type: 'line',
      source: chosenSource,
      filter: ['==', ['get', 'role'], 'way'],
      paint: { 'line-color': ink.halo, 'line-width': 5 },
    },
    {
      id: 'left-out-way',
      type: 'line',
      source: chosenSource,
      filter: ['==', ['get', 'role'], 'way'],
      paint: { 'line-color': ink.rust, 'line-width': 2, 'line-dasharray': [3, 2.2] },
    },
    {
      id: 'left-out-ring',
      type: 'circle',
      source: chosenSource,
      filter: ['==', ['get', 'role'], 'ring'],
      paint: {
        'circle-radius': 9,
        'circle-color': ink.raised,
        'circle-stroke-color': ink.sky,
        'circle-stroke-width': 3,
      },
    },
    {
      id: 'left-out-words',
      type: 'symbol',
      source: chosenSource,
      filter: ['==', ['get', 'role'], 'words'],
      layout: {
        'text-field': ['get', 'words'],
        'text-font': [fontNames.fontText],
        'text-size': 13.5,
        'text-variable-anchor': ['left', 'right', 'top', 'bottom'],
        'text-radial-offset': 1.1,
      },
      paint: { 'text-color': ink.rust, 'text-halo-color': ink.halo, 'text-halo-width': 2 },
    },
  ];
}
