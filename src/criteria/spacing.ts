import type { BirdGuide } from '../birds/guide.ts';
import { distance, type Point } from '../geometry/point.ts';
import type { SiteSettings } from '../site/types.ts';
import { birdFor } from './bird-for.ts';
import { isPair } from './pairing.ts';
import { lengthText } from './units.ts';

/** A box as spacing sees it. */
export interface Placed {
  readonly at: Point;
  readonly bird: BirdGuide;
  /** True when it is one of a pair with the other box asked about. */
  readonly pairedWithOther?: boolean;
}

export interface Spacing {
  readonly ok: boolean;
  /** Metres between the two. */
  readonly distance: number;
  /** Metres asked for; 0 = none. */
  readonly needed: number;
  readonly sentence: string;
  readonly sources: readonly string[];
}

/** Metres two sites must stand apart for these two birds, with the sources; the larger where each asks for its own. 0 = none. */
export function spacingNeeded(
  a: BirdGuide,
  b: BirdGuide,
): { readonly metres: number; readonly sources: readonly string[] } {
  const figures = a.id === b.id ? [a.spacing.same] : [a.spacing.other[b.id], b.spacing.other[a.id]];
  const known = figures.filter((figure) => figure !== undefined);
  if (known.length === 0) return { metres: 0, sources: [] };
  const most = known.reduce((x, y) => (y.value > x.value ? y : x));
  return { metres: most.value, sources: most.source };
}

/** Rounding of a drawn coordinate, metres: boxes set out at exactly the spacing must pass. */
const rounding = 0.005;

function sentenceOf(apart: number, needed: number, ok: boolean, names: string, site: SiteSettings): string {
  const say = (metres: number) => lengthText(metres, site.units, Math.max(apart, needed));
  if (needed === 0) return `${say(apart)} apart: no spacing is asked for between ${names}`;
  if (ok) return `${say(apart)} apart, wants ${say(needed)} between ${names}`;
  return `${say(apart)} apart: too close, wants ${say(needed)} between ${names}`;
}

/** Whether two boxes stand far enough apart. Two boxes of one pair are one site and never break the rule against each other. */
export function spacing(a: Placed, b: Placed, site: SiteSettings): Spacing {
  const [one, two] = [birdFor(a.bird, site), birdFor(b.bird, site)];
  const apart = distance(a.at, b.at);
  const { metres, sources } = spacingNeeded(one, two);
  const names = one.id === two.id ? `sites of ${one.name}` : `${one.name} and ${two.name}`;
  if (one.id === two.id && one.spacing.pairs && (a.pairedWithOther ?? true) && isPair(apart, site)) {
    return {
      ok: true,
      distance: apart,
      needed: 0,
      sentence: `${lengthText(apart, site.units)} apart: a pair, one site`,
      sources,
    };
  }
  const ok = apart >= metres - rounding;
  return { ok, distance: apart, needed: metres, sentence: sentenceOf(apart, metres, ok, names, site), sources };
}
