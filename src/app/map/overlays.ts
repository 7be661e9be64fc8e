/** What the program draws over the land, bottom first. A new overlay: its file in `overlays/` and its line here. */
import { drawing } from './drawing/drawing.ts';
import type { MapHost, Overlay } from './host.ts';
import { boxes } from './overlays/boxes.ts';
import { hand } from './overlays/hand.ts';
import { leftOut } from './overlays/left-out.ts';
import { lie } from './overlays/lie.ts';
import { outcomes } from './overlays/outcomes.ts';
import { pictureTool } from './overlays/picture-tool.ts';
import { pictures } from './overlays/pictures.ts';
import { reasons } from './overlays/reasons.ts';
import { round } from './overlays/round.ts';

const makers: readonly ((host: MapHost) => Overlay)[] = [
  pictures,
  lie,
  leftOut,
  reasons,
  round,
  outcomes,
  boxes,
  hand,
  drawing,
  pictureTool,
];

/** One of each, for one map. */
export function makeOverlays(host: MapHost): Overlay[] {
  return makers.map((make) => make(host));
}
