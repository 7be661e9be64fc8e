/** The part of the map that nothing covers, as ground: where a picture is laid down first. */
import type { Map as MapLibre } from 'maplibre-gl';
import { makeFrame } from '../../../ground/frame.ts';
import type { LonLat } from '../../../site/types.ts';

/** `width` and `height` in metres. */
export interface FreeSpot {
  readonly middle: LonLat;
  readonly width: number;
  readonly height: number;
}

/** Room left around, so that all four corners can be taken hold of (ours). */
const share = 0.75;

/** The map's own padding says what is covered: the notebook, the slips, an open panel. */
export function freeSpot(map: MapLibre): FreeSpot {
  const { clientWidth, clientHeight } = map.getContainer();
  const { left, right, top, bottom } = map.getPadding();
  const sides = {
    left: left ?? 0,
    right: clientWidth - (right ?? 0),
    top: top ?? 0,
    bottom: clientHeight - (bottom ?? 0),
  };
  const middle = map.unproject([(sides.left + sides.right) / 2, (sides.top + sides.bottom) / 2]);
  const corner = map.unproject([sides.right, sides.top]);
  const at: LonLat = [middle.lng, middle.lat];
  const { x, y } = makeFrame(at).toPlane([corner.lng, corner.lat]);
  return { middle: at, width: Math.max(1, 2 * x * share), height: Math.max(1, 2 * y * share) };
}
