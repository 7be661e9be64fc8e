/** What is said about one box to the person who builds and mounts it. */
import type { Figure } from '../birds/guide.ts';
import { holeText } from '../birds/hole.ts';
import { turn } from '../geometry/point.ts';
import type { PlannedBox } from '../plan-types.ts';
import type { Units } from '../site/types.ts';
import { mountCautions } from './cautions.ts';
import { compassOf } from './compass.ts';
import { type BookFacts, guideOf } from './facts.ts';
import { type Mark, markWords, tapesTo } from './landmarks.ts';
import { plain } from './measure.ts';
import { degreeWords, heightWords, inchFraction, placeWords, tapeWords, walkWords, windOf } from './units.ts';

/** A labelled line of a card; `big` ones are read first. */
export interface Fact {
  readonly label: string;
  readonly words: string;
  readonly big?: boolean;
}

/** Everything a card says: where and how first, then the cautions, then why. In large print what all boxes share stands on a page of its own. */
export function boxFacts(facts: BookFacts, box: PlannedBox, marks: readonly Mark[]): Fact[] {
  if (facts.style.variant === 'large-print') return ownFacts(facts, box, marks);
  return [
    { label: 'Place', words: placeWords(box.position).join(', '), big: true },
    { label: 'Tape', words: tapeLine(facts, box, marks) },
    { label: 'Faces', words: facesLine(facts, box), big: true },
    ...buildFacts(facts, box),
    { label: 'Door', words: doorLine(facts, box) },
    ...poleFacts(facts.units),
    { label: 'Care', words: careLine(box) },
    { label: 'Why here', words: whyLine(box) },
    { label: 'Weakest', words: weakestLine(box) },
  ];
}

/** The cautions for whoever mounts a box, where they stand whole on another page. */
export const shortCare = 'Utility marks first, look up for wires, eyes covered.';

