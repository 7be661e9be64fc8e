import { describe, expect, it } from 'vitest';
import { landSummary } from '../../../src/ground/summary.ts';
import { planeSite, rectangle, type Shape } from './plane-site.ts';

const boundary: Shape = { kind: 'boundary', rings: [rectangle(0, 0, 100, 50)] };
const meadow: Shape = { kind: 'meadow', rings: [rectangle(-20, 0, 60, 50)] };
const pond: Shape = { kind: 'water', rings: [rectangle(10, 10, 30, 30)] };

describe('the figures of a whole site', () => {
  it('are m² seen of each kind and the mapped share within the boundary', () => {
    const { areas, boundary: inside, mapped } = landSummary(planeSite([boundary, meadow, pond]));
    expect(areas.water).toBeCloseTo(400, 4);
    expect(areas.meadow).toBeCloseTo(4000 - 400, 4);
    expect(areas.woods).toBe(0);
    expect(inside).toBeCloseTo(5000, 4);
    expect(mapped).toBeCloseTo(0.6, 9);
  });
  it('count two boundaries that overlap once', () => {
    const summary = landSummary(
      planeSite([boundary, { kind: 'boundary', rings: [rectangle(50, 0, 200, 50)] }, meadow]),
    );
    expect(summary.boundary).toBeCloseTo(10000, 4);
    expect(summary.mapped).toBeCloseTo(0.3, 9);
  });
  it('are not known without a boundary, and whole when all is drawn', () => {
    expect(landSummary(planeSite([meadow]))).toMatchObject({ boundary: null, mapped: null });
    expect(landSummary(planeSite([])).mapped).toBeNull();
    expect(landSummary(planeSite([boundary, { ...meadow, rings: [rectangle(-1, -1, 101, 51)] }])).mapped).toBe(1);
  });
});
