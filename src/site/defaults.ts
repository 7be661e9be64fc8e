/** Every default of the site file, once: what is used where the file says nothing. */

/** A default figure with its unit and where it comes from ("ours" = this project's reading, printed in no source). */
export interface DefaultFigure {
  readonly value: number;
  readonly unit: string;
  readonly source: string;
}

/** Height of what stands on the land, by kind. A kind that is not here has no height of its own (0 m). */
export const defaultHeights: Readonly<Record<string, DefaultFigure>> = {
  woods: { value: 18, unit: 'm', source: 'ours' },
  brush: { value: 2.5, unit: 'm', source: 'ours' },
  building: { value: 6, unit: 'm', source: 'ours' },
  tree: { value: 10, unit: 'm', source: 'ours' },
  shrub: { value: 2, unit: 'm', source: 'ours' },
  hedge: { value: 2, unit: 'm', source: 'ours' },
  fence: { value: 1.2, unit: 'm', source: 'ours' },
};

/** Radius of a tree's crown. */
export const defaultCrownRadius: DefaultFigure = { value: 3, unit: 'm', source: 'ours' };

/** Width of a hedge across its line. */
export const defaultHedgeWidth: DefaultFigure = { value: 2, unit: 'm', source: 'ours' };

/** Settings used where the file gives none; `name` then is the file's name without its ending. */
export const defaultSettings = {
  fileVersion: 1,
  name: 'New site',
  units: 'us',
  region: 'eastern-north-america',
  wanted: [],
  stormFrom: null,
  julyMaximum: null,
  box: 'natural',
  start: null,
  direction: null,
  /** A fixed day, since nothing here reads the clock: the app and the command line put today's date into new sites. */
  date: '2026-06-15',
  suggestGrid: null,
  reachOfPaths: null,
  /** Of 100; ours. */
  minimumScore: 40,
  walkLimit: null,
  /** Twelve boxes 100 yd apart = about an hour (handbook key LWC). */
  minutesPerBox: 4,
  walkers: 1,
  seed: 1,
  weights: {},
  figures: {},
  order: [],
  plans: [],
} as const;

/** What a file may hold at most. Ours: above these a browser tab stalls or runs out of memory. */
export const limits = {
  /** Brackets within brackets. */
  depth: 32,
  /** Characters: a warning, then a refusal. */
  bigText: 25_000_000,
  mostText: 150_000_000,
  mostFeatures: 20_000,
  mostVertices: 500_000,
  /** Degrees: widest site, farthest from the equator, nearest to the 180° meridian. */
  span: 1,
  latitude: 85,
  antimeridian: 0.01,
  /** Square metres: an area this small is pointed out. */
  tinyArea: 1,
} as const;