/** What differs from box to box. */
function ownFacts(facts: BookFacts, box: PlannedBox, marks: readonly Mark[]): Fact[] {
  const build = buildFacts(facts, box).filter(({ label }) => label !== 'Air');
  const own = [...box.card.refused, ...box.card.flags].map(sentence);
  return [
    { label: 'Place', words: placeWords(box.position).join(', '), big: true },
    { label: 'Tape', words: tapeLine(facts, box, marks).replace(/ \(lines cross.*$/, '.') },
    { label: 'Faces', words: facesLine(facts, box).replace(/ \([^(]*\)$/, ''), big: true },
    ...build,
    { label: 'Door', words: `${doorLine(facts, box).split(', away')[0]}.` },
    { label: 'Care', words: [...own, ...(box.state === 'new' ? [shortCare] : [])].join(' ') || 'as everywhere.' },
    { label: 'Why here', words: whyLine(box) },
    { label: 'Weakest', words: weakestLine(box) },
  ];
}

/** What holds for every box, once. */
export function sharedFacts(facts: BookFacts, box: PlannedBox): Fact[] {
  const { declination } = facts.stamp;
  const needle = declination ? [{ label: 'Compass', words: `${declination.model}, ${declination.date}.` }] : [];
  return [
    ...buildFacts(facts, box).filter(({ label }) => label === 'Air'),
    { label: 'Door', words: 'on the side away from the storm or the afternoon; screw or pin it shut.' },
    ...poleFacts(facts.units),
    ...mountCautions.map(({ about, sentence: words }) => ({ label: about, words })),
    ...needle,
  ];
}

type TapeFacts = Pick<BookFacts, 'units' | 'plan'> & { readonly stamp: Pick<BookFacts['stamp'], 'declination'> };

/** Pole (TWRA) and guard (common practice), in one system of units. */
function poleFacts(units: Units): Fact[] {
  const [pole, rebar, pipe, top, jump] =
    units === 'us'
      ? ['1/2–3/4 in', '3–4 ft', '24 × 8 in', '4 ft', '6–10 ft']
      : ['13–19 mm', '0.9–1.2 m', '61 × 20 cm', '1.2 m', '2–3 m'];
  return [
    {
      label: 'Pole',
      words: `smooth ${pole} conduit over ${rebar} rebar, half of it driven (TWRA); no tree, no fence.`,
    },
    {
      label: 'Guard',
      words: `${pipe} pipe, closed top, wobbling, its top ${top} up or more; no jump within ${jump} (common practice).`,
    },
  ];
}

/** What the person who mounts a box needs in the hand: the place by two tapes, height and hole, pole and guard. */
export function mountFacts(
  { units, plan, declination }: Pick<BookFacts, 'units' | 'plan'> & Pick<BookFacts['stamp'], 'declination'>,
  box: PlannedBox,
  marks: readonly Mark[],
): Fact[] {
  return [
    { label: 'Tape', words: tapeLine({ units, plan, stamp: { declination } }, box, marks) },
    ...buildFacts({ units }, box).filter(({ label }) => label === 'Hole'),
    ...poleFacts(units),
  ];
}

/** Two tapes, or why there are none and how far the stop before is. */
function tapeLine({ units, plan, stamp }: TapeFacts, { at, number }: PlannedBox, marks: readonly Mark[]): string {
  const tapes = tapesTo(at, marks);
  if (!tapes) {
    const leg = plan.rounds.flatMap((round) => round.legs).find((one) => one.to === number);
    const from = leg
      ? ` ${walkWords(leg.metres, units)} from ${leg.from === 'start' ? 'the start' : `box ${leg.from}`}`
      : '';
    const way = leg ? `${from}, ${windOf(leg.bearing)} ${degreeWords(compassOf(leg.bearing, stamp.declination))}.` : '';
    return `no two landmarks in reach cross well here.${way}`;
  }
  const [a, b] = markWords(at, tapes).map((words, i) => `${tapeWords(tapes.metres[i]!, units)} from ${plain(words)}`);
  return `${a}, and ${b} (lines cross at ${Math.round(tapes.crossing)}°).`;
}

/** True and compass degrees with the model and day, or true alone. */
function facesLine({ stamp }: BookFacts, { card }: PlannedBox): string {
  const { used, magnetic } = card.facing;
  const truth = `${windOf(used)}, ${degreeWords(used)} true`;
  if (magnetic) return `${truth}, ${degreeWords(magnetic.degrees)} by compass (${plain(magnetic.model)})`;
  const needle = stamp.declination;
  return needle
    ? `${truth}, ${degreeWords(compassOf(used, needle))} by compass (${needle.model}, ${needle.date})`
    : truth;
}

/** Hole, floor, air and water of the bird's box; vents and drains from TXMN, NRCS-NH and OEBS, where the handbook names them. */
function buildFacts({ units }: Pick<BookFacts, 'units'>, box: PlannedBox): Fact[] {
  const guide = guideOf(box);
  const height = heightWords(box.holeHeight, units);
  if (!guide)
    return [
      { label: 'Hole', words: `${height} above ground; no guide for this bird: build by its own plan.`, big: true },
    ];
  const { hole, floor, depth, holeAboveFloor } = guide.box;
  const air = units === 'us' ? '4 1/2 sq in of vents under the roof (TXMN)' : '29 cm² of vents under the roof (TXMN)';
  const drain =
    units === 'us'
      ? 'four corners cut 3/8 in (OEBS), floor recessed 1/4 in'
      : 'four corners cut 10 mm (OEBS), floor recessed 6 mm';
  return [
    { label: 'Hole', words: `${holeText(hole, units)}, center ${height} above ground`, big: true },
    {
      label: 'Inside',
      words: `floor ${spanText(floor.value, units, ' × ')}, depth ${rangeText(depth, units)}, hole ${rangeText(holeAboveFloor, units)} above the floor`,
    },
    { label: 'Air', words: `${air}. Drain: ${drain}. No perch, no metal, no paint inside.` },
  ];
}

function small(millimetres: number, units: Units): string {
  return units === 'us' ? inchFraction(millimetres / 25.4) : String(Math.round(millimetres));
}

function unitOf(units: Units): string {
  return units === 'us' ? 'in' : 'mm';
}

function spanText([a, b]: readonly [number, number], units: Units, between: string): string {
  return `${small(a, units)}${between}${small(b, units)} ${unitOf(units)}`;
}

function rangeText({ value: [a, b] }: Figure<readonly [number, number]>, units: Units): string {
  return a === b ? `${small(a, units)} ${unitOf(units)}` : spanText([a, b], units, '–');
}

/** The clean-out door goes on the side away from the storm, else away from the west. Ours. */
function doorLine({ site }: BookFacts, { card }: PlannedBox): string {
  const away = site.settings.stormFrom ?? 270;
  const [left, right] = [card.facing.used - 90, card.facing.used + 90];
  const [side, word] = turn(left, away) > turn(right, away) ? [left, 'left'] : [right, 'right'];
  const why = site.settings.stormFrom === null ? 'away from the afternoon' : 'away from the storm';
  return `opens on the ${windOf(side)} side (${word}, looking out), ${why}; screw or pin it shut.`;
}

/** The two best rows' own sentences. */
function whyLine({ card }: PlannedBox): string {
  const best = [...card.rows].filter((row) => row.score !== null).sort((a, b) => b.score! - a.score!);
  return (
    best
      .slice(0, 2)
      .map((row) => sentence(row.sentence))
      .join(' ') || 'not judged.'
  );
}

function weakestLine({ card }: PlannedBox): string {
  const row = card.rows.find((one) => one.id === card.weakest[0]);
  return row ? `${row.title}: ${sentence(row.sentence)}` : 'nothing stands out.';
}

function careLine({ card, state }: PlannedBox): string {
  const own = [...card.refused, ...card.flags].map(sentence);
  const work = state === 'new' ? mountCautions.map((one) => one.sentence) : [];
  return [...own, ...work].join(' ') || 'as everywhere: see the back of the check sheet.';
}

function sentence(words: string): string {
  const bare = plain(words);
  return /[.!?…]$/.test(bare) ? bare : `${bare}.`;
}
