/** What became of each box, on the map while the Season is open: a shape and a word under the box, never color alone. */
import type { Feature } from 'geojson';
import type { LayerSpecification } from 'maplibre-gl';
import { type BoxOutcomeLook, outcomeOf, outcomeWords } from '../../season-outcome.ts';
import type { AppState } from '../../state.ts';
import { paintPicture } from '../draw-parts.ts';
import { fontNames } from '../fonts.ts';
import { type MapHost, nothing, type Overlay } from '../host.ts';

const source = 'outcomes';
const size = 18;
const ratio = 2;
const shapes: readonly BoxOutcomeLook['shape'][] = ['fledged', 'failed', 'unused', 'other'];

export function outcomes(host: MapHost): Overlay {
  let painted = '';
  return {
    update(state, before) {
      if (before && same(state, before)) return;
      if (painted !== state.theme) {
        for (const shape of shapes) host.picture(`outcome:${shape}:${state.theme}`, shapePicture(host, shape));
        painted = state.theme;
      }
      host.source(source, isShown(state) ? { type: 'FeatureCollection', features: featuresOf(state) } : nothing);
      host.layer(shapeLayer, 'post');
      // Under the discs, so that the words are set after them and keep clear of them.
      host.layer(wordLayer(host), 'name');
    },
  };
}

function same(state: AppState, before: AppState): boolean {
  return (
    state.place === before.place &&
    state.theme === before.theme &&
    state.plan === before.plan &&
    state.words === before.words &&
    state.season.trail === before.season.trail
  );
}

const isShown = ({ place, season }: AppState) => place === 'season' && season.trail !== null;

function featuresOf({ plan, season, theme, words }: AppState): Feature[] {
  const byPost = new Map(plan?.boxes.map((box) => [box.post, box]));
  return season.trail!.review.boxes.flatMap((one): Feature[] => {
    const box = byPost.get(one.post);
    if (!box) return [];
    const look = outcomeOf(one);
    return [
      {
        type: 'Feature',
        geometry: { type: 'Point', coordinates: [...box.position] },
        properties: {
          picture: `outcome:${look.shape}:${theme}`,
          words: outcomeWords(look, words.season.short),
        },
      },
    ];
  });
}

function shapePicture({ ink }: MapHost, shape: BoxOutcomeLook['shape']) {
  return paintPicture(size, size, ratio, (context) => {
    const middle = size / 2;
    const disc = (radius: number) => {
      context.beginPath();
      context.arc(middle, middle, radius, 0, 2 * Math.PI);
    };
    const paint = shape === 'failed' ? ink.rust : ink.sky;
    disc(8.5);
    context.fillStyle = ink.halo;
    context.fill();
    context.lineWidth = 2;
    context.strokeStyle = shape === 'unused' ? ink.ink : paint;
    context.fillStyle = paint;
    if (shape === 'failed') {
      context.strokeRect(4, 4, 10, 10);
      context.beginPath();
      for (const [a, b] of [
        [5, 13],
        [13, 5],
      ] as const) {
        context.moveTo(5, a);
        context.lineTo(13, b);
      }
      context.stroke();
      return;
    }
    disc(5.5);
    if (shape === 'fledged') context.fill();
    context.stroke();
    if (shape !== 'other') return;
    context.beginPath();
    context.arc(middle, middle, 5.5, Math.PI / 2, 1.5 * Math.PI);
    context.fill();
  });
}

const shapeLayer: LayerSpecification = {
  id: 'outcomes',
  type: 'symbol',
  source,
  layout: {
    'icon-image': ['get', 'picture'],
    'icon-offset': [0, 27],
    'icon-allow-overlap': true,
    'icon-padding': 0,
  },
};

function wordLayer({ ink }: MapHost): LayerSpecification {
  return {
    id: 'outcome-words',
    type: 'symbol',
    source,
    layout: {
      'text-field': ['get', 'words'],
      'text-font': [fontNames.fontBold],
      'text-size': 12,
      // To the right of the shape where there is room, else to its left or under it, else the shape speaks alone.
      'text-variable-anchor-offset': ['left', [0.85, 2.1], 'right', [-0.85, 2.1], 'top', [0, 2.8]],
      'text-justify': 'auto',
      'text-padding': 2,
    },
    paint: { 'text-color': ink.ink, 'text-halo-color': ink.halo, 'text-halo-width': 2 },
  };
}
