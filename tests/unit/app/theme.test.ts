import { describe, expect, it } from 'vitest';
import { subjects } from '../../../layers/all.ts';
import { contrast, contrastPairs, cssOf, type Ink, themeNames, themes } from '../../../src/app/theme.ts';

const color = (theme: (typeof themeNames)[number], name: keyof Ink) => String(themes[theme][name]);

describe('contrast', () => {
  it('gives the ratios printed in WCAG techniques', () => {
    // SOURCE: W3C, Understanding WCAG 2.2, SC 1.4.3 / G18: black on white 21:1; #777777 on white 4.48:1 (often quoted as just failing 4.5).
    expect(contrast('#000000', '#FFFFFF')).toBeCloseTo(21, 6);
    expect(contrast('#777777', '#FFFFFF')).toBeCloseTo(4.48, 2);
  });

  // The ratios the look was designed with, light / dark / sunlight (computed there independently, one decimal).
  it.each<[keyof Ink, keyof Ink, number, number, number]>([
    ['ink', 'paper', 13.9, 14.2, 21],
    ['quiet', 'paper', 6.2, 8.4, 12.9],
    ['line', 'paper', 3.5, 4.6, 8.4],
    ['sky', 'paper', 6.4, 9.0, 10.6],
    ['onSky', 'sky', 6.8, 9.5, 10.6],
    ['ink', 'skyWash', 12.0, 10.2, 16.5],
    ['rust', 'paper', 6.3, 8.0, 9.6],
    ['rust', 'rustWash', 5.3, 6.2, 7.8],
    ['moss', 'paper', 6.4, 5.3, 10.5],
    ['sky', 'ring', 4.5, 4.3, 6.2],
    ['stripDash', 'stripWoods', 6.8, 5.6, 10.5],
    ['outline', 'halo', 12.0, 14.6, 21],
  ])('of %s on %s is as designed', (of, on, ...designed) => {
    themeNames.forEach((theme, i) => {
      expect(contrast(color(theme, of), color(theme, on)), theme).toBeCloseTo(designed[i] as number, 0);
    });
  });

  it.each(contrastPairs)('of $of on $on is at least $least in every theme', ({ of, on, least }) => {
    for (const theme of themeNames)
      expect(contrast(color(theme, of), color(theme, on)), theme).toBeGreaterThanOrEqual(least);
  });

  it('of ink and outlines on every land fill is at least 7 and 7', () => {
    for (const subject of subjects)
      for (const theme of themeNames) {
        const fill = subject.colors[theme].fill;
        // Buildings are solid: their edge is the halo.
        if (!fill || subject.id === 'building') continue;
        expect(contrast(color(theme, 'ink'), fill), `${subject.id} ${theme}`).toBeGreaterThanOrEqual(7);
        // Woods in the light theme are the darkest fill: 6.7 as designed.
        expect(contrast(color(theme, 'outline'), fill), `${subject.id} ${theme}`).toBeGreaterThanOrEqual(6.6);
      }
  });

  it('of a building on its halo is at least 3', () => {
    const building = subjects.find((s) => s.id === 'building');
    for (const theme of themeNames)
      expect(contrast(building?.colors[theme].fill ?? '', color(theme, 'halo'))).toBeGreaterThanOrEqual(3);
  });
});

describe('cssOf', () => {
  it('names every member with dashes and gives lengths a unit', () => {
    const css = cssOf('dark');
    expect(css['--sky-wash']).toBe('#22394A');
    expect(css['--edge']).toBe('1.25px');
    expect(Object.keys(css)).toHaveLength(Object.keys(themes.dark).length);
  });
});
