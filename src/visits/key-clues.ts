/** How one clue speaks for or against one row of the key. The points are ours: they only order the answers. */

import type { BirdGuide, HoleSize, Region } from '../birds/guide.ts';
import { admits } from '../birds/hole.ts';
import { mostEggs } from './check-visits.ts';
import type { KeyRow } from './key-table.ts';
import type { Cup, EggColor, EggPattern, EggSize, Material } from './visit.ts';

/** What was seen; an empty list or null is "not seen". */
export interface Evidence {
  readonly region: Region;
  readonly material: readonly Material[];
  readonly cup: Cup | null;
  readonly eggColor: EggColor | null;
  readonly eggPattern: EggPattern | null;
  readonly eggSize: EggSize | null;
  readonly eggCount: number | null;
  readonly hole: HoleSize | null;
}

/** One clue's word: `hard` means that it cannot be this one if the clue was seen right. */
export interface Word {
  readonly part: 'nest' | 'egg';
  readonly points: number;
  readonly hard: boolean;
  readonly sentence: string;
}

const say = (part: Word['part'], points: number, sentence: string, hard = false): Word => ({
  part,
  points,
  hard,
  sentence,
});
const plain = (word: string) => word.replaceAll('-', ' ');
const list = (words: readonly string[]) => words.map(plain).join(', ');

function materialWords(row: KeyRow, { material }: Evidence): Word[] {
  if (material.length === 0) return [];
  const telling = material.filter((one) => row.signature.includes(one));
  const fitting = material.filter((one) => row.also.includes(one));
  const foreign = material.filter((one) => !row.signature.includes(one) && !row.also.includes(one));
  const words: Word[] = [];
  if (telling.length > 0) words.push(say('nest', 2, `${list(telling)} is typical`));
  else words.push(say('nest', -0.5, `the usual ${list(row.signature)} is missing`));
  if (fitting.length > 0) words.push(say('nest', 0.5, `${list(fitting)} fits`));
  if (foreign.length > 0) words.push(say('nest', -1 * foreign.length, `${list(foreign)} is not usual`));
  return words;
}

/** Shapes no other nest has. */
const unmistakable: readonly Cup[] = ['dome', 'closed-ball'];

function cupWords(row: KeyRow, { cup }: Evidence): Word[] {
  if (cup === null) return [];
  if (row.cups.includes(cup)) return [say('nest', unmistakable.includes(cup) ? 2 : 1, `${plain(cup)} fits`)];
  const hard = unmistakable.includes(cup);
  return [say('nest', hard ? -3 : -1, `${plain(cup)} does not fit`, hard)];
}

function colorWords(row: KeyRow, { eggColor }: Evidence): Word[] {
  if (eggColor === null) return [];
  if (row.colors.includes(eggColor)) return [say('egg', 2, `${plain(eggColor)} eggs fit`)];
  if (row.rareColors?.includes(eggColor)) return [say('egg', 0.5, `${plain(eggColor)} eggs are seen now and then`)];
  return [say('egg', -3, `${plain(eggColor)} eggs do not fit`, true)];
}

function patternWords(row: KeyRow, { eggPattern }: Evidence): Word[] {
  if (eggPattern === null) return [];
  if (row.patterns.includes(eggPattern)) return [say('egg', 1.5, `${plain(eggPattern)} fits`)];
  return [say('egg', -2.5, `${plain(eggPattern)} does not fit`, true)];
}

function sizeWords(row: KeyRow, { eggSize }: Evidence): Word[] {
  if (eggSize === null || row.sizes.length === 0) return [];
  if (row.sizes.includes(eggSize)) return [say('egg', 0.5, `${eggSize} eggs fit`)];
  return [say('egg', -1.5, `${eggSize} eggs do not fit`)];
}

function countWords(bird: BirdGuide | null, { eggCount }: Evidence): Word[] {
  if (eggCount === null || eggCount === 0) return [];
  if (!bird) return [say('egg', -3, 'eggs do not fit', true)];
  const [least, most] = bird.eggs.count.value;
  if (eggCount > mostEggs(bird))
    return [say('egg', -1.5, `${eggCount} eggs is more than one hen lays (${least}–${most})`)];
  return eggCount >= least && eggCount <= most ? [say('egg', 0.5, `${eggCount} eggs is usual`)] : [];
}

/** All that the evidence says about one row; `bird` is null for the mouse. */
export function wordsFor(row: KeyRow, bird: BirdGuide | null, evidence: Evidence): readonly Word[] {
  return [
    ...materialWords(row, evidence),
    ...cupWords(row, evidence),
    ...colorWords(row, evidence),
    ...patternWords(row, evidence),
    ...sizeWords(row, evidence),
    ...countWords(bird, evidence),
  ];
}

/** Whether the bird cannot have come in: the hole is known and too small. */
export function shutOut(bird: BirdGuide | null, { hole }: Evidence): boolean {
  return bird !== null && hole !== null && !admits(hole, bird);
}
