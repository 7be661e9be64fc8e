/** Sets of places that a fractional round leaves too weakly: fewer than two legs lead out. */

/** A leg between places a and b with the share x of it that is walked. */
export interface SharedLeg {
  readonly a: number;
  readonly b: number;
  readonly x: number;
}

const slack = 1e-6;

/** Sets (each without place 0) with less than two legs out; whole pieces first, else by minimum cuts (Stoer & Wagner 1997). */
export function weakSets(size: number, legs: readonly SharedLeg[]): number[][] {
  const pieces = components(size, legs);
  if (pieces.length > 1) return pieces.filter((piece) => !piece.includes(0));
  return phaseCuts(size, legs);
}

function components(size: number, legs: readonly SharedLeg[]): number[][] {
  const root = Array.from({ length: size }, (_, k) => k);
  const find = (k: number): number => {
    while (root[k] !== k) k = root[k] = root[root[k]];
    return k;
  };
  for (const { a, b, x } of legs) if (x > slack) root[find(a)] = find(b);
  const pieces = new Map<number, number[]>();
  for (let k = 0; k < size; k++) {
    const piece = pieces.get(find(k));
    if (piece) piece.push(k);
    else pieces.set(find(k), [k]);
  }
  return [...pieces.values()];
}

/** Every cut of a phase lighter than two. */
function phaseCuts(size: number, legs: readonly SharedLeg[]): number[][] {
  const weight = new Float64Array(size * size);
  for (const { a, b, x } of legs) {
    weight[a * size + b] += x;
    weight[b * size + a] += x;
  }
  const merged = Array.from({ length: size }, (_, k) => [k]);
  let active = Array.from({ length: size }, (_, k) => k);
  const found: number[][] = [];
  while (active.length > 1) {
    const tie = new Float64Array(size);
    const left = new Set(active);
    let [before, last] = [-1, -1];
    let cut = 0;
    while (left.size > 0) {
      let next = -1;
      for (const k of left) if (next < 0 || tie[k] > tie[next]) next = k;
      left.delete(next);
      [before, last] = [last, next];
      cut = tie[next];
      for (const k of left) tie[k] += weight[next * size + k];
    }
    if (cut < 2 - 1e-4) found.push(withoutFirst(size, merged[last]));
    merged[before] = [...merged[before], ...merged[last]];
    for (const k of active) {
      weight[before * size + k] += weight[last * size + k];
      weight[k * size + before] = weight[before * size + k];
    }
    active = active.filter((k) => k !== last);
  }
  return found;
}

function withoutFirst(size: number, set: readonly number[]): number[] {
  if (!set.includes(0)) return [...set];
  const inside = new Set(set);
  return Array.from({ length: size }, (_, k) => k).filter((k) => !inside.has(k));
}
