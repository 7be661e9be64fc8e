/** The boxes of the plan as pictures in the map, pairs tied by a bar, the score of weak ones written under them. */
import type { Feature, FeatureCollection } from 'geojson';
import type { LayerSpecification } from 'maplibre-gl';
import type { Plan, PlannedBox } from '../../../plan-types.ts';
import { select } from '../../actions/select.ts';
import type { AppState } from '../../state.ts';
import { boxLook, boxSizes, lookName, sizeStops } from '../box-look.ts';
import { boxPicture } from '../box-picture.ts';
import { paintPicture } from '../draw-parts.ts';
import { fontNames } from '../fonts.ts';
import { hideable, unlessHidden } from '../hideable.ts';
import type { MapHost, MapPress, Overlay } from '../host.ts';
import { nothing } from '../host.ts';
import { between, pushAt, pushExpression, pushesOf, pushProperties, turned } from '../push-apart.ts';

const sizeExpression = ['interpolate', ['linear'], ['zoom'], ...sizeStops.flat()];

const source = 'boxes';
const pairSource = 'pairs';
const ratio = 2;

/** Number of the chosen box, or null. */
export function chosenNumber({ selection }: Pick<AppState, 'selection'>): number | null {
  return selection?.of === 'box' ? selection.number : null;
}

export function boxes(host: MapHost): Overlay {
  const painted = new Set<string>();
  const discs = hideable(host, source);
  let drawn: Pick<AppState, 'plan' | 'selection' | 'theme'> | null = null;
  let held: string | null = null;
  const draw = ({ plan, theme, selection }: AppState) => {
    drawn = { plan, theme, selection };
    held = null;
    const chosen = chosenNumber(drawn);
    for (const box of plan?.boxes ?? []) paint(host, box, chosen, theme, painted);
    pairBar(host, theme, painted);
    host.source(pairSource, plan ? pairFeatures(plan, theme) : nothing);
    discs.put(plan ? boxFeatures(plan, chosen, theme) : nothing);
    for (const layer of layers(host)) host.layer(layer, 'post');
  };
  return {
    update(state) {
      const { plan, theme, selection } = state;
      const hand = state.posts.hand?.post ?? null;
      // A choice made by taking a box is painted when the box is put down: it would hold the hand up.
      const same = drawn?.plan === plan && drawn.theme === theme && (hand !== null || drawn.selection === selection);
      if (!same) draw(state);
      if (hand === held) return;
      held = hand;
      const place = plan?.boxes.findIndex(({ post }) => post === hand) ?? -1;
      // The box in the hand is drawn by the hand.
      if (place >= 0) discs.hide([place]);
      else discs.show();
    },
    press: (press) => {
      const box = boxAt(host, press);
      if (box) select(host.store, { of: 'box', number: box.number });
      return box !== null;
    },
  };
}

function paint(host: MapHost, box: PlannedBox, chosen: number | null, theme: string, painted: Set<string>): void {
  const look = boxLook(box, chosen);
  const name = lookName(look, theme);
  if (painted.has(name)) return;
  painted.add(name);
  host.picture(name, boxPicture(look, host.ink, ratio));
}

function pairBar(host: MapHost, theme: string, painted: Set<string>): void {
  const name = `pair:${theme}`;
  if (painted.has(name)) return;
  painted.add(name);
  const long = boxSizes.apart;
  const picture = paintPicture(12, long, ratio, (context) => {
    context.fillStyle = host.ink.halo;
    context.fillRect(0.5, 0, 11, long);
    context.fillStyle = host.ink.ink;
    context.fillRect(3, 0, 6, long);
  });
  host.picture(name, picture);
}

function boxFeatures(plan: Plan, chosen: number | null, theme: string): FeatureCollection {
  const features = plan.boxes.map((box): Feature => {
    const look = boxLook(box, chosen);
    return {
      type: 'Feature',
      geometry: { type: 'Point', coordinates: [...box.position] },
      properties: {
        picture: lookName(look, theme),
        label: look.weak && !look.selected ? String(look.score) : '',
        order: look.selected ? 1 : 0,
        paired: box.pairedWith !== null,
        ...pushProperties(pushesOf(plan).get(box.number) ?? []),
      },
    };
  });
  return { type: 'FeatureCollection', features };
}

