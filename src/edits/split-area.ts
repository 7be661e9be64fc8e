/** Cut an area in two (or more) by a drawn line. */
import { area, difference, featureCollection, polygon } from '@turf/turf';
import type { Position } from 'geojson';
import { label } from '../site/label.ts';
import type { LonLat, Site, SiteFeature } from '../site/types.ts';
import { insertedIntoNeighbours } from './add-vertex.ts';
import { cornersBetween } from './border.ts';
import { beside, type Chain } from './chains.ts';
import { type Cut, crossings } from './crossings.ts';
import { type Edit, featureOf, freeIds, type Sharing, settle, withGeometry } from './edit.ts';

type Ring = Position[];

/** A new corner on the edge a–b of the old outline. */
interface NewCorner {
  readonly edge: readonly [Position, Position];
  readonly share: number;
  readonly position: Position;
}

/** Splits an area wherever the line runs through it from border to border. The largest piece keeps the id; all keep the properties. */
export function splitArea(site: Site, id: string, line: readonly LonLat[], { shared = true }: Sharing = {}): Edit {
  const feature = featureOf(site, id);
  const { geometry } = feature;
  if (geometry?.type !== 'Polygon' && geometry?.type !== 'MultiPolygon') {
    return { refused: `${label(feature)} is no area. Choose an area to split.` };
  }
  const parts = geometry.type === 'Polygon' ? [geometry.coordinates] : geometry.coordinates;
  const split = parts.map((part) => splitPart(part, line));
  const pieces = split.flatMap((one) => one.pieces);
  if (split.every((one) => one.pieces.length === 1)) {
    return {
      refused: `The line does not run through ${label(feature)}. Draw it from one side of the outline to the other.`,
    };
  }
  const made = piecesAsFeatures(site, feature, pieces);
  const corners = split.flatMap((one) => one.corners);
  const neighbours = shared ? cutNeighbours(site, feature, corners) : [];
  return settle(site, [...made, ...neighbours], `Split ${label(feature)} into ${made.length} areas`);
}

function piecesAsFeatures(site: Site, feature: SiteFeature, pieces: readonly Ring[][]): SiteFeature[] {
  const bySize = pieces.toSorted((a, b) => area(polygon(b)) - area(polygon(a)));
  const ids = freeIds(site);
  const { numberId: _number, ...unnumbered } = feature;
  return bySize.map((piece, i) => {
    const source = i === 0 ? feature : { ...unnumbered, id: ids.free(feature.id) };
    return withGeometry(source, { type: 'Polygon', coordinates: piece });
  });
}

function splitPart(part: readonly Ring[], line: readonly LonLat[]): { pieces: Ring[][]; corners: NewCorner[] } {
  const [outline, ...holes] = part as [Ring, ...Ring[]];
  const chain: Chain = { corners: outline.slice(0, -1), closed: true };
  const cuts = crossings(chain, line);
  const rings = cuts.reduce((cut, { way }) => cut.flatMap((ring) => cutRing(ring, way)), [chain]);
  if (rings.length === 1) return { pieces: [[...part]], corners: [] };
  const closed = rings.map(({ corners }) => [...corners, corners[0]!]);
  return {
    pieces: closed.flatMap((ring) => withoutHoles(ring, holes)),
    corners: cuts.flatMap((cut) => newCorners(chain, cut)),
  };
}

/** The ring cut along a way between two places of its border; unchanged when the way is not inside it. */
function cutRing(ring: Chain, way: readonly Position[]): Chain[] {
  const [cut] = crossings(ring, way);
  if (!cut) return [ring];
  const [start, end] = cut.ends;
  const pieces = [
    [...cut.way, ...cornersBetween(ring, end, start)],
    [...cut.way.toReversed(), ...cornersBetween(ring, start, end)],
  ];
  return pieces.every((corners) => corners.length >= 3) ? pieces.map((corners) => ({ corners, closed: true })) : [ring];
}

function withoutHoles(outline: Ring, holes: readonly Ring[]): Ring[][] {
  if (holes.length === 0) return [[outline]];
  const left = difference(featureCollection([polygon([outline]), ...holes.map((hole) => polygon([hole]))]))?.geometry;
  if (!left) return [];
  return left.type === 'Polygon' ? [left.coordinates] : left.coordinates;
}

function newCorners(chain: Chain, { ends }: Cut): NewCorner[] {
  return ends
    .filter(({ share }) => share > 0 && share < 1)
    .map(({ edge, share, position }) => ({ edge: [chain.corners[edge]!, beside(chain, edge)[1]!], share, position }));
}

/** Neighbours along a cut edge get the new corners, so that the border stays common. */
function cutNeighbours(site: Site, feature: SiteFeature, corners: readonly NewCorner[]): SiteFeature[] {
  let features = site.features.filter((one) => one !== feature);
  const changed = new Map<string, SiteFeature>();
  /** Where an edge was cut before, the rest of it starts. */
  const starts = new Map<string, Position>();
  for (const { edge, position } of corners.toSorted((a, b) => a.share - b.share)) {
    const key = JSON.stringify(edge);
    const rest = [starts.get(key) ?? edge[0], edge[1]] as const;
    starts.set(key, position);
    for (const other of insertedIntoNeighbours(features, feature, rest, position)) {
      changed.set(other.id, other);
      features = features.map((one) => (one.id === other.id ? other : one));
    }
  }
  return [...changed.values()];
}
