/** A round as the walker carries it: from the plan, from a scanned code, or from a shared file. Places may be missing. */
import { bearing, distance, type Point } from '../../geometry/point.ts';
import { makeFrame } from '../../ground/frame.ts';
import type { Frame } from '../../ground/types.ts';
import type { Leg, Plan, PlannedBox, Round } from '../../plan-types.ts';
import type { RoundCode } from '../../print/round-code.ts';
import type { LonLat } from '../../site/types.ts';

/** The way to a stop, or from the last one back. */
export interface Way {
  readonly metres: number;
  readonly minutes: number;
  /** Degrees clockwise from true north, straight. */
  readonly bearing: number;
}

export interface Stop {
  readonly number: number;
  readonly post: string;
  /** Null when the round was shared without places. */
  readonly position: LonLat | null;
  /** Bird id the box is planned for; null when not told. */
  readonly bird: string | null;
  /** Degrees clockwise from true north the hole looks; null when not told. */
  readonly facing: number | null;
  /** The walk to this stop; null when not known. */
  readonly way: Way | null;
}

export interface FieldRound {
  readonly site: string;
  /** First eight letters of the hash of numbers and places; null when not known. */
  readonly hash: string | null;
  /** 1 for the first walker. */
  readonly walker: number;
  readonly stops: readonly Stop[];
  /** From the last box to the end of the walk; null when there is none. */
  readonly back: Way | null;
  readonly metres: number;
  readonly minutes: number;
  /** Metres the places may be off because they were blurred before sharing; 0 = exact. */
  readonly blur: number;
}

const wayOf = ({ metres, minutes, bearing }: Leg): Way => ({ metres, minutes, bearing });

function stopOf(box: PlannedBox, leg: Leg | undefined): Stop {
  return {
    number: box.number,
    post: box.post,
    position: box.position,
    bird: box.bird,
    facing: box.card.facing.used,
    way: leg ? wayOf(leg) : null,
  };
}

/** One round of a plan, in walking order. */
export function roundOfPlan(plan: Plan, round: Round, hash: string | null): FieldRound {
  const byNumber = new Map(plan.boxes.map((box) => [box.number, box]));
  const last = round.legs.find((leg) => leg.to === 'end');
  return {
    site: plan.siteName,
    hash,
    walker: round.walker,
    stops: round.boxes.flatMap((number) => {
      const box = byNumber.get(number);
      const leg = round.legs.find((one) => one.to === number);
      return box ? [stopOf(box, leg)] : [];
    }),
    back: last ? wayOf(last) : null,
    metres: round.metres,
    minutes: round.minutes,
    blur: 0,
  };
}

/** All rounds of a plan; boxes on no round make one more, without legs, so that none is forgotten. */
export function roundsOfPlan(plan: Plan, hash: string | null): readonly FieldRound[] {
  const rounds = plan.rounds.filter((round) => round.boxes.length > 0).map((round) => roundOfPlan(plan, round, hash));
  const walked = new Set(rounds.flatMap((round) => round.stops.map((stop) => stop.number)));
  const rest = plan.boxes.filter((box) => !walked.has(box.number));
  if (rest.length === 0) return rounds;
  const stops = rest.map((box) => stopOf(box, undefined));
  return [
    ...rounds,
    { site: plan.siteName, hash, walker: rounds.length + 1, stops, back: null, metres: 0, minutes: 0, blur: 0 },
  ];
}

/** Post id of a box known by number only: its plan is told apart by the hash. */
export function postByNumber(number: number, hash: string | null): string {
  return `number-${number}@${hash ?? 'unknown'}`;
}

/** The number and hash in such an id, or null when it is another kind of id. */
export function numberInPost(post: string): { readonly number: number; readonly hash: string } | null {
  const found = /^number-(\d+)@([0-9a-f]{8}|unknown)$/.exec(post);
  return found ? { number: Number(found[1]), hash: found[2]! } : null;
}

/** Minutes a metre takes at 4.5 km/h over grass (ours, between the 5 km/h of Naismith and the 4 km/h off track of Aitken): only where the plan's own legs are not known. */
const minutesPerMetre = 60 / 4500;

/** A round from a scanned code: straight ways between the places. `minutesPerBox` are added for each box. */
export function roundOfCode(code: RoundCode, site: string, minutesPerBox: number): FieldRound {
  const stops = straightWays(
    code.stops.map(({ number, position }) => ({
      number,
      post: postByNumber(number, code.hash),
      position,
      bird: null,
      facing: null,
      way: null,
    })),
  );
  const metres = stops.reduce((sum, stop) => sum + (stop.way?.metres ?? 0), 0);
  return {
    site,
    hash: code.hash,
    walker: 1,
    stops,
    back: null,
    metres,
    minutes: metres * minutesPerMetre + minutesPerBox * stops.length,
    blur: 0,
  };
}

/** Ways as the crow flies, for rounds that came without legs. */
export function straightWays(stops: readonly Stop[]): readonly Stop[] {
  const frame = frameOfStops(stops);
  return stops.map((stop, i) => {
    const before = stops[i - 1];
    if (!frame || !before?.position || !stop.position || stop.way) return stop;
    const [a, b] = [frame.toPlane(before.position), frame.toPlane(stop.position)];
    const metres = distance(a, b);
    return { ...stop, way: { metres, minutes: metres * minutesPerMetre, bearing: bearing(a, b) } };
  });
}

/** Meters around the middle of the stops; null when none has a place. */
export function frameOfStops(stops: readonly Stop[]): Frame | null {
  const placed = stops.flatMap((stop) => (stop.position ? [stop.position] : []));
  if (placed.length === 0) return null;
  const mean = (i: 0 | 1) => placed.reduce((sum, position) => sum + position[i], 0) / placed.length;
  return makeFrame([mean(0), mean(1)]);
}

/** Where a stop is in that frame; null when it has no place. */
export function placeOf(frame: Frame | null, stop: Stop): Point | null {
  return frame && stop.position ? frame.toPlane(stop.position) : null;
}

/** The text whose hash names a plan's numbers and places: to 1e-5°, as the code carries them, so that both ends agree. */
export function hashText(stops: readonly { readonly number: number; readonly position: LonLat }[]): string {
  const round = (degrees: number) => Math.round(degrees * 1e5);
  return [...stops]
    .sort((a, b) => a.number - b.number)
    .map(({ number, position }) => `${number}:${round(position[0])},${round(position[1])}`)
    .join(';');
}

const turned = (way: Way | null): Way | null => way && { ...way, bearing: (way.bearing + 180) % 360 };

/** The same round walked from its end to its start; numbers stay. */
export function otherWay(round: FieldRound): FieldRound {
  const { stops, back } = round;
  const ways = [...stops.map((stop) => stop.way), back].reverse().map(turned);
  return {
    ...round,
    stops: [...stops].reverse().map((stop, i) => ({ ...stop, way: ways[i] ?? null })),
    back: ways.at(-1) ?? null,
  };
}
