/** The Land place's hand on the map: chooses things, puts corners, drags handles, and draws what is in progress. */
import type { Feature } from 'geojson';
import { addVertex } from '../../../edits/add-vertex.ts';
import type { Chain } from '../../../edits/chains.ts';
import type { LonLat, SiteFeature } from '../../../site/types.ts';
import { putCorner } from '../../actions/land-draw.ts';
import { endTrial, tryLand } from '../../actions/land-live.ts';
import { pressOffer } from '../../actions/land-offer.ts';
import { change, choose, chooseCorner, setLand } from '../../actions/land-state.ts';
import { pickOther } from '../../actions/land-tools.ts';
import { warnOfPlace } from '../../actions/land-warn.ts';
import { onceAFrame } from '../../once-a-frame.ts';
import type { AppState } from '../../state.ts';
import type { MapHost } from '../host.ts';
import { Cross } from './cross.ts';
import { deskLayers, deskSource } from './desk-layers.ts';
import { type Drag, dragMarks, editOf, wholeHandle } from './drag.ts';
import { edgesOf, type Handle, handleAt, handleMarks, handlesOf } from './handles.ts';
import { type Down, listen } from './listen.ts';
import { offerMarks, previewMarks } from './offers.ts';
import { type Stroke, startPen } from './pen.ts';
import { draws, shape, sketch } from './sketch.ts';
import { degreesPerPixel, reachPixels, type Snapped, snap, snapChains } from './snap.ts';
import { covers, thingAt } from './thing-at.ts';
import { lookAt, showOffers } from './view.ts';

/** Half the target of a handle, px (44 with a mouse, 56 with a finger). */
const targets = { mouse: 22, touch: 28 } as const;

export class Desk {
  readonly #host: MapHost;
  readonly #stop: () => void;
  readonly #tidy: () => void;
  #hand: LonLat | null = null;
  #snapped: Snapped | null = null;
  #drag: Drag | null = null;
  #free = false;
  #touch = matchMedia('(pointer: coarse)').matches;
  #chains: { readonly of: unknown; readonly without: string | null; readonly chains: readonly Chain[] } | null = null;
  #cross: Cross | null = null;
  /** Where the hand went down last, px, and which pointer it was. */
  #down: Down | null = null;

  /** At most one drawing a frame. */
  readonly #later = onceAFrame(() => {
    if (this.#host.store.state.place === 'land') this.#draw();
  });

  constructor(host: MapHost) {
    this.#host = host;
    this.#stop = startPen(host.map, {
      press: (stroke) => this.#press(stroke),
      move: (stroke) => this.#move(stroke),
      take: (stroke) => this.#take(stroke),
      drag: (stroke) => this.#dragTo(stroke),
      drop: () => this.#drop(),
    });
    this.#tidy = listen(host.map, {
      seen: (touch, free) => {
        this.#touch = touch;
        this.#free = free;
      },
      down: (at) => {
        this.#down = at;
      },
      lost: () => this.#letGo(),
      left: () => (this.#cross ? undefined : this.point(null)),
      zoomed: this.#later,
    });
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
    if (state.land.look && state.land.look !== before?.land.look) lookAt(this.#host.map, state.land.look);
    if (state.land.offers !== before?.land.offers) showOffers(this.#host.map, state.land.offers);
    this.#setCross(state.land.cross);
    if (!state.land.tool) this.#hand = null;
    this.#host.map.getCanvas().style.cursor = state.land.tool ? 'crosshair' : '';
    this.#draw();
  }

  remove(): void {
    this.#setCross(false);
    this.#stop();
    this.#tidy();
    this.#host.map.getCanvas().style.cursor = '';
    this.#host.source(deskSource, { type: 'FeatureCollection', features: [] });
  }

  /** Where the hand is shown: mouse or cross. */
  point(at: LonLat | null): void {
    this.#hand = at === null ? null : this.#pull(at).at;
    this.#later();
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
    const handle = this.#handleAt(this.#down ?? stroke) ?? this.#wholeAt(chosen, stroke);
    if (!handle) return false;
    this.#hold();
    this.#drag = { id: chosen.id, handle, edit: null, at: handle.at };
    return true;
  }

  /** A mouse inside the chosen area takes it whole; a finger there moves the map, and the card has arrows for it. */
  #wholeAt(chosen: SiteFeature, { at }: Stroke): Handle | null {
    const { map } = this.#host;
    const down = this.#down ? map.unproject([this.#down.x, this.#down.y]) : null;
    const from: LonLat = down ? [down.lng, down.lat] : at;
    return this.#touch || !covers(chosen, from) ? null : wholeHandle(from);
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
    endTrial(this.#host.store, false);
    this.#host.map.dragPan.enable();
    setLand(this.#host.store, { trouble: null });
    this.#later();
  }

  #dragTo({ at }: Stroke): void {
    const { site, land } = this.#host.store.state;
    const drag = this.#drag;
    if (!drag || !site) return;
    // A thing moved whole is not pulled: the hand holds it anywhere.
    drag.at = drag.handle.is === 'whole' ? at : this.#pull(at, drag.id).at;
    drag.edit = editOf(site, drag, land.shared);
    if ('site' in drag.edit) tryLand(this.#host.store, drag.edit.site, drag.at);
    const refused = 'refused' in drag.edit ? drag.edit.refused : null;
    if (refused !== (land.trouble?.sentence ?? null))
      setLand(this.#host.store, { trouble: refused === null ? null : { sentence: refused, at: null } });
    this.#later();
  }

  /** Lets go: what was refused goes back where it was, with the reason. */
  #drop(): void {
    const { store } = this.#host;
    const drag = this.#drag;
    this.#drag = null;
    if (!drag?.edit) return;
    const { chain, corner } = drag.handle.corner;
    endTrial(store, 'site' in drag.edit);
    const done = change(store, drag.edit);
    if (done && drag.handle.is === 'point') warnOfPlace(store, drag.id);
    if (done && (drag.handle.is === 'corner' || drag.handle.is === 'middle'))
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
    if (this.#drag) return dragMarks(this.#drag, chosen, this.#host.store.state.site);
    const { tool, corner } = this.#host.store.state.land;
    const handles = tool ? [] : handleMarks(handlesOf(chosen, this.#project), corner);
    return [...edgesOf(chosen, 'edge'), ...handles];
  }
}
