/** Rows of the key for the boxes of the plan. */
import type { BoxLook } from '../../map/box-look.ts';
import type { Words } from '../../words/en.ts';

export interface BoxRow {
  readonly word: string;
  readonly look: BoxLook;
}

const plain: BoxLook = {
  number: 4,
  score: 80,
  facing: 100,
  standing: false,
  locked: false,
  weak: false,
  selected: false,
};

/** Only what the plan holds. */
export function boxRows(held: { weak: boolean; standing: boolean; locked: boolean }, words: Words): BoxRow[] {
  const { legend } = words.posts;
  return [
    { word: legend.box, look: plain },
    ...(held.standing ? [{ word: legend.standing, look: { ...plain, standing: true } }] : []),
    ...(held.locked ? [{ word: legend.locked, look: { ...plain, locked: true } }] : []),
    ...(held.weak ? [{ word: legend.weak, look: { ...plain, weak: true, score: 45 } }] : []),
  ];
}
