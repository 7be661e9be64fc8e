/** The map: one MapLibre map, the land from the layer files, and the overlays of the program. */
import { html, unsafeCSS } from 'lit';
import { customElement, query, state } from 'lit/decorators.js';
import { Map as MapLibre, type MapMouseEvent } from 'maplibre-gl';
import maplibreStyle from 'maplibre-gl/dist/maplibre-gl.css?inline';
import { subjects } from '../../../layers/all.ts';
import type { Site } from '../../site/types.ts';
import { say } from '../actions/say.ts';
import type { AppState } from '../state.ts';
import { StoreElement } from '../store-element.ts';
import { siteBounds } from './bounds.ts';
import { iconPicture, subjectPicture } from './draw-parts.ts';
import { frameOf } from './frame.ts';
import { MapHost, type Overlay, setProperty } from './host.ts';
import { landFeatures } from './land-source.ts';
import { type Look, pictureName } from './look.ts';
import { mapStyle } from './map-style.ts';
import { lieSource } from './overlays/lie-steps.ts';
import { makeOverlays } from './overlays.ts';
import { landSource, makeStyle, restyle } from './style.ts';
import './worker.ts';

/** Room the notebook and the slips take, px on each side. */
export interface Padding {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Device pixels a px in the pictures of patterns and icons: sharp on every screen (ours). */
const pictureRatio = 2;

@customElement('mp-map')
export class MapView extends StoreElement {
  static override styles = [unsafeCSS(maplibreStyle), mapStyle];

  @query('.map') private holder!: HTMLElement;
  @state() private broken = false;
  host: MapHost | null = null;
  #padding: Padding = { left: 0, top: 0, right: 0, bottom: 0 };
  #overlays: Overlay[] = [];
  #look: Look | null = null;
  #shown: Site | null = null;
  #observer: ResizeObserver | null = null;

  /** Keeps what is fitted or flown to clear of the notebook. */
  set padding(padding: Padding) {
    this.#padding = padding;
    this.host?.pad({ ...padding });
  }

  get padding(): Padding {
    return this.#padding;
  }

  protected override render() {
    return html`<div class="map" part="map"></div>
      ${this.broken ? html`<p class="plain">${this.words.shell.noWebGl}</p>` : null}`;
  }

  protected override firstUpdated(): void {
    try {
      this.#start();
    } catch {
      this.broken = true;
    }
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#observer?.disconnect();
    for (const overlay of this.#overlays) overlay.remove?.();
    this.#overlays = [];
    this.host?.map.remove();
    this.host = null;
  }

  protected override changed(state: AppState, before: AppState): void {
    if (this.#overlays.length > 0) this.#show(state, before);
  }

  /** Shows the whole site. `quick` without flight. */
  fit(quick = false): void {
    const box = this.state.site && siteBounds(this.state.site);
    if (!box || !this.host) return;
    const still = quick || matchMedia('(prefers-reduced-motion: reduce)').matches;
    this.host.map.fitBounds(box, { padding: 24, maxZoom: 20, duration: still ? 0 : 300 });
  }

  #start(): void {
    const look = lookOf(this.state);
    const map = new MapLibre({
      container: this.holder,
      style: makeStyle(look, document.baseURI),
      center: [0, 20],
      zoom: 1,
      maxZoom: 22,
      attributionControl: false,
      dragRotate: false,
      pitchWithRotate: false,
      touchPitch: false,
      fadeDuration: 0,
      renderWorldCopies: false,
      locale: { 'Map.Title': this.words.shell.mapLabel(this.state.site?.settings.name ?? '') },
    });
    map.touchZoomRotate.disableRotation();
    map.keyboard.disableRotation();
    map.on('error', (event) => this.#trouble(event.error));
    this.#look = look;
    this.host = new MapHost(map, this.store);
    this.host.pad({ ...this.#padding });
    map.once('load', () => this.#begin(map));
    this.#observer = new ResizeObserver(() => map.resize());
    this.#observer.observe(this.holder);
  }

  #begin(map: MapLibre): void {
    const { host } = this;
    if (!host) return;
    this.#pictures();
    this.#overlays = makeOverlays(host);
    map.on('click', (event) => this.#press(event));
    map.on('sourcedata', ({ sourceId }) => {
      if (sourceId === lieSource && map.isSourceLoaded(lieSource)) this.#restyle(lookOf(this.state), true);
    });
    this.#show(this.state, null);
    map.once('idle', () => this.dispatchEvent(new CustomEvent('mp-map-ready', { bubbles: true, composed: true })));
    map.triggerRepaint();
  }

  #show(state: AppState, before: AppState | null): void {
    this.#restyle(lookOf(state));
    if (state.site !== before?.site || !before) this.#showSite(state.site, state.siteId !== before?.siteId);
    for (const overlay of this.#overlays) overlay.update(state, before);
    if (state.site !== before?.site || state.plan !== before?.plan) this.#label(state);
  }

  /** What the map says of itself to who cannot see it; the lists hold the rest. */
  #label({ site, plan, words }: AppState): void {
    const { mapLabel, mapSummary } = words.shell;
    const areas = site?.features.filter((f) => f.geometry?.type.endsWith('Polygon')).length ?? 0;
    const label = `${mapLabel(site?.settings.name ?? '')}. ${mapSummary(areas, plan?.boxes.length ?? 0)}`;
    this.host?.map.getCanvas().setAttribute('aria-label', label);
  }

  #showSite(site: Site | null, fresh: boolean): void {
    const { host } = this;
    if (!host || site === this.#shown) return;
    this.#shown = site;
    host.frame = site ? frameOf(site) : null;
    host.source(landSource, site ? landFeatures(site) : { type: 'FeatureCollection', features: [] });
    if (fresh) this.fit(true);
  }

  /** The land steps back when the picture of its lie is in the map, so that both are painted at once. */
  #restyle(look: Look, lieThere = false): void {
    const before = this.#look;
    const map = this.host?.map;
    if (!map || !before || (before.theme === look.theme && before.ground === look.ground)) return;
    if (look.ground === 'lie' && before.theme === look.theme && !lieThere) return;
    this.#look = look;
    if (before.theme !== look.theme) this.#pictures();
    for (const [layer, part, key, value] of restyle(before, look)) setProperty(map, layer, part, key, value);
  }

  #pictures(): void {
    for (const subject of subjects) {
      const picture = subjectPicture(subject, this.state.theme, pictureRatio);
      if (picture) this.host?.picture(pictureName(subject.id), picture);
      for (const [name, icon] of Object.entries(subject.icons ?? {}))
        this.host?.picture(pictureName(subject.id, name), iconPicture(subject, icon, this.state.theme, pictureRatio));
    }
  }

  #press({ point, lngLat }: MapMouseEvent): void {
    const press = { x: point.x, y: point.y, at: [lngLat.lng, lngLat.lat] as [number, number] };
    [...this.#overlays].reverse().some((overlay) => overlay.press?.(press));
  }

  #trouble(error: unknown): void {
    const what = error instanceof Error ? error.message : String(error);
    say(this.store, 'trouble', this.words.shell.mapTrouble(what));
  }
}

function lookOf(state: AppState): Look {
  return { theme: state.theme, ground: state.ground };
}

declare global {
  interface HTMLElementTagNameMap {
    'mp-map': MapView;
  }
}
