/** Words of the pages about the plan as a whole: kept plans, numbers set by hand, places left out, what the spacing binds. */

const boxes = (count: number) => `${count} ${count === 1 ? 'box' : 'boxes'}`;

export const kept = {
  title: 'Kept plans',
  about: 'Kept plans are saved in the site file. Taking one up again is one step, which can be undone.',
  name: 'Name',
  usual: (count: number) => `Plan ${count}`,
  keep: 'Keep this plan',
  busy: 'The plan is still being made. It can be kept when it is done or stopped.',
  stale: 'The plan on the map is older than your last change. Choose the posts again to keep it.',
  plan: 'Plan',
  now: 'On the map',
  sites: 'Sites',
  walk: 'Walk',
  minutes: 'Min',
  same: 'The same boxes as on the map, with the same numbers.',
  sameOtherNumbers: (count: number) =>
    `The same boxes as on the map; ${count === 1 ? 'one has another number' : `${count} have other numbers`}.`,
  onlyNow: (count: number, numbers: string) => `${boxes(count)} only on the map: ${numbers}.`,
  onlyKept: (count: number, numbers: string) => `${boxes(count)} only in this plan, its ${numbers}.`,
  more: (count: number) => `and ${count} more`,
  show: 'Show on the map',
  shown: 'Shown on the map',
  key: 'Squares: boxes of this plan alone, with its numbers. Discs in a dashed ring: boxes of the plan on the map alone.',
  take: 'Take it up',
  takeHint:
    'Sets what it was made with, and its posts where they stood. The land and the standing boxes stay as they are now.',
  drop: 'Forget it',
};

export const numbers = {
  open: 'Number by hand',
  title: 'Number by hand',
  about: 'The walk goes by the numbers. Type a number, or move a box up and down; the boxes between move by one.',
  keys: 'In a number field, the up and down arrows move the box; Enter sets the number typed.',
  busy: 'The walk is still being looked for. Boxes can be numbered by hand when it is done or stopped.',
  follow: 'The numbers follow the shortest walk.',
  byHand: (percent: string | null) =>
    percent === null
      ? 'The numbers are set by hand.'
      : `The numbers are set by hand: the walk is ${percent} % longer than the shortest.`,
  byHandShort: 'The numbers are set by hand, and no walk is shorter.',
  printed: 'Sheets printed before no longer fit: print them again, and tell who has them.',
  back: 'Number by the shortest walk',
  backDone: 'The numbers follow the shortest walk again.',
  walkers: (count: number) =>
    `The walk is split among ${count} walkers, and numbers follow their walks. With one walker they can be set by hand.`,
  number: (number: number) => `Number of box ${number}`,
  up: (number: number) => `Up: box ${number} becomes ${number - 1}`,
  down: (number: number) => `Down: box ${number} becomes ${number + 1}`,
  upWord: 'Up',
  downWord: 'Down',
  done: (from: number, to: number) => `Box ${from} is now number ${to}. Sheets printed before no longer fit.`,
  refused: (text: string, most: number) => `“${text}” is no number from 1 to ${most}.`,
};

export const left = {
  open: (count: number) => `Left out (${count})`,
  title: (count: number) => `${count} left out`,
  about: 'Every one is a dot on the map: press a dot, or a row here, and it says why.',
  none: 'No place was left out.',
  reasons: {
    'too-close': 'Too close to a chosen box',
    outscored: 'Lost to a better neighbor',
    'low-score': 'Scores too little',
    refused: 'Not for the birds wanted',
    forbidden: 'No box may stand there',
    retired: 'Retired',
    unreachable: 'No walk leads there',
    'too-far-to-walk': 'Beyond the longest walk',
  },
  more: (count: number) => `Show ${count} more`,
  back: 'Places left out',
};

export const binding = {
  title: 'Where the spacing binds',
  says: (pairs: number, length: string) =>
    `Dashed circles reach half of ${length} round each site: they may touch, never overlap. ${
      pairs === 1 ? 'One pair, tied by dots, stands' : `${pairs} pairs, tied by dots, stand`
    } nearly as close as the rule allows.`,
  alone: (length: string) =>
    `Dashed circles reach ${length} round each site: no other site of its bird may stand within.`,
  show: 'Show it on the map',
  hide: 'Take it off the map',
};
