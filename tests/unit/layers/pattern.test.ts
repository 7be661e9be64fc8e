import { describe, expect, it } from 'vitest';
import { subjects } from '../../../layers/all.ts';
import { placeMarks, wrapMarks } from '../../../layers/pattern.ts';
import type { Pattern } from '../../../layers/types.ts';

const patterns = subjects.flatMap((s) => (s.pattern ? [[s.id, s.pattern] as [string, Pattern]] : []));

describe.each(patterns)('the pattern of %s', (_, pattern) => {
  const marks = placeMarks(pattern);

  it('is the same every time', () => {
    expect(placeMarks(pattern)).toEqual(marks);
  });

  it('has its marks inside the tile, with drawings that exist', () => {
    const count = pattern.layout === 'grid' ? 1 : pattern.count * (pattern.layout === 'rows' ? (pattern.rows ?? 1) : 1);
    expect(marks).toHaveLength(count);
    for (const m of marks) {
      expect(m.x).toBeGreaterThanOrEqual(0);
      expect(m.x).toBeLessThan(pattern.tile + 1e-9);
      expect(m.y).toBeGreaterThanOrEqual(0);
      expect(m.y).toBeLessThan(pattern.tile + 1e-9);
      expect(pattern.marks[m.mark]).toBeDefined();
    }
  });

  it('repeats without a seam: what sticks out on one side sticks in on the other', () => {
    const wrapped = wrapMarks(pattern, marks);
    for (const m of wrapped) {
      const home = wrapped.find(
        (w) =>
          w.x >= 0 &&
          w.x < pattern.tile &&
          w.y >= 0 &&
          w.y < pattern.tile &&
          w.turn === m.turn &&
          near(w.x - m.x, pattern.tile) &&
          near(w.y - m.y, pattern.tile),
      );
      expect(home, `a copy at ${m.x}, ${m.y} without its mark`).toBeDefined();
    }
    for (const m of marks) {
      const reach = (pattern.marks[m.mark]?.reach ?? 0) * m.size;
      if (m.x + reach > pattern.tile)
        expect(wrapped.some((w) => Math.abs(w.x - (m.x - pattern.tile)) < 1e-9 && w.y === m.y)).toBe(true);
    }
  });
});

function near(difference: number, tile: number): boolean {
  return [-tile, 0, tile].some((d) => Math.abs(difference - d) < 1e-9);
}

describe('a scattered pattern', () => {
  it.each(patterns.filter(([, p]) => p.layout === 'scatter'))('of %s is in no lattice', (_, pattern) => {
    const marks = placeMarks(pattern);
    const gaps = marks.map((m) =>
      Math.min(...marks.filter((o) => o !== m).map((o) => Math.hypot(o.x - m.x, o.y - m.y))),
    );
    const mean = gaps.reduce((a, b) => a + b, 0) / gaps.length;
    const spread = Math.sqrt(gaps.reduce((a, g) => a + (g - mean) ** 2, 0) / gaps.length) / mean;
    // In a lattice all nearest gaps are equal (spread 0); thrown blindly they spread by 0.52 (Clark & Evans 1954).
    expect(spread).toBeGreaterThan(0.05);
    expect(Math.min(...gaps), 'and no two marks lie on each other').toBeGreaterThan(mean * 0.2);
  });
});

describe('crop rows', () => {
  it('stand at 17°, as the look asks', () => {
    const crop = subjects.find((s) => s.id === 'crop')?.pattern as Pattern;
    expect((Math.atan2(crop.climb ?? 0, crop.rows ?? 1) * 180) / Math.PI).toBeCloseTo(17, 0);
    expect(crop.tile / (crop.rows ?? 1)).toBe(9);
  });
});
