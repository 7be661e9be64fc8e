/**
 * The layout problem with the birds taken out of it: units with a weight, kinds of unit (one a bird) with the most that are
 * wanted of each, and the metres that must lie between two kinds. Everything that chooses or checks a layout speaks in these terms.
 */
import type { Point } from '../geometry/point.ts';

/** A site that may be chosen: one post, or two posts close together that count as one site. */
export interface Unit {
  /** Index of the post it uses; two units with a post in common exclude each other. */
  readonly post: number;
  readonly at: Point;
  /** The second post of a pair. */
  readonly partner?: { readonly post: number; readonly at: Point };
  /** Index into `wanted` and `spacing`. */
  readonly bird: number;
  /** What the site is worth, 0–100. */
  readonly weight: number;
  /** Stands already and stays, whatever it conflicts with. */
  readonly fixed?: boolean;
}

export interface LayoutProblem {
  readonly units: readonly Unit[];
  /** Most sites of each bird, fixed ones counted. */
  readonly wanted: readonly number[];
  /** Metres between the posts of two sites, by bird and bird; symmetric. */
  readonly spacing: readonly (readonly number[])[];
}

/** Indexes of the chosen units, rising, and what they are worth together. */
export interface Layout {
  readonly chosen: readonly number[];
  readonly value: number;
}

/** Two boxes nearer than this are never two sites, whatever the birds: 5 ft, the least distance inside a pair (handbook §3, `NFW`). */
export const leastApart = 1.524;

/**
 * A spacing counts as kept when it is short by no more than this many metres: the site's frame itself agrees with the geodesic
 * only within 1 mm per 100 m, and posts drawn exactly 100 yards apart must not fail on it (ours).
 */
export const spacingSlack = 0.005;

/** Metres that must lie between sites of two birds. */
export function metresBetween(problem: LayoutProblem, a: number, b: number): number {
  return Math.max(leastApart, problem.spacing[a]?.[b] ?? 0, problem.spacing[b]?.[a] ?? 0);
}

/** The posts of a unit. */
export function postsOf(unit: Unit): readonly { readonly post: number; readonly at: Point }[] {
  return unit.partner ? [unit, unit.partner] : [unit];
}

/** A layout from unit indexes in any order. */
export function layoutOf(problem: LayoutProblem, chosen: Iterable<number>): Layout {
  const sorted = [...chosen].sort((a, b) => a - b);
  return { chosen: sorted, value: sorted.reduce((sum, u) => sum + problem.units[u].weight, 0) };
}
