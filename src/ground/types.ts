/** A site made ready to measure. Built once by `prepareGround`, then only read. All lengths in metres on the site's own frame. */
import type { Point } from '../geometry/point.ts';
import type { CoverKind, LonLat, Site } from '../site/types.ts';
import type { Rays } from '../sky/sun-table.ts';

/** Local transverse Mercator centred on the site (scale 1 at the centre): agrees with the geodesic within 1 mm per 100 m inside 5 km. */
export interface Frame {
  readonly centre: LonLat;
  toPlane(position: LonLat): Point;
  toLonLat(point: Point): LonLat;
}

/** What is looked for around a point. */
export type Target =
  /** woods, or a tree taller than 3 m (its trunk) */
  | 'woods-edge'
  /** brush, hedge or woods */
  | 'brush'
  | 'building'
  | 'feeder'
  /** water, wetland or a stream */
  | 'water'
  | 'road'
  | 'path'
  /** anything an animal can jump from: tree crown, fence, building, woods, hedge */
  | 'jump'
  /** a perch, tree, shrub or fence */
  | 'perch'
  /** trees, woods, buildings, hedges: anything with a height of its own (used for "nothing tall nearer than") */
  | 'tall'
  | 'overhead-wire'
  | 'off-limits';

/** The nearest place of a target. `distance` is negative inside an area of it (metres to its edge). */
export interface Found {
  readonly distance: number;
  readonly at: Point;
  /** Feature id. */
  readonly feature: string;
}

/** A piece of a target near a point: a straight edge (a ≠ b) or a single place (a = b), with the height that stands there. */
export interface Piece {
  readonly a: Point;
  readonly b: Point;
  readonly height: number;
  readonly feature: string;
}

/** Shares of a disc by kind of land, adding to 1 with `unmapped`. */
export type Shares = Readonly<Record<CoverKind | 'unmapped', number>>;

export interface Ground {
  readonly site: Site;
  readonly frame: Frame;
  /** Corner points of everything drawn; null when nothing is. */
  readonly bounds: { readonly min: Point; readonly max: Point } | null;
  /** The same without the posts. */
  readonly landBounds: { readonly min: Point; readonly max: Point } | null;
  /** Which targets are drawn at all: a criterion is "not judged" where its target is not. */
  has(target: Target): boolean;
  /** Kind of land at a point, or null where none is drawn. */
  coverAt(p: Point): CoverKind | null;
  /** Exact shares of the true circle's area. */
  shares(p: Point, radius: number): Shares;
  /** Nearest place of a target, or null when none is drawn (or none within `reach`). */
  nearest(p: Point, target: Target, reach?: number): Found | null;
  /** Every piece of a target that comes within `reach`. */
  piecesWithin(p: Point, target: Target, reach: number): Piece[];
  /**
   * Free sight from `eye` metres above ground toward each whole degree (index 0 = north, clockwise), past anything taller than
   * the eye, at most `reach`. All zero inside something taller than the eye. Written into `into` (360 places) where given.
   */
  sight(p: Point, eye: number, reach: number, into?: Float64Array): Float64Array;
  /** Whether the point is inside something taller than the eye (an area, a hedge, a crown): sight is then zero all round. */
  under(p: Point, eye: number): boolean;
  /** The lowest eye, metres above ground, that looks past and against the same things as `eye`: `sight` from both is the same. */
  eyeLevel(eye: number): number;
  /** Mean of `sight` without keeping it. */
  meanSight(p: Point, eye: number, reach: number): number;
  /**
   * 1 where the ray's sun stands behind something seen from `eye` metres above ground, exact at each ray's own azimuth. Written into `into`
   * (a place for each ray) where given.
   */
  shaded(p: Point, eye: number, rays: Rays, into?: Uint8Array): Uint8Array;
  /** Altitude in degrees of what stands highest toward each of `azimuths`, exact per azimuth; 90 inside something taller than the eye. */
  horizon(p: Point, eye: number, azimuths: Float64Array): Float64Array;
  /** Why no box may stand here (in water, on a roof, off-limits, outside the boundary), or null when it may. */
  forbidden(p: Point): { readonly reason: string; readonly feature: string | null } | null;
}
