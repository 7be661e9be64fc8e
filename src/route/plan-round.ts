/** The door of this room: stops on the ground → who walks where, in what order, how far and how long. Takes places, knows no scores. */
import type { LinearSolver } from '../geometry/linear-model.ts';
import type { Point } from '../geometry/point.ts';
import { bearing, distance } from '../geometry/point.ts';
import type { Ground } from '../ground/types.ts';
import { faceDirection } from './direction.ts';
import type { FindWays } from './kept-ways.ts';
import type { CostMatrix } from './matrix.ts';
import { matrixOf, roundCost } from './matrix.ts';
import { splitRounds } from './rounds.ts';
import type { Grain, Ways } from './surface.ts';
import { waysBetween } from './surface.ts';
import type { TourShape } from './tour.ts';
import { bestTour, boundedTour, exactPlaces, pathCost } from './tour.ts';

export interface Stop {
  readonly id: string;
  readonly at: Point;
  /** Minutes spent there. */
  readonly minutes: number;
}

export interface RoundInput {
  readonly ground: Ground;
  /** Where every round starts; null when no trailhead is drawn: then it runs from its first stop to its last. */
  readonly start: Point | null;
  /** Where every round ends, when that is not the start. */
  readonly end?: Point | null;
  readonly stops: readonly Stop[];
  readonly walkers: number;
  readonly seed: number;
  /** Which way round to walk; whichever the search gives unless asked. */
  readonly direction?: 'clockwise' | 'counterclockwise' | null;
  /** Stop ids in the order a person set by hand: kept as it is (one walker). Stops not named come after, in the best order. */
  readonly byHand?: readonly string[] | null;
  /** Proves how near the shortest the round is, when given. */
  readonly solver?: LinearSolver | null;
  /** `coarse` for a first answer; `fine` unless given. */
  readonly grain?: Grain;
  /** Finds the ways; anew each time unless given. */
  readonly findWays?: FindWays;
}

/** `from` and `to` are stop ids. Otherwise as `Leg` of plan-types. */
export interface StopLeg {
  readonly from: string | 'start';
  readonly to: string | 'end';
  readonly metres: number;
  readonly minutes: number;
  readonly bearing: number;
  readonly line: readonly Point[];
}

export interface StopRound {
  /** From 1. */
  readonly walker: number;
  readonly start: Point | null;
  readonly stops: readonly string[];
  readonly legs: readonly StopLeg[];
  readonly metres: number;
  /** Walking and looking into the boxes. */
  readonly minutes: number;
  /** (walking minutes − proven least) / proven least; null when not proven. */
  readonly gap: number | null;
}

export interface RoundPlan {
  readonly rounds: readonly StopRound[];
  /** Stops that no walk reaches from the start, or from most other stops when there is no start. */
  readonly unreachable: readonly string[];
  /** Things to say about the walk, in plain sentences. */
  readonly notes: readonly string[];
}

/** Seconds and simplex steps the proof of a round may take: 40 boxes need a tenth of a second. */
const proofLimits = { seconds: 4, steps: 40_000 };

/** Coarse minutes are not worth a long search: with so many kicks 40 boxes have their shortest round in 97 of 100 searches. */
const coarseKicks = 400;

/** A trailhead in a pond is moved to the nearest free ground, however far. */
const anywhere = 1e6;

/** Plans the rounds. Stops nobody can reach are named and left out of them. */
export function planRound(input: RoundInput): RoundPlan {
  const ends = [...(input.start ? [input.start] : []), ...(input.start && input.end ? [input.end] : [])];
  const places = [...ends, ...input.stops.map((s) => s.at)];
  const reach = ends.map(() => anywhere);
  const ways = (input.findWays ?? waysBetween)(input.ground, places, reach, input.grain);
  const reached = reachedStops(input, ways, ends.length);
  const kept = input.stops.map((_, k) => k).filter((k) => reached.has(k));
  const shape: TourShape = !input.start ? 'free' : input.end ? 'to-end' : 'closed';
  const walk = new Walk(input, ways, kept, ends.length, shape);
  return {
    rounds: kept.length === 0 ? [] : walk.rounds(),
    unreachable: input.stops.filter((_, k) => !reached.has(k)).map((s) => s.id),
    notes: notesOn(input, ways, ends),
  };
}

function notesOn(input: RoundInput, ways: Ways, ends: readonly Point[]): string[] {
  if (!input.start) return ['No trailhead is drawn: the round runs from its first box to its last.'];
  return ends.flatMap((end, k) => {
    const stand = ways.stands[k];
    if (!stand) return ['No free ground was found near the trailhead.'];
    const metres = distance(end, stand);
    const name = k === 0 ? 'start' : 'end';
    return metres < 0.01
      ? []
      : [
          `The ${name} stands where nobody can walk: the round uses the nearest free ground, ${Math.ceil(metres)} m away.`,
        ];
  });
}

/** Stops joined to the start, or to the largest group of stops. */
function reachedStops(input: RoundInput, ways: Ways, ends: number): Set<number> {
  const all = input.stops.map((_, k) => k);
  const joined = (from: number) =>
    new Set(all.filter((k) => from === k + ends || ways.minutes(from, k + ends) !== null));
  if (input.start) return joined(0);
  return all.reduce(
    (best, k) => (best.has(k) || best.size >= all.length ? best : larger(best, joined(k + ends))),
    new Set<number>(),
  );
}

function larger<T>(a: Set<T>, b: Set<T>): Set<T> {
  return b.size > a.size ? b : a;
}

/** The kept stops as places of a tour: start first, end last, where there are any. */
class Walk {
  private readonly input: RoundInput;
  private readonly ways: Ways;
  private readonly ends: number;
  private readonly shape: TourShape;
  /** Tour place → index into the places the ways were asked for. */
  private readonly placeOf: readonly number[];

