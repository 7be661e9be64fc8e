/** What a longer walk buys: the best choice for each of several walk limits. */
import type { Choice, ChooseInput } from './choose.ts';
import { choose } from './choose.ts';

export interface TradeOffPoint {
  /** Metres the round was allowed; null for the free choice. */
  readonly limit: number | null;
  readonly metres: number;
  /** Summed score and sites of the choice. */
  readonly score: number;
  readonly sites: number;
  readonly choice: Choice;
}

export interface TradeOffInput {
  /** The choice as usual; its `walk.limit` is not looked at. */
  readonly choose: ChooseInput & { readonly walk: NonNullable<ChooseInput['walk']> };
  /** Points besides the free choice; 7 unless given. */
  readonly points?: number;
}

/**
 * Points from the shortest worthwhile walk to the free one, metres and score rising together: a limit that brings nothing over a
 * shorter one is left out.
 */
export async function tradeOff(input: TradeOffInput): Promise<TradeOffPoint[]> {
  const { walk } = input.choose;
  const at = async (limit: number | null): Promise<TradeOffPoint> => {
    const choice = await choose({ ...input.choose, proof: 'none', walk: { ...walk, limit: limit ?? Infinity } });
    const stops = choice.sites.flatMap((site) => site.posts.map(({ id, at: place }) => ({ id, at: place })));
    return {
      limit,
      metres: stops.length === 0 ? 0 : walk.measure(stops),
      score: choice.proof.value,
      sites: choice.sites.length,
      choice,
    };
  };
  const free = await at(null);
  const count = input.points ?? 7;
  const found: TradeOffPoint[] = [free];
  for (let k = count; k >= 1; k--) {
    if (input.choose.shouldStop?.()) break;
    found.push(await at((free.metres * k) / (count + 1)));
  }
  return rising(found.reverse());
}

/** Only points that no other beats in both metres and score. */
function rising(points: readonly TradeOffPoint[]): TradeOffPoint[] {
  const sorted = [...points].sort((a, b) => a.metres - b.metres || b.score - a.score);
  const kept: TradeOffPoint[] = [];
  for (const point of sorted) {
    if (kept.length === 0 || point.score > kept[kept.length - 1].score + 1e-9) kept.push(point);
  }
  return kept;
}
