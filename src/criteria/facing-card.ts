/** The facing advice as the card shows it. */
import { normalDegrees } from '../geometry/point.ts';
import { compassPhrase, compassWord } from '../sky/compass.ts';
import type { DeclinationAnswer } from '../sky/declination.ts';
import type { Facing } from './card-types.ts';
import type { PostContext } from './criterion.ts';
import { facingOn } from './facing-figures.ts';
import { facingSentence, latitudeNote } from './facing-words.ts';
import { bearingText } from './units.ts';

/** Compass degrees of a true bearing; null where no model answers. */
function magnetic(used: number, needle: DeclinationAnswer): Facing['magnetic'] {
  if (needle.degrees === null) return null;
  return {
    degrees: normalDegrees(used - needle.degrees),
    declination: needle.degrees,
    model: `${needle.model}, ${needle.date}`,
  };
}

/** "By compass 103° (World Magnetic Model 2025, 2026-06-15)." or why there is no compass figure. */
function compassText(facing: Facing['magnetic'], needle: DeclinationAnswer): string {
  if (facing) return `By compass ${bearingText(facing.degrees)} (${facing.model}).`;
  return needle.degrees === null ? needle.reason : '';
}

/** Best bearing, the band that is as good, and the bearing in use by true north, by compass and in words. */
export function facingCard(context: PostContext, needle: DeclinationAnswer): Facing {
  const { spot, site, wish, facing: used } = context;
  const values = facingOn(site);
  const byCompass = magnetic(used, needle);
  const sentences = [
    `${facingSentence(wish, used)}.`,
    `${bearingText(used)} is ${compassPhrase(used)}.`,
    compassText(byCompass, needle),
    latitudeNote(spot.ground.frame.centre[1], values.warmLatitude, values.coolLatitude),
  ];
  return {
    best: wish.best,
    from: wish.from,
    to: wish.to,
    used,
    word: compassWord(used),
    magnetic: byCompass,
    sentence: sentences.filter(Boolean).join(' '),
  };
}
