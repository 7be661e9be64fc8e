import { describe, expect, it } from 'vitest';
import { unusedSettings } from '../../../src/criteria/unused-settings.ts';
import { defaultSettings } from '../../../src/site/defaults.ts';

const said = (weights: Record<string, number>, figures: Record<string, number>) =>
  unusedSettings({ ...defaultSettings, weights, figures }).map(({ id, sentence }) => [id, sentence]);

describe('settings nobody reads', () => {
  it('are quiet for every name the docs give', () => {
    expect(
      said(
        { openness: 2, 'afternoon-sun': 0 },
        {
          'openness.radius': 40,
          'brush.zero': 10,
          'flags.road': 30,
          'pairing.atLeast': 0.5,
          'score.floor': 0,
          'eastern-bluebird.spacing.same': 91,
          'eastern-bluebird.habitat.woodsEdge.1.0': 20,
        },
      ),
    ).toEqual([]);
  });

  it('are named with what would be read', () => {
    expect(
      said({ opennes: 2 }, { 'openness.radus': 40, 'eastern-bluebird.spacing.sane': 1, 'dodo.spacing.same': 3 }),
    ).toEqual([
      ['unknown-weight', 'There is no criterion "opennes" to weigh.'],
      ['unknown-figure', 'There is no figure "openness.radus".'],
      ['unknown-figure', 'There is no figure "eastern-bluebird.spacing.sane".'],
      ['unknown-figure', 'There is no figure "dodo.spacing.same".'],
    ]);
  });

  it('say which value is used where one is out of its range', () => {
    expect(said({}, { 'flags.road': 5000, 'score.floor': -1 })).toEqual([
      ['figure-out-of-range', 'flags.road is 5000; 100 is used.'],
      ['figure-out-of-range', 'score.floor is -1; 0 is used.'],
    ]);
  });
});
