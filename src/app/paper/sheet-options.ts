/** A person's choice and the plan → what the sheets are made with. */
import type { Plan } from '../../plan-types.ts';
import { type SheetName, type SheetOptions, sheetNames } from '../../print/input.ts';
import type { Units } from '../../site/types.ts';
import type { PaperChoice } from './paper-state.ts';

/** Up to so many boxes are a yard, printed as a landowner's page; more are a round with its map book (ours). */
const yardBoxes = 3;

/** The sheets printed unless the person chose others. */
export function usualSheets(plan: Plan): SheetName[] {
  return plan.boxes.length <= yardBoxes
    ? ['check', 'cards', 'materials', 'landowner']
    : sheetNames.filter((name) => name !== 'landowner');
}

/** Letter where feet are used, else A4; chosen sheets in printing order. */
export function sheetOptions(choice: PaperChoice, plan: Plan, units: Units): SheetOptions {
  const { sheets, paper, orientation, scale, variant, cardsPerPage } = choice;
  return {
    sheets: sheets ?? usualSheets(plan),
    paper: paper ?? (units === 'us' ? 'letter' : 'a4'),
    orientation,
    scale,
    variant,
    cardsPerPage,
  };
}

/** The plan of one walker's round; the whole plan when there is no such round. */
export function planOfRound(plan: Plan, walker: number | null): Plan {
  const round = walker === null ? undefined : plan.rounds.find((one) => one.walker === walker);
  if (!round) return plan;
  const own = new Set(round.boxes);
  return { ...plan, boxes: plan.boxes.filter((box) => own.has(box.number)), rounds: [round] };
}
