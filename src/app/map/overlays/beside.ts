/** What differs between the plan on the map and a kept one: the kept one's own boxes as numbered squares, this one's own boxes in a dashed ring. */
import type { Feature, FeatureCollection } from 'geojson';
import type { LayerSpecification } from 'maplibre-gl';
import { differences } from '../../../plan/kept.ts';
import type { PostsState } from '../../posts-state.ts';
import type { AppState } from '../../state.ts';
import { sizeStops } from '../box-look.ts';
import { paintPicture } from '../draw-parts.ts';
import { fontNames } from '../fonts.ts';
import { type MapHost, nothing, type Overlay } from '../host.ts';

const source = 'beside';
const side = 26;
const square = (theme: string) => `beside-square:${theme}`;
const ring = (theme: string) => `beside-ring:${theme}`;
const keys = ['plan', 'site', 'place', 'theme'] as const;

export function beside(host: MapHost): Overlay {
  const painted = new Set<string>();
  let drawn = false;
  return {
    update(state, before) {
      if (before && keys.every((key) => state[key] === before[key]) && samePage(state.posts, before.posts)) return;
      const shown = state.place === 'posts' && state.posts.page === 'kept' && state.posts.beside !== null;
      if (!shown && !drawn) return;
      drawn = shown;
      paint(host, state.theme, painted);
      host.source(source, shown ? features(state) : nothing);
      for (const layer of layers(host, state.theme)) host.layer(layer, layer.id === 'beside-now' ? 'thing' : 'post');
    },
  };
}

function samePage(a: PostsState, b: PostsState): boolean {
  return a.page === b.page && a.beside === b.beside;
}

function features({ plan, site, posts }: AppState): FeatureCollection {
  const kept = site?.settings.plans.find(({ name }) => name === posts.beside);
  if (!plan || !kept) return nothing;
  const { onlyKept, onlyNow } = differences(kept, plan.boxes);
  const place = (at: readonly number[], properties: Record<string, unknown>): Feature => ({
    type: 'Feature',
    geometry: { type: 'Point', coordinates: [...at] },
    properties,
  });
  return {
    type: 'FeatureCollection',
    features: [
      ...onlyNow.map((box) => place(box.position, { role: 'now' })),
      ...onlyKept.map((box) => place(box.at, { role: 'kept', number: String(box.number) })),
    ],
  };
}

function paint(host: MapHost, theme: string, painted: Set<string>): void {
  if (painted.has(theme)) return;
  painted.add(theme);
  const { ink, raised, halo, sky } = host.ink;
  host.picture(
    square(theme),
    paintPicture(side + 8, side + 8, 2, (context) => {
      context.fillStyle = halo;
      context.fillRect(1, 1, side + 6, side + 6);
      context.fillStyle = raised;
      context.fillRect(4, 4, side, side);
      context.strokeStyle = sky;
      context.lineWidth = 3;
      context.strokeRect(4, 4, side, side);
    }),
  );
  host.picture(
    ring(theme),
    paintPicture(56, 56, 2, (context) => {
      const circle = new Path2D();
      circle.arc(28, 28, 25, 0, 2 * Math.PI);
      context.strokeStyle = halo;
      context.lineWidth = 5.5;
      context.stroke(circle);
      context.setLineDash([6, 4]);
      context.strokeStyle = ink;
      context.lineWidth = 2.5;
      context.stroke(circle);
    }),
  );
}

function layers({ ink }: MapHost, theme: string): LayerSpecification[] {
  const of = (role: string) => ['==', ['get', 'role'], role] as never;
  const size = ['interpolate', ['linear'], ['zoom'], ...sizeStops.flat()] as never;
  const always = { 'icon-allow-overlap': true, 'icon-ignore-placement': true, 'icon-size': size };
  return [
    {
      id: 'beside-now',
      type: 'symbol',
      source,
      filter: of('now'),
      layout: { 'icon-image': ring(theme), ...always },
    },
    {
      id: 'beside-kept',
      type: 'symbol',
      source,
      filter: of('kept'),
      layout: {
        'icon-image': square(theme),
        ...always,
        'text-field': ['get', 'number'],
        'text-font': [fontNames.fontBold],
        'text-size': [
          'interpolate',
          ['linear'],
          ['zoom'],
          ...sizeStops.flatMap(([zoom, by]) => [zoom, 14 * by]),
        ] as never,
        'text-allow-overlap': true,
      },
      paint: { 'text-color': ink.ink },
    },
  ];
}
