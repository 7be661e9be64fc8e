import { describe, expect, it } from 'vitest';
import { issueLine, issueLines } from '../../../src/cli/site-file.ts';
import { nearestKind } from '../../../src/site/kinds.ts';
import type { Issue } from '../../../src/site/types.ts';

const issue: Issue = {
  id: 'ring-crosses-itself',
  severity: 'error',
  feature: 'a',
  place: [-83, 40],
  sentence: 'Woods a crosses itself.',
  fix: 'Move a corner.',
};

describe('issues on the command line', () => {
  it('tell the first of thousands and how many more there are', () => {
    const lines = issueLines(Array.from({ length: 2000 }, () => issue));
    expect(lines).toHaveLength(21);
    expect(lines.at(-1)).toContain('and 1980 more like this');
  });

  it('say a place once, and none that lies on no globe', () => {
    expect(issueLine(issue)).toContain('(near 40.00000, -83.00000)');
    expect(issueLine({ ...issue, sentence: 'Crosses itself near 40.0000, -83.0000.' })).not.toContain('(near');
    expect(issueLine({ ...issue, place: [329000, 4430000] })).not.toContain('(near');
  });

  it('know everyday words for kinds', () => {
    expect(nearestKind('Forest')).toBe('woods');
    expect(nearestKind('tall grass')).toBe('meadow');
    expect(nearestKind('__proto__')).not.toBeUndefined();
    expect(nearestKind('wods')).toBe('woods');
  });
});
