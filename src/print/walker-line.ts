/** A walker's line on paper, from the same table as on the screen (layers/walkers.json). */
import { hollowCore, walkerLook, walkerPrint } from '../../layers/walkers.ts';
import type { Spot } from './clip.ts';
import { type Item, path } from './display.ts';
import { linePath } from './land.ts';

/** Dashes of a short sample, as a share of those on the map: a pattern is known by more than one of them. */
export const swatchDash = 0.55;

/** The ink on white paper of a walker, from 1. */
export function walkerInk(walker: number): string {
  return walkerPrint.inks[walkerLook(walker).ink];
}

/** The line in its pattern, its dashes `closer` times as long; a hollow one has a white core that breaks where it breaks. */
export function walkerLine(points: readonly Spot[], walker: number, closer = 1): Item[] {
  const { pattern, hollow } = walkerLook(walker);
  const shape = linePath(points);
  // A hollow line is drawn wider, so that two edges and a core find room.
  const width = pattern.width * walkerPrint.scale * (hollow ? 1.6 : 1);
  const unit = pattern.width * walkerPrint.scale;
  const dash = pattern.dash?.map((part) => part * unit * (hollow ? 1.3 : 1) * closer);
  const line = path(shape, { stroke: { width, color: walkerInk(walker), dash, round: true } });
  return hollow
    ? [line, path(shape, { stroke: { width: width * hollowCore, color: '#ffffff', dash, round: true } })]
    : [line];
}