  constructor(input: RoundInput, ways: Ways, kept: readonly number[], ends: number, shape: TourShape) {
    this.input = input;
    this.ways = ways;
    this.ends = ends;
    this.shape = shape;
    const stops = kept.map((k) => k + ends);
    this.placeOf = shape === 'free' ? stops : [0, ...stops, ...(shape === 'to-end' ? [1] : [])];
  }

  rounds(): StopRound[] {
    const minutes = matrixOf(this.placeOf.length, (a, b) => this.ways.minutes(this.placeOf[a], this.placeOf[b])!);
    const stay = this.placeOf.map((place) => (place < this.ends ? 0 : this.input.stops[place - this.ends].minutes));
    const { walkers, seed, grain } = this.input;
    const kicks = grain === 'coarse' ? coarseKicks : undefined;
    const shares = splitRounds({ minutes, stay, shape: this.shape, walkers, seed, kicks });
    if (shares.length === 1 && this.input.byHand) return [this.byHand(minutes, shares[0].stops)];
    return shares.map((share, k) => {
      const { stops, gap } = this.judged(minutes, share.stops);
      return this.round(k + 1, this.turned(stops), gap);
    });
  }

  /** The places of one share with start and end, and its stops' order judged against the least any order can take. */
  private judged(minutes: CostMatrix, stops: readonly number[]): { stops: readonly number[]; gap: number | null } {
    const places = this.walkOf(stops);
    if (this.shape === 'closed') places.pop();
    if (places.length < 3) return { stops, gap: 0 };
    // Coarse minutes prove nothing about the walk.
    if (this.input.grain === 'coarse') return { stops, gap: null };
    const own = matrixOf(places.length, (a, b) => minutes.cost[places[a] * minutes.size + places[b]]);
    const order = places.map((_, k) => k);
    const cost = this.shape === 'closed' ? roundCost(own, order) : pathCost(own, order);
    const exact = exactPlaces(own.size, this.shape);
    const found = exact ? bestTour(own, this.shape, 0) : { order, cost, exact: false };
    const { tour, bound } = boundedTour(own, found, this.shape, { ...proofLimits, solver: this.input.solver });
    const kept = tour.cost < cost * (1 - 1e-9) ? tour.order.map((k) => places[k]) : places;
    const gap = bound > 0 ? Math.max(0, (Math.min(cost, tour.cost) - bound) / bound) : 0;
    return { stops: kept.filter((place) => !this.isEnd(place)), gap: gap < 1e-7 ? 0 : gap };
  }

  /** The order a person set, the stops they did not name slipped in where they cost least. */
  private byHand(minutes: CostMatrix, best: readonly number[]): StopRound {
    const named = new Map(this.input.byHand!.map((id, k) => [id, k]));
    const rank = (place: number) => named.get(this.stopOf(place).id);
    let stops = best.filter((p) => rank(p) !== undefined).sort((a, b) => rank(a)! - rank(b)!);
    for (const place of best.filter((p) => rank(p) === undefined)) {
      const trials = Array.from({ length: stops.length + 1 }, (_, k) => [
        ...stops.slice(0, k),
        place,
        ...stops.slice(k),
      ]);
      stops = trials.reduce((a, b) => (this.walkMinutes(minutes, b) < this.walkMinutes(minutes, a) ? b : a));
    }
    const judged = this.judged(minutes, best);
    if (judged.gap === null) return this.round(1, stops, null);
    const least = this.walkMinutes(minutes, judged.stops) / (1 + judged.gap);
    const walk = this.walkMinutes(minutes, stops);
    return this.round(1, stops, least > 0 ? Math.max(0, (walk - least) / least) : 0);
  }

  private isEnd(place: number): boolean {
    return this.placeOf[place] < this.ends;
  }

  /** Start, stops and end as places of the tour. */
  private walkOf(stops: readonly number[]): number[] {
    const last = this.placeOf.length - 1;
    return this.shape === 'free' ? [...stops] : [0, ...stops, this.shape === 'closed' ? 0 : last];
  }

  private walkMinutes(minutes: CostMatrix, stops: readonly number[]): number {
    return pathCost(minutes, this.walkOf(stops));
  }

  private way(a: number, b: number) {
    return this.ways.way(this.placeOf[a], this.placeOf[b])!;
  }

  private stopOf(place: number): Stop {
    return this.input.stops[this.placeOf[place] - this.ends];
  }

  private turned(stops: readonly number[]): readonly number[] {
    const { direction, start } = this.input;
    if (!direction || this.shape !== 'closed') return stops;
    return faceDirection(stops, (place) => this.stopOf(place).at, start!, direction);
  }

  private round(walker: number, stops: readonly number[], gap: number | null): StopRound {
    const walk = this.walkOf(stops);
    const legs = walk.slice(1).map((to, k) => this.leg(walk[k], to, k === 0, k === walk.length - 2));
    const sum = (of: 'metres' | 'minutes') => legs.reduce((all, leg) => all + leg[of], 0);
    return {
      walker,
      start: this.input.start,
      stops: stops.map((place) => this.stopOf(place).id),
      legs,
      metres: sum('metres'),
      minutes: sum('minutes') + stops.reduce((all, place) => all + this.stopOf(place).minutes, 0),
      gap,
    };
  }

  private leg(a: number, b: number, first: boolean, last: boolean): StopLeg {
    const { metres, minutes, line } = this.way(a, b);
    const open = this.shape === 'free';
    return {
      from: first && !open ? 'start' : this.stopOf(a).id,
      to: last && !open ? 'end' : this.stopOf(b).id,
      metres,
      minutes,
      bearing: bearing(line[0], line[line.length - 1]),
      line,
    };
  }
}
