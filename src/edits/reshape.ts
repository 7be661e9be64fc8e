/** Draw a stretch of border anew. */
import type { Position } from 'geojson';
import { placeWords } from '../site/issues.ts';
import { label } from '../site/label.ts';
import type { LonLat, Site } from '../site/types.ts';
import { type BorderPlace, cornersBetween, nearestPlace, wayLength } from './border.ts';
import { type Chain, chainsOf, mapChains } from './chains.ts';
import { type Edit, featureOf, rounded, settle, withGeometry } from './edit.ts';

/** How far from the border, in metres, the drawn line may start and end. Ours. */
const reach = 25;

/**
 * Replaces the stretch of a border between the places nearest to the line's ends by the line. Of an outline the shorter of the two
 * ways round is replaced. Neighbours keep their own border.
 */
export function reshape(site: Site, id: string, line: readonly LonLat[]): Edit {
  const feature = featureOf(site, id);
  if (line.length < 2) return { refused: 'The new stretch needs at least two corners. Draw it from border to border.' };
  const chains = chainsOf(feature.geometry);
  if (chains.length === 0) return { refused: `${label(feature)} has no border. Choose an area or a line.` };
  const ends = chains.map((chain) => [nearestPlace(chain, line[0]!), nearestPlace(chain, line.at(-1)!)] as const);
  const farthest = ends.map(([a, b]) => Math.max(a.away, b.away));
  const n = farthest.indexOf(Math.min(...farthest));
  if (farthest[n]! > reach) {
    const end = ends[n]![0].away > reach ? line[0]! : line.at(-1)!;
    return {
      refused: `The line at ${placeWords(end)} is ${Math.round(farthest[n]!)} m from the border of ${label(feature)}. Start and end on the border.`,
    };
  }
  const middle = line.slice(1, -1).map((position) => rounded([...position]));
  const corners = replaced(chains[n]!, ends[n]!, middle);
  if (!corners)
    return { refused: 'The line starts and ends at the same place of the border. End it elsewhere on the border.' };
  const geometry = mapChains(feature.geometry!, (old, i) => (i === n ? corners : old));
  return settle(site, [withGeometry(feature, geometry)], `Reshaped ${label(feature)}`);
}

function replaced(
  chain: Chain,
  [start, end]: readonly [BorderPlace, BorderPlace],
  middle: Position[],
): Position[] | null {
  if (start.edge === end.edge && start.share === end.share) return null;
  const [a, b] = [rounded(start.position), rounded(end.position)];
  if (!chain.closed) return replacedInLine(chain, start, end, [a, ...middle, b]);
  const forward = cornersBetween(chain, start, end);
  const onward = cornersBetween(chain, end, start);
  const goesForward = wayLength([a, ...forward, b]) <= wayLength([b, ...onward, a]);
  const kept = goesForward ? onward : forward.toReversed();
  return [a, ...middle, b, ...kept];
}

function replacedInLine(chain: Chain, start: BorderPlace, end: BorderPlace, way: Position[]): Position[] {
  const ahead = start.edge < end.edge || (start.edge === end.edge && start.share < end.share);
  const [first, last] = ahead ? [start, end] : [end, start];
  const before = chain.corners.slice(0, first.share > 0 ? first.edge + 1 : first.edge);
  const after = chain.corners.slice(last.share < 1 ? last.edge + 1 : last.edge + 2);
  return [...before, ...(ahead ? way : way.toReversed()), ...after];
}
