/** What an overlay may use: the map, the store, and short ways to add sources, layers and pictures. */
import type { FeatureCollection } from 'geojson';
import type { GeoJSONSource, LayerSpecification, Map as MapLibre, PaddingOptions } from 'maplibre-gl';
import type { Point } from '../../geometry/point.ts';
import type { Frame } from '../../ground/types.ts';
import type { LonLat } from '../../site/types.ts';
import type { AppState } from '../state.ts';
import type { Store } from '../store.ts';
import { type Ink, themes } from '../theme.ts';
import type { Picture } from './draw-parts.ts';
import { slotTop } from './style.ts';

/** A click or key on the map: px from the map's top left corner, and where that is. */
export interface MapPress {
  readonly x: number;
  readonly y: number;
  readonly at: LonLat;
}

/** Something the program draws over the land. One file each in `overlays/`. */
export interface Overlay {
  /** Called once at the start and after every change of the store (also of the theme). */
  update(state: AppState, before: AppState | null): void;
  /** Asked on a click, topmost overlay first; true when the click was for it. */
  press?(press: MapPress): boolean;
  remove?(): void;
}

/** More things than this are not compared (ours): it would take as long as the painting it may save. */
const mostCompared = 3000;

/** Whether two collections draw the same. */
export function sameData(a: FeatureCollection | undefined, b: FeatureCollection): boolean {
  if (a === b) return true;
  if (!a || a.features.length !== b.features.length || b.features.length > mostCompared) return false;
  return a.features.every((feature, i) => JSON.stringify(feature) === JSON.stringify(b.features[i]));
}

export class MapHost {
  readonly map: MapLibre;
  readonly store: Store;
  /** Sets the frame of the open site; null without a site. */
  frame: Frame | null = null;

  constructor(map: MapLibre, store: Store) {
    this.map = map;
    this.store = store;
  }

  get ink(): Ink {
    return themes[this.store.state.theme];
  }

  #covered: PaddingOptions = { left: 0, top: 0, right: 0, bottom: 0 };
  #own: PaddingOptions | null = null;

  /** px at the window's edges that its panels cover: what is fitted or flown to keeps clear of them. An overlay's own go before. */
  pad(covered: PaddingOptions): void {
    this.#covered = covered;
    if (!this.#own) this.map.setPadding(covered);
  }

  /** The same for an overlay with a frame of its own; null gives the window's back. */
  padOwn(own: PaddingOptions | null): void {
    if (own === this.#own) return;
    this.#own = own;
    this.map.setPadding(own ?? this.#covered);
  }

  /** What was given last, by source and by layer: given again it needs no new picture of the map. */
  readonly #data = new Map<string, FeatureCollection>();
  readonly #looks = new Map<string, string>();

  /** Makes the source when it is not there, else changes its data. */
  source(id: string, data: FeatureCollection): void {
    const source = this.map.getSource(id) as GeoJSONSource | undefined;
    if (!source) this.map.addSource(id, { type: 'geojson', data, tolerance: 0.2 });
    else if (!sameData(this.#data.get(id), data)) source.setData(data);
    this.#data.set(id, data);
  }

  /** Adds a layer at the top of a slot, or replaces paint and layout of the one that is there. */
  layer(spec: LayerSpecification, slot: string): void {
    const look = JSON.stringify([spec.paint, spec.layout]);
    if (!this.map.getLayer(spec.id)) this.map.addLayer(spec, slotTop(slot));
    else if (this.#looks.get(spec.id) !== look)
      for (const part of ['paint', 'layout'] as const)
        for (const [key, value] of Object.entries(spec[part] ?? {})) setProperty(this.map, spec.id, part, key, value);
    this.#looks.set(spec.id, look);
  }

  /** Adds or replaces a picture. */
  picture(name: string, { data, ratio }: Picture): void {
    const old = this.map.getImage(name);
    if (old && old.data.width === data.width && old.data.height === data.height) this.map.updateImage(name, data);
    else {
      if (old) this.map.removeImage(name);
      this.map.addImage(name, data, { pixelRatio: ratio });
    }
  }

  /** Meters of the site's frame → [lon, lat]; null without a site. */
  toLonLat(point: Point): LonLat | null {
    return this.frame?.toLonLat(point) ?? null;
  }
}

/** A feature collection of nothing. */
export const nothing: FeatureCollection = { type: 'FeatureCollection', features: [] };

/** Sets a paint or layout property by a name that comes from data. */
export function setProperty(map: MapLibre, layer: string, part: 'paint' | 'layout', key: string, value: unknown): void {
  if (part === 'paint') map.setPaintProperty(layer, key as never, value as never);
  else map.setLayoutProperty(layer, key as never, value as never);
}
