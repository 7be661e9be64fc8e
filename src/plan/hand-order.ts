/** What to say of a walking order set by hand: what of it still holds for the boxes of this plan. */
import type { RoundPlan } from '../route/plan-round.ts';
import type { Issue, SiteSettings } from '../site/types.ts';

const note = (sentence: string, fix: string): Issue => ({
  id: 'order-by-hand',
  severity: 'note',
  feature: null,
  place: null,
  sentence,
  fix,
});

/** Empty when no order is set, or when it holds for every box. */
export function orderIssues({ order }: Pick<SiteSettings, 'order'>, { rounds }: RoundPlan): Issue[] {
  if (order.length === 0 || rounds.length === 0) return [];
  const back = 'Number the boxes by the shortest walk again, or ask for one walker.';
  if (rounds.length > 1)
    return [note('The numbers set by hand hold for one walker: with several, numbers follow their walks.', back)];
  const named = new Set(order);
  const walked = rounds.flatMap((round) => round.stops);
  const known = walked.filter((id) => named.has(id)).length;
  const fresh = walked.length - known;
  const gone = order.length - known;
  if (fresh === 0 && gone === 0) return [];
  const parts = [
    gone > 0 ? `${gone} of its ${order.length} ${order.length === 1 ? 'box is' : 'boxes are'} not in this plan` : '',
    fresh > 0 ? `${fresh} new ${fresh === 1 ? 'one was' : 'ones were'} put where the walk grows least` : '',
  ].filter(Boolean);
  const sentence = `The order set by hand is kept, but ${parts.join(', and ')}: the numbers after them have changed.`;
  return [note(sentence, 'Look through the numbers, or number the boxes by the shortest walk again.')];
}
