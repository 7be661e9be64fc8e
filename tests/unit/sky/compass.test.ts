import { expect, it } from 'vitest';
import { compassPhrase, compassWord } from '../../../src/sky/compass.ts';

it.each([
  [0, 'N', 'north'],
  [359, 'N', 'north'],
  [-10, 'N', 'just west of north'],
  [95, 'E', 'just south of east'],
  [112.5, 'ESE', 'east-southeast'],
  [50, 'NE', 'just east of northeast'],
  [310, 'NW', 'just west of northwest'],
  [355, 'N', 'just west of north'],
  [202, 'SSW', 'south-southwest'],
  [725, 'N', 'just east of north'],
])('%d° is %s, "%s"', (degrees, word, phrase) => {
  expect(compassWord(degrees)).toBe(word);
  expect(compassPhrase(degrees)).toBe(phrase);
});
