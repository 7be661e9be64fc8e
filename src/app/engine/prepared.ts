/** Ground, birds and suns of the sites the worker was asked about: prepared once a site. */
import type { BirdGuide } from '../../birds/guide.ts';
import { birdById } from '../../birds/index.ts';
import { makeSuns, type Suns } from '../../criteria/suns.ts';
import type { Point } from '../../geometry/point.ts';
import { prepareGround } from '../../ground/prepare.ts';
import type { Ground } from '../../ground/types.ts';
import { drawnCandidate, placeCandidate } from '../../placement/candidates.ts';
import { wantedBirds } from '../../plan/wanted-birds.ts';
import type { Candidate } from '../../plan-types.ts';
import type { Site } from '../../site/types.ts';

export interface Prepared {
  readonly ground: Ground;
  readonly suns: Suns;
}

/** Forgotten with the site itself. */
const prepared = new WeakMap<Site, Prepared>();

export function prepare(site: Site): Prepared {
  const found = prepared.get(site);
  if (found) return found;
  const ground = prepareGround(site);
  const fresh = { ground, suns: makeSuns(ground, [...wantedBirds(site).guides.values()]) };
  prepared.set(site, fresh);
  return fresh;
}

/** The post of an id as if it stood at `at`; a suggested place when none is drawn under that id. */
export function postAt({ ground }: Prepared, id: string, at: Point): Candidate {
  const feature = ground.site.features.find((f) => f.id === id);
  const drawn = feature ? drawnCandidate(ground, feature) : null;
  return drawn ? { ...drawn, at } : placeCandidate(id, at);
}

/** The guide of a bird; the site's own figures are put in when it is scored. */
export function guideOf(bird: string): BirdGuide {
  return birdById(bird);
}
