/** The boxes of a choice with their numbers and cards. */
import type { BirdGuide } from '../birds/guide.ts';
import { birdById } from '../birds/index.ts';
import { scorePost, withWho } from '../criteria/card.ts';
import { eyeOf } from '../criteria/context.ts';
import { placeCandidate } from '../placement/candidates.ts';
import type { Choice } from '../placement/choose.ts';
import type { Candidate, PlannedBox } from '../plan-types.ts';
import type { Stage } from './stage.ts';

/** In order of their numbers. Cards are taken from `early` where it has them; a `sketch` leaves out who else would live there. */
export function boxesOf(
  { ground, suns, candidates }: Stage,
  choice: Choice,
  numbers: ReadonlyMap<string, number>,
  early: readonly PlannedBox[],
  sketch: boolean,
): PlannedBox[] {
  const known = new Map(early.map((box) => [`${box.bird} ${box.post}`, box.card]));
  const drawn = new Map(candidates.map((candidate) => [candidate.id, candidate]));
  // Who else would live at each box is left out of a sketch: it takes half the time of the cards.
  const cardOf = (candidate: Candidate, bird: BirdGuide) => {
    const card = known.get(`${bird.id} ${candidate.id}`) ?? scorePost(ground, candidate, bird, suns, { who: !sketch });
    return sketch ? card : withWho(card, ground, candidate, suns);
  };
  const boxes = choice.sites.flatMap((site) => {
    const guide = birdById(site.bird);
    return site.posts.map((post, index): PlannedBox => {
      const candidate = drawn.get(post.id) ?? placeCandidate(post.id, post.at);
      const other = site.posts[1 - index];
      return {
        number: numbers.get(post.id)!,
        post: post.id,
        at: post.at,
        position: ground.frame.toLonLat(post.at),
        bird: site.bird,
        state: candidate.state === 'fixed' && !candidate.locked ? 'standing' : 'new',
        ...(candidate.locked ? { locked: true } : {}),
        pairedWith: other ? numbers.get(other.id)! : null,
        holeHeight: eyeOf(candidate, guide),
        sureness: null,
        card: cardOf(candidate, guide),
      };
    });
  });
  return boxes.sort((a, b) => a.number - b.number);
}
