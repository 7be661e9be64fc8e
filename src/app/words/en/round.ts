/** Words of the Round place. */
import { due, key, paperEntry, ready, share } from './round-pages.ts';
import { clue, visit } from './visit.ts';

const many = (count: number, one: string, more: string) => `${count} ${count === 1 ? one : more}`;

export const round = {
  title: 'Round',
  clue,
  visit,
  key,
  share,
  due,
  paperEntry,
  ready,
  pages: {
    walk: 'Walk',
    list: 'Boxes',
    due: 'Due',
    paper: 'Type in',
    key: 'Nest key',
    share: 'Share',
    ready: 'Ready?',
  },
  pagesLabel: 'Pages of the round',
  none: 'No round yet. Choose the posts first: the walk is found with them.',
  choose: 'Go to the posts',
  sharedName: (hash: string | null) => `Round ${hash ?? 'without a name'}`,
  sharedNote: 'This round came by code or file: boxes and order, no land. Visits are kept here and go back as a file.',
  blurred: (metres: string) => `Places were blurred before sharing: boxes stand within ${metres} of what is shown.`,
  total: (boxes: number, length: string, time: string) => `${many(boxes, 'box', 'boxes')} · ${length} · ${time}`,
  proven: 'The shortest walk, proven.',
  within: (percent: string) => `Within ${percent} % of the shortest walk.`,
  roundOf: (walker: number, count: number) => `Round ${walker} of ${count}`,
  walkerRound: (walker: number) => `Walker ${walker}`,
  patterns: ['solid line', 'dashed line', 'dotted line', 'dash-dot line'],
  listLabel: (walker: number) => `Boxes of round ${walker} in walking order`,
  fromStart: 'from the start',
  leg: (length: string, wind: string, degrees: string, minutes: string) =>
    `${length} ${wind} ${degrees} · ${minutes} min`,
  back: (length: string, minutes: string) => `Back to the start: ${length} · ${minutes} min`,
  settings: 'Walkers, time and start',
  walkers: 'Walkers',
  minutesPerBox: 'Minutes a box',
  start: 'Start',
  wayRound: 'Way round',
  waysRound: { either: 'whichever is found', clockwise: 'clockwise', counterclockwise: 'counterclockwise' },
  wayByHand: 'The numbers are set by hand, and the walk goes by them.',
  noStart: 'No trailhead is drawn: the walk goes from its first box to its last.',
  walkTitle: 'The walk',
  direction: 'Walked today',
  asNumbered: 'As numbered',
  otherWay: 'The other way round',
  fewer: (what: string) => `${what}: one less`,
  more: (what: string) => `${what}: one more`,
  seenOf: (seen: number, all: number) => `${seen} of ${all} seen`,
  allSeen: (count: number) => (count === 1 ? 'The box was seen today.' : `All ${count} boxes were seen today.`),
  allSeenNext: 'Send the visits home, or look at what is due next.',
  nextBox: (number: number) => `Next: box ${number}`,
  startRound: (number: number) => `Start at box ${number}`,
  box: (number: number) => `Box ${number}`,
  faces: (word: string, degrees: string) => `Faces ${word}, ${degrees}`,
  bearing: (wind: string, degrees: string, compass: string | null) =>
    compass === null ? `${wind} ${degrees}` : `${wind} ${degrees} · compass ${compass}`,
  bearingSpoken: (phrase: string) => `Go ${phrase}.`,
  withinError: (numbers: readonly number[]) =>
    numbers.length === 1
      ? `Within GPS error of box ${numbers[0]}`
      : `Within GPS error of boxes ${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}: read the number`,
  near: 'near',
  fromWord: 'from',
  seenWord: 'seen',
  skippedWord: 'skipped',
  noPlace: 'no place told',
  theStart: 'the start',
  youWithin: (length: string) => `you, to within ${length}`,
  position: {
    off: 'Position is off.',
    asking: 'Asking for your position …',
    denied:
      'Position is not allowed here. Allow it in the browser’s settings for this page; the list works without it.',
    none: 'No position yet. Step into the open; the list works without it.',
    'not-possible': 'This device gives no position. Walk by the list.',
    stale: (seconds: number) => `Position is ${seconds} s old.`,
    poor: (length: string) => `Poor position, ±${length}: do not trust distance and arrow.`,
    turnOn: 'Show my position',
  },
  heading: {
    none: 'No compass: the arrow assumes north is up.',
    magnetic: 'Arrow follows your phone’s needle, turned to true north.',
    magneticRaw: 'Arrow follows your phone’s needle (magnetic north).',
    compass: (degrees: string) =>
      `Arrow follows your phone; phones differ on true or magnetic, up to ${degrees} apart here.`,
    compassOnly: 'Arrow follows your phone; phones differ on true or magnetic north.',
    course: 'Arrow follows the way you walk.',
    ask: 'Use the compass',
    label: (phrase: string) => `The box lies ${phrase}`,
  },
  skip: 'Skip box',
  atBox: (number: number) => `I am at box ${number}`,
  centre: 'Show both',
  farOff: (length: string, number: number) =>
    `Your position is ${length} from box ${number}. Read the number on the box before you note it.`,
  otherBox: (number: number) => `The nearest box here is ${number}.`,
  goThere: (number: number) => `Go to box ${number}`,
  backToList: 'All boxes',
  pairHere: (number: number) => `Box ${number} is its pair, a few steps away.`,
  awake: 'Keep the screen on',
  awakeNot: 'This device does not let a page keep the screen on.',
  keptVisit: (number: number, what: string, kept: boolean) =>
    `Box ${number}: ${what}. ${kept ? 'Kept.' : 'NOT saved yet: it is in this window only.'}`,
  takenBack: (number: number) => `The visit to box ${number} was taken back.`,
  notUndone: (why: string) => `The visit could not be taken back: ${why}. It is still kept.`,
  mended: (count: number) => `${many(count, 'visit was', 'visits were')} missing and came back from the second copy.`,
  damaged: (count: number) =>
    `${many(count, 'record', 'records')} of visits could not be read. All others are here; download them now.`,
  logUnread: (why: string) =>
    `The visits kept on this device could not be read: ${why}. New ones stay in this window until they are downloaded.`,
  unsaved: (count: number, why: string) =>
    `${many(count, 'visit is', 'visits are')} NOT saved: ${why}. They are in this window; download them before you close it.`,
  tryAgain: 'Try again',
  download: 'Download the visits',
  clock: {
    behind: (today: string, last: string) =>
      `This device says it is ${today}, but there is a visit of ${last}. Set its clock before you go on.`,
    zone: (hours: number) =>
      `This device’s clock is ${many(Math.abs(hours), 'hour', 'hours')} off the sun here. Check its time zone.`,
  },
  eggsSeen: (count: number | null, color: string | null) =>
    `${count === null ? '' : `${count} `}${color ? `${color} ` : ''}${count === 1 ? 'egg' : 'eggs'}`,
  youngSeen: (count: number | null, age: readonly [number, number] | null) =>
    `${count === null ? '' : `${count} `}young${age ? `, ${age[0] === age[1] ? age[0] : `${age[0]}–${age[1]}`} days` : ''}`,
  stateSeen: {
    empty: 'empty',
    building: 'nest, no eggs',
    eggs: 'eggs',
    young: 'young',
    fledged: 'flown',
    failed: 'failed',
    'other-user': 'other user',
  },
  lastSeen: (day: string, what: string) => `On ${day}: ${what}.`,
  neverSeen: 'Not visited yet.',
  care: 'Care:',
  troubleIn: (trouble: string, day: string) => `${trouble} on ${day}`,
  lastOpening: (day: string) => `Last opening ${day}.`,
  doNotOpen: 'Do not open.',
  update: {
    ready: 'A newer Meadowpost is on this device.',
    take: 'Update now',
    later: 'Later',
    careful: 'Visits are kept; an open draft is not.',
  },
};
