/** The Land place's hand on the map: chooses things, puts corners, drags handles, and draws what is in progress. */
import type { Feature } from 'geojson';
import { addVertex } from '../../../edits/add-vertex.ts';
import { type Chain, chainsOf, mapChains } from '../../../edits/chains.ts';
import type { Edit } from '../../../edits/edit.ts';
import { movePost } from '../../../edits/move-post.ts';
import { moveVertex } from '../../../edits/move-vertex.ts';
import type { LonLat, SiteFeature } from '../../../site/types.ts';
import { putCorner } from '../../actions/land-draw.ts';
import { pressOffer } from '../../actions/land-offer.ts';
import { change, choose, chooseCorner, setLand } from '../../actions/land-state.ts';
import { pickOther } from '../../actions/land-tools.ts';
import { warnOfPlace } from '../../actions/land-warn.ts';
import type { Offer } from '../../land-state.ts';
import type { AppState } from '../../state.ts';
import type { MapHost } from '../host.ts';
import { Cross } from './cross.ts';
import { outlineCrossing } from './crossing.ts';
import { deskLayers, deskSource } from './desk-layers.ts';
import { edgesOf, type Handle, handleAt, handleMarks, handlesOf } from './handles.ts';
import { offerMarks, previewMarks } from './offers.ts';
import { type Stroke, startPen } from './pen.ts';
import { draws, shape, sketch } from './sketch.ts';
import { degreesPerPixel, reachPixels, type Snapped, snap, snapChains } from './snap.ts';
import { thingAt } from './thing-at.ts';

/** Half the target of a handle, px (44 with a mouse, 56 with a finger). */
const targets = { mouse: 22, touch: 28 } as const;

interface Drag {
  readonly id: string;
  readonly handle: Handle;
  /** What letting go now would do. */
  edit: Edit | null;
  at: LonLat;
}

export class Desk {
  readonly #host: MapHost;
  readonly #stop: () => void;
  readonly #tidy: (() => void)[] = [];
  #hand: LonLat | null = null;
  #snapped: Snapped | null = null;
  #drag: Drag | null = null;
  #free = false;
  #touch = matchMedia('(pointer: coarse)').matches;
  #chains: { readonly of: unknown; readonly without: string | null; readonly chains: readonly Chain[] } | null = null;
  #waiting = false;
  #cross: Cross | null = null;
  /** Where the hand went down last, px, and which pointer it was. */
  #down: { readonly x: number; readonly y: number; readonly pointer: number } | null = null;

