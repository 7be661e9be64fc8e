/** A ground drawn in metres: `at(x, y)` is where the drawn metres lie on the ground's own frame. */

import type { Point } from '../../../src/geometry/point.ts';
import { makeFrame } from '../../../src/ground/frame.ts';
import { prepareGround } from '../../../src/ground/prepare.ts';
import type { Ground } from '../../../src/ground/types.ts';
import { newSite } from '../../../src/site/new-site.ts';
import type { Kind, SiteFeature, SiteGeometry, SiteSettings } from '../../../src/site/types.ts';

export type Metres = readonly [number, number];
export interface Drawing {
  readonly kind: Kind;
  readonly area?: readonly Metres[];
  readonly line?: readonly Metres[];
  readonly point?: Metres;
  readonly properties?: Record<string, unknown>;
}

const paper = makeFrame([-93.2, 44.9]);

export function metreGround(
  drawings: readonly Drawing[],
  settings: Partial<SiteSettings> = {},
): { ground: Ground; at: (x: number, y: number) => Point } {
  const lonLat = ([x, y]: Metres) => paper.toLonLat({ x, y });
  const features = drawings.map((d, k): SiteFeature => {
    const geometry: SiteGeometry = d.area
      ? { type: 'Polygon', coordinates: [[...d.area, d.area[0]].map(lonLat)] }
      : d.line
        ? { type: 'LineString', coordinates: d.line.map(lonLat) }
        : { type: 'Point', coordinates: lonLat(d.point!) };
    return { id: `f${k}`, kind: d.kind, geometry, properties: d.properties ?? {} };
  });
  const ground = prepareGround({ ...newSite('Test', settings), features });
  return { ground, at: (x, y) => ground.frame.toPlane(lonLat([x, y])) };
}

/** A rectangle from its south-west and north-east corners. */
export function box(x0: number, y0: number, x1: number, y1: number): Metres[] {
  return [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
}
