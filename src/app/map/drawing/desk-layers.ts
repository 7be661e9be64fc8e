/** How the shape in progress, the chosen thing and its handles are painted: ink and sky over a halo, rust only with a ring and words. */
import type { LayerSpecification } from 'maplibre-gl';
import type { Ink } from '../../theme.ts';
import { fontNames } from '../fonts.ts';

export const deskSource = 'desk';

const is = (...roles: string[]) => ['in', ['get', 'role'], ['literal', roles]] as never;

function line(id: string, roles: string[], color: string, width: number, dash?: number[]): LayerSpecification {
  return {
    id: `desk-${id}`,
    type: 'line',
    source: deskSource,
    filter: is(...roles),
    layout: { 'line-cap': dash ? 'butt' : 'round', 'line-join': 'round' },
    paint: { 'line-color': color, 'line-width': width, ...(dash ? { 'line-dasharray': dash } : {}) },
  };
}

/** Dots only on points: a line's corners are no dots. */
function dot(
  id: string,
  roles: string[],
  radius: number,
  fill: string,
  rim: string,
  width: number,
): LayerSpecification {
  return {
    id: `desk-${id}`,
    type: 'circle',
    source: deskSource,
    filter: ['all', ['==', ['geometry-type'], 'Point'], is(...roles)],
    paint: { 'circle-radius': radius, 'circle-color': fill, 'circle-stroke-color': rim, 'circle-stroke-width': width },
  };
}

/** Bottom first. */
export function deskLayers(ink: Ink): LayerSpecification[] {
  return [
    {
      id: 'desk-ground',
      type: 'fill',
      source: deskSource,
      filter: is('ground', 'near'),
      paint: { 'fill-color': ink.sky, 'fill-opacity': 0.18 },
    },
    line('halo', ['edge', 'way', 'moving', 'closing', 'rim', 'preview'], ink.halo, 6),
    line('edge', ['edge'], ink.sky, 3),
    line('way', ['way', 'moving', 'rim'], ink.ink, 2.25),
    line('closing', ['closing'], ink.ink, 1.5, [3, 2]),
    line('preview', ['preview'], ink.sky, 2.5, [3, 1.5]),
    dot('preview-point', ['preview'], 6, ink.raised, ink.sky, 2.5),
    dot('middle', ['middle'], 5, ink.raised, ink.sky, 2),
    dot('corner', ['corner', 'put'], 6.5, ink.raised, ink.ink, 2),
    dot('point', ['point'], 12, 'rgba(0,0,0,0)', ink.sky, 3),
    dot('chosen', ['chosen'], 8.5, ink.sky, ink.halo, 3),
    dot('snap', ['snap'], 11, 'rgba(0,0,0,0)', ink.sky, 2.5),
    dot('crossing-halo', ['crossing'], 14, 'rgba(0,0,0,0)', ink.halo, 6),
    dot('crossing', ['crossing'], 14, 'rgba(0,0,0,0)', ink.rust, 3),
    dot('offer', ['offer'], 13, ink.raised, ink.ink, 2.5),
    {
      id: 'desk-words',
      type: 'symbol',
      source: deskSource,
      filter: is('label', 'offer'),
      layout: {
        'text-field': ['get', 'text'],
        'text-font': [fontNames.fontBold],
        'text-size': 15,
        'text-allow-overlap': true,
        'text-ignore-placement': true,
        'text-offset': ['case', ['==', ['get', 'role'], 'offer'], ['literal', [0, 0]], ['literal', [0, -0.9]]] as never,
      },
      paint: { 'text-color': ink.ink, 'text-halo-color': ink.halo, 'text-halo-width': 2.5 },
    },
  ];
}
