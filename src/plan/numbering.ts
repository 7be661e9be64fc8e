/** Numbers follow the walk; from stop ids to box numbers. */
import type { Leg, Round } from '../plan-types.ts';
import type { RoundPlan, StopRound } from '../route/plan-round.ts';

/** Post id → box number from 1, in walking order; boxes no walk reaches come last. */
export function numbersOf(walk: RoundPlan): ReadonlyMap<string, number> {
  const order = [...walk.rounds.flatMap((round) => round.stops), ...walk.unreachable];
  return new Map(order.map((id, index) => [id, index + 1]));
}

export function numberedRound(round: StopRound, numbers: ReadonlyMap<string, number>): Round {
  const number = (id: string) => {
    const found = numbers.get(id);
    if (found === undefined) throw new Error(`no box at stop ${id}`);
    return found;
  };
  const legs = round.legs.map(
    (leg): Leg => ({
      ...leg,
      from: leg.from === 'start' ? 'start' : number(leg.from),
      to: leg.to === 'end' ? 'end' : number(leg.to),
    }),
  );
  return { ...round, boxes: round.stops.map(number), legs };
}
