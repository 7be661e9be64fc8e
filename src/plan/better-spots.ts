/** Where a box that did badly would stand better: a few steps away, or at a post the plan left out. */
import type { BirdGuide } from '../birds/guide.ts';
import { birdById, isBird } from '../birds/index.ts';
import { isPair } from '../criteria/pairing.ts';
import { quickScore } from '../criteria/quick-score.ts';
import { spacingNeeded } from '../criteria/spacing.ts';
import type { Suns } from '../criteria/suns.ts';
import { destination, distance, type Point } from '../geometry/point.ts';
import type { Ground } from '../ground/types.ts';
import { candidatesOf, placeCandidate } from '../placement/candidates.ts';
import { nudge } from '../placement/nudge.ts';
import type { Candidate, Plan, PlannedBox } from '../plan-types.ts';
import type { LonLat } from '../site/types.ts';

/** A better spot for one box. `gain` in points (0–100). */
export interface BetterSpot {
  readonly how: 'steps' | 'post';
  /** Id of the left-out post it is at; null when it is a few steps away. */
  readonly post: string | null;
  readonly position: LonLat;
  readonly label: string;
  readonly metres: number;
  readonly bearing: number;
  readonly gain: number;
  /** Afternoon hours of direct sun (0–5) there and where the box stands now, when shade is what was looked for; else null. */
  readonly sun: { readonly there: number; readonly here: number } | null;
}

/** How far a box is moved and still counts as the same box, metres (ours). */
const steps = 12;
/** Left-out posts looked at for one box, best first (ours). */
export const mostPosts = 6;
/** Metres between the two boxes of a new pair: 20 ft, the middle of the 15–25 ft of the texts (TWRA, Sial). */
const pairStep = 6.096;
export const usable: readonly string[] = ['too-close', 'outscored', 'low-score'];
const winds = ['north', 'northeast', 'east', 'southeast', 'south', 'southwest', 'west', 'northwest'];

/** What every question here needs. `say` writes a length in the site's unit. */
export interface SpotFinder {
  readonly ground: Ground;
  readonly suns: Suns;
  readonly plan: Plan;
  say(metres: number): string;
}

const windOf = (bearing: number) => winds[Math.round((((bearing % 360) + 360) % 360) / 45) % 8]!;
export const guideOf = (id: string): BirdGuide | null => (isBird(id) ? birdById(id) : null);

/** Whether a place keeps the spacing to every other box, and to its own partner. */
export function free({ ground, plan }: SpotFinder, box: PlannedBox, guide: BirdGuide, taken: readonly Point[]) {
  const partner = plan.boxes.find((one) => one.number === box.pairedWith) ?? null;
  const others = plan.boxes.filter((one) => one !== box && one !== partner);
  return (at: Point): boolean => {
    if (ground.forbidden(at) !== null || ground.coverAt(at) === null) return false;
    if (partner && !isPair(distance(at, partner.at), ground.site.settings)) return false;
    if (taken.some((place) => distance(place, at) < spacingNeeded(guide, guide).metres)) return false;
    return others.every((one) => {
      const other = guideOf(one.bird);
      const needed = other ? spacingNeeded(guide, other).metres : 0;
      return distance(at, one.at) >= Math.min(needed, distance(box.at, one.at)) - 0.005;
    });
  };
}

/** The box's own post as a candidate, with what is drawn of it. */
export function drawnPost({ ground }: SpotFinder, id: string, at: Point): Candidate {
  return candidatesOf(ground).find((one) => one.id === id) ?? placeCandidate(id, at);
}

function scorer(finder: SpotFinder, box: PlannedBox, guide: BirdGuide) {
  const { ground, suns } = finder;
  const drawn = drawnPost(finder, box.post, box.at);
  return (at: Point): number => quickScore(ground, { ...drawn, at } satisfies Candidate, guide, suns);
}

/** The best of both ways; null when neither gains a whole point. `taken` are places given to other boxes already. */
export function betterSpot(finder: SpotFinder, box: PlannedBox, taken: readonly Point[]): BetterSpot | null {
  const guide = guideOf(box.bird);
  if (!guide) return null;
  const mayStand = free(finder, box, guide, taken);
  const score = scorer(finder, box, guide);
  const here = score(box.at);
  const near = nudge(box.at, steps, (at) => (at === box.at || mayStand(at) ? score(at) : null));
  const spots: BetterSpot[] = near && near.metres > 0 ? [spotAt(finder, box, near.at, near.gain, null)] : [];
  const posts = box.pairedWith === null ? finder.plan.leftOut : [];
  const looked = posts
    .filter((out) => usable.includes(out.code) && out.score !== null && mayStand(out.at))
    .sort((a, b) => b.score! - a.score! || distance(a.at, box.at) - distance(b.at, box.at))
    .slice(0, mostPosts);
  for (const out of looked)
    spots.push(spotAt(finder, box, out.at, drawnScore(finder, out.post, out.at, guide) - here, out.post));
  const best = spots.reduce<BetterSpot | null>((a, b) => (a === null || b.gain > a.gain ? b : a), null);
  return best && best.gain >= 1 ? best : null;
}

function drawnScore(finder: SpotFinder, id: string, at: Point, guide: BirdGuide): number {
  return quickScore(finder.ground, drawnPost(finder, id, at), guide, finder.suns);
}

/** A place as it is told to people: how far and which way. */
export function spotAt(
  finder: SpotFinder,
  box: PlannedBox,
  at: Point,
  gain: number,
  post: string | null,
  sun: BetterSpot['sun'] = null,
): BetterSpot {
  const metres = distance(box.at, at);
  const bearing = ((Math.atan2(at.x - box.at.x, at.y - box.at.y) * 180) / Math.PI + 360) % 360;
  const far = `${finder.say(metres)} ${windOf(bearing)}`;
  const name = post === null ? null : nameOf(finder.ground, post);
  const label = post === null ? `a spot ${far}` : `${name ? `the post “${name}”` : 'a post'} ${far}`;
  return {
    how: post === null ? 'steps' : 'post',
    post,
    position: finder.ground.frame.toLonLat(at),
    label,
    metres,
    bearing,
    gain,
    sun,
  };
}

function nameOf(ground: Ground, id: string): string | null {
  const name = ground.site.features.find((feature) => feature.id === id)?.properties.name;
  return typeof name === 'string' && name !== '' ? name : null;
}

/** Where the second box of a new pair stands best around a box; null when there is no room. */
export function pairSpot(finder: SpotFinder, box: PlannedBox): BetterSpot | null {
  const guide = guideOf(box.bird);
  if (!guide) return null;
  const mayStand = free(finder, box, guide, []);
  const score = scorer(finder, box, guide);
  const places = winds.map((_, i) => destination(box.at, i * 45, pairStep)).filter(mayStand);
  const best = places
    .map((at) => ({ at, score: score(at) }))
    .reduce<{ at: Point; score: number } | null>((a, b) => (a === null || b.score > a.score ? b : a), null);
  return best && best.score > 0 ? spotAt(finder, box, best.at, 0, null) : null;
}
