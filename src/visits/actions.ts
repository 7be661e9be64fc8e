/** What a walker may be offered to do at a box. Removing a nest is offered for two birds only, after a second look. */

import type { BirdGuide, Region } from '../birds/guide.ts';
import { lawOf } from './law.ts';
import type { Trouble, VisitState } from './visit.ts';

export type ActionId =
  | 'photograph-and-ask'
  | 'second-look'
  | 'remove-pest-nest'
  | 'clean-after-brood'
  | 'clean-mouse-nest'
  | 'leave-wasps'
  | 'add-guard'
  | 'repair'
  | 'leave-alone';

export interface Offer {
  readonly id: ActionId;
  readonly title: string;
  readonly cautions: readonly string[];
  readonly law: string | null;
  readonly sources: readonly string[];
}

export interface Situation {
  readonly region: Region;
  /** The bird as the walker holds it to be; null when not known. */
  readonly bird: BirdGuide | null;
  /** Whether the nest-and-egg key, asked with the evidence, found this bird likely and no clue spoke against it. */
  readonly keyAgrees: boolean;
  /** Whether the walker looked at the evidence a second time and confirmed the bird. */
  readonly secondLook: boolean;
  readonly state: VisitState;
  readonly trouble: readonly Trouble[];
}

const ladder = 'From the ground only; above about 6 ft use a ladder with a second person, away from wires.';

function offer(
  id: ActionId,
  title: string,
  cautions: readonly string[],
  sources: readonly string[],
  law: string | null = null,
): Offer {
  return { id, title, cautions, law, sources };
}

/** Whether this nest is of a bird whose nest the region's law lets people remove: read from the guide, never from a name. */
export function mayEverBeRemoved(bird: BirdGuide | null, region: Region): boolean {
  return bird?.pest === true && bird.regions.includes(region);
}

const active: readonly VisitState[] = ['building', 'eggs', 'young'];

function pestOffers({ bird, region, keyAgrees, secondLook, state }: Situation): Offer[] {
  if (!bird || !mayEverBeRemoved(bird, region) || !active.includes(state)) return [];
  const law = lawOf[region];
  if (!keyAgrees || !secondLook) {
    return [
      offer(
        'second-look',
        `Make sure it is a ${bird.name}`,
        [
          'Native birds are protected: check nest, eggs and the adult once more before anything else, and photograph them.',
        ],
        law.sources,
        law.sentence,
      ),
    ];
  }
  return [
    offer(
      'remove-pest-nest',
      `Remove the nest of the ${bird.name}`,
      [
        'Only when the adult has been seen and named.',
        'If there is any doubt, leave it and ask.',
        'Wear gloves and a mask; wash your hands.',
        ladder,
      ],
      law.sources,
      law.sentence,
    ),
  ];
}

function troubleOffers({ trouble, state }: Situation): Offer[] {
  const found: Offer[] = [];
  if (trouble.includes('wasps')) {
    found.push(
      offer(
        'leave-wasps',
        'Keep away from the wasps',
        [
          'Close the box and step back. Do not spray in a box that birds use; come back on a cold morning or ask somebody experienced. Stings can kill people who are allergic.',
        ],
        ['common practice'],
      ),
    );
  }
  if (trouble.includes('mice') && !active.includes(state)) {
    found.push(
      offer(
        'clean-mouse-nest',
        'Clean out the mouse nest',
        [
          'Never sweep or shake it out dry: droppings can carry hantavirus.',
          'Gloves on, stand upwind, wet it with one part bleach to nine parts water, wait 5 minutes, double bag it.',
        ],
        ['CDC'],
      ),
    );
  }
  if (trouble.includes('predator-sign') || trouble.includes('snake')) {
    found.push(
      offer(
        'add-guard',
        'Plan a guard for the pole',
        [
          'A guard helps (nests with one did 6.7 % better) but nothing is proof against every animal.',
          'Not while a nest is active, unless it can be done without disturbing it.',
        ],
        ['Bailey & Bonter 2017'],
      ),
    );
  }
  if (trouble.includes('damage') || trouble.includes('water')) {
    found.push(
      offer(
        'repair',
        'Repair the box',
        ['Wait until the nest is finished unless young are in danger.', ladder],
        ['common practice'],
      ),
    );
  }
  return found;
}

/** All that may be offered here, in the order to show. Never empty. */
export function offeredActions(situation: Situation): readonly Offer[] {
  const { bird, state, region } = situation;
  const law = lawOf[region];
  const found = [...pestOffers(situation), ...troubleOffers(situation)];
  if (bird === null && active.includes(state)) {
    found.push(
      offer(
        'photograph-and-ask',
        'Photograph it and ask',
        ['Without touching eggs or young. A nest nobody can name is left alone.'],
        ['common practice'],
      ),
    );
  }
  if (state === 'fledged' || state === 'failed') {
    found.push(
      offer(
        'clean-after-brood',
        'Clean out the old nest',
        ['Only when it is finished: no eggs, no young.', 'Gloves on; no chemicals inside the box.', ladder],
        ['NRCS-NH', 'Rendell & Verbeek 1996'],
        law.sentence,
      ),
    );
  }
  if (active.includes(state) && !mayEverBeRemoved(bird, region)) {
    found.push(
      offer('leave-alone', 'Leave the nest alone', ['Close the box gently and go.'], law.sources, law.sentence),
    );
  }
  return found.length > 0 ? found : [offer('leave-alone', 'Nothing needs doing', [], ['common practice'])];
}
