/** Edges of outlines cut where they meet, so that a border two areas share is the same piece for both. */
import { type Edges, forEachEdgePair } from '../geometry/edge-pairs.ts';
import { VertexTable } from '../geometry/vertex-table.ts';
import type { DrawnArea } from './drawn.ts';

/** Places closer than this are one place, metres. Well under what anyone draws or a phone measures. */
export const snap = 1e-4;

/** Edge e runs from vertex from[e] to vertex to[e] and belongs to part part[e]. */
export interface OutlineEdges {
  readonly vertices: VertexTable;
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly part: Int32Array;
  readonly parts: number;
}

/** Every ring's edges; the parts of all areas are counted through in order. */
export function outlineEdges(areas: readonly DrawnArea[]): OutlineEdges {
  let room = 0;
  for (const { parts } of areas) for (const part of parts) for (const ring of part) room += ring.length / 2;
  const vertices = new VertexTable(snap, room);
  const [from, to, part] = [new Int32Array(room), new Int32Array(room), new Int32Array(room)];
  let [used, parts] = [0, 0];
  for (const area of areas) {
    for (const rings of area.parts) {
      for (const ring of rings) {
        let last = vertices.add(ring[ring.length - 2]!, ring[ring.length - 1]!);
        for (let i = 0; i < ring.length; i += 2) {
          const vertex = vertices.add(ring[i]!, ring[i + 1]!);
          if (vertex === last) continue;
          from[used] = last;
          to[used] = vertex;
          part[used++] = parts;
          last = vertex;
        }
      }
      parts++;
    }
  }
  return { vertices, from: from.subarray(0, used), to: to.subarray(0, used), part: part.subarray(0, used), parts };
}

/** Share along edge e of the place nearest to (x, y) when that place is within the snap and not beyond its ends; else −1. */
function shareOn(xy: Edges, e: number, x: number, y: number): number {
  const ax = xy[4 * e]!;
  const ay = xy[4 * e + 1]!;
  const ex = xy[4 * e + 2]! - ax;
  const ey = xy[4 * e + 3]! - ay;
  const square = ex * ex + ey * ey;
  const off = ex * (y - ay) - ey * (x - ax);
  if (off * off > snap * snap * square) return -1;
  const share = (ex * (x - ax) + ey * (y - ay)) / square;
  return share > 0 && share < 1 ? share : -1;
}

/** Which edges are cut where: `edge`, `share` and `vertex` of each cut, in no order. */
interface Cuts {
  readonly edge: number[];
  readonly share: number[];
  readonly vertex: number[];
}

function findCuts(edges: OutlineEdges, xy: Edges): Cuts {
  const { vertices, from, to } = edges;
  const cuts: Cuts = { edge: [], share: [], vertex: [] };
  const cut = (edge: number, share: number, vertex: number): void => {
    cuts.edge.push(edge);
    cuts.share.push(share);
    cuts.vertex.push(vertex);
  };
  /** Cuts e at vertex v when v lies on it. */
  const touch = (e: number, v: number): boolean => {
    if (v === from[e] || v === to[e]) return true;
    const share = shareOn(xy, e, vertices.x[v]!, vertices.y[v]!);
    if (share < 0) return false;
    cut(e, share, v);
    return true;
  };
  const crossing = (i: number, j: number): void => {
    const ax = xy[4 * i]!;
    const ay = xy[4 * i + 1]!;
    const cx = xy[4 * j]!;
    const cy = xy[4 * j + 1]!;
    const ex = xy[4 * i + 2]! - ax;
    const ey = xy[4 * i + 3]! - ay;
    const fx = xy[4 * j + 2]! - cx;
    const fy = xy[4 * j + 3]! - cy;
    const turn = ex * fy - ey * fx;
    const s = ((cx - ax) * fy - (cy - ay) * fx) / turn;
    const t = ((cx - ax) * ey - (cy - ay) * ex) / turn;
    if (!(s > 0 && s < 1 && t > 0 && t < 1)) return;
    const vertex = vertices.add(ax + s * ex, ay + s * ey);
    if (vertex !== from[i] && vertex !== to[i]) cut(i, s, vertex);
    if (vertex !== from[j] && vertex !== to[j]) cut(j, t, vertex);
  };
  forEachEdgePair(xy, snap, (i, j) => {
    const onSecond = Number(touch(j, from[i]!)) + Number(touch(j, to[i]!));
    const onFirst = Number(touch(i, from[j]!)) + Number(touch(i, to[j]!));
    if (onFirst + onSecond === 0) crossing(i, j);
    return false;
  });
  return cuts;
}

/** The edges, each replaced by its pieces; every ring stays closed. */
export function splitEdges(edges: OutlineEdges): OutlineEdges {
  const { vertices, from, to, part, parts } = edges;
  const count = from.length;
  const xy = new Float64Array(4 * count);
  for (let e = 0; e < count; e++) {
    xy[4 * e] = vertices.x[from[e]!]!;
    xy[4 * e + 1] = vertices.y[from[e]!]!;
    xy[4 * e + 2] = vertices.x[to[e]!]!;
    xy[4 * e + 3] = vertices.y[to[e]!]!;
  }
  const cuts = findCuts(edges, xy);
  if (cuts.edge.length === 0) return edges;
  const order = Int32Array.from(cuts.edge.keys()).sort(
    (i, j) => cuts.edge[i]! - cuts.edge[j]! || cuts.share[i]! - cuts.share[j]!,
  );
  const room = count + order.length;
  const [cutFrom, cutTo, cutPart] = [new Int32Array(room), new Int32Array(room), new Int32Array(room)];
  let [used, next] = [0, 0];
  const add = (a: number, b: number, p: number): void => {
    if (a === b) return;
    cutFrom[used] = a;
    cutTo[used] = b;
    cutPart[used++] = p;
  };
  for (let e = 0; e < count; e++) {
    let last = from[e]!;
    for (; next < order.length && cuts.edge[order[next]!] === e; next++) {
      const vertex = cuts.vertex[order[next]!]!;
      add(last, vertex, part[e]!);
      last = vertex;
    }
    add(last, to[e]!, part[e]!);
  }
  const trim = (list: Int32Array): Int32Array => list.subarray(0, used);
  return { vertices, from: trim(cutFrom), to: trim(cutTo), part: trim(cutPart), parts };
}
