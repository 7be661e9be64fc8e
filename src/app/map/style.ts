/** The map's style from the layer files: no tile server, no glyph server, nothing fetched but our own fonts. */
import type { LayerSpecification, StyleSpecification } from 'maplibre-gl';
import { order, subjects } from '../../../layers/all.ts';
import type { LayerRow } from '../../../layers/types.ts';
import { themes } from '../theme.ts';
import { fontFaces } from './fonts.ts';
import { type Look, resolveLayer } from './look.ts';

/** Id of the source that holds the site. */
export const landSource = 'land';

/** Ids of empty background layers between the slots: an overlay of the program puts its layers before one of them. */
export function slotTop(slot: string): string {
  return `slot:${slot}`;
}

/** The layers of all subjects in drawing order, with the slot marks between. */
export function landLayers(look: Look): LayerSpecification[] {
  const rows = subjects.flatMap((subject) => subject.layers.map((row) => resolveLayer(subject, row, look)));
  return order.slots.flatMap((slot) => [
    ...rows.filter((row) => row.slot === slot).map(toLayer),
    {
      id: slotTop(slot),
      type: 'background',
      paint: { 'background-opacity': 0 },
      layout: { visibility: 'none' },
    } as LayerSpecification,
  ]);
}

function toLayer({ slot: _, ...row }: LayerRow): LayerSpecification {
  return { ...row, source: landSource } as unknown as LayerSpecification;
}

/** The whole style, with an empty site. */
export function makeStyle(look: Look, base: string): StyleSpecification {
  return {
    version: 8,
    // Without this each change of color or opacity is painted again and again for 300 ms.
    transition: { duration: 0, delay: 0 },
    sources: {
      [landSource]: { type: 'geojson', data: { type: 'FeatureCollection', features: [] }, tolerance: 0.2, maxzoom: 18 },
    },
    'font-faces': fontFaces(base),
    layers: [
      { id: 'page', type: 'background', paint: { 'background-color': themes[look.theme].paper } },
      { id: slotTop('photo'), type: 'background', paint: { 'background-opacity': 0 }, layout: { visibility: 'none' } },
      ...landLayers(look),
    ],
  } as StyleSpecification;
}

/** What differs between two looks of the same layers: `[layer, 'paint' or 'layout', property, value]`. */
export function restyle(before: Look, after: Look): [string, 'paint' | 'layout', string, unknown][] {
  const out: [string, 'paint' | 'layout', string, unknown][] = [
    ['page', 'paint', 'background-color', themes[after.theme].paper],
  ];
  const old = new Map(landLayers(before).map((layer) => [layer.id, layer]));
  for (const layer of landLayers(after))
    for (const part of ['paint', 'layout'] as const) {
      const was = (old.get(layer.id)?.[part] ?? {}) as Record<string, unknown>;
      for (const [key, value] of Object.entries(layer[part] ?? {}))
        if (JSON.stringify(was[key]) !== JSON.stringify(value)) out.push([layer.id, part, key, value]);
    }
  return out;
}
