/** Areas wholly inside one area that wins over them: they cover nothing, and are mostly a hole somebody forgot to cut. */
import { booleanPointInPolygon } from '@turf/turf';
import type { Position } from 'geojson';
import { placeWords, trouble } from './issues.ts';
import { label } from './label.ts';
import { type Box, boxOf, featurePositions, firstPlace } from './positions.ts';
import { type CoverKind, coverKinds, type Issue, type SiteFeature } from './types.ts';

interface Cover {
  readonly feature: SiteFeature;
  /** Place in the order of kinds: less wins. */
  readonly rank: number;
  readonly box: Box;
  readonly corners: Position[];
}

/** One issue for each hidden area. */
export function hiddenAreas(features: readonly SiteFeature[]): Issue[] {
  const covers = features.flatMap((feature): Cover[] => {
    const rank = coverKinds.indexOf(feature.kind as CoverKind);
    const corners = rank < 0 ? [] : featurePositions(feature);
    const box = boxOf(corners);
    return box ? [{ feature, rank, box, corners }] : [];
  });
  const near = westward(covers);
  return covers.flatMap((cover) => {
    const winner = near(cover).find(
      (other) => other.rank < cover.rank && boxInside(cover.box, other.box) && covered(cover, other),
    );
    return winner ? [hiddenIssue(cover.feature, winner.feature)] : [];
  });
}

/** Finds what may reach over a cover: the few wide ones, and those narrow ones that start a little west of it. */
function westward(covers: readonly Cover[]): (cover: Cover) => Cover[] {
  const width = ({ box }: Cover) => box[2] - box[0];
  const usual = covers.map(width).toSorted((a, b) => a - b)[Math.floor(covers.length * 0.98)] ?? 0;
  const wide = covers.filter((cover) => width(cover) > usual);
  const narrow = covers.filter((cover) => width(cover) <= usual).sort((a, b) => a.box[0] - b.box[0]);
  const from = (west: number) => firstWhere(narrow.length, (i) => narrow[i]!.box[0] >= west);
  return ({ box }) => [...wide, ...narrow.slice(from(box[0] - usual), from(box[0] + 1e-12))];
}

/** Least i < count for which `holds` (false … false true … true); count when there is none. */
function firstWhere(count: number, holds: (i: number) => boolean): number {
  let [low, high] = [0, count];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

function boxInside(inner: Box, outer: Box): boolean {
  return inner[0] >= outer[0] && inner[1] >= outer[1] && inner[2] <= outer[2] && inner[3] <= outer[3];
}

function covered(cover: Cover, other: Cover): boolean {
  const { geometry } = other.feature;
  if (geometry?.type !== 'Polygon' && geometry?.type !== 'MultiPolygon') return false;
  return cover.corners.every((corner) => booleanPointInPolygon(corner, geometry, { ignoreBoundary: true }));
}

function hiddenIssue(feature: SiteFeature, winner: SiteFeature): Issue {
  const place = firstPlace(feature);
  const sentence = `${label(feature)} near ${placeWords(place ?? [0, 0])} lies wholly inside ${label(winner)}, which wins over it.`;
  const fix = `Cut a hole into ${label(winner)} where ${label(feature)} is.`;
  return trouble('area-hidden', { feature: feature.id, place }, sentence, fix);
}
