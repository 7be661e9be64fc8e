/** Which way round a closed walk goes. */
import type { Point } from '../geometry/point.ts';

/** The stops in the order given or the other way round, so that the walk from `start` through them and back turns as asked. */
export function faceDirection<T>(
  stops: readonly T[],
  at: (stop: T) => Point,
  start: Point,
  direction: 'clockwise' | 'counterclockwise',
): T[] {
  const ring = [start, ...stops.map(at)];
  const twiceArea = ring.reduce((sum, p, k) => {
    const q = ring[(k + 1) % ring.length];
    return sum + p.x * q.y - q.x * p.y;
  }, 0);
  const isClockwise = twiceArea < 0;
  return isClockwise === (direction === 'clockwise') ? [...stops] : [...stops].reverse();
}
