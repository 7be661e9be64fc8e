/** Rows typed from a sheet become visits, all of one walk. */

import { makeVisit, type Visit } from '../../../visits/visit.ts';
import type { StopNow } from '../../field/box-now.ts';
import type { Stop } from '../../field/field-round.ts';
import type { LocalTime } from '../../field/local-time.ts';
import { readPaperRow } from '../../field/paper-row.ts';

/** What was typed for one box. */
export interface Typed {
  readonly seen: string;
  readonly time: string;
}

export interface Walk {
  readonly date: string;
  readonly observer: string;
  readonly device: string;
  readonly now: LocalTime;
  readonly newId: () => string;
}

/** The visits of all rows that can be read, in walking order; the bird of a nest under way is carried on. */
export function paperVisits(
  stops: readonly Stop[],
  typed: ReadonlyMap<string, Typed>,
  known: ReadonlyMap<string, StopNow>,
  walk: Walk,
): readonly Visit[] {
  return stops.flatMap((stop) => {
    const given = typed.get(stop.post);
    const { row } = readPaperRow(given?.seen ?? '');
    if (!given || !row) return [];
    const goesOn = row.state === 'building' || row.state === 'eggs' || row.state === 'young' || row.state === 'fledged';
    return [
      makeVisit({
        id: walk.newId(),
        post: stop.post,
        box: stop.number,
        date: walk.date,
        time: given.time === '' ? null : given.time,
        observer: walk.observer,
        state: row.state,
        bird: goesOn ? (known.get(stop.post)?.nest?.bird ?? null) : null,
        eggs: row.eggs === null ? null : { count: row.eggs, color: null, pattern: null, size: null },
        young: row.young,
        trouble: row.trouble,
        device: walk.device,
        madeAt: walk.now.instant,
      }),
    ];
  });
}
