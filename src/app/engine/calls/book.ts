/** What both paper calls are made from: a question about a site and plan → the display lists of its sheets. */
import { subjects } from '../../../../layers/all.ts';
import { makeFrame, middleOf } from '../../../ground/frame.ts';
import type { Plan } from '../../../plan-types.ts';
import type { Sheet } from '../../../print/display.ts';
import type { DueVisit } from '../../../print/input.ts';
import { makeSheets } from '../../../print/make-sheets.ts';
import type { Site } from '../../../site/types.ts';
import { canonicalText } from '../../../site/write.ts';
import { declination } from '../../../sky/declination.ts';
import { sha256 } from '../../digest.ts';
import type { PaperChoice } from '../../paper/paper-state.ts';
import { planOfRound, sheetOptions } from '../../paper/sheet-options.ts';
import { kinds } from '../../words/en/kinds.ts';

export interface BookQuestion {
  readonly site: Site;
  readonly plan: Plan;
  readonly choice: PaperChoice;
  /** Where the app stands, for the QR code; null when a phone could not reach it. */
  readonly address: string | null;
  /** Credit of the pictures under the drawing; null without any. */
  readonly credit: string | null;
  /** As the shelf counts, or a word. */
  readonly revision: string;
  readonly visits: readonly DueVisit[];
}

export async function bookOf({
  site,
  plan: whole,
  choice,
  address,
  credit,
  revision,
  visits,
}: BookQuestion): Promise<Sheet[]> {
  const frame = makeFrame(middleOf(site.features));
  const plan = planOfRound(whole, choice.walker);
  const needle = declination(frame.centre, plan.date);
  return makeSheets({
    site,
    plan,
    frame,
    layers: subjects,
    options: sheetOptions(choice, plan, site.settings.units),
    stamp: {
      date: plan.date,
      revision,
      hash: await sha256(canonicalText(site)),
      declination: needle.degrees === null ? null : needle,
      address,
      credit,
    },
    visits,
    words: kinds,
  });
}
