/** Walking against closed forms: taut lines round obstacles, and the speeds of Naismith (1892) and Tobler (1993). */
import { describe, expect, it } from 'vitest';
import { waysBetween } from '../../src/route/surface.ts';
import { naismithMinutes, toblerSpeed } from '../../src/route/walk-time.ts';
import { box, type Drawing, type Metres, metreGround } from '../unit/route/metre-ground.ts';

/** Millimetres: the two frames differ by 1e-8, the drawn corners are exact. */
const tolerance = 0.005;

function shortest(drawings: Drawing[], from: Metres, to: Metres): number | null {
  const { ground, at } = metreGround(drawings);
  return waysBetween(ground, [at(...from), at(...to)]).way(0, 1)?.metres ?? null;
}

describe('shortest ways round obstacles have the lengths geometry gives', () => {
  it('straight over open ground', () => {
    expect(shortest([{ kind: 'meadow', area: box(-200, -200, 200, 200) }], [-100, 0], [100, 30])).toBeCloseTo(
      Math.hypot(200, 30),
      2,
    );
  });

  it('round a square building: two corners, 100 + 2·√(50² + 50²)', () => {
    const length = shortest([{ kind: 'building', area: box(-50, -50, 50, 50) }], [-100, 0], [100, 0])!;
    expect(Math.abs(length - (100 + 2 * Math.hypot(50, 50)))).toBeLessThan(tolerance);
  });

  it('round one corner of a square, 2·√(150² + 50²)', () => {
    const length = shortest([{ kind: 'off-limits', area: box(-50, -50, 50, 50) }], [-100, -100], [100, 100])!;
    expect(Math.abs(length - 2 * Math.hypot(150, 50))).toBeLessThan(tolerance);
  });

  it('round a pond with 720 corners: two tangents and the arc between, 2·√(d² − r²) + r·(π − 2·acos(r/d))', () => {
    const [d, r, corners] = [100, 50, 720];
    const pond = Array.from({ length: corners }, (_, k): Metres => {
      const turn = (2 * Math.PI * k) / corners;
      return [r * Math.cos(turn), r * Math.sin(turn)];
    });
    const circle = 2 * Math.sqrt(d * d - r * r) + r * (Math.PI - 2 * Math.acos(r / d));
    const length = shortest([{ kind: 'water', area: pond }], [-d, 0], [d, 0])!;
    // The polygon lies inside the circle: shorter by at most the arc's own r·θ³/24 a corner, 1e-3 m here.
    expect(length).toBeLessThan(circle + tolerance);
    expect(length).toBeGreaterThan(circle - 0.005);
  });

  it('in an S between two buildings', () => {
    const drawings: Drawing[] = [
      { kind: 'building', area: box(-60, -40, -20, 100) },
      { kind: 'building', area: box(20, -100, 60, 40) },
    ];
    const want = Math.hypot(40, 40) + 40 + Math.hypot(40, 80) + 40 + Math.hypot(40, 40);
    expect(Math.abs(shortest(drawings, [-100, 0], [100, 0])! - want)).toBeLessThan(tolerance);
  });

  it('inside an L-shaped boundary: over its inner corner', () => {
    const boundary: Metres[] = [
      [0, 0],
      [200, 0],
      [200, 100],
      [100, 100],
      [100, 200],
      [0, 200],
    ];
    const length = shortest([{ kind: 'boundary', area: boundary }], [180, 50], [50, 180])!;
    expect(Math.abs(length - 2 * Math.hypot(80, 50))).toBeLessThan(tolerance);
  });

  it('over a bridge: a path across water is the only way', () => {
    const river: Drawing = { kind: 'water', area: box(-10, -500, 10, 500) };
    const edge: Drawing = { kind: 'boundary', area: box(-200, -400, 200, 400) };
    expect(shortest([river, edge], [-100, 0], [100, 0])).toBeNull();
    const bridge: Drawing = {
      kind: 'path',
      line: [
        [-12, 40],
        [12, 40],
      ],
    };
    const length = shortest([river, edge, bridge], [-100, 0], [100, 0])!;
    expect(Math.abs(length - (24 + 2 * Math.hypot(88, 40)))).toBeLessThan(tolerance);
  });
});

describe('walking speeds', () => {
  // SOURCE: Tobler (1993), NCGIA Technical Report 93-1: W = 6·exp(−3.5·|S + 0.05|) km/h; off-path factor 0.6. Values evaluated to six figures.
  it.each([
    [-1, 0.215835],
    [-0.5, 1.242045],
    [-0.3, 2.501172],
    [-0.05, 6],
    [0, 5.036742],
    [0.05, 4.228129],
    [0.1, 3.549332],
    [0.3, 1.762546],
    [1, 0.152096],
  ])('Tobler at slope %s is %s km/h', (slope, speed) => {
    expect(toblerSpeed(slope)).toBeCloseTo(speed, 5);
    expect(toblerSpeed(slope, true)).toBeCloseTo(speed * 0.6, 5);
  });

  // SOURCE: W. W. Naismith, Scottish Mountaineering Club Journal 2 (1892): 5 km/h and an hour for every 600 m of climb.
  it('Naismith: 20 km with 1,000 m of climb take 5 h 40', () => {
    expect(naismithMinutes(20_000, 1000)).toBeCloseTo(340, 9);
  });

  // SOURCE: handbook §8, LWC: twelve boxes about an hour; 11 legs of 100 yd are 12 minutes at 5 km/h.
  it('twelve boxes 100 yards apart: 12 minutes of walking', () => {
    expect(naismithMinutes(11 * 91.44, 0)).toBeCloseTo(12.07, 2);
  });
});
