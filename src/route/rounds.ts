/** One big round split into one for each walker, with the longest made as short as it can be. */
import type { CostMatrix } from './matrix.ts';
import { matrixOf } from './matrix.ts';
import type { TourShape } from './tour.ts';
import { bestTour } from './tour.ts';

export interface SplitInput {
  /** Minutes between places; place 0 is the start, and the last place the end when the shape is `to-end`. */
  readonly minutes: CostMatrix;
  /** Minutes spent at each place. */
  readonly stay: readonly number[];
  readonly shape: TourShape;
  readonly walkers: number;
  readonly seed: number;
  /** How long the big round is searched; as its places ask for unless given. */
  readonly kicks?: number;
}

/** A walker's stops in order, without start and end, and the minutes walking and staying. */
export interface Share {
  readonly stops: readonly number[];
  readonly minutes: number;
}

/** Places that are start or end and not a stop. */
function isEnd(input: SplitInput, place: number): boolean {
  return (place === 0 && input.shape !== 'free') || (input.shape === 'to-end' && place === input.minutes.size - 1);
}

/** Shares in the order of the big round; never more than there are stops. */
export function splitRounds(input: SplitInput): Share[] {
  const whole = bestTour(input.minutes, input.shape, input.seed, input.kicks);
  const stops = whole.order.filter((place) => !isEnd(input, place));
  const walkers = Math.max(1, Math.min(Math.floor(input.walkers), stops.length));
  if (walkers === 1) return [{ stops, minutes: shareMinutes(input, stops) }];
  const cut = bestCut(input, stops, walkers).map((part) => retour(input, part));
  return balance(input, cut);
}

/** Minutes of walking a share in the order given, from the start to the end, and staying at its stops. */
export function shareMinutes(input: SplitInput, stops: readonly number[]): number {
  const { minutes, stay, shape } = input;
  const walk = shape === 'free' ? stops : [0, ...stops, shape === 'closed' ? 0 : minutes.size - 1];
  let sum = 0;
  for (let k = 1; k < walk.length; k++) sum += minutes.cost[walk[k - 1] * minutes.size + walk[k]];
  return stops.reduce((all, place) => all + stay[place], sum);
}

/** Stretches of the big round whose longest share is shortest (dynamic programming over the cuts). */
function bestCut(input: SplitInput, stops: readonly number[], walkers: number): number[][] {
  const n = stops.length;
  const share = Array.from({ length: n }, (_, from) =>
    Array.from({ length: n + 1 }, (_, to) => (to > from ? shareMinutes(input, stops.slice(from, to)) : 0)),
  );
  let longest = Array.from({ length: n + 1 }, (_, to) => (to === 0 ? 0 : share[0][to]));
  const cuts: number[][] = [];
  for (let w = 1; w < walkers; w++) {
    const next = new Array<number>(n + 1).fill(Infinity);
    const cutAt = new Array<number>(n + 1).fill(0);
    for (let to = w + 1; to <= n; to++) {
      for (let from = w; from < to; from++) {
        const worst = Math.max(longest[from], share[from][to]);
        if (worst < next[to]) {
          next[to] = worst;
          cutAt[to] = from;
        }
      }
    }
    cuts.push(cutAt);
    longest = next;
  }
  const parts: number[][] = [];
  let to = n;
  for (let w = walkers - 2; w >= -1; w--) {
    const from = w < 0 ? 0 : cuts[w][to];
    parts.unshift(stops.slice(from, to));
    to = from;
  }
  return parts;
}

/** The same stops in their own best order. */
function retour(input: SplitInput, stops: readonly number[]): Share {
  const { minutes, shape, seed } = input;
  const places = [...(shape === 'free' ? [] : [0]), ...stops, ...(shape === 'to-end' ? [minutes.size - 1] : [])];
  const own = matrixOf(places.length, (a, b) => minutes.cost[places[a] * minutes.size + places[b]]);
  const order = bestTour(own, shape, seed, 600).order.map((k) => places[k]);
  const kept = order.filter((place) => !isEnd(input, place));
  const [asGiven, better] = [shareMinutes(input, stops), shareMinutes(input, kept)];
  return better < asGiven - 1e-9 ? { stops: kept, minutes: better } : { stops: [...stops], minutes: asGiven };
}

/** Hands single stops of the longest share to another while that shortens the longest. */
function balance(input: SplitInput, shares: Share[]): Share[] {
  const current = [...shares];
  for (let turns = 0; turns < 4 * input.stay.length; turns++) {
    const worst = current.reduce((w, share, k) => (share.minutes > current[w].minutes ? k : w), 0);
    const move = bestMove(input, current, worst);
    if (!move) break;
    current[worst] = move.giver;
    current[move.to] = move.taker;
  }
  return current;
}

function bestMove(input: SplitInput, shares: readonly Share[], worst: number) {
  let best: { giver: Share; taker: Share; to: number; longest: number } | null = null;
  const giving = shares[worst];
  if (giving.stops.length < 2) return null;
  for (const place of giving.stops) {
    const giver = withMinutes(
      input,
      giving.stops.filter((p) => p !== place),
    );
    for (let to = 0; to < shares.length; to++) {
      if (to === worst) continue;
      const taker = cheapestInsertion(input, shares[to].stops, place);
      const longest = Math.max(giver.minutes, taker.minutes);
      if (longest < giving.minutes - 1e-6 && (!best || longest < best.longest)) best = { giver, taker, to, longest };
    }
  }
  return best && { ...best, giver: retour(input, best.giver.stops), taker: retour(input, best.taker.stops) };
}

function withMinutes(input: SplitInput, stops: readonly number[]): Share {
  return { stops, minutes: shareMinutes(input, stops) };
}

function cheapestInsertion(input: SplitInput, stops: readonly number[], place: number): Share {
  let best: Share | null = null;
  for (let at = 0; at <= stops.length; at++) {
    const share = withMinutes(input, [...stops.slice(0, at), place, ...stops.slice(at)]);
    if (!best || share.minutes < best.minutes) best = share;
  }
  return best!;
}
