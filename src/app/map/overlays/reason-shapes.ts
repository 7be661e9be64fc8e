/** The shapes that show what decided a box, in meters of the site's frame. Nothing is scored here: all figures come from the card. */
import { birdById, isBird } from '../../../birds/index.ts';
import type { Evidence } from '../../../criteria/criterion.ts';
import { spacing, spacingNeeded } from '../../../criteria/spacing.ts';
import { lengthText } from '../../../criteria/units.ts';
import { bearing, destination, distance, type Point } from '../../../geometry/point.ts';
import type { Plan, PlannedBox } from '../../../plan-types.ts';
import type { Site, SiteSettings } from '../../../site/types.ts';
import type { Words } from '../../words/en.ts';

/** A length in words; `like` = in the unit that length would have. */
type Say = (metres: number, like?: number) => string;

export interface ReasonShape {
  readonly as: 'area' | 'line' | 'place';
  readonly role: string;
  readonly points: readonly Point[];
  readonly words?: string;
}

/** Radius of the facing wedge and longest reach of lines shown, meters (ours). */
const wedgeReach = 30;
const longest = 250;
/** Posts too close shown at most: the best ones (ours). */
const mostClose = 2;

export function reasonShapes(
  box: PlannedBox,
  plan: Plan,
  site: Site,
  { posts: words, kinds }: Pick<Words, 'posts' | 'kinds'>,
): ReasonShape[] {
  const { settings } = site;
  const kindOf = (feature: string, other: string) =>
    kinds[site.features.find((f) => f.id === feature)?.kind ?? other] ?? other;
  const say: Say = (metres, like) => lengthText(metres, settings.units, like);
  return [
    ...disc(box, say),
    ...spacingRing(box, settings, words, say),
    ...wedge(box),
    ...close(box, plan, words, say),
    ...tooNear(box, plan, site, words, say),
    ...toNearest(box, 'woods-edge', 'woods', (d, feature) => words.nearest(kindOf(feature, 'woods'), say(d))),
    ...toNearest(box, 'brush', 'brush', (d, feature) => words.nearest(kindOf(feature, 'brush'), say(d))),
    ...perch(box),
  ];
}

function circle(middle: Point, radius: number): Point[] {
  return Array.from({ length: 73 }, (_, i) => destination(middle, i * 5, radius));
}

function evidence(box: PlannedBox, id: string): Evidence | null {
  return box.card.rows.find((row) => row.id === id)?.at ?? null;
}

function disc(box: PlannedBox, say: Say): ReasonShape[] {
  const found = box.card.rows.map((row) => row.at).find((at) => at?.shape === 'disc');
  if (found?.shape !== 'disc') return [];
  return [
    { as: 'area', role: 'disc', points: circle(box.at, found.radius) },
    { as: 'place', role: 'disc-end', points: [destination(box.at, 180, found.radius)], words: say(found.radius) },
  ];
}

function spacingRing(box: PlannedBox, settings: SiteSettings, words: Words['posts'], say: Say): ReasonShape[] {
  if (!isBird(box.bird)) return [];
  const bird = birdById(box.bird);
  const own = settings.figures[`${box.bird}.spacing.same`];
  const metres = own ?? spacingNeeded(bird, bird).metres;
  if (metres <= 0 || metres > 2000) return [];
  return [{ as: 'line', role: 'ring', points: circle(box.at, metres), words: words.spacing(say(metres)) }];
}

function wedge(box: PlannedBox): ReasonShape[] {
  const { from, to } = box.card.facing;
  const wide = (((to - from) % 360) + 360) % 360;
  const steps = Math.max(2, Math.ceil(wide / 6));
  const rim = Array.from({ length: steps + 1 }, (_, i) => destination(box.at, from + (wide * i) / steps, wedgeReach));
  return [{ as: 'area', role: 'wedge', points: [box.at, ...rim, box.at] }];
}

function toNearest(
  box: PlannedBox,
  id: string,
  role: string,
  say: (d: number, feature: string) => string,
): ReasonShape[] {
  const at = evidence(box, id);
  if (at?.shape !== 'place') return [];
  const metres = distance(box.at, at.at);
  if (metres < 1 || metres > longest) return [];
  return [
    { as: 'line', role, points: [box.at, at.at] },
    { as: 'place', role: `${role}-end`, points: [at.at], words: say(metres, at.feature) },
  ];
}

/** A T whose bar stands across the way to the perch. */
function perch(box: PlannedBox): ReasonShape[] {
  const at = evidence(box, 'perch');
  if (at?.shape !== 'place') return [];
  const toward = bearing(box.at, at.at);
  const half = 2.2;
  return [
    {
      as: 'line',
      role: 'perch',
      points: [destination(at.at, toward + 90, half), destination(at.at, toward - 90, half)],
    },
    { as: 'line', role: 'perch', points: [at.at, destination(at.at, toward + 180, 2 * half)] },
  ];
}

function close(box: PlannedBox, plan: Plan, words: Words['posts'], say: Say): ReasonShape[] {
  const bird = isBird(box.bird) ? birdById(box.bird) : null;
  const needs = bird ? spacingNeeded(bird, bird).metres : 0;
  return plan.leftOut
    .filter((left) => left.code === 'too-close' && left.becauseOf === box.number)
    .sort((a, b) => (b.score ?? 0) - (a.score ?? 0))
    .slice(0, mostClose)
    .flatMap((left): ReasonShape[] => [
      { as: 'line', role: 'close', points: [box.at, left.at] },
      {
        as: 'place',
        role: 'close-end',
        points: [left.at],
        words: words.tooClose(say(distance(box.at, left.at), needs), say(needs, needs)),
      },
    ]);
}

/** Boxes that stand too near to it, with the distance: under the hand, or where both stand already. */
function tooNear(box: PlannedBox, plan: Plan, { settings }: Site, words: Words['posts'], say: Say): ReasonShape[] {
  const own = isBird(box.bird) ? birdById(box.bird) : null;
  if (!own) return [];
  return plan.boxes.flatMap((other): ReasonShape[] => {
    const bird = isBird(other.bird) ? birdById(other.bird) : null;
    if (other === box || other.post === box.post || !bird) return [];
    const pairedWithOther = box.pairedWith === other.number;
    const {
      ok,
      distance: apart,
      needed,
    } = spacing({ at: box.at, bird: own, pairedWithOther }, { at: other.at, bird, pairedWithOther }, settings);
    if (ok) return [];
    const middle = { x: (box.at.x + other.at.x) / 2, y: (box.at.y + other.at.y) / 2 };
    return [
      { as: 'line', role: 'close', points: [box.at, other.at] },
      {
        as: 'place',
        role: 'close-mid',
        points: [middle],
        words: words.tooClose(say(apart, needed), say(needed, needed)),
      },
    ];
  });
}
