/** Things to look at that do not change a score. */
import type { Figure } from '../birds/guide.ts';
import { turn } from '../geometry/point.ts';
import { isGrazed, isSprayed } from '../site/properties.ts';
import { placesAround } from './around.ts';
import type { PostContext } from './criterion.ts';
import { ours, reader } from './figures.ts';
import { groundWith } from './marked-ground.ts';
import { featureName } from './named.ts';
import { lengthText, percentText } from './units.ts';

/** Figures of the flags, set in a site file as `flags.road` and so on. */
export const flagFigures = {
  road: ours(30, 'm', [5, 100], 'No distance was found in print; kestrel holes face away from roads (NRCS-K).'),
  roadHalf: ours(60, '°', [10, 90], 'A road this far to each side still counts as in front.'),
  wire: ours(10, 'm', [3, 50], 'Poles and ladders are long: the line owner decides what is far enough.'),
  sprayed: ours(30, 'm', [0, 200], 'No buffer distance was found in print.'),
  unmapped: ours(0.1, 'share', [0, 1]),
  radius: ours(40, 'm', [20, 80]),
} as const satisfies Record<string, Figure>;
const on = reader('flags', flagFigures);
type Values = ReturnType<typeof on>;

function road({ spot, facing, site }: PostContext, values: Values): string | null {
  const ahead = placesAround(spot, 'road', values.road).filter(({ toward }) => turn(toward, facing) <= values.roadHalf);
  if (ahead.length === 0) return null;
  const near = ahead.reduce((a, b) => (b.distance < a.distance ? b : a));
  const name = featureName(spot.ground, near.feature, 'road');
  return `${name} ${lengthText(near.distance, site.units)} in front of the hole: young birds fly out low; turn the box or mind traffic.`;
}

function wire({ spot, site }: PostContext, values: Values): string | null {
  const found = spot.ground.has('overhead-wire') ? spot.nearest('overhead-wire') : null;
  if (!found || found.distance > values.wire) return null;
  return `Overhead wire ${lengthText(Math.max(0, found.distance), site.units)} off: keep poles and ladders well away and ask the line's owner.`;
}

function sprayed({ spot, site }: PostContext, values: Values): string | null {
  const near = groundWith(spot.ground, isSprayed, spot.point);
  if (!near || near.distance > values.sprayed) return null;
  const where = near.distance === 0 ? 'here' : `${lengthText(near.distance, site.units)} off`;
  return `Ground marked as sprayed ${where}: fewer insects, and poison for the young; ask when and with what.`;
}

function grazed({ spot }: PostContext): string | null {
  const near = groundWith(spot.ground, isGrazed, spot.point);
  return near?.distance === 0 ? 'Grazed ground: animals rub on posts; set a stout post or fence it off.' : null;
}

function unmapped({ spot, site }: PostContext, values: Values): string | null {
  const share = spot.shares(values.radius).unmapped;
  if (share <= values.unmapped) return null;
  return `${percentText(share)} of the ${lengthText(values.radius, site.units)} around is not drawn: the score is less sure.`;
}

function forbidden({ spot }: PostContext): string | null {
  const found = spot.ground.forbidden(spot.point);
  return found ? `No box may stand here: ${found.reason}.` : null;
}

/** All flags of a post, the gravest first. */
export function flagsOf(context: PostContext): string[] {
  const values = on(context.site);
  const all = [
    forbidden(context),
    wire(context, values),
    road(context, values),
    sprayed(context, values),
    grazed(context),
    unmapped(context, values),
  ];
  return all.filter((flag) => flag !== null);
}
