import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/geometry/random.ts';
import type { Stop } from '../../../src/route/plan-round.ts';
import { planRound } from '../../../src/route/plan-round.ts';
import { box, type Metres, metreGround } from './metre-ground.ts';

const lawn = { kind: 'short-grass', area: box(-300, -300, 300, 300) } as const;

function stopsAt(places: readonly Metres[], at: (x: number, y: number) => { x: number; y: number }): Stop[] {
  return places.map(([x, y], k) => ({ id: `s${k}`, at: at(x, y), minutes: 4 }));
}

function randomPlaces(count: number, seed: number): Metres[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }, (): Metres => [500 * random() - 250, 500 * random() - 250]);
}

describe('planRound', () => {
  const { ground, at } = metreGround([lawn]);

  it('visits every stop once and comes back', () => {
    const stops = stopsAt(randomPlaces(25, 1), at);
    const { rounds, unreachable, notes } = planRound({ ground, start: at(0, -280), stops, walkers: 1, seed: 1 });
    expect(unreachable).toEqual([]);
    expect(notes).toEqual([]);
    expect([...rounds[0].stops].sort()).toEqual(stops.map((s) => s.id).sort());
    expect(rounds[0].legs).toHaveLength(26);
    expect(rounds[0].legs[0].from).toBe('start');
    expect(rounds[0].legs[25].to).toBe('end');
    expect(rounds[0].minutes).toBeCloseTo(100 + rounds[0].metres / 60, 6);
    expect(rounds[0].gap).toBeGreaterThanOrEqual(0);
    expect(rounds[0].gap).toBeLessThan(0.03);
  });

  it('gives the same round for the same seed', () => {
    const stops = stopsAt(randomPlaces(30, 2), at);
    const plan = () => planRound({ ground, start: at(0, 0), stops, walkers: 3, seed: 9 });
    expect(plan()).toEqual(plan());
  });

  it('shares the stops among walkers within a few minutes of each other', () => {
    const stops = stopsAt(randomPlaces(36, 3), at);
    const { rounds } = planRound({ ground, start: at(0, 0), stops, walkers: 3, seed: 1 });
    expect(rounds.map((r) => r.walker)).toEqual([1, 2, 3]);
    expect(rounds.flatMap((r) => r.stops)).toHaveLength(36);
    const minutes = rounds.map((r) => r.minutes);
    expect(Math.max(...minutes) - Math.min(...minutes)).toBeLessThan(8);
  });

  it('needs no more walkers than stops, and no stops at all', () => {
    const two = stopsAt(randomPlaces(2, 4), at);
    expect(planRound({ ground, start: at(0, 0), stops: two, walkers: 5, seed: 1 }).rounds).toHaveLength(2);
    expect(planRound({ ground, start: at(0, 0), stops: [], walkers: 1, seed: 1 }).rounds).toEqual([]);
  });

  it('without a trailhead walks from a first box to a last and says so', () => {
    const stops = stopsAt(
      [
        [100, 0],
        [0, 0],
        [200, 0],
      ],
      at,
    );
    const { rounds, notes } = planRound({ ground, start: null, stops, walkers: 1, seed: 1 });
    expect(rounds[0].metres).toBeCloseTo(200, 3);
    expect(rounds[0].legs).toHaveLength(2);
    expect(rounds[0].start).toBeNull();
    expect(notes[0]).toContain('No trailhead');
  });

  it('goes round the way it is asked', () => {
    const corners: Metres[] = [
      [-100, 100],
      [100, 100],
      [100, -100],
    ];
    const stops = stopsAt(corners, at);
    const order = (direction: 'clockwise' | 'counterclockwise') =>
      planRound({ ground, start: at(-100, -100), stops, walkers: 1, seed: 1, direction }).rounds[0].stops;
    expect(order('clockwise')).toEqual(['s0', 's1', 's2']);
    expect(order('counterclockwise')).toEqual(['s2', 's1', 's0']);
  });

  it('keeps an order set by hand, and tells what it costs', () => {
    const stops = stopsAt(randomPlaces(15, 6), at);
    const byHand = ['s3', 's0', 's9', 's1'];
    const { rounds } = planRound({ ground, start: at(0, 0), stops, walkers: 1, seed: 1, byHand });
    expect(rounds[0].stops.filter((id) => byHand.includes(id))).toEqual(byHand);
    expect(rounds[0].stops).toHaveLength(15);
    const free = planRound({ ground, start: at(0, 0), stops, walkers: 1, seed: 1 }).rounds[0];
    expect(rounds[0].metres).toBeGreaterThanOrEqual(free.metres - 1e-6);
    expect(rounds[0].gap!).toBeGreaterThanOrEqual(free.gap!);
  });

  it('names a stop on an island and walks the rest', () => {
    const pond: Metres[] = box(100, -50, 200, 50);
    const withPond = metreGround([lawn, { kind: 'water', area: pond }]);
    const stops = stopsAt(
      [
        [150, 0],
        [-50, 0],
        [250, 0],
      ],
      withPond.at,
    );
    const plan = planRound({ ground: withPond.ground, start: withPond.at(0, -200), stops, walkers: 1, seed: 1 });
    expect(plan.unreachable).toEqual(['s0']);
    expect(plan.rounds[0].stops).toHaveLength(2);
    const noStart = planRound({ ground: withPond.ground, start: null, stops, walkers: 1, seed: 1 });
    expect(noStart.unreachable).toEqual(['s0']);
  });

  it('moves a trailhead out of a pond and says how far', () => {
    const withPond = metreGround([lawn, { kind: 'water', area: box(-30, -30, 30, 30) }]);
    const stops = stopsAt([[100, 0]], withPond.at);
    const plan = planRound({ ground: withPond.ground, start: withPond.at(20, 0), stops, walkers: 1, seed: 1 });
    expect(plan.rounds[0].stops).toEqual(['s0']);
    expect(plan.notes[0]).toMatch(/nearest free ground, 1\d m away/);
    expect(plan.rounds[0].legs[0].metres).toBeCloseTo(70, 0);
  });

  it('walks straight lines where nothing is drawn', () => {
    const blank = metreGround([
      { kind: 'post', point: [0, 0] },
      { kind: 'post', point: [60, 80] },
    ]);
    const stops = stopsAt([[60, 80]], blank.at);
    const plan = planRound({ ground: blank.ground, start: blank.at(0, 0), stops, walkers: 1, seed: 1 });
    expect(plan.rounds[0].metres).toBeCloseTo(200, 3);
  });
});
