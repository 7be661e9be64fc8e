/** The known properties of features: which kinds have them, their type, unit, range and default. Data only. */
import { defaultCrownRadius, defaultHedgeWidth } from './defaults.ts';
import { areaKinds, type Kind } from './types.ts';

/** What is known of one property. */
export interface PropertyRow {
  /** Kinds that use it; null = every kind. On other kinds it is a member like any other. */
  readonly kinds: readonly Kind[] | null;
  readonly type: 'number' | 'whole' | 'text' | 'yes-no' | 'word' | 'id';
  readonly unit?: string;
  /** Least and most allowed, inclusive. */
  readonly range?: readonly [number, number];
  readonly words?: readonly string[];
  /** What stands in when it is not given, in words for people. */
  readonly otherwise: string;
  readonly means: string;
}

const post: readonly Kind[] = ['post'];
const cover = areaKinds.filter((kind) => kind !== 'off-limits' && kind !== 'boundary');

/** Ranges are ours: wide enough for anything real, narrow enough to catch feet typed as metres and misplaced commas. */
export const propertyTable = {
  name: { kinds: null, type: 'text', otherwise: 'no name', means: 'What people call it.' },
  height: {
    kinds: [
      'woods',
      'brush',
      'building',
      'orchard',
      'crop',
      'wetland',
      'meadow',
      'tree',
      'shrub',
      'hedge',
      'fence',
      'perch',
    ],
    type: 'number',
    unit: 'm',
    range: [0, 120],
    otherwise: 'the height of its kind',
    means: 'Height above the ground.',
  },
  crownRadius: {
    kinds: ['tree'],
    type: 'number',
    unit: 'm',
    range: [0.1, 40],
    otherwise: `${defaultCrownRadius.value} m`,
    means: 'Radius of the crown.',
  },
  width: {
    kinds: ['hedge'],
    type: 'number',
    unit: 'm',
    range: [0.1, 50],
    otherwise: `${defaultHedgeWidth.value} m`,
    means: 'Width across the line.',
  },
  sprayed: { kinds: cover, type: 'yes-no', otherwise: 'false', means: 'Insecticide or herbicide is used here.' },
  grazed: { kinds: cover, type: 'yes-no', otherwise: 'false', means: 'Livestock walk here.' },
  leafOn: {
    kinds: ['woods', 'brush', 'orchard', 'tree', 'shrub', 'hedge'],
    type: 'yes-no',
    otherwise: 'true',
    means: 'In leaf while birds nest; false = dead or bare.',
  },
  state: {
    kinds: post,
    type: 'word',
    words: ['candidate', 'fixed', 'retired'],
    otherwise: 'candidate',
    means: 'A place to judge, a standing box, or one no longer used.',
  },
  locked: {
    kinds: post,
    type: 'yes-no',
    otherwise: 'false',
    means: 'A planned box that every plan keeps where it is, though it does not stand yet.',
  },
  bird: { kinds: post, type: 'text', otherwise: 'not decided', means: 'Id of the bird the box is for.' },
  number: { kinds: post, type: 'whole', range: [1, 99_999], otherwise: 'no number', means: 'Number on the box.' },
  facing: {
    kinds: post,
    type: 'number',
    unit: '°',
    range: [0, 360],
    otherwise: 'the best facing',
    means: 'Where the hole looks, clockwise from true north.',
  },
  holeHeight: {
    kinds: post,
    type: 'number',
    unit: 'm',
    range: [0.3, 12],
    otherwise: 'the height of the bird’s guide',
    means: 'Ground to hole.',
  },
  pair: { kinds: post, type: 'id', otherwise: 'no pair', means: 'Id of the post it is one site with.' },
  since: {
    kinds: post,
    type: 'text',
    otherwise: 'not known',
    means: 'Day the box was put up, YYYY-MM-DD: visits before it are asked about.',
  },
  guard: { kinds: post, type: 'yes-no', otherwise: 'not noted', means: 'A guard against climbers is on the pole.' },
} as const satisfies Record<string, PropertyRow>;

/** Names of the known properties. */
export type PropertyName = keyof typeof propertyTable;

/** Rows as the general type, for code that walks over all of them. */
export const propertyRows: Readonly<Record<PropertyName, PropertyRow>> = propertyTable;

/** Whether a kind uses the property. */
export function hasProperty(kind: Kind, name: PropertyName): boolean {
  const { kinds } = propertyRows[name];
  return kinds === null || kinds.includes(kind);
}
