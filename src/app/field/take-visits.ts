/** Visits that come back: taken into the log with a report, nothing overwritten, the same file twice changes nothing. */
import type { Issue } from '../../site/types.ts';
import { type Conflict, canonical, conflictsIn, forSharing, mergeVisits } from '../../visits/merge.ts';
import type { Visit } from '../../visits/visit.ts';
import { otherSite, type ReadVisits, readVisitFile } from '../../visits/visit-file.ts';
import { numberInPost } from './field-round.ts';

/** A box of the open site. */
export interface HomeBox {
  readonly post: string;
  readonly number: number;
}

export interface Home {
  readonly site: string;
  /** Hash of the open plan's numbers and places. */
  readonly hash: string | null;
  readonly boxes: readonly HomeBox[];
  /** Ids of all posts of the site, boxes or not, and of boxes of earlier plans that have visits. */
  readonly posts: readonly string[];
}

export interface Taken {
  /** Records not known before. */
  readonly added: readonly Visit[];
  /** How many of the file were here already. */
  readonly same: number;
  /** Conflicts that were not there before. */
  readonly conflicts: readonly Conflict[];
  readonly issues: readonly Issue[];
  /** Why nothing was taken; null when it was. */
  readonly refused: string | null;
}

const nothing = (issues: readonly Issue[], refused: string): Taken => ({
  added: [],
  same: 0,
  conflicts: [],
  issues,
  refused,
});

/** Visits of a round scanned from paper know box numbers only; under the same plan the number is the post. */
export function atHome(visit: Visit, home: Home): Visit {
  const told = numberInPost(visit.post);
  if (!told || told.hash !== home.hash) return visit;
  const box = home.boxes.find((one) => one.number === told.number);
  return box ? { ...visit, post: box.post } : visit;
}

const key = (visit: Visit) => canonical(forSharing(visit));

/** What reading a file would add to `log`. The log itself is not changed. */
export function takeVisits(log: readonly Visit[], text: string, home: Home): Taken {
  return takeRead(log, readVisitFile(text), home);
}

export function takeRead(log: readonly Visit[], { file, issues }: ReadVisits, home: Home): Taken {
  if (!file) return nothing(issues, issues[0]?.sentence ?? '');
  const visits = file.visits.map((visit) => atHome(visit, home));
  const strange = otherSite({ ...file, visits }, home.site, home.posts);
  if (strange?.severity === 'error' && visits.every((visit) => !home.posts.includes(visit.post)))
    return nothing([strange, ...issues], `${strange.sentence} ${strange.fix}`);
  const known = new Set(log.map(key));
  const added = mergeVisits(visits).filter((visit) => !known.has(key(visit)));
  const before = new Set(conflictsIn(log).map((conflict) => conflict.sentence));
  const conflicts = conflictsIn(mergeVisits(log, added)).filter((conflict) => !before.has(conflict.sentence));
  const told = strange ? [{ ...strange, severity: 'warning' as const }, ...issues] : issues;
  return { added, same: visits.length - added.length, conflicts, issues: told, refused: null };
}
