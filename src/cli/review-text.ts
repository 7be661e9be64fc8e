/** A season review in plain lines. */

import { birdById, isBird } from '../birds/index.ts';
import { changesOf } from '../plan/next-year.ts';
import type { TrailReview } from '../plan/review-trail.ts';
import type { Plan } from '../plan-types.ts';
import { seasonWords } from '../visits/season-year.ts';
import { shareWords } from '../visits/share-words.ts';

const nameOf = (bird: string) => (isBird(bird) ? birdById(bird).name : bird);

export function reviewLines(trail: TrailReview, plan: Plan, invented: boolean, south = false): string[] {
  const { review } = trail;
  const named = (year: number) => seasonWords(year, south);
  const told = review.told.kind === 'told' ? review.told.criteria.map((one) => one.sentence) : [review.told.sentence];
  const causes = Object.entries(review.causes).map(([cause, count]) => `${count} ${cause.replaceAll('-', ' ')}`);
  return [
    ...(invented ? ['INVENTED visits: nothing here was seen by anybody.'] : []),
    `${plan.siteName}: ${review.years.map(named).join(', ') || 'no season'}`,
    `  Sites used: ${shareWords(review.occupancy, 'sites')}`,
    ...review.byYear.map(
      ({ year, occupancy, success }) =>
        `  ${named(year)}: used ${shareWords(occupancy, 'sites')}; fledged ${shareWords(success, 'nests')}`,
    ),
    ...review.birds.map(
      ({ bird, nests, eggs, fledged, success }) =>
        `  ${nameOf(bird)}: ${nests} nests, ${eggs} eggs, ${fledged[0]}–${fledged[1]} young fledged; fledged ${shareWords(success, 'nests')}`,
    ),
    `  Failures: ${causes.join(', ') || 'none seen'}`,
    'What told success from failure:',
    ...told.map((sentence) => `  ${sentence}`),
    'Boxes:',
    ...review.boxes.flatMap((box) => [
      `  ${box.sentence}`,
      ...box.advice.map((one) => `    ${one.kind}: ${one.sentence} [${one.sources.join(', ')}]`),
    ]),
    'Next year:',
    ...changesOf(trail, plan).map((one) => `  ${one.sentence}${one.cannot === null ? '' : ` ${one.cannot}`}`),
  ];
}
