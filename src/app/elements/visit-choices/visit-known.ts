/** What is known of a box before it is opened: last look, trouble, whether it may be opened. One wording for band, page and table. */
import { dayWords } from '../../../visits/days.ts';
import { lastOpening } from '../../../visits/opening.ts';
import { visitWords } from '../../actions/round.ts';
import { today } from '../../actions/round-view.ts';
import { adviceToday, type StopNow } from '../../field/box-now.ts';
import type { AppState } from '../../state.ts';

export interface Known {
  /** "On Jun 3: 5 blue eggs." */
  readonly seen: string;
  /** Trouble and last opening; empty when there is nothing to care about. */
  readonly care: string;
  /** Whether the box must not be opened today, and why. */
  readonly closed: string | null;
  readonly sources: readonly string[];
}

/** Troubles named at most: more do not fit two lines of a phone. */
const named = 2;

export function knownOf(now: StopNow | null, state: AppState): Known {
  const { round } = state.words;
  if (!now) return { seen: round.neverSeen, care: '', closed: null, sources: [] };
  const { last, troubles, bird, clock } = now;
  const seen = last ? round.lastSeen(dayWords(last.date), visitWords(last, state.words)) : round.neverSeen;
  const advice = adviceToday(now, today(), state.round.experience);
  const closed = advice.do === 'watch' ? advice.sentence : null;
  const trouble = troubles
    .slice(0, named)
    .map((one) => round.troubleIn(round.visit.troubles[one.trouble], dayWords(one.date)));
  const opening = bird && clock && !closed ? lastOpening(bird, clock, state.round.experience) : null;
  const care = [
    ...(trouble.length > 0 ? [`${trouble.join(', ')}.`] : []),
    ...(opening && opening.earliest >= today() ? [round.lastOpening(dayWords(opening.earliest))] : []),
  ].join(' ');
  return { seen, care, closed, sources: advice.sources };
}
