import { curveAt } from '../birds/curve.ts';
import type { Curve } from '../birds/guide.ts';
import type { Shares } from '../ground/types.ts';
import { type CoverKind, coverKinds } from '../site/types.ts';
import type { Criterion, PostContext } from './criterion.ts';
import { bender, meanCurve, meanOver, plateau } from './curve-shape.ts';
import { ours, reader } from './figures.ts';
import { lengthText, percentText } from './units.ts';

const settings = {
  radius: ours(40, 'm', [20, 80], 'The paper gives no radius; 30–50 m is read from its plots.'),
  sightReach: ours(150, 'm', [50, 300]),
  coverPart: ours(0.7, 'share', [0, 1], 'Low cover against free sight.'),
  mostUnmapped: ours(0.9, 'share', [0.1, 1], 'Not judged where more than this of the disc is not drawn.'),
  zero: ours(
    0.2,
    'share',
    [0, 0.9],
    "Low cover that scores 0; the bird guide's own curve stands until this is changed.",
  ),
  full: ours(
    0.85,
    'share',
    [0.1, 1],
    "Low cover that scores 1; the bird guide's own curve stands until this is changed.",
  ),
  'short-grass': ours(1, 'weight', [0, 1]),
  orchard: ours(0.8, 'weight', [0, 1]),
  wetland: ours(0.5, 'weight', [0, 1]),
  meadow: ours(0.45, 'weight', [0, 1], 'Tall grass: 21 % of boxes used against 65 % (Navara & Anderson 2011).'),
  paved: ours(0.4, 'weight', [0, 1]),
  crop: ours(0.3, 'weight', [0, 1]),
  brush: ours(0.1, 'weight', [0, 1]),
  woods: ours(0, 'weight', [0, 1]),
  building: ours(0, 'weight', [0, 1]),
  water: ours(0, 'weight', [0, 1]),
};
const on = reader('openness', settings);

/** Weighted share of low cover in the whole disc, 0–1: ground nobody drew counts as none. The bird's own weights come before the site's. */
function lowCover(shares: Shares, weights: Record<CoverKind, number>, bird: Readonly<Partial<Record<string, number>>>) {
  let sum = 0;
  for (const kind of coverKinds) sum += shares[kind] * (bird[kind] ?? weights[kind]);
  return Math.min(1, sum);
}

const bent = bender('openness');
const coverCurve = ({ bird, site }: PostContext): Curve => bent(bird.habitat.lowCoverShare.value, site);

/** Least undrawn share that is spoken of and reckoned with. */
const someUndrawn = 0.005;

/** Undrawn share of the disc, 0–1. */
function undrawn({ spot, site }: PostContext): number {
  const { unmapped } = spot.shares(on(site).radius);
  return unmapped < someUndrawn ? 0 : unmapped;
}

/**
 * The cover's score: where part of the disc is not drawn, it may be anything from no low cover to all of it, so the mean of the curve over
 * that span counts. Drawing woods there lowers it for a bird of open land, drawing short grass raises it.
 */
function coverScore(curve: Curve, raw: number, unmapped: number): number {
  return unmapped === 0 ? curveAt(curve, raw) : meanOver(curve, raw, raw + unmapped);
}

/** What free sight adds, 0–1; null where the bird does not mind. */
function sightScore({ bird, spot, eye, site }: PostContext): number | null {
  const curve = bird.habitat.sight?.value;
  return curve ? curveAt(curve, spot.meanSight(eye, on(site).sightReach)) : null;
}

/** Metres to something taller than the hole within the bird's own clearance (below zero inside it); null when there is none. */
function tallNear({ spot, bird, eye }: PostContext): number | null {
  const clear = bird.habitat.clearAround?.value[0];
  if (clear === undefined) return null;
  const nearest = spot.ground.has('tall') ? spot.nearest('tall') : null;
  if (!nearest) return null;
  // Inside something taller than the eye, however far its edge.
  if (spot.ground.under(spot.point, eye)) return Math.min(0, nearest.distance);
  if (nearest.distance > clear) return null;
  const taller = spot.pieces('tall', clear).filter((piece) => piece.height > eye);
  if (taller.length === 0) return null;
  return taller.some((piece) => piece.feature === nearest.feature) ? nearest.distance : clear;
}

/** Low cover around the post, and how far one sees from it. */
export const openness: Criterion = {
  id: 'openness',
  title: 'Openness',
  unit: 'share of low cover',
  weight: ours(3, 'weight', [0, 10], 'The best proven rule of all (Navara & Anderson 2011).'),
  settings,
  costly: true,
  measure(context) {
    const values = on(context.site);
    const shares = context.spot.shares(values.radius);
    if (shares.unmapped > values.mostUnmapped) {
      return { raw: null, reason: `${percentText(shares.unmapped)} of the surroundings is not drawn` };
    }
    const raw = lowCover(shares, values, context.bird.habitat.lowCover?.value ?? {});
    const unmapped = undrawn(context);
    return { raw, parts: { unmapped }, known: 1 - unmapped, at: { shape: 'disc', radius: values.radius } };
  },
  score({ raw, parts }, context) {
    const cover = coverScore(coverCurve(context), raw, parts?.unmapped ?? 0);
    const sight = sightScore(context);
    if (sight === null) return cover;
    const part = on(context.site).coverPart;
    return part * cover + (1 - part) * sight;
  },
  explain(measured, context) {
    if (measured.raw === null) return `Openness not judged: ${measured.reason}`;
    const { site, spot, eye, bird } = context;
    const values = on(site);
    const [from, to] = plateau(coverCurve(context));
    const wants = from > 0 && Number.isFinite(from) ? percentText(from) : `at most ${percentText(Math.min(1, to))}`;
    const unmapped = measured.parts?.unmapped ?? 0;
    const [least, bare] = unmapped ? ['at least ', ` (${percentText(unmapped)} of it is not drawn)`] : ['', ''];
    const cover = bird.habitat.lowCoverName ?? 'Low cover';
    const around = `${cover} on ${least}${percentText(measured.raw)} of ${lengthText(values.radius, site.units)} around${bare}, wants ${wants}`;
    if (!bird.habitat.sight) return around;
    const wantsSight = Math.min(values.sightReach, plateau(bird.habitat.sight.value)[0]);
    const sees = spot.meanSight(eye, values.sightReach);
    const say = (metres: number) => lengthText(metres, site.units, Math.max(sees, wantsSight));
    return `${around}; free sight ${say(sees)}, wants ${say(wantsSight)}`;
  },
  hard(_, context) {
    const tall = tallNear(context);
    if (tall === null) return null;
    const [clear, better] = context.bird.habitat.clearAround!.value;
    const say = (metres: number) => lengthText(metres, context.site.units);
    const where =
      tall <= 0
        ? 'This is inside or under something taller than the hole'
        : `Something taller than the hole stands within ${say(Math.max(tall, 0.1))}`;
    return `${where}; ${context.bird.name} needs ${say(clear)} clear, better ${say(better)}`;
  },
  curve(context) {
    const cover = meanCurve(coverCurve(context), undrawn(context));
    const sight = sightScore(context);
    if (sight === null) return cover;
    const part = on(context.site).coverPart;
    return cover.map(([raw, score]) => [raw, part * score + (1 - part) * sight] as const);
  },
  sources: ({ bird }) => [
    ...new Set([
      ...bird.habitat.lowCoverShare.source,
      ...(bird.habitat.sight?.source ?? []),
      ...(bird.habitat.lowCover?.source ?? []),
    ]),
  ],
};
