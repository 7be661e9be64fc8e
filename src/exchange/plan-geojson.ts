/** The plan as GeoJSON (RFC 7946): boxes, where rounds start, legs and the posts left out, everything for a desktop mapping program. */
import type { Feature, FeatureCollection, Point as PointGeometry, Position } from 'geojson';
import type { Frame } from '../ground/types.ts';
import type { Leg, Plan, Round } from '../plan-types.ts';
import type { LonLat } from '../site/types.ts';
import { degreePlaces, roundTo } from './decimals.ts';
import type { ExportedThing } from './exported.ts';
import { planThings } from './plan-things.ts';

/**
 * `what` of each feature is box, start, left-out or leg; boxes and left-out posts also carry `kind: "post"` and the site file's property
 * names. The collection's one foreign member `plan` holds the figures of the whole.
 */
export function planGeojson(plan: Plan, frame: Frame): FeatureCollection & { readonly plan: unknown } {
  const { things } = planThings(plan, frame);
  const rows = new Map(plan.boxes.map((box) => [box.post, box.card.rows]));
  return {
    type: 'FeatureCollection',
    plan: summary(plan),
    features: [
      ...things.map((thing) => pointFeature(thing, rows.get(thing.id))),
      ...plan.rounds.flatMap((round) => round.legs.flatMap((leg) => legFeature(leg, round, frame))),
    ],
  };
}

/** `planGeojson` as text, two spaces deep. */
export function writePlanGeojson(plan: Plan, frame: Frame): string {
  return `${JSON.stringify(planGeojson(plan, frame), null, 2)}\n`;
}

const whatWords = { boxes: 'box', walk: 'start', 'left out': 'left-out', land: 'land' } as const;

function summary(plan: Plan): unknown {
  return {
    site: plan.siteName,
    date: plan.date,
    boxes: plan.boxes.length,
    sites: plan.sites,
    leftOut: plan.leftOut.length,
    metres: roundTo(
      plan.rounds.reduce((sum, round) => sum + round.metres, 0),
      1,
    ),
    minutes: roundTo(
      plan.rounds.reduce((sum, round) => sum + round.minutes, 0),
      1,
    ),
    proof: plan.proof.sentence,
  };
}

function pointFeature(thing: ExportedThing, rows: Plan['boxes'][number]['card']['rows'] | undefined): Feature {
  const criteria =
    rows && Object.fromEntries(rows.flatMap((row) => (row.score === null ? [] : [[row.id, roundTo(row.score, 3)]])));
  return {
    type: 'Feature',
    id: thing.id,
    geometry: rounded(thing.geometry as PointGeometry),
    properties: {
      what: whatWords[thing.group],
      kind: thing.kind,
      name: thing.name,
      note: thing.note,
      ...thing.properties,
      ...(criteria ? { criteria } : {}),
    },
  };
}

function legFeature(leg: Leg, round: Round, frame: Frame): Feature[] {
  if (leg.line.length < 2) return [];
  const coordinates = leg.line.map((point) => shortPosition(frame.toLonLat(point)));
  const properties = {
    what: 'leg',
    walker: round.walker,
    from: leg.from,
    to: leg.to,
    metres: roundTo(leg.metres, 1),
    minutes: roundTo(leg.minutes, 1),
    bearing: roundTo(leg.bearing, 1),
  };
  const id = `leg-${round.walker}-${leg.from}-${leg.to}`;
  return [{ type: 'Feature', id, geometry: { type: 'LineString', coordinates }, properties }];
}

function rounded(point: PointGeometry): PointGeometry {
  return { type: 'Point', coordinates: shortPosition(point.coordinates as LonLat) };
}

function shortPosition([lon, lat]: LonLat): Position {
  return [roundTo(lon, degreePlaces), roundTo(lat, degreePlaces)];
}
