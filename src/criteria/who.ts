import { holeText } from '../birds/hole.ts';
import type { Candidate, PostCard } from './card-types.ts';
import { quickVerdict } from './quick-score.ts';
import type { Spot } from './spot.ts';
import type { Suns } from './suns.ts';

/** Every bird of the site's region by its own score here, best first (equals in guide order), with the hole each needs. */
export function whoWouldLive(spot: Spot, candidate: Candidate, suns: Suns): PostCard['who'] {
  const { units } = spot.ground.site.settings;
  // The height a person fixed was fixed for one bird: the others hang at their own.
  const free = { ...candidate, holeHeight: null };
  const rows = suns.birds.map((bird) => {
    return {
      bird: bird.id,
      name: bird.name,
      score: quickVerdict(spot, free, bird, suns).score ?? 0,
      hole: holeText(bird.box.hole, units),
    };
  });
  return rows.sort((a, b) => b.score - a.score);
}
