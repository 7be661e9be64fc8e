/** Posts by id and by place, so that the second box of a pair is looked for among the few posts near the first. */
import type { Point } from '../geometry/point.ts';
import type { ScoredPost } from './choose.ts';

export interface PostIndex {
  /** Index of a post by its id. */
  readonly byId: ReadonlyMap<string, number>;
  /** Indexes, rising, of all posts within the index's reach of a place, and of some beyond it. */
  near(at: Point): readonly number[];
}

/** Posts in square cells of `reach` metres. */
export function postIndex(posts: readonly ScoredPost[], reach: number): PostIndex {
  const cells = new Map<string, number[]>();
  const cell = (metres: number) => Math.floor(metres / reach);
  posts.forEach(({ candidate: { at } }, index) => {
    const key = `${cell(at.x)} ${cell(at.y)}`;
    const known = cells.get(key);
    if (known) known.push(index);
    else cells.set(key, [index]);
  });
  const around = [-1, 0, 1];
  return {
    byId: new Map(posts.map(({ candidate }, index) => [candidate.id, index])),
    near: ({ x, y }) =>
      around
        .flatMap((row) => around.flatMap((column) => cells.get(`${cell(x) + column} ${cell(y) + row}`) ?? []))
        .sort((a, b) => a - b),
  };
}
