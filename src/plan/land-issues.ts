/** What the plan could not judge because the land is not drawn. */
import type { Ground, Target } from '../ground/types.ts';
import type { Issue } from '../site/types.ts';

const missing: readonly { target: Target; id: string; sentence: string; fix: string }[] = [
  {
    target: 'woods-edge',
    id: 'no-woods-drawn',
    sentence: 'No woods and no trees are drawn: the woods edge is not judged, and nothing casts shade.',
    fix: 'Draw the woods and the trees near the posts, even those beyond the site.',
  },
  {
    target: 'brush',
    id: 'no-brush-drawn',
    sentence: 'No brush, hedge or woods is drawn: the risk from wrens is not judged.',
    fix: 'Draw brush and hedges within 200 ft (61 m) of the posts.',
  },
  {
    target: 'building',
    id: 'no-buildings-drawn',
    sentence: 'No building is drawn: the risk from House Sparrows is judged without them.',
    fix: 'Draw houses, barns and sheds within 300 ft (91 m) of the posts.',
  },
];

export function landIssues(ground: Ground): Issue[] {
  if (!ground.bounds)
    return [
      {
        id: 'nothing-drawn',
        severity: 'warning',
        feature: null,
        place: null,
        sentence: 'Nothing is drawn on this site yet, so there is nothing to score.',
        fix: 'Draw the mown ground first: it decides most of the score.',
      },
    ];
  return missing
    .filter(({ target }) => !ground.has(target))
    .map(({ id, sentence, fix }) => ({ id, severity: 'note', feature: null, place: null, sentence, fix }));
}
