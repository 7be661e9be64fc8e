/** All bird guides, in the order shown to people. To add one: a file in `guides/` and a line here (docs/birds.md). */

import type { BirdGuide, Region } from './guide.ts';
import { americanKestrel } from './guides/american-kestrel.ts';
import { ashThroatedFlycatcher } from './guides/ash-throated-flycatcher.ts';
import { blackCappedChickadee } from './guides/black-capped-chickadee.ts';
import { blueTit } from './guides/blue-tit.ts';
import { carolinaChickadee } from './guides/carolina-chickadee.ts';
import { commonStarlingEurope } from './guides/common-starling-europe.ts';
import { easternBluebird } from './guides/eastern-bluebird.ts';
import { easternScreechOwl } from './guides/eastern-screech-owl.ts';
import { eurasianTreeSparrow } from './guides/eurasian-tree-sparrow.ts';
import { europeanStarling } from './guides/european-starling.ts';
import { greatCrestedFlycatcher } from './guides/great-crested-flycatcher.ts';
import { greatTit } from './guides/great-tit.ts';
import { houseSparrow } from './guides/house-sparrow.ts';
import { houseSparrowEurope } from './guides/house-sparrow-europe.ts';
import { houseWren } from './guides/house-wren.ts';
import { mountainBluebird } from './guides/mountain-bluebird.ts';
import { piedFlycatcher } from './guides/pied-flycatcher.ts';
import { prothonotaryWarbler } from './guides/prothonotary-warbler.ts';
import { purpleMartin } from './guides/purple-martin.ts';
import { treeSwallow } from './guides/tree-swallow.ts';
import { tuftedTitmouse } from './guides/tufted-titmouse.ts';
import { violetGreenSwallow } from './guides/violet-green-swallow.ts';
import { westernBluebird } from './guides/western-bluebird.ts';
import { whiteBreastedNuthatch } from './guides/white-breasted-nuthatch.ts';
import { woodDuck } from './guides/wood-duck.ts';

export const birdGuides: readonly BirdGuide[] = [
  easternBluebird,
  westernBluebird,
  mountainBluebird,
  treeSwallow,
  violetGreenSwallow,
  houseWren,
  blackCappedChickadee,
  carolinaChickadee,
  tuftedTitmouse,
  whiteBreastedNuthatch,
  prothonotaryWarbler,
  greatCrestedFlycatcher,
  ashThroatedFlycatcher,
  americanKestrel,
  easternScreechOwl,
  woodDuck,
  purpleMartin,
  greatTit,
  blueTit,
  piedFlycatcher,
  eurasianTreeSparrow,
  houseSparrowEurope,
  commonStarlingEurope,
  houseSparrow,
  europeanStarling,
];

const byId: ReadonlyMap<string, BirdGuide> = new Map(birdGuides.map((bird) => [bird.id, bird]));

/** Whether a guide of this id exists: for ids that come from a person's file. */
export function isBird(id: string): boolean {
  return byId.has(id);
}

/** The guide of this id; throws on an unknown id, with the list. */
export function birdById(id: string): BirdGuide {
  const bird = byId.get(id);
  if (!bird) throw new Error(`unknown bird: ${id}; known: ${[...byId.keys()].join(', ')}`);
  return bird;
}

/** The birds of a region in display order; pests (recognized, never planned for) only where asked. */
export function birdsOf(
  region: Region,
  { pests }: { readonly pests: boolean } = { pests: false },
): readonly BirdGuide[] {
  return birdGuides.filter((bird) => bird.regions.includes(region) && (pests || !bird.pest));
}
