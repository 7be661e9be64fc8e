/** What the round looks like on the map, as features: legs, discs of a shared round, walker, way to the box. */
import type { Feature } from 'geojson';
import { walkerLook } from '../../../../layers/walkers.ts';
import { bearing, destination, type Point } from '../../../geometry/point.ts';
import type { Frame } from '../../../ground/types.ts';
import type { Plan } from '../../../plan-types.ts';
import type { LonLat } from '../../../site/types.ts';
import type { FieldRound } from '../../field/field-round.ts';
import type { Fix } from '../../field/position.ts';

const line = (points: readonly LonLat[], properties: Record<string, unknown>): Feature => ({
  type: 'Feature',
  geometry: { type: 'LineString', coordinates: points.map((p) => [...p]) },
  properties,
});

const place = (position: LonLat, properties: Record<string, unknown>): Feature => ({
  type: 'Feature',
  geometry: { type: 'Point', coordinates: [...position] },
  properties,
});

/** The walked line of every leg of every round; `say` writes its length. */
export function legFeatures(plan: Plan, frame: Frame, say: (metres: number) => string): Feature[] {
  return plan.rounds.flatMap((round) =>
    round.legs.flatMap((leg): Feature[] => {
      const points = leg.line.map((point) => frame.toLonLat(point));
      if (points.length < 2) return [];
      const { pattern, hollow, ink } = walkerLook(round.walker);
      return [line(points, { role: 'leg', look: pattern.id, hollow, ink, words: say(leg.metres), long: leg.metres })];
    }),
  );
}

/** A shared round has no land and no plan: straight lines and plain numbered discs. */
export function sharedFeatures(round: FieldRound, chosen: number | null, say: (metres: number) => string): Feature[] {
  const placed = round.stops.filter((stop) => stop.position !== null);
  const discs = placed.map((stop) =>
    place(stop.position!, { role: 'stop', number: String(stop.number), chosen: stop.number === chosen }),
  );
  const legs = placed.slice(1).map((stop, i) =>
    line([placed[i]!.position!, stop.position!], {
      role: 'leg',
      look: 'solid',
      hollow: false,
      ink: 'ink',
      words: stop.way ? say(stop.way.metres) : '',
      long: stop.way?.metres ?? 0,
    }),
  );
  return [...legs, ...discs];
}

/** Sides of the circles drawn. */
const sides = 72;

function circle(frame: Frame, middle: Point, radius: number): LonLat[] {
  return Array.from({ length: sides + 1 }, (_, i) => frame.toLonLat(destination(middle, (i * 360) / sides, radius)));
}

export interface HereInput {
  readonly fix: Fix;
  readonly frame: Frame;
  readonly target: LonLat | null;
  /** Meters of the two rings, and what is written on them. */
  readonly rings: readonly { readonly metres: number; readonly words: string }[];
  /** Written beside the walker. */
  readonly words: string;
  /** Whether the box is inside the error circle: then no arrow is drawn. */
  readonly within: boolean;
}

/** The walker's dot, error circle and rings, and the line to the box. */
export function hereFeatures({ fix, frame, target, rings, words, within }: HereInput): Feature[] {
  const at = frame.toPlane(fix.position);
  const round = rings.flatMap((ring) => [
    line(circle(frame, at, ring.metres), { role: 'ring' }),
    place(frame.toLonLat(destination(at, 205, ring.metres)), { role: 'ring-words', words: ring.words }),
  ]);
  const error: Feature = {
    type: 'Feature',
    geometry: { type: 'Polygon', coordinates: [circle(frame, at, Math.max(0.5, fix.accuracy)).map((p) => [...p])] },
    properties: { role: 'error' },
  };
  const turn = target ? bearing(at, frame.toPlane(target)) : 0;
  const way =
    target && !within ? [line([fix.position, target], { role: 'way' }), place(target, { role: 'head', turn })] : [];
  const anchor = !target || within ? 'bottom' : turn > 180 ? 'bottom-right' : 'bottom-left';
  return [...round, error, ...way, place(fix.position, { role: 'you', words, anchor })];
}
