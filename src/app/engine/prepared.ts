/** Ground and suns of the sites the worker was asked about: prepared once a site. */
import { makeSuns, type Suns } from '../../criteria/suns.ts';
import { prepareGround } from '../../ground/prepare.ts';
import type { Ground } from '../../ground/types.ts';
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
  const fresh = { ground, suns: makeSuns(ground) };
  prepared.set(site, fresh);
  return fresh;
}
