/** The one file that knows terra-draw: it turns mouse, touch and pen into presses and drags. Shapes and their drawing are ours. */
import type { Map as MapLibre } from 'maplibre-gl';
import { TerraDraw, TerraDrawExtend } from 'terra-draw';
import { TerraDrawMapLibreGLAdapter } from 'terra-draw-maplibre-gl-adapter';
import type { LonLat } from '../../../site/types.ts';

/** Where the hand is: px from the map's top left corner, and the place there. */
export interface Stroke {
  readonly x: number;
  readonly y: number;
  readonly at: LonLat;
}

/** What the hand did. A drag is ours when `take` says so (it is asked some px after the hand went down); else it moves the map. */
export interface PenEvents {
  press(stroke: Stroke): void;
  move(stroke: Stroke): void;
  take(stroke: Stroke): boolean;
  drag(stroke: Stroke): void;
  drop(stroke: Stroke): void;
}

type MouseEventOfTerra = Parameters<TerraDrawExtend.TerraDrawBaseDrawMode<never>['onClick']>[0];
type SetDraggable = (draggable: boolean) => void;

/** A mode of terra-draw that draws nothing itself and hands every stroke on. */
class HandMode extends TerraDrawExtend.TerraDrawBaseDrawMode<Record<string, never>> {
  override mode = 'hand';
  readonly #events: PenEvents;
  #ours = false;

  constructor(events: PenEvents) {
    super();
    this.#events = events;
  }

  override start(): void {
    this.setStarted();
    this.setDoubleClickToZoom(false);
  }

  override stop(): void {
    this.setDoubleClickToZoom(true);
    this.setStopped();
  }

  override cleanUp(): void {}

  override styleFeature() {
    return TerraDrawExtend.getDefaultStyling();
  }

  override onClick(event: MouseEventOfTerra): void {
    if (event.button === 'left' || event.button === 'neither') this.#events.press(strokeOf(event));
  }

  override onMouseMove(event: MouseEventOfTerra): void {
    this.#events.move(strokeOf(event));
  }

  override onDragStart(event: MouseEventOfTerra, draggable: SetDraggable): void {
    this.#ours = this.#events.take(strokeOf(event));
    if (this.#ours) draggable(false);
  }

  override onDrag(event: MouseEventOfTerra): void {
    if (this.#ours) this.#events.drag(strokeOf(event));
  }

  override onDragEnd(event: MouseEventOfTerra, draggable: SetDraggable): void {
    if (this.#ours) this.#events.drop(strokeOf(event));
    this.#ours = false;
    draggable(true);
  }
}

function strokeOf({ containerX, containerY, lng, lat }: MouseEventOfTerra): Stroke {
  return { x: containerX, y: containerY, at: [lng, lat] };
}

/** A hand that moves less than this between down and up has pressed, not dragged, px (ours: a fingertip rolls). */
const steady = 6;

/** Starts listening on a loaded map; the answer stops it. */
export function startPen(map: MapLibre, events: PenEvents): () => void {
  const adapter = new TerraDrawMapLibreGLAdapter({
    map,
    coordinatePrecision: 9,
    ignoreMismatchedPointerEvents: true,
    minPixelDragDistance: steady,
    minPixelDragDistanceDrawing: steady,
  });
  const draw = new TerraDraw({ adapter, modes: [new HandMode(events)] });
  draw.start();
  draw.setMode('hand');
  return () => draw.stop();
}