  constructor(host: MapHost) {
    this.#host = host;
    this.#stop = startPen(host.map, {
      press: (stroke) => this.#press(stroke),
      move: (stroke) => this.#move(stroke),
      take: (stroke) => this.#take(stroke),
      drag: (stroke) => this.#dragTo(stroke),
      drop: () => this.#drop(),
    });
    this.#listen();
  }

  /** Draws anew; called after every change of the store while Land is open. */
  update(state: AppState, before: AppState | null): void {
    if (
      before &&
      ['site', 'selection', 'land', 'theme', 'units', 'place'].every(
        (key) => state[key as keyof AppState] === before[key as keyof AppState],
      )
    )
      return;
    if (state.land.look && state.land.look !== before?.land.look) this.#lookAt(state.land.look);
    if (state.land.offers !== before?.land.offers) this.#showOffers(state.land.offers);
    this.#setCross(state.land.cross);
    if (!state.land.tool) this.#hand = null;
    this.#host.map.getCanvas().style.cursor = state.land.tool ? 'crosshair' : '';
    this.#draw();
  }

  remove(): void {
    this.#setCross(false);
    this.#stop();
    for (const tidy of this.#tidy) tidy();
    this.#host.map.getCanvas().style.cursor = '';
    this.#host.source(deskSource, { type: 'FeatureCollection', features: [] });
  }

  /** Where the hand is shown: mouse or cross. */
  point(at: LonLat | null): void {
    this.#hand = at === null ? null : this.#pull(at).at;
    this.#later();
  }

  /** Offered places out of sight are brought into sight; the map stays where it is when all can be seen. */
  #showOffers(offers: readonly Offer[]): void {
    const { map } = this.#host;
    const seen = map.getBounds();
    if (offers.every(({ at }) => seen.contains(at))) return;
    const [lons, lats] = [offers.map(({ at }) => at[0]), offers.map(({ at }) => at[1])];
    const zoom = Math.min(map.getZoom(), 19.5);
    const box: [number, number, number, number] = [
      Math.min(...lons),
      Math.min(...lats),
      Math.max(...lons),
      Math.max(...lats),
    ];
    map.fitBounds(box, { padding: 60, maxZoom: zoom, duration: 0 });
  }

  #lookAt([west, south, east, north]: readonly [number, number, number, number]): void {
    const still = matchMedia('(prefers-reduced-motion: reduce)').matches;
    this.#host.map.fitBounds([west, south, east, north], { padding: 60, maxZoom: 19.5, duration: still ? 0 : 300 });
  }

  #setCross(wanted: boolean): void {
    if (!wanted) {
      this.#cross?.remove();
      this.#cross = null;
    } else if (this.#cross) this.#cross.paint();
    else
      this.#cross = new Cross(this.#host, {
        point: (at) => this.point(at),
        put: (at, x, y) => this.#press({ x, y, at }),
      });
  }

  #listen(): void {
    const { map } = this.#host;
    const canvas = map.getCanvasContainer();
    const seen = (event: PointerEvent) => {
      this.#touch = event.pointerType === 'touch';
      this.#free = event.altKey;
    };
    const down = (event: PointerEvent) => {
      const box = canvas.getBoundingClientRect();
      this.#down = { x: event.clientX - box.x, y: event.clientY - box.y, pointer: event.pointerId };
    };
    const lost = () => this.#letGo();
    const left = () => (this.#cross ? undefined : this.point(null));
    const zoomed = () => this.#later();
    canvas.addEventListener('pointermove', seen, true);
    canvas.addEventListener('pointerdown', seen, true);
    canvas.addEventListener('pointerdown', down, true);
    canvas.addEventListener('pointercancel', lost);
    canvas.addEventListener('pointerleave', left);
    map.on('zoomend', zoomed);
    this.#tidy.push(() => {
      canvas.removeEventListener('pointermove', seen, true);
      canvas.removeEventListener('pointerdown', seen, true);
      canvas.removeEventListener('pointerdown', down, true);
      canvas.removeEventListener('pointercancel', lost);
      canvas.removeEventListener('pointerleave', left);
      map.off('zoomend', zoomed);
    });
  }

  #press({ x, y, at }: Stroke): void {
    const { store } = this.#host;
    const { site, land, pictures } = store.state;
    // A press that ties a place of a picture to the ground chooses nothing of the land.
    if (!site || pictures.tool) return;
    if (pressOffer(store, { x, y }, this.#project)) return;
    if (draws(land.tool)) {
      putCorner(store, this.#ownCorner({ x, y }) ?? this.#pull(at).at);
      if (this.#touch && !this.#cross) this.#hand = null;
      return;
    }
    const handle = this.#handleAt({ x, y });
    if (handle && !land.tool) {
      this.#pressHandle(handle);
      return;
    }
    const thing = thingAt(
      site,
      { x, y, at },
      this.#touch ? { point: 28, line: 16 } : { point: 18, line: 8 },
      this.#project,
    );
    if (land.tool) pickOther(store, thing?.id ?? null);
    else choose(store, thing?.id ?? null);
  }

  #pressHandle(handle: Handle): void {
    const { store } = this.#host;
    if (handle.is === 'corner') {
      chooseCorner(store, handle.corner);
      return;
    }
    const chosen = this.#chosen();
    if (handle.is === 'middle' && chosen) this.#addCorner(chosen, handle, handle.at);
  }

  #addCorner(chosen: SiteFeature, { corner }: Handle, at: LonLat): void {
    const { store } = this.#host;
    const { site, land } = store.state;
    if (site && change(store, addVertex(site, chosen.id, corner, at, { shared: land.shared })))
      chooseCorner(store, { chain: corner.chain, corner: corner.corner + 1 });
  }

  #move({ at }: Stroke): void {
    if (this.#touch || !draws(this.#host.store.state.land.tool)) return;
    this.point(at);
  }

  #take(stroke: Stroke): boolean {
    const chosen = this.#chosen();
    const { land, pictures } = this.#host.store.state;
    if (land.tool || pictures.tool || !chosen) return false;
    const handle = this.#handleAt(this.#down ?? stroke);
    if (!handle) return false;
    this.#hold();
    this.#drag = { id: chosen.id, handle, edit: null, at: handle.at };
    return true;
  }

  /** The hand's moves come to the map also over the notebook. */
  #hold(): void {
    try {
      if (this.#down) this.#host.map.getCanvas().setPointerCapture(this.#down.pointer);
    } catch {
      // The pointer is already gone: the drag ends with the next event.
    }
  }

  /** The system took the hand away in mid-drag: nothing was changed. */
  #letGo(): void {
    if (!this.#drag) return;
    this.#drag = null;
    this.#host.map.dragPan.enable();
    setLand(this.#host.store, { trouble: null });
    this.#later();
  }

  #dragTo({ at }: Stroke): void {
    const { site, land } = this.#host.store.state;
    const drag = this.#drag;
    if (!drag || !site) return;
    drag.at = this.#pull(at, drag.id).at;
    drag.edit = this.#editOf(drag);
    const refused = 'refused' in drag.edit ? drag.edit.refused : null;
    if (refused !== (land.trouble?.sentence ?? null))
      setLand(this.#host.store, { trouble: refused === null ? null : { sentence: refused, at: null } });
    this.#later();
  }

  #editOf({ id, handle, at }: Drag): Edit {
    const { site, land } = this.#host.store.state;
    if (!site) throw new Error('no site is open');
    const { shared } = land;
    if (handle.is === 'point') return movePost(site, id, at);
    return handle.is === 'corner'
      ? moveVertex(site, id, handle.corner, at, { shared })
      : addVertex(site, id, handle.corner, at, { shared });
  }

  /** Lets go: what was refused goes back where it was, with the reason. */
  #drop(): void {
    const { store } = this.#host;
    const drag = this.#drag;
    this.#drag = null;
    if (!drag?.edit) return;
    const { chain, corner } = drag.handle.corner;
    const done = change(store, drag.edit);
    if (done && drag.handle.is === 'point') warnOfPlace(store, drag.id);
    if (done && drag.handle.is !== 'point')
      chooseCorner(store, { chain, corner: corner + (drag.handle.is === 'middle' ? 1 : 0) });
    this.#later();
  }

  /** The chosen thing, when it still has a place. */
  #chosen(): SiteFeature | null {
    const { site, selection } = this.#host.store.state;
    if (selection?.of !== 'feature' && selection?.of !== 'post') return null;
    return site?.features.find(({ id }) => id === selection.id) ?? null;
  }

  readonly #project = (at: LonLat) => this.#host.map.project(at);

  #handleAt(at: { x: number; y: number }): Handle | null {
    const chosen = this.#chosen();
    return (
      chosen &&
      handleAt(handlesOf(chosen, this.#project), at, this.#touch ? targets.touch : targets.mouse, this.#project)
    );
  }

  /** A press on the first or last corner put means that very corner (it finishes the shape), also with snapping off. */
  #ownCorner(press: { x: number; y: number }): LonLat | null {
    const { tool, corners } = this.#host.store.state.land;
    const own = [corners.at(-1), draws(tool) === 'outline' && corners.length > 2 ? corners[0] : undefined];
    const reach = reachPixels[this.#touch ? 'touch' : 'mouse'].own;
    return (
      own.find((at) => at && Math.hypot(this.#project(at).x - press.x, this.#project(at).y - press.y) <= reach) ?? null
    );
  }

  #pull(at: LonLat, without: string | null = null): Snapped {
    const { site, land } = this.#host.store.state;
    if (!site || !land.snap || this.#free) return { at, to: null };
    if (this.#chains?.of !== site || this.#chains.without !== without)
      this.#chains = { of: site, without, chains: snapChains(site, without) };
    const pixel = degreesPerPixel(this.#host.map.getZoom());
    const reach = reachPixels[this.#touch ? 'touch' : 'mouse'];
    const pulled = snap(at, this.#chains.chains, { corner: reach.corner * pixel, border: reach.border * pixel });
    this.#snapped = pulled.to ? pulled : null;
    return pulled;
  }

  /** At most one drawing a frame. */
  #later(): void {
    if (this.#waiting) return;
    this.#waiting = true;
    requestAnimationFrame(() => {
      this.#waiting = false;
      if (this.#host.store.state.place === 'land') this.#draw();
    });
  }

  #draw(): void {
    const { land, units } = this.#host.store.state;
    const features: Feature[] = [...this.#chosenMarks(), ...offerMarks(land.offers), ...previewMarks(land.preview)];
    if (land.tool && draws(land.tool))
      features.push(...sketch({ tool: land.tool, corners: land.corners, hand: this.#hand, units }));
    if (land.trouble?.at) features.push(shape('Point', land.trouble.at, 'crossing'));
    if (this.#snapped && (this.#drag || this.#hand)) features.push(shape('Point', this.#snapped.at, 'snap'));
    this.#host.source(deskSource, { type: 'FeatureCollection', features });
    for (const layer of deskLayers(this.#host.ink)) this.#host.layer(layer, 'post');
  }

  #chosenMarks(): Feature[] {
    const chosen = this.#chosen();
    if (!chosen) return [];
    if (this.#drag) return this.#dragMarks(this.#drag, chosen);
    const { tool, corner } = this.#host.store.state.land;
    const handles = tool ? [] : handleMarks(handlesOf(chosen, this.#project), corner);
    return [...edgesOf(chosen, 'edge'), ...handles];
  }

  /** The thing and the neighbors that follow as they would become; when refused, the outline as the hand has it, with the crossing. */
  #dragMarks({ edit, at, handle }: Drag, chosen: SiteFeature): Feature[] {
    const { site } = this.#host.store.state;
    const hand = shape('Point', at, handle.is === 'point' ? 'point' : 'chosen');
    if (edit && 'site' in edit) {
      const old = new Set(site?.features);
      return [...edit.site.features.filter((f) => !old.has(f)).flatMap((f) => edgesOf(f, 'moving')), hand];
    }
    if (handle.is === 'point' || !chosen.geometry) return [hand];
    const { chain, corner } = handle.corner;
    const drop = handle.is === 'middle' ? 0 : 1;
    const geometry = mapChains(chosen.geometry, (corners, n) =>
      n === chain ? corners.toSpliced(corner + 1 - drop, drop, at) : corners,
    );
    const crossings = chainsOf(geometry).flatMap(({ corners, closed }) => (closed ? [outlineCrossing(corners)] : []));
    const marks = crossings.flatMap((place) => (place ? [shape('Point', place, 'crossing')] : []));
    return [...edgesOf({ ...chosen, geometry }, 'moving'), hand, ...marks];
  }
}