function pairFeatures(plan: Plan, theme: string): FeatureCollection {
  const features = plan.boxes.flatMap((box): Feature[] => {
    const other = plan.boxes.find((b) => b.number === box.pairedWith);
    if (!other || other.number < box.number) return [];
    const [ax, ay] = box.position;
    const [bx, by] = other.position;
    const turn = (Math.atan2(other.at.x - box.at.x, other.at.y - box.at.y) * 180) / Math.PI;
    return [
      {
        type: 'Feature',
        geometry: { type: 'Point', coordinates: [(ax + bx) / 2, (ay + by) / 2] },
        properties: {
          picture: `pair:${theme}`,
          turn,
          ...pushProperties(
            turned(between(pushesOf(plan).get(box.number) ?? [], pushesOf(plan).get(other.number) ?? []), turn),
          ),
        },
      },
      {
        type: 'Feature',
        geometry: {
          type: 'LineString',
          coordinates: [
            [ax, ay],
            [bx, by],
          ],
        },
        properties: {},
      },
    ];
  });
  return { type: 'FeatureCollection', features };
}

function layers(host: MapHost): LayerSpecification[] {
  const { ink } = host;
  const line = (id: string, color: string, width: number): LayerSpecification => ({
    id,
    type: 'line',
    source: pairSource,
    filter: ['==', ['geometry-type'], 'LineString'],
    paint: { 'line-color': color, 'line-width': width },
  });
  return [
    line('pairs-halo', ink.halo, 11),
    line('pairs-line', ink.ink, 6),
    {
      id: 'pairs-bar',
      type: 'symbol',
      source: pairSource,
      filter: ['==', ['geometry-type'], 'Point'],
      layout: {
        'icon-image': ['get', 'picture'],
        'icon-rotate': ['get', 'turn'],
        'icon-offset': pushExpression as never,
        'icon-size': sizeExpression as never,
        'icon-allow-overlap': true,
        'icon-ignore-placement': true,
      },
    },
    {
      id: 'boxes-place',
      type: 'circle',
      source,
      filter: ['==', ['get', 'paired'], false],
      paint: {
        'circle-radius': 2.6,
        'circle-color': ink.ink,
        'circle-stroke-color': ink.halo,
        'circle-stroke-width': 1.5,
        'circle-opacity': unlessHidden(),
        'circle-stroke-opacity': unlessHidden(),
      },
    },
    {
      id: 'boxes-icon',
      type: 'symbol',
      source,
      layout: {
        'icon-image': ['get', 'picture'],
        'icon-offset': pushExpression as never,
        'icon-size': sizeExpression as never,
        'icon-allow-overlap': true,
        'icon-padding': -6,
        'symbol-sort-key': ['get', 'order'],
      },
      paint: { 'icon-opacity': unlessHidden() },
    },
    {
      id: 'boxes-weak',
      type: 'symbol',
      source,
      filter: ['!=', ['get', 'label'], ''],
      minzoom: 14,
      layout: {
        'text-field': ['get', 'label'],
        'text-font': [fontNames.fontBold],
        'text-size': 13,
        'text-variable-anchor': ['top', 'bottom', 'left', 'right'],
        'text-radial-offset': 1.6,
        'text-padding': 1,
      },
      paint: {
        'text-color': ink.rust,
        'text-halo-color': ink.halo,
        'text-halo-width': 2,
        'text-opacity': unlessHidden(),
      },
    },
  ];
}

/** Where a box is drawn on the screen. */
export function drawnAt(host: MapHost, box: PlannedBox, plan: Plan): { x: number; y: number } {
  const at = host.map.project(box.position);
  if (host.store.state.posts.hand?.post === box.post) return { x: at.x, y: at.y };
  const [dx, dy] = pushAt(pushesOf(plan).get(box.number) ?? [], host.map.getZoom());
  return { x: at.x + dx, y: at.y + dy };
}

/** The box nearest to a press, within its target. */
export function boxAt(host: MapHost, press: Pick<MapPress, 'x' | 'y'>): PlannedBox | null {
  const { plan } = host.store.state;
  if (!plan) return null;
  const reach = (matchMedia('(pointer: coarse)').matches ? 56 : boxSizes.target) / 2;
  let best: PlannedBox | null = null;
  let least = reach;
  for (const box of plan.boxes) {
    const at = drawnAt(host, box, plan);
    const away = Math.hypot(at.x - press.x, at.y - press.y);
    if (away <= least) [best, least] = [box, away];
  }
  return best;
}
