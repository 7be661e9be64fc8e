/** Every page of the Round, in three themes, on a phone and on a desktop: accessibility rules, and nothing to press too small for gloves. */

import { afterEach, describe, expect, it } from 'vitest';
import { page } from 'vitest/browser';
import '../../../src/app/elements/place-round/place-round.ts';
import { setRound, useLog } from '../../../src/app/actions/visit-log.ts';
import { visitLog } from '../../../src/app/storage/visit-log.ts';
import { themeNames } from '../../../src/app/theme.ts';
import { type Alone, axeViolations, crowded, drawn, smallTargets, standAlone, until } from '../place.ts';
import { meadow } from './meadow.ts';

let alone: Alone;
const name = `test-pages-${Date.now()}`;
afterEach(() => {
  alone.remove();
  indexedDB.deleteDatabase(name);
});
const press = async (selector: string, words = '') =>
  (await until(() => alone.find<HTMLButtonElement>(selector, words), `${selector} ${words}`)).click();

/** What is done to come to each page, from the walk, and a heading or word that must be there: an empty page breaks no rule. */
const pages: readonly (readonly [string, () => Promise<void>, string])[] = [
  ['walk', async () => undefined, 'What is inside?'],
  ['arrived', async () => setRound(alone.store, { arrived: 'p1' }), 'Failed'],
  [
    'form',
    async () => {
      await press('button[data-state=eggs]');
      await until(() => alone.find('mp-visit-form'), 'the form');
      for (const fold of alone.all('details')) (fold as HTMLDetailsElement).open = true;
      await press('button[data-word=wasps]');
    },
    'Keep away from the wasps',
  ],
  [
    'key',
    async () => {
      await press('button[data-state=unsure]');
      await press('button[data-word=twigs]');
      await press('button[data-word=blue]');
    },
    'Unsure',
  ],
  [
    'correction',
    async () => {
      setRound(alone.store, { arrived: 'p1' });
      await press('[data-correct=old]');
    },
    'Corrects the visit of',
  ],
  ['list', async () => setRound(alone.store, { page: 'list' }), 'Keep the screen on'],
  ['due', async () => setRound(alone.store, { page: 'due' }), 'Due visits'],
  ['paper', async () => setRound(alone.store, { page: 'paper' }), 'Type in a sheet'],
  [
    'share',
    async () => {
      setRound(alone.store, { page: 'share' });
      await press('[data-places=exact]');
      await press('button', 'Show the code');
    },
    'The same as a link',
  ],
  ['ready', async () => setRound(alone.store, { page: 'ready' }), 'Ready for the field?'],
];

describe.each([
  ['a phone', 390, 844, 56],
  ['a desktop', 1000, 800, 44],
] as const)('the Round on %s', (_, width, height, tall) => {
  it.each(pages)('%s', async (_page, come, word) => {
    await page.viewport(width, height);
    alone = standAlone('mp-place-round', meadow({ selection: { of: 'box', number: 1 } }));
    useLog(alone.store, visitLog(null, name));
    await until(() => alone.text().includes('Box 1'), 'the round');
    await come();
    await until(() => alone.text().includes(word), word);
    const found: string[] = [];
    for (const theme of themeNames) {
      alone.theme(theme);
      await drawn();
      found.push(...(await axeViolations()).map((one) => `${theme}: ${one}`));
    }
    expect(alone.all('h1').filter((one) => one.getBoundingClientRect().height > 0)).toHaveLength(1);
    expect(found).toEqual([]);
    expect(smallTargets(alone, tall)).toEqual([]);
    expect(crowded(alone, width)).toEqual([]);
    const wide = alone
      .all('*')
      .filter((one) => one.scrollWidth > width + 1 && getComputedStyle(one).overflowX === 'visible');
    expect(wide.map((one) => one.localName)).toEqual([]);
  });
});
