import { describe, expect, it } from 'vitest';
import { prepare } from '../../../src/app/engine/prepared.ts';
import { changeBetween, changedSite } from '../../../src/app/engine/site-change.ts';
import { prepareGround } from '../../../src/ground/prepare.ts';
import type { Site, SiteFeature } from '../../../src/site/types.ts';
import { planeSite } from '../ground/plane-site.ts';

const lawn = {
  kind: 'short-grass' as const,
  rings: [
    [
      [-200, -200],
      [200, -200],
      [200, 200],
      [-200, 200],
    ] as [number, number][],
  ],
};
const woods = {
  kind: 'woods' as const,
  rings: [
    [
      [80, 80],
      [180, 80],
      [180, 180],
    ] as [number, number][],
  ],
};
const open = planeSite([lawn, woods, { kind: 'post', at: [0, 0] }, { kind: 'post', at: [50, -40] }]);

/** The site with one feature put in another's place. */
const withFeature = (site: Site, place: number, feature: SiteFeature): Site => ({
  ...site,
  features: site.features.map((old, k) => (k === place ? feature : old)),
});
const moved = (feature: SiteFeature, to: SiteFeature): SiteFeature => ({ ...feature, geometry: to.geometry });

describe('a site told as a change of another', () => {
  const after = withFeature(open, 2, moved(open.features[2]!, open.features[3]!));

  it('carries only what is new, and is the same site again on the other side', () => {
    const change = structuredClone(changeBetween(open, after));
    expect(change.settings).toBeNull();
    expect(change.rest).toBeNull();
    expect(change.features.filter((f) => typeof f !== 'number')).toHaveLength(1);
    const there = structuredClone(open);
    const again = changedSite(there, change);
    expect(again).toEqual(after);
    expect(again.features[0]).toBe(there.features[0]);
    expect(again.settings).toBe(there.settings);
  });

  it('carries other members, features put in, taken out and turned round', () => {
    const other: Site = {
      ...open,
      settings: { ...open.settings, seed: 9 },
      features: [open.features[3]!, { ...open.features[2]!, id: 'new' }, open.features[0]!],
      extra: { note: 'kept' },
    };
    expect(changedSite(structuredClone(open), structuredClone(changeBetween(open, other)))).toEqual(other);
    const { extra, ...bare } = other;
    expect(extra).toBeDefined();
    expect(changedSite(structuredClone(other), structuredClone(changeBetween(other, bare)))).toEqual(bare);
  });
});

describe('a prepared site', () => {
  const after = withFeature(open, 2, moved(open.features[2]!, open.features[3]!));

  it('keeps its land where only posts moved, and its sun and scores where the settings stayed', () => {
    const first = prepare(open);
    const second = prepare(after);
    expect(second.ground.site).toBe(after);
    expect(second.ground.nearest).toBe(first.ground.nearest);
    expect(second.suns).toBe(first.suns);
    expect(second.scores).toBe(first.scores);
    expect(second.ground.bounds).toEqual(prepareGround(after).bounds);
    const figured = prepare({ ...after, settings: { ...after.settings, box: 'dark' } });
    expect(figured.ground.nearest).toBe(first.ground.nearest);
    expect(figured.scores).not.toBe(first.scores);
  });

  it('is made anew where the land changed, or a post moved the frame', () => {
    const first = prepare(open);
    const clearing = withFeature(open, 1, { ...open.features[1]!, kind: 'meadow' });
    expect(prepare(clearing).ground.nearest).not.toBe(first.ground.nearest);
    const again = prepare(planeSite([lawn, woods, { kind: 'post', at: [60_000, 0] }]));
    expect(again.ground.nearest).not.toBe(first.ground.nearest);
    const far = planeSite([lawn, woods, { kind: 'post', at: [60_000, 0] }]).features[2]!;
    const near = prepare(open);
    expect(prepare(withFeature(open, 2, far)).ground.nearest).not.toBe(near.ground.nearest);
  });
});
