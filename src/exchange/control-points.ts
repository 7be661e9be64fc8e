/** A picture laid on the ground by control points: least-squares similarity or affine fit, with what is left at each point. */
import type { Point } from '../geometry/point.ts';
import type { Frame } from '../ground/types.ts';
import type { LonLat } from '../site/types.ts';

/** One place seen in the picture (pixels, x right, y down, from the top left corner) and known on the ground (metres). */
export interface ControlPoint {
  readonly picture: Point;
  readonly ground: Point;
}

/** `x = a·px + b·py + c`, `y = d·px + e·py + f`, metres from pixels. */
export interface PictureFit {
  readonly kind: 'similarity' | 'affine';
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
  /** Metres between each control point and where the fit puts it, in their order. */
  readonly residuals: readonly number[];
  /** Root mean square of the residuals, metres. */
  readonly rms: number;
  /** Metres on the ground a pixel (root of the area of a pixel), and degrees clockwise the picture's up is turned from north. */
  readonly metresPerPixel: number;
  readonly turned: number;
}

/** No fit, with the reason. */
export interface NoFit {
  readonly reason: string;
}

/** Least control points: three, so that the residuals say something (a similarity has 4 unknowns, an affine 6). */
export const leastControlPoints = 3;

/** Turn, shift and one scale: for scans and photographs from straight above. Mirror images are not fitted. */
export function fitSimilarity(points: readonly ControlPoint[]): PictureFit | NoFit {
  const trouble = cannotFit(points);
  if (trouble) return trouble;
  const [p, g] = [middle(points.map(upward)), middle(points.map((point) => point.ground))];
  // Umeyama 1991 in two dimensions without reflection: s·cos and s·sin straight from the centred sums.
  let [cos, sin, size] = [0, 0, 0];
  for (const point of points) {
    const [u, v] = [upward(point).x - p.x, upward(point).y - p.y];
    const [x, y] = [point.ground.x - g.x, point.ground.y - g.y];
    cos += u * x + v * y;
    sin += u * y - v * x;
    size += u * u + v * v;
  }
  if (cos === 0 && sin === 0) return { reason: 'The ground places are all the same; choose places that lie apart.' };
  const [k, l] = [cos / size, sin / size];
  return finished(
    'similarity',
    { a: k, b: l, c: g.x - k * p.x + l * p.y, d: l, e: -k, f: g.y - l * p.x - k * p.y },
    points,
  );
}

/** Stretch and shear as well: for photographs taken at a slant over flat land, and for maps with unequal scales. */
export function fitAffine(points: readonly ControlPoint[]): PictureFit | NoFit {
  const trouble = cannotFit(points);
  if (trouble) return trouble;
  const [p, g] = [middle(points.map((point) => point.picture)), middle(points.map((point) => point.ground))];
  let [uu, uv, vv, ux, vx, uy, vy] = [0, 0, 0, 0, 0, 0, 0];
  for (const { picture, ground } of points) {
    const [u, v, x, y] = [picture.x - p.x, picture.y - p.y, ground.x - g.x, ground.y - g.y];
    uu += u * u;
    uv += u * v;
    vv += v * v;
    ux += u * x;
    vx += v * x;
    uy += u * y;
    vy += v * y;
  }
  const determinant = uu * vv - uv * uv;
  if (determinant <= 1e-9 * uu * vv || determinant === 0)
    return { reason: 'The control points lie in one line; add one to the side of it.' };
  const [a, b] = [(ux * vv - vx * uv) / determinant, (vx * uu - ux * uv) / determinant];
  const [d, e] = [(uy * vv - vy * uv) / determinant, (vy * uu - uy * uv) / determinant];
  return finished('affine', { a, b, c: g.x - a * p.x - b * p.y, d, e, f: g.y - d * p.x - e * p.y }, points);
}

/** Whether a fit was found. */
export function isFitted(answer: PictureFit | NoFit): answer is PictureFit {
  return 'kind' in answer;
}

/** Where a pixel lies, metres. */
export function pictureToGround(fit: PictureFit, { x, y }: Point): Point {
  return { x: fit.a * x + fit.b * y + fit.c, y: fit.d * x + fit.e * y + fit.f };
}

/** The picture's corners on the ground in the order an image source wants them: top left, top right, bottom right, bottom left. */
export function pictureCorners(
  fit: PictureFit,
  width: number,
  height: number,
  frame: Frame,
): [LonLat, LonLat, LonLat, LonLat] {
  const at = (x: number, y: number) => frame.toLonLat(pictureToGround(fit, { x, y }));
  return [at(0, 0), at(width, 0), at(width, height), at(0, height)];
}

function cannotFit(points: readonly ControlPoint[]): NoFit | null {
  if (points.length < leastControlPoints)
    return { reason: `At least ${leastControlPoints} control points are needed; there are ${points.length}.` };
  const figures = points.flatMap(({ picture, ground }) => [picture.x, picture.y, ground.x, ground.y]);
  if (!figures.every(Number.isFinite)) return { reason: 'A control point is not placed.' };
  const first = points[0]!.picture;
  const apart = points.some(({ picture }) => Math.hypot(picture.x - first.x, picture.y - first.y) > 1);
  return apart ? null : { reason: 'The control points are all at one place of the picture.' };
}

/** The picture's place with y up, as on the ground. */
function upward({ picture }: ControlPoint): Point {
  return { x: picture.x, y: -picture.y };
}

function middle(points: readonly Point[]): Point {
  const sum = points.reduce((total, point) => ({ x: total.x + point.x, y: total.y + point.y }), { x: 0, y: 0 });
  return { x: sum.x / points.length, y: sum.y / points.length };
}

type Matrix = Pick<PictureFit, 'a' | 'b' | 'c' | 'd' | 'e' | 'f'>;

function finished(kind: PictureFit['kind'], matrix: Matrix, points: readonly ControlPoint[]): PictureFit {
  const unfinished = { kind, ...matrix, residuals: [], rms: 0, metresPerPixel: 0, turned: 0 };
  const residuals = points.map(({ picture, ground }) => {
    const put = pictureToGround(unfinished, picture);
    return Math.hypot(put.x - ground.x, put.y - ground.y);
  });
  const rms = Math.sqrt(residuals.reduce((sum, one) => sum + one * one, 0) / residuals.length);
  const metresPerPixel = Math.sqrt(Math.abs(matrix.a * matrix.e - matrix.b * matrix.d));
  // Up in the picture is −y.
  const up = (Math.atan2(-matrix.b, -matrix.e) * 180) / Math.PI;
  return { kind, ...matrix, residuals, rms, metresPerPixel, turned: (up + 360) % 360 };
}
