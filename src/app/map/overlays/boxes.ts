/** The boxes of the plan. */
import type { MapHost, Overlay } from '../host.ts';

export function boxes(_host: MapHost): Overlay {
  return { update() {} };
}
