/** A plan as a list of things to write: the boxes in walking order, where each round starts, and the posts left out. */
import { birdGuides } from '../birds/index.ts';
import type { Frame } from '../ground/types.ts';
import type { LeftOut, Plan, PlannedBox, Round } from '../plan-types.ts';
import type { LonLat } from '../site/types.ts';
import { roundTo } from './decimals.ts';
import type { Exported, ExportedRound, ExportedThing, PlainValue } from './exported.ts';
import { cleanText, oneLine } from './safe-text.ts';
import { birdWords } from './short-names.ts';

/** Everything of a plan that GPX, KML and CSV can hold. */
export function planThings(plan: Plan, frame: Frame): Exported {
  const words = birdWords(plan.boxes.map((box) => birdName(box.bird)));
  const boxes = plan.boxes.map((box) => boxThing(box, words.get(birdName(box.bird)) ?? 'Box'));
  const starts = plan.rounds.flatMap((round) => startThing(round, plan.rounds.length > 1, frame));
  const things = [...boxes, ...starts, ...plan.leftOut.map((post) => leftOutThing(post, frame))];
  const posts = new Map(plan.boxes.map((box) => [box.number, box.post]));
  const rounds = plan.rounds.map((round) => roundOf(round, plan.rounds.length > 1, posts, frame));
  const name = oneLine(plan.siteName) || 'Plan';
  return { name, note: `${plan.boxes.length} boxes, plan of ${plan.date}. ${plan.proof.sentence}`, things, rounds };
}

/** The bird's name, or its id when no guide knows it. */
export function birdName(id: string): string {
  return birdGuides.find((guide) => guide.id === id)?.name ?? oneLine(id);
}

/** "face 95° true (E), hole 1.5 m (4.9 ft) up": the two figures needed when the box is put up. */
export function mountingNote(box: PlannedBox): string {
  const { facing } = box.card;
  const magnetic = facing.magnetic ? `, ${Math.round(facing.magnetic.degrees)}° by the compass` : '';
  const pair = box.pairedWith === null ? '' : `; pair with ${box.pairedWith}`;
  return `face ${Math.round(facing.used)}° true (${facing.word}${magnetic}), hole ${bothLengths(box.holeHeight)} up${pair}`;
}

/** The international yard and foot, exactly (NIST Handbook 44, Appendix C). */
const yard = 0.9144;
const foot = 0.3048;

/** "1.5 m (4.9 ft)": the file does not know who reads it. */
function bothLengths(metres: number): string {
  return `${roundTo(metres, 2)} m (${roundTo(metres / foot, 1)} ft)`;
}

/** The facts of a box under the names the site file uses, so that a way back keeps them. */
export function boxProperties(box: PlannedBox): Readonly<Record<string, PlainValue>> {
  return {
    number: box.number,
    bird: box.bird,
    state: box.state === 'standing' ? 'fixed' : 'candidate',
    facing: roundTo(box.card.facing.used, 1),
    holeHeight: roundTo(box.holeHeight, 2),
    score: roundTo(box.card.score, 1),
    ...(box.pairedWith === null ? {} : { pairedWith: box.pairedWith }),
    ...(box.sureness === null ? {} : { sureness: roundTo(box.sureness, 2) }),
  };
}

function boxThing(box: PlannedBox, word: string): ExportedThing {
  const [lon, lat] = box.position;
  return {
    id: box.post,
    group: 'boxes',
    kind: 'post',
    number: box.number,
    name: `${box.number} ${birdName(box.bird)}`,
    word,
    note: `${mountingNote(box)}; score ${Math.round(box.card.score)}`,
    geometry: { type: 'Point', coordinates: [lon, lat] },
    properties: boxProperties(box),
  };
}

function roundName(round: Round, several: boolean): string {
  return several ? `Round ${round.walker}` : 'Round';
}

function startId(round: Round): string {
  return `start-${round.walker}`;
}

function startThing(round: Round, several: boolean, frame: Frame): ExportedThing[] {
  if (!round.start) return [];
  const word = several ? `Start ${round.walker}` : 'Start';
  return [
    {
      id: startId(round),
      group: 'walk',
      kind: 'trailhead',
      number: null,
      name: word,
      word,
      note: `${Math.round(round.metres)} m (${Math.round(round.metres / yard)} yd), about ${Math.round(round.minutes)} minutes, ${round.boxes.length} boxes`,
      geometry: { type: 'Point', coordinates: [...frame.toLonLat(round.start)] },
      properties: {},
    },
  ];
}

function leftOutThing(post: LeftOut, frame: Frame): ExportedThing {
  return {
    id: post.post,
    group: 'left out',
    kind: 'post',
    number: null,
    name: oneLine(`Left out: ${post.post}`),
    word: 'Left out',
    note: cleanText(post.sentence).trim(),
    geometry: { type: 'Point', coordinates: [...frame.toLonLat(post.at)] },
    properties: {
      state: post.code === 'retired' ? 'retired' : 'candidate',
      leftOut: post.code,
      ...(post.score === null ? {} : { score: roundTo(post.score, 1) }),
    },
  };
}

function roundOf(round: Round, several: boolean, posts: ReadonlyMap<number, string>, frame: Frame): ExportedRound {
  const boxes = round.boxes.flatMap((number) => posts.get(number) ?? []);
  const start = round.start ? [startId(round)] : [];
  const home = round.legs.at(-1)?.to === 'end' ? start : [];
  return { name: roundName(round, several), stops: [...start, ...boxes, ...home], line: walkedLine(round, frame) };
}

/** The legs end to end, each joint once. */
export function walkedLine(round: Round, frame: Frame): LonLat[] {
  const line: LonLat[] = [];
  for (const leg of round.legs) {
    for (const point of leg.line) {
      const position = frame.toLonLat(point);
      const last = line.at(-1);
      if (last?.[0] !== position[0] || last?.[1] !== position[1]) line.push(position);
    }
  }
  return line;
}
