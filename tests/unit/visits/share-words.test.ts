import { describe, expect, it } from 'vitest';
import { wilsonInterval } from '../../../src/visits/intervals.ts';
import { shareWords } from '../../../src/visits/share-words.ts';

const share = (part: number, of: number) => ({ part, of, share: part / of, interval: wilsonInterval(part, of) });

describe('shares in words', () => {
  // Wilson 95 % for 3 of 4 is 30.06–95.44 % (score interval, E. B. Wilson 1927; worked by hand).
  it('tells small numbers by how little they say', () => {
    expect(shareWords(share(3, 4), 'sites')).toBe('3 of 4 sites, could be anywhere from 30 to 95\u00a0%');
  });
  it('tells a per cent from thirty on', () => {
    expect(shareWords(share(24, 36), 'nests')).toBe('24 of 36 nests, 67\u00a0% (95\u00a0% interval 50–80\u00a0%)');
  });
  it('says when there is nothing to count', () => {
    expect(shareWords({ part: 0, of: 0, share: null, interval: null }, 'nests')).toBe('no nests to count');
  });
});
