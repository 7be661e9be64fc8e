/** What the drawing hand needs to know of the pointer beside its strokes. */
import type { Map as MapLibre } from 'maplibre-gl';

/** Where the hand went down last, px, and which pointer it was. */
export interface Down {
  readonly x: number;
  readonly y: number;
  readonly pointer: number;
}

export interface Heard {
  /** Before every stroke: a finger or a mouse, and whether Alt lets go of corners. */
  seen(touch: boolean, free: boolean): void;
  down(at: Down): void;
  /** The system took the pointer away. */
  lost(): void;
  /** The pointer left the map. */
  left(): void;
  zoomed(): void;
}

/** Starts listening; the answer stops it. */
export function listen(map: MapLibre, heard: Heard): () => void {
  const canvas = map.getCanvasContainer();
  const stop = new AbortController();
  const { signal } = stop;
  const seen = ({ pointerType, altKey }: PointerEvent) => heard.seen(pointerType === 'touch', altKey);
  const down = (event: PointerEvent) => {
    const box = canvas.getBoundingClientRect();
    heard.down({ x: event.clientX - box.x, y: event.clientY - box.y, pointer: event.pointerId });
  };
  canvas.addEventListener('pointermove', seen, { signal, capture: true });
  canvas.addEventListener('pointerdown', seen, { signal, capture: true });
  canvas.addEventListener('pointerdown', down, { signal, capture: true });
  canvas.addEventListener('pointercancel', () => heard.lost(), { signal });
  canvas.addEventListener('pointerleave', () => heard.left(), { signal });
  const zoomed = () => heard.zoomed();
  map.on('zoomend', zoomed);
  return () => {
    stop.abort();
    map.off('zoomend', zoomed);
  };
}
