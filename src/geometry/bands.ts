/** Many closed outlines cut into level bands, so that "is this place inside outline 17" looks at a few edges only. */

export interface Bands {
  readonly x0: Float64Array;
  readonly y0: Float64Array;
  readonly x1: Float64Array;
  readonly y1: Float64Array;
  /** Bands per metre of each outline. */
  readonly scale: Float64Array;
  /** Bands of outline o are first[o] … first[o + 1] − 1; edges of band b are item[start[b]] … item[start[b + 1] − 1]. */
  readonly first: Int32Array;
  readonly start: Int32Array;
  readonly item: Int32Array;
  readonly ends: Float64Array;
}

/** The boxes of the outlines; an outline without edges gets an empty box. */
function boxes(ends: Float64Array, owner: Int32Array, edge: Int32Array, count: number): Float64Array[] {
  const [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity].map((v) => new Float64Array(count).fill(v)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  for (let k = 0; k < owner.length; k++) {
    const o = owner[k]!;
    const e = 4 * edge[k]!;
    x0[o] = Math.min(x0[o]!, ends[e]!, ends[e + 2]!);
    x1[o] = Math.max(x1[o]!, ends[e]!, ends[e + 2]!);
    y0[o] = Math.min(y0[o]!, ends[e + 1]!, ends[e + 3]!);
    y1[o] = Math.max(y1[o]!, ends[e + 1]!, ends[e + 3]!);
  }
  return [x0, y0, x1, y1];
}

/**
 * How many bands each outline gets and how dense they lie: one for every two edges, but fewer where most edges run from top to bottom
 * (a comb), so that the lists stay a few times as long as the edges.
 */
function layOut(
  ends: Float64Array,
  owner: Int32Array,
  edge: Int32Array,
  y0: Float64Array,
  y1: Float64Array,
): { first: Int32Array; scale: Float64Array } {
  const count = y0.length;
  const edges = new Int32Array(count);
  const climb = new Float64Array(count);
  for (let k = 0; k < owner.length; k++) {
    const o = owner[k]!;
    edges[o]!++;
    climb[o]! += Math.abs(ends[4 * edge[k]! + 3]! - ends[4 * edge[k]! + 1]!);
  }
  const first = new Int32Array(count + 1);
  const scale = new Float64Array(count);
  for (let o = 0; o < count; o++) {
    const tall = y1[o]! - y0[o]!;
    const most = tall > 0 ? Math.min(edges[o]! / 2, (4 * edges[o]! * tall) / climb[o]!) : 1;
    const bands = Math.max(1, Math.floor(most));
    scale[o] = tall > 0 ? bands / tall : 0;
    first[o + 1] = first[o]! + bands;
  }
  return { first, scale };
}

const bandOf = (y: number, y0: number, scale: number, bands: number): number => {
  const band = Math.floor((y - y0) * scale);
  return band < 0 ? 0 : band >= bands ? bands - 1 : band;
};

/**
 * `ends` holds ax, ay, bx, by of edge e at 4e; the k-th of the pairs (owner, edge) says that edge `edge[k]` belongs to outline
 * `owner[k]` of `count`. Each outline's edges must form closed rings; holes and separate pieces are welcome (even–odd rule).
 */
export function makeBands(ends: Float64Array, owner: Int32Array, edge: Int32Array, count: number): Bands {
  const [x0, y0, x1, y1] = boxes(ends, owner, edge, count) as [Float64Array, Float64Array, Float64Array, Float64Array];
  const { first, scale } = layOut(ends, owner, edge, y0, y1);
  const eachBand = (visit: (band: number, edge: number) => void): void => {
    for (let k = 0; k < owner.length; k++) {
      const o = owner[k]!;
      const e = edge[k]!;
      const ay = ends[4 * e + 1]!;
      const by = ends[4 * e + 3]!;
      if (ay === by) continue;
      const bands = first[o + 1]! - first[o]!;
      const low = bandOf(Math.min(ay, by), y0[o]!, scale[o]!, bands);
      const high = bandOf(Math.max(ay, by), y0[o]!, scale[o]!, bands);
      for (let band = low; band <= high; band++) visit(first[o]! + band, e);
    }
  };
  const start = new Int32Array(first[count]! + 1);
  eachBand((band) => start[band + 1]!++);
  for (let b = 0; b < first[count]!; b++) start[b + 1]! += start[b]!;
  const next = start.slice(0, first[count]!);
  const item = new Int32Array(start[first[count]!]!);
  eachBand((band, e) => {
    item[next[band]!++] = e;
  });
  return { x0, y0, x1, y1, scale, first, start, item, ends };
}

/**
 * Whether (x, y) lies inside outline o. `without` leaves one edge out of the count: for a place on that edge the answer is then the
 * one just west of it (or just north, when the edge is level).
 */
export function bandsContain(bands: Bands, o: number, x: number, y: number, without = -1): boolean {
  if (!(x >= bands.x0[o]! && x <= bands.x1[o]! && y >= bands.y0[o]! && y <= bands.y1[o]!)) return false;
  const { ends, item, start } = bands;
  const band = bands.first[o]! + bandOf(y, bands.y0[o]!, bands.scale[o]!, bands.first[o + 1]! - bands.first[o]!);
  let inside = false;
  for (let k = start[band]!; k < start[band + 1]!; k++) {
    const e = item[k]!;
    const ay = ends[4 * e + 1]!;
    const by = ends[4 * e + 3]!;
    if (ay > y === by > y || e === without) continue;
    const ax = ends[4 * e]!;
    if (ax + ((y - ay) / (by - ay)) * (ends[4 * e + 2]! - ax) < x) inside = !inside;
  }
  return inside;
}
