import { describe, expect, it } from 'vitest';
import { curveShape, curveSize } from '../../../src/app/elements/curve-spark/curve-shape.ts';
import { bandPath } from '../../../src/app/elements/facing-rose/rose-shape.ts';
import { sourceMarks } from '../../../src/app/elements/reason-rows/source-marks.ts';
import { scaleBar } from '../../../src/app/elements/scale/scale-bar.ts';
import { stripShape, stripSize } from '../../../src/app/elements/sun-strip/strip-shape.ts';
import { compass, degrees } from '../../../src/app/format.ts';
import { pixelsPerMetre22 } from '../../../src/app/map/ground-scale.ts';
import type { Row } from '../../../src/criteria/criterion.ts';

describe('the curve', () => {
  it('keeps the dot inside and on the curve', () => {
    for (const raw of [-500, 0, 0.5, 1, 900]) {
      const { dot } = curveShape(
        [
          [0, 0],
          [1, 1],
        ],
        raw,
        Math.max(0, Math.min(1, raw)),
      );
      expect(dot.x).toBeGreaterThan(0);
      expect(dot.x).toBeLessThan(curveSize.width);
      expect(dot.y).toBeGreaterThan(0);
      expect(dot.y).toBeLessThan(curveSize.height);
    }
  });

  it('stands a single knot', () => {
    expect(curveShape([[5, 1]], 5, 1).path).not.toContain('NaN');
  });
});

describe('the scale bar', () => {
  it('is 1 : 2,400 at zoom 15.503 and latitude 41.1', () => {
    // SOURCE: 1:2,400 at 96 px an inch is 0.635 m a px; a 512 px tile of Web Mercator spans 40 075 016.69 m · cos 41.1° / 2^z.
    const zoom = Math.log2((40_075_016.69 * Math.cos((41.1 * Math.PI) / 180)) / 512 / 0.635);
    const bar = scaleBar(zoom, 41.1, 'metric', 120);
    expect(bar.ratio).toBe('2 400');
    expect(bar.label).toBe('40 m');
    expect(bar.width).toBeCloseTo(40 / 0.635, 2);
  });

  it.each([2, 8, 12, 15.3, 19, 22])('is a round length no wider than its place at zoom %s', (zoom) => {
    for (const units of ['us', 'metric'] as const) {
      const bar = scaleBar(zoom, 60, units, 120);
      expect(bar.width).toBeLessThanOrEqual(120.001);
      expect(bar.width).toBeGreaterThan(40);
      expect(bar.label).toMatch(/^(0\.[124]|[124]0*) (m|km|ft|mi)$/);
    }
  });
});

describe('pixelsPerMetre22', () => {
  it('doubles the ground at 60° latitude', () => {
    expect(pixelsPerMetre22(60) / pixelsPerMetre22(0)).toBeCloseTo(2, 9);
  });
});

describe('the sun strip', () => {
  const path = (date: string, noon: number, southern: boolean) => ({
    date,
    points: Array.from({ length: 61 }, (_, i) => {
      const hour = 7 + i / 6;
      const away = (hour - 12) * 15;
      const azimuth = ((southern ? -away : 180 + away) + 360) % 360;
      return { hour, azimuth, altitude: noon - Math.abs(hour - 12) * 9, shaded: hour > 16 };
    }),
  });

  it.each([false, true])('draws the afternoon on its side (southern: %s)', (southern) => {
    const view = {
      horizon: new Array(360).fill(0),
      southern,
      paths: [path('2026-04-01', 50, southern), path('2026-06-21', 70, southern)],
    };
    const shape = stripShape(view);
    const noon = shape.hours.find((h) => h.hour === 12);
    const five = shape.hours.find((h) => h.hour === 17);
    expect(noon?.x).toBeCloseTo(stripSize.width / 2, 0);
    // West is right of the middle when looking south, left when looking north.
    expect((five?.x ?? 0) > (noon?.x ?? 0)).toBe(!southern);
    expect(shape.winds.map((w) => w.word)).toEqual(
      southern ? ['W', 'NW', 'N', 'NE', 'E'] : ['E', 'SE', 'S', 'SW', 'W'],
    );
    expect(shape.lines[0]?.shaded).not.toBe('');
    expect(JSON.stringify(shape)).not.toContain('NaN');
  });

  it('stands woods where they are', () => {
    const horizon = new Array(360).fill(0);
    for (let a = 225; a <= 260; a++) horizon[a] = 30;
    const { woods } = stripShape({ horizon, southern: false, paths: [path('2026-06-21', 70, false)] });
    const corners = [...woods.matchAll(/L([\d.]+) ([\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);
    const standing = corners.filter(([, y]) => y < stripSize.height - 5);
    const toX = (azimuth: number) => ((azimuth - 180 + 108) / 216) * stripSize.width;
    expect(standing[0]?.[0]).toBeCloseTo(toX(225), 0);
    expect(standing.at(-1)?.[0]).toBeCloseTo(toX(260), 0);
  });

  it('draws a polar season with no path', () => {
    expect(stripShape({ horizon: new Array(360).fill(0), southern: false, paths: [] }).hot).toBe('');
  });
});

describe('the rose', () => {
  it('draws a band over north the short way', () => {
    expect(bandPath(350, 20, 10)).toMatch(/A10 10 0 0 1/);
    expect(bandPath(20, 350, 10)).toMatch(/A10 10 0 1 1/);
    expect(bandPath(0, 360, 10)).toMatch(/A10 10 0 1 1 -0.01/);
  });
});

describe('words for bearings', () => {
  it.each([
    [0, 'N'],
    [95, 'E'],
    [359, 'N'],
    [-90, 'W'],
    [236, 'SW'],
  ])('%s° is %s', (at, word) => {
    expect(compass(at)).toBe(word);
  });

  it('never says 360°', () => {
    expect(degrees(359.7)).toBe('0°');
  });
});

describe('source marks', () => {
  it('give rows with the same sources the same number, and rows without sources none', () => {
    const row = (id: string, sources: string[]) => ({ id, sources }) as unknown as Row;
    const { of, groups } = sourceMarks([row('a', ['X', 'Y']), row('b', []), row('c', ['Z']), row('d', ['X', 'Y'])]);
    expect([...of]).toEqual([
      ['a', 1],
      ['c', 2],
      ['d', 1],
    ]);
    expect(groups).toEqual([['X', 'Y'], ['Z']]);
  });
});
