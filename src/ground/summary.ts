/** Figures of a whole site: how much land of each kind is drawn, and how much of the boundary's inside. */
import { type CoverKind, coverKinds, type Site } from '../site/types.ts';
import { type DrawnArea, drawnOn } from './drawn.ts';
import { makeFrame, middleOf } from './frame.ts';
import { type Layer, makeLayer } from './layer.ts';

export interface LandSummary {
  /** m² seen of each kind under the overlap rule, inside the boundary or not. */
  readonly areas: Readonly<Record<CoverKind, number>>;
  /** m² within the boundary; null when none is drawn. */
  readonly boundary: number | null;
  /** Share of the boundary's inside that is drawn, 0–1; null when no boundary is drawn. */
  readonly mapped: number | null;
}

/** m² seen of each area of a layer (Green's theorem along its seams). */
function seenAreas({ areas, ends, left, right }: Layer): Float64Array {
  const sums = new Float64Array(areas.length);
  for (let s = 0; s < left.length; s++) {
    const half = (ends[4 * s]! * ends[4 * s + 3]! - ends[4 * s + 1]! * ends[4 * s + 2]!) / 2;
    if (left[s]! >= 0) sums[left[s]!]! += half;
    if (right[s]! >= 0) sums[right[s]!]! -= half;
  }
  return sums;
}

const total = (sums: Float64Array): number => sums.reduce((a, b) => a + b, 0);

/** Measures a whole site. */
export function landSummary(site: Site): LandSummary {
  const drawn = drawnOn(site, makeFrame(middleOf(site.features)));
  // The boundary laid under everything shows where nothing else is drawn.
  const all: readonly DrawnArea[] = [...drawn.cover, ...drawn.boundary];
  const seen = seenAreas(makeLayer(all));
  const areas = Object.fromEntries(coverKinds.map((kind) => [kind, 0])) as Record<CoverKind, number>;
  drawn.cover.forEach(({ kind }, i) => {
    areas[kind as CoverKind] += seen[i]!;
  });
  const boundary = total(seenAreas(makeLayer(drawn.boundary)));
  if (!(boundary > 0)) return { areas, boundary: null, mapped: null };
  const bare = total(seen.subarray(drawn.cover.length));
  return { areas, boundary, mapped: Math.min(1, Math.max(0, 1 - bare / boundary)) };
}
