/** The settings that are one value each: type, unit and range. Data only; defaults stand in `defaults.ts`. */

/** What is known of one setting. */
export interface SettingRow {
  readonly type: 'text' | 'word' | 'number' | 'whole' | 'day' | 'id';
  readonly unit?: string;
  /** Least and most allowed, inclusive. */
  readonly range?: readonly [number, number];
  readonly words?: readonly string[];
  readonly means: string;
}

/** In the order they are written. Ranges are ours. */
export const settingTable: Readonly<Record<string, SettingRow>> = {
  name: { type: 'text', means: 'Name of the site.' },
  units: { type: 'word', words: ['us', 'metric'], means: 'Feet, yards and acres, or meters and hectares.' },
  region: { type: 'text', means: 'Which bird guides apply.' },
  stormFrom: {
    type: 'number',
    unit: '°',
    range: [0, 360],
    means: 'Where storms come from, clockwise from true north.',
  },
  julyMaximum: { type: 'number', unit: '°C', range: [-20, 60], means: 'Mean daily maximum in July.' },
  box: { type: 'word', words: ['pale', 'natural', 'dark'], means: 'How dark the boxes are painted.' },
  start: { type: 'id', means: 'Id of the trailhead where the round starts; none = the first in the file.' },
  direction: {
    type: 'word',
    words: ['clockwise', 'counterclockwise'],
    means: 'Which way round the walk goes, seen from above; none = whichever the search gives.',
  },
  date: { type: 'day', means: 'Day the plan is made for.' },
  suggestGrid: {
    type: 'number',
    unit: 'm',
    range: [1, 5000],
    means: 'Spacing of suggested candidates; none = only drawn ones.',
  },
  reachOfPaths: {
    type: 'number',
    unit: 'm',
    range: [0, 10_000],
    means: 'Suggested candidates stay this near to a path; none = anywhere.',
  },
  minimumScore: { type: 'number', range: [0, 100], means: 'Posts that score less are not chosen.' },
  walkLimit: { type: 'number', unit: 'm', range: [1, 500_000], means: 'Longest round; none = no limit.' },
  minutesPerBox: { type: 'number', unit: 'min', range: [0, 240], means: 'Time spent at each box.' },
  walkers: { type: 'whole', range: [1, 100], means: 'Among how many people the rounds are split.' },
  seed: { type: 'whole', range: [0, 4_294_967_295], means: 'Start of the random draws: the same seed, the same plan.' },
};
