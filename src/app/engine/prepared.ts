/** Ground, birds and suns of the sites the worker was asked about: prepared once a site, and again only where the land changed. */
import type { BirdGuide } from '../../birds/guide.ts';
import { birdById } from '../../birds/index.ts';
import { makeSuns } from '../../criteria/suns.ts';
import type { Point } from '../../geometry/point.ts';
import { prepareGround } from '../../ground/prepare.ts';
import { groundWithPosts } from '../../ground/with-posts.ts';
import { drawnCandidate, placeCandidate } from '../../placement/candidates.ts';
import { sameForScores } from '../../plan/same-choice.ts';
import type { Ready } from '../../plan/stage.ts';
import { wantedBirds } from '../../plan/wanted-birds.ts';
import type { Candidate } from '../../plan-types.ts';
import type { Site } from '../../site/types.ts';

export interface Prepared extends Ready {
  readonly site: Site;
}

/** Forgotten with the site itself. */
const prepared = new WeakMap<Site, Prepared>();

/** The one made last: the next site often differs from it in a post or two. */
let last: Prepared | null = null;

/** Scores kept at most for one land and the settings they read: three full grids of candidates. */
const mostScores = 30_000;

export function prepare(site: Site): Prepared {
  const fresh = prepared.get(site) ?? prepareAfter(last, site);
  prepared.set(site, fresh);
  last = fresh;
  return fresh;
}

/** Where only posts changed the land stays prepared, and where no setting changed that scores read, the sun and the scores do. */
function prepareAfter(before: Prepared | null, site: Site): Prepared {
  const kept = before && groundWithPosts(before.ground, site);
  const ground = kept ?? prepareGround(site);
  const guides = [...wantedBirds(site).guides.values()];
  const same = kept && sameForScores(before.site.settings, site.settings) && guides.every(before.suns.knows);
  if (!same) return { site, ground, suns: makeSuns(ground, guides), scores: new Map(), beside: new Map() };
  const { suns, scores, beside } = before;
  return scores.size + beside.size > mostScores
    ? { site, ground, suns, scores: new Map(), beside: new Map() }
    : { site, ground, suns, scores, beside };
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
