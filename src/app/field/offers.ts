/** What a walker may be offered for the visit being noted: the visits room decides, here the draft becomes its question. */
import type { BirdGuide, HoleSize, Region } from '../../birds/guide.ts';
import { birdById, isBird } from '../../birds/index.ts';
import { isRegion } from '../../birds/regions.ts';
import { type Offer, offeredActions } from '../../visits/actions.ts';
import { keyAgrees } from '../../visits/key.ts';
import type { Evidence } from '../../visits/key-clues.ts';
import { type ActionTaken, actionsTaken } from '../../visits/visit.ts';
import type { VisitDraft } from './visit-draft.ts';

/** The region of a site; a word nobody knows counts as the strictest law, where no nest may be removed. */
export function lawRegion(region: string): Region {
  return isRegion(region) ? region : 'europe';
}

/** The hole a box stands with: that of the bird it is planned for. Null when the bird is not told, or the walker sees another hole. */
export function holeOf(bird: string | null, otherHole: boolean): HoleSize | null {
  return bird !== null && isBird(bird) && !otherHole ? birdById(bird).box.hole.value : null;
}

export function evidenceOf(draft: VisitDraft, region: Region, hole: HoleSize | null): Evidence {
  const { material, cup, eggColor, eggPattern, eggSize, eggCount } = draft;
  return { region, material, cup, eggColor, eggPattern, eggSize, eggCount, hole };
}

/** The bird's guide, or null while it is not known. */
export function draftBird({ bird }: VisitDraft): BirdGuide | null {
  return bird !== null && isBird(bird) ? birdById(bird) : null;
}

export function offersFor(draft: VisitDraft, region: Region, hole: HoleSize | null): readonly Offer[] {
  const bird = draftBird(draft);
  return offeredActions({
    region,
    bird,
    keyAgrees: bird !== null && keyAgrees(bird.id, evidenceOf(draft, region, hole)),
    secondLook: draft.secondLook,
    state: draft.state,
    trouble: draft.trouble,
  });
}

/** Not while eggs or young are in the box. */
const notWhileActive: readonly ActionTaken[] = ['cleaned', 'moved', 'turned', 'retired'];
const active = ['building', 'eggs', 'young'];

/** What may be ticked as done. Removing a nest only where it was offered, second look and all. */
export function doneChoices(draft: VisitDraft, offers: readonly Offer[]): readonly ActionTaken[] {
  const mayRemove = offers.some((offer) => offer.id === 'remove-pest-nest');
  return actionsTaken.filter((action) => {
    if (action === 'pest-nest-removed') return mayRemove;
    return !(active.includes(draft.state) && notWhileActive.includes(action));
  });
}
