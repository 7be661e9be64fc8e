/** A visit while it is being noted, and the record it becomes. */
import type {
  ActionTaken,
  Cup,
  EggColor,
  EggPattern,
  EggSize,
  Material,
  Trouble,
  Visit,
  VisitState,
} from '../../visits/visit.ts';
import { makeVisit } from '../../visits/visit.ts';
import type { StopNow } from './box-now.ts';
import type { LocalTime } from './local-time.ts';

export interface VisitDraft {
  readonly post: string;
  readonly number: number;
  readonly state: VisitState;
  readonly bird: string | null;
  readonly material: readonly Material[];
  readonly cup: Cup | null;
  readonly eggCount: number | null;
  readonly eggColor: EggColor | null;
  readonly eggPattern: EggPattern | null;
  readonly eggSize: EggSize | null;
  readonly young: number | null;
  readonly age: readonly [number, number] | null;
  readonly dead: number;
  readonly trouble: readonly Trouble[];
  readonly action: readonly ActionTaken[];
  readonly note: string;
  readonly photo: string | null;
  /** Whether the walker looked at the evidence a second time and named the bird. */
  readonly secondLook: boolean;
  /** Whether the walker says that the hole is not the one the box was planned with. */
  readonly otherHole: boolean;
  /** Day and minute of the look when it is noted later; null = now. */
  readonly date: string | null;
  readonly time: string | null;
  /** The visit this one corrects; null = a new look. */
  readonly corrects: Visit | null;
}

/** A draft for a box in one state. The bird of the nest that is active there is carried on: the walker sees it and can take it away. */
export function startDraft(post: string, number: number, state: VisitState, now: StopNow | null): VisitDraft {
  const goesOn = state === 'building' || state === 'eggs' || state === 'young' || state === 'fledged';
  return {
    post,
    number,
    state,
    bird: goesOn ? (now?.nest?.bird ?? null) : null,
    material: [],
    cup: null,
    eggCount: null,
    eggColor: null,
    eggPattern: null,
    eggSize: null,
    young: null,
    age: null,
    dead: 0,
    trouble: [],
    action: [],
    note: '',
    photo: null,
    secondLook: false,
    otherHole: false,
    date: null,
    time: null,
    corrects: null,
  };
}

/** A kept visit opened again: everything as it was noted, to be kept as a correction. */
export function correctionOf(visit: Visit): VisitDraft {
  return {
    ...startDraft(visit.post, visit.box ?? 0, visit.state, null),
    bird: visit.bird,
    material: visit.material,
    cup: visit.cup,
    eggCount: visit.eggs?.count ?? null,
    eggColor: visit.eggs?.color ?? null,
    eggPattern: visit.eggs?.pattern ?? null,
    eggSize: visit.eggs?.size ?? null,
    young: visit.young,
    age: visit.age,
    dead: visit.dead,
    trouble: visit.trouble,
    action: visit.action,
    note: visit.note,
    photo: visit.photo,
    date: visit.date,
    time: visit.time,
    corrects: visit,
  };
}

/** Another state for the same look: what no longer fits is dropped, all else stays. */
export function withState(draft: VisitDraft, state: VisitState): VisitDraft {
  const eggs = state === 'eggs' || state === 'young';
  const young = state === 'young';
  return {
    ...draft,
    state,
    eggCount: eggs ? draft.eggCount : null,
    young: young ? draft.young : null,
    age: young ? draft.age : null,
    bird: state === 'empty' ? null : draft.bird,
  };
}

/** Puts a word in or takes it out. */
export function toggled<T>(list: readonly T[], word: T): readonly T[] {
  return list.includes(word) ? list.filter((one) => one !== word) : [...list, word];
}

/** Who notes it, when, and on what. */
export interface NotedBy {
  readonly id: string;
  readonly observer: string;
  readonly device: string;
  readonly now: LocalTime;
}

export function finishDraft(draft: VisitDraft, { id, observer, device, now }: NotedBy): Visit {
  const { eggCount: count, eggColor: color, eggPattern: pattern, eggSize: size } = draft;
  const eggs = count === null && color === null && pattern === null && size === null;
  return makeVisit({
    id,
    post: draft.post,
    box: draft.number,
    date: draft.date ?? now.date,
    time: draft.date === null ? now.time : draft.time,
    zone: draft.date === null ? now.zone : (draft.corrects?.zone ?? null),
    observer,
    state: draft.state,
    bird: draft.bird,
    material: draft.material,
    cup: draft.cup,
    eggs: eggs ? null : { count, color, pattern, size },
    young: draft.young,
    age: draft.age,
    dead: draft.dead,
    trouble: draft.trouble,
    action: draft.action,
    note: draft.note.trim(),
    photo: draft.photo,
    device,
    madeAt: now.instant,
    replaces: draft.corrects?.id ?? null,
  });
}
