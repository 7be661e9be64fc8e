/** One row of a check sheet typed in afterwards: one letter for the state, a count after it, one letter for each trouble. */
import type { Trouble, VisitState } from '../../visits/visit.ts';

/** First letters of the words on the printed sheet, and two more. */
export const stateLetters: Readonly<Record<string, VisitState>> = {
  e: 'empty',
  n: 'building',
  g: 'eggs',
  y: 'young',
  f: 'fledged',
  x: 'failed',
  o: 'other-user',
};

export const troubleLetters: Readonly<Record<string, Trouble>> = {
  w: 'wasps',
  a: 'ants',
  m: 'mice',
  p: 'parasites',
  r: 'water',
  h: 'heat',
  c: 'cold',
  d: 'damage',
  s: 'predator-sign',
  k: 'snake',
  b: 'competitor',
  l: 'abandoned',
  v: 'people',
};

export interface PaperRow {
  readonly state: VisitState;
  readonly eggs: number | null;
  readonly young: number | null;
  readonly trouble: readonly Trouble[];
}

export type PaperAnswer =
  | { readonly row: PaperRow | null; readonly wrong: null }
  | { readonly row: null; readonly wrong: string };

/** States whose number is a count of eggs, and of young. */
const counts: Readonly<Partial<Record<VisitState, 'eggs' | 'young'>>> = {
  eggs: 'eggs',
  young: 'young',
  fledged: 'young',
};

/**
 * Reads "e", "g5", "y 4", "y4+1" (four young and one egg), "g5 w" (with wasps). An empty text is no visit. What cannot be read comes back
 * as `wrong`: the very part.
 */
export function readPaperRow(text: string): PaperAnswer {
  const clean = text.trim().toLowerCase();
  if (clean === '') return { row: null, wrong: null };
  const parts = /^([a-z])\s*(\d{1,2})?(?:\s*\+\s*(\d{1,2}))?\s*([a-z\s]*)$/.exec(clean);
  const state = parts && stateLetters[parts[1]!];
  if (!parts || !state) return { row: null, wrong: clean };
  const of = counts[state];
  const [count, more] = [parts[2], parts[3]].map((digits) => (digits === undefined ? null : Number(digits)));
  if ((count !== null && !of) || (more !== null && of !== 'young')) return { row: null, wrong: parts[2]! };
  const letters = [...parts[4]!.replace(/\s/g, '')];
  const strange = letters.find((letter) => !troubleLetters[letter]);
  if (strange) return { row: null, wrong: strange };
  return {
    row: {
      state,
      eggs: of === 'eggs' ? count! : (more ?? null),
      young: of === 'young' ? count! : null,
      trouble: [...new Set(letters.map((letter) => troubleLetters[letter]!))],
    },
    wrong: null,
  };
}
