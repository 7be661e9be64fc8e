/** What is wrong with a walk: no start, boxes it does not reach. */
import type { RoundPlan } from '../route/plan-round.ts';
import type { Issue } from '../site/types.ts';

export function walkIssues(walk: RoundPlan): Issue[] {
  const notes = walk.notes.map((sentence): Issue => {
    const fix = 'Draw a trailhead where the walk starts.';
    return { id: 'walk-start', severity: 'note', feature: null, place: null, sentence, fix };
  });
  const cutOff = walk.unreachable.map((post): Issue => {
    const sentence = `No walk leads to the box at ${post} without crossing water, a building or land that is off-limits.`;
    return {
      id: 'box-unreachable',
      severity: 'warning',
      feature: post,
      place: null,
      sentence,
      fix: 'Draw the path or bridge that leads there, or move the box.',
    };
  });
  return [...notes, ...cutOff];
}
