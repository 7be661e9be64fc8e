/** A visit: one look at one box. Visits are only ever added, never changed; a correction is a new visit that names the old one. */

export const visitStates = ['empty', 'building', 'eggs', 'young', 'fledged', 'failed', 'other-user'] as const;
export const materials = [
  'grass',
  'pine-needles',
  'feathers',
  'twigs',
  'moss',
  'hair',
  'plant-down',
  'leaves',
  'bark',
  'snake-skin',
  'rootlets',
  'straw',
  'mud',
  'litter',
  'shavings',
  'own-down',
  'shredded-grass',
  'droppings',
] as const;
export const cups = ['neat-cup', 'deep-cup-at-back', 'dome', 'flat', 'closed-ball', 'no-cup'] as const;
export const eggColors = ['blue', 'pale-blue', 'blue-green', 'white', 'cream', 'buff', 'grey-white', 'brown'] as const;
export const eggPatterns = ['plain', 'fine-speckles', 'spots', 'blotches', 'streaks'] as const;
export const eggSizes = ['small', 'medium', 'large'] as const;
export const troubles = [
  'wasps',
  'ants',
  'mice',
  'parasites',
  'water',
  'heat',
  'cold',
  'damage',
  'predator-sign',
  'snake',
  'competitor',
  'abandoned',
  'people',
] as const;
export const actionsTaken = [
  'cleaned',
  'repaired',
  'guard-added',
  'nest-raised',
  'moved',
  'turned',
  'retired',
  'photographed',
  'asked',
  'pest-nest-removed',
] as const;

export type VisitState = (typeof visitStates)[number];
export type Material = (typeof materials)[number];
export type Cup = (typeof cups)[number];
export type EggColor = (typeof eggColors)[number];
export type EggPattern = (typeof eggPatterns)[number];
export type EggSize = (typeof eggSizes)[number];
export type Trouble = (typeof troubles)[number];
export type ActionTaken = (typeof actionsTaken)[number];

export interface Eggs {
  readonly count: number | null;
  readonly color: EggColor | null;
  readonly pattern: EggPattern | null;
  readonly size: EggSize | null;
}

export interface Visit {
  /** Given once, on the device that made it; the same id with other contents is a conflict. */
  readonly id: string;
  /** Feature id of the post. */
  readonly post: string;
  /** The number on the box, as the walker read it. */
  readonly box: number | null;
  /** Local date, YYYY-MM-DD. */
  readonly date: string;
  /** Local time, HH:MM; null when not noted. */
  readonly time: string | null;
  /** Minutes the local time is ahead of UTC; null when not known. */
  readonly zone: number | null;
  readonly observer: string;
  readonly state: VisitState;
  /** Bird id of the guides; null while not known. */
  readonly bird: string | null;
  readonly material: readonly Material[];
  readonly cup: Cup | null;
  /** Null when none was seen or nobody looked. */
  readonly eggs: Eggs | null;
  /** Live young; null when not counted. */
  readonly young: number | null;
  /** Days since hatching (hatch day is 0), earliest and latest; null when not judged. */
  readonly age: readonly [number, number] | null;
  /** Dead eggs or young. */
  readonly dead: number;
  readonly trouble: readonly Trouble[];
  readonly action: readonly ActionTaken[];
  readonly note: string;
  /** Name of a photo kept on the device. */
  readonly photo: string | null;
  readonly device: string;
  /** Instant the record was made, ISO 8601 with offset or Z; for telling a wrong clock and the last of two variants. */
  readonly madeAt: string;
  /** Id of an earlier visit this one corrects. */
  readonly replaces: string | null;
  /** Members of the file this program does not know: kept. */
  readonly extra?: Readonly<Record<string, unknown>>;
}

type Needed = 'id' | 'post' | 'date' | 'state';

/** A visit with everything not given left empty. */
export function makeVisit(given: Pick<Visit, Needed> & Partial<Visit>): Visit {
  return {
    box: null,
    time: null,
    zone: null,
    observer: '',
    bird: null,
    material: [],
    cup: null,
    eggs: null,
    young: null,
    age: null,
    dead: 0,
    trouble: [],
    action: [],
    note: '',
    photo: null,
    device: '',
    madeAt: `${given.date}T12:00:00Z`,
    replaces: null,
    ...given,
  };
}

/** Sorts by time as text; without a time a visit counts as the day's last. Post and id tell ties apart, so that order never depends on the input's. */
export function timeKey(visit: Visit): string {
  return `${visit.date} ${visit.time ?? '99:99'} ${visit.post} ${visit.id}`;
}

/** Oldest first. */
export function byTime(a: Visit, b: Visit): number {
  const [left, right] = [timeKey(a), timeKey(b)];
  return left < right ? -1 : left > right ? 1 : 0;
}
