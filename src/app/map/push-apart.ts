/** Boxes of a pair stand a few steps apart: on the screen they are pushed apart so that both can be read. */
import type { Plan, PlannedBox } from '../../plan-types.ts';
import { boxSizes } from './box-look.ts';
import { pixelsPerMetre22 } from './ground-scale.ts';

/** Zooms at which the push is worked out; between them the map goes straight (good to 2 px: checked in the tests). */
export const pushZooms = [12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22] as const;

export interface Push {
  /** px right and down at a zoom. */
  at(zoom: number): [number, number];
}

const none: Push = { at: () => [0, 0] };

/** How far a box is drawn from where it stands. */
export function pushOf(box: PlannedBox, plan: Plan): Push {
  const partner = plan.boxes.find((b) => b.number === box.pairedWith);
  if (!partner) return none;
  const dx = box.at.x - partner.at.x;
  const dy = box.at.y - partner.at.y;
  const metres = Math.hypot(dx, dy);
  const [ux, uy] = metres > 0.01 ? [dx / metres, -dy / metres] : [box.number < partner.number ? -1 : 1, 0];
  const pixels22 = metres * pixelsPerMetre22(box.position[1]);
  return {
    at(zoom) {
      const push = Math.max(0, (boxSizes.apart - pixels22 * 2 ** (zoom - 22)) / 2);
      return [ux * push, uy * push];
    },
  };
}

/** The `icon-offset` expression that reads what `pushProperties` wrote. */
export const pushExpression = [
  'interpolate',
  ['linear'],
  ['zoom'],
  ...pushZooms.flatMap((zoom) => [zoom, ['get', `push${zoom}`]]),
] as const;

/** Properties of a map feature for the expression. */
export function pushProperties(push: Push): Record<string, [number, number]> {
  return Object.fromEntries(pushZooms.map((zoom) => [`push${zoom}`, push.at(zoom)]));
}
