/** Draw a stretch of border anew; neighbours that share the stretch follow. */
import type { Position } from 'geojson';
import { placeWords } from '../site/issues.ts';
import { label } from '../site/label.ts';
import { samePlace } from '../site/positions.ts';
import type { LonLat, Site, SiteFeature } from '../site/types.ts';
import { type BorderPlace, cornersBetween, nearestPlace, wayLength } from './border.ts';
import { type Chain, chainsOf, mapChains } from './chains.ts';
import { type Edit, featureOf, rounded, type Sharing, settle, withGeometry } from './edit.ts';

/** How far from the border, in metres, the drawn line may start and end. Ours. */
const reach = 25;

/** Metres within which a neighbour's border counts as the same: about the last decimal written. */
const same = 0.03;

/** A stretch of border drawn anew: `way` starts and ends where the old one did, `gone` are the corners between. */
interface Stretch {
  readonly way: readonly Position[];
  readonly gone: readonly Position[];
}

/**
 * Replaces the stretch of a border between the places nearest to the line's ends by the line. Of an outline the shorter of the two
 * ways round is replaced.
 */
export function reshape(site: Site, id: string, line: readonly LonLat[], { shared = true }: Sharing = {}): Edit {
  const feature = featureOf(site, id);
  if (line.length < 2) return { refused: 'The new stretch needs at least two corners. Draw it from border to border.' };
  const chains = chainsOf(feature.geometry);
  if (chains.length === 0) return { refused: `${label(feature)} has no border. Choose an area or a line.` };
  const ends = chains.map((chain) => [nearestPlace(chain, line[0]!), nearestPlace(chain, line.at(-1)!)] as const);
  const away = ends.map(([a, b]) => Math.max(a.away, b.away));
  const n = away.indexOf(Math.min(...away));
  const [start, end] = ends[n]!;
  if (away[n]! > reach) return tooFar(feature, start.away > reach ? line[0]! : line.at(-1)!, away[n]!);
  if (start.edge === end.edge && start.share === end.share) {
    return { refused: 'The line starts and ends at the same place of the border. End it elsewhere on the border.' };
  }
  const middle = line.slice(1, -1).map((position) => rounded([...position]));
  const stretch = stretchOf(chains[n]!, start, end, middle);
  const geometry = mapChains(feature.geometry!, (corners, i, closed) =>
    i === n ? (redrawn({ corners, closed }, stretch) ?? corners) : corners,
  );
  const others = shared ? site.features.filter((other) => other !== feature) : [];
  const follow = others.flatMap((other) => followed(other, stretch));
  return settle(site, [withGeometry(feature, geometry), ...follow], `Reshaped ${label(feature)}`);
}

function tooFar(feature: SiteFeature, end: LonLat, metres: number): Edit {
  const said = `The line at ${placeWords(end)} is ${Math.round(metres)} m from the border of ${label(feature)}.`;
  return { refused: `${said} Start and end on the border.` };
}

/** The places a border's stretch starts and ends at, with their own digits when they are corners. */
function endPosition({ share, position }: BorderPlace): Position {
  return share > 0 && share < 1 ? rounded(position) : position;
}

function isAhead(from: BorderPlace, to: BorderPlace): boolean {
  return from.edge < to.edge || (from.edge === to.edge && from.share < to.share);
}

function stretchOf(chain: Chain, start: BorderPlace, end: BorderPlace, middle: readonly Position[]): Stretch {
  const way = [endPosition(start), ...middle, endPosition(end)];
  const [a, b] = [way[0]!, way.at(-1)!];
  if (!chain.closed) {
    return isAhead(start, end)
      ? { way, gone: cornersBetween(chain, start, end) }
      : { way: way.toReversed(), gone: cornersBetween(chain, end, start) };
  }
  const forward = cornersBetween(chain, start, end);
  const onward = cornersBetween(chain, end, start);
  return wayLength([a, ...forward, b]) <= wayLength([b, ...onward, a])
    ? { way, gone: forward }
    : { way: way.toReversed(), gone: onward };
}

/** The corners of a chain with the stretch redrawn, whichever way round it runs; null when the chain does not have the stretch. */
function redrawn(chain: Chain, { way, gone }: Stretch): Position[] | null {
  const a = nearestPlace(chain, way[0]!);
  const b = nearestPlace(chain, way.at(-1)!);
  if (Math.max(a.away, b.away) > same) return null;
  return replaced(chain, a, b, way, gone) ?? replaced(chain, b, a, way.toReversed(), gone.toReversed());
}

function replaced(
  chain: Chain,
  from: BorderPlace,
  to: BorderPlace,
  way: readonly Position[],
  gone: readonly Position[],
): Position[] | null {
  if (!chain.closed && !isAhead(from, to)) return null;
  const between = cornersBetween(chain, from, to);
  if (between.length !== gone.length || between.some((corner, i) => !samePlace(corner, gone[i]!))) return null;
  if (chain.closed) return [...way, ...cornersBetween(chain, to, from)];
  const before = chain.corners.slice(0, from.share > 0 ? from.edge + 1 : from.edge);
  const after = chain.corners.slice(to.share < 1 ? to.edge + 1 : to.edge + 2);
  return [...before, ...way, ...after];
}

/** The neighbour with the same stretch redrawn; nothing when it does not share it. */
function followed(feature: SiteFeature, stretch: Stretch): SiteFeature[] {
  const changed = chainsOf(feature.geometry).map((chain) => redrawn(chain, stretch));
  if (changed.every((corners) => corners === null)) return [];
  return [
    withGeometry(
      feature,
      mapChains(feature.geometry!, (corners, n) => changed[n] ?? corners),
    ),
  ];
}
