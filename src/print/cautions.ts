/** Cautions for people at work on a trail: sentence and where it comes from. Local codes and licensed practice go first. */

export interface Caution {
  readonly about: string;
  readonly sentence: string;
  readonly source: string;
}

const practice = 'common practice';

/** For the back of the check sheet. */
export const fieldCautions: readonly Caution[] = [
  {
    about: 'Ladder',
    sentence: 'Above about 6 ft (1.8 m): two people, firm ground, never near wires.',
    source: practice,
  },
  {
    about: 'Wires',
    sentence: 'No pole, ladder or pole camera near overhead wires; ask the utility for its distance.',
    source: practice,
  },
  {
    about: 'Digging',
    sentence:
      'Before any pole or rebar goes in, call the utility-locating service (811 in the US; elsewhere the local one) and wait for the marks.',
    source: practice,
  },
  {
    about: 'Wasps',
    sentence: 'Tap, stand aside and listen before you open. Allergic: bring your medicine, do not walk alone.',
    source: practice,
  },
  {
    about: 'Mouse nest',
    sentence:
      'Do not sweep it dry. Stand upwind, gloves; wet with 1 part bleach to 9 parts water, soak 5 minutes, double bag.',
    source: 'CDC pages, 2008',
  },
  { about: 'Snake', sentence: 'Look before you reach in; let it leave.', source: practice },
  {
    about: 'Traffic',
    sentence: 'Park off the road, vest on, face the traffic; do not stop at a box where there is no verge.',
    source: practice,
  },
  {
    about: 'Livestock',
    sentence:
      'Ask first. Close every gate as you found it; keep out of fields with bulls, or cows with calves; mind electric fence.',
    source: practice,
  },
  {
    about: 'Heat, storm, ticks',
    sentence: 'Water, hat, tick check. Lightning: away from poles and lone trees. Metal poles in sun burn.',
    source: practice,
  },
];

/** For whoever mounts a box. */
export const mountCautions: readonly Caution[] = [
  {
    about: 'Dig',
    sentence: 'Call the utility-locating service (811 in the US) before you drive or dig a pole.',
    source: practice,
  },
  { about: 'Wires', sentence: 'Look up: keep poles and ladders clear of wires.', source: practice },
  { about: 'Hands', sentence: 'Eye protection for driving rebar, gloves for cut metal.', source: practice },
];

/** When a box must be left alone. */
export const openingRules: readonly Caution[] = [
  {
    about: 'Last opening',
    sentence: 'From day 12 after hatching look from afar only: young may leave too soon.',
    source: 'WHBT; day 12 is for beginners',
  },
  {
    about: 'Weather',
    sentence: 'Not in cold, rain or wind, not at dawn or dusk; a minute is enough.',
    source: 'sialis.org',
  },
];
