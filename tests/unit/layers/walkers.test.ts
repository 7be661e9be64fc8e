import { describe, expect, it } from 'vitest';
import { walkerLook, walkerPatterns, walkerPrint } from '../../../layers/walkers.ts';
import { themes } from '../../../src/app/theme.ts';
import { en } from '../../../src/app/words/en.ts';

const twelve = Array.from({ length: 12 }, (_, i) => walkerLook(i + 1));

describe("the walkers' lines", () => {
  it('are told apart without color, twelve of them', () => {
    expect(new Set(twelve.map(({ pattern, hollow }) => `${pattern.id} ${hollow}`)).size).toBe(12);
  });

  it('differ from the next in ink too, and start with an unbroken line in ink', () => {
    for (const [i, look] of twelve.slice(1).entries()) expect(look.ink).not.toBe(twelve[i]!.ink);
    expect(walkerLook(1)).toMatchObject({ ink: 'ink', hollow: false, pattern: { id: 'solid', dash: null } });
  });

  it('have the light theme’s inks on paper, black for ink', () => {
    const { sky, rust, moss } = themes.light;
    expect(walkerPrint.inks).toEqual({ ink: '#000000', sky, rust, moss });
  });

  it('have words', () => {
    for (const { id } of walkerPatterns) expect(en.round.patterns[id], id).toBeTypeOf('string');
  });
});
