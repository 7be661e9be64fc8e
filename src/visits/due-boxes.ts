/** The due list of a whole trail from its boxes and its log. */
import type { BirdGuide } from '../birds/guide.ts';
import { dayOrNull } from './days.ts';
import { type Due, dueVisits } from './due.ts';
import { settledVisits } from './merge.ts';
import { activeNest, nestsFrom } from './nests.ts';
import type { Experience } from './opening.ts';
import { localSeason } from './season-year.ts';
import type { Visit } from './visit.ts';

/** A box of the trail: its post, number and the bird it stands for (null when not decided). */
export interface TrailBox {
  readonly post: string;
  readonly number: number | null;
  readonly bird: string | null;
}

/** Next looks at all boxes, most overdue first. Visits after `today` or with an unreadable date are left out. `south`: of the equator. */
export function dueOfTrail(
  boxes: readonly TrailBox[],
  log: readonly Visit[],
  birds: readonly BirdGuide[],
  today: string,
  experience: Experience,
  south = false,
): readonly Due[] {
  const visits = settledVisits(log).filter((visit) => dayOrNull(visit.date) !== null && visit.date <= today);
  const nests = nestsFrom(visits, birds, today, south);
  const guide = (id: string | null) => birds.find((bird) => bird.id === id) ?? null;
  const now = boxes.map(({ post, number, bird }) => {
    const nest = activeNest(nests, post);
    const planned = guide(bird);
    return {
      post,
      number,
      visits: visits.filter((visit) => visit.post === post),
      bird: guide(nest?.bird ?? null),
      clock: nest?.clock ?? null,
      ...(planned ? { season: localSeason(planned.season, south) } : {}),
    };
  });
  return dueVisits(now, today, experience);
}
