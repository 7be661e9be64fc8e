/** The conflicts among some units of a field as bit rows: whether two conflict, and what two have in common, in one step. */
import type { Field } from './field.ts';
import { conflict } from './field.ts';

export interface ConflictGraph {
  /** Unit of each node, rising. */
  readonly units: Int32Array;
  /** Node of each unit of the field; −1 for units that are not in the graph. */
  readonly nodeOf: Int32Array;
  readonly size: number;
  /** 32-bit words in a row. */
  readonly words: number;
  /** Row of node k: `bits[k * words]` up to `bits[(k + 1) * words]`. */
  readonly bits: Int32Array;
  /** Conflicts, each counted once. */
  readonly edges: number;
}

/** Conflicts among `units` (rising). Rows take size²/8 bytes: 2 MB for 4,000 units. */
export function conflictGraph(field: Field, units: Int32Array): ConflictGraph {
  const size = units.length;
  const words = (size + 31) >> 5;
  const bits = new Int32Array(size * words);
  const { grid, reach } = field;
  const span = Math.ceil(reach / grid.cell);
  const node = new Int32Array(field.count).fill(-1);
  units.forEach((u, k) => {
    node[u] = k;
  });
  let edges = 0;
  for (let k = 0; k < size; k++) {
    const u = units[k];
    const row = Math.floor(grid.home[u] / grid.columns);
    const column = grid.home[u] % grid.columns;
    for (let r = Math.max(0, row - span); r <= Math.min(grid.rows - 1, row + span); r++) {
      const to = grid.starts[r * grid.columns + Math.min(grid.columns - 1, column + span) + 1];
      for (let m = grid.starts[r * grid.columns + Math.max(0, column - span)]; m < to; m++) {
        const other = node[grid.members[m]];
        if (other <= k || !conflict(field, u, grid.members[m])) continue;
        bits[k * words + (other >> 5)] |= 1 << (other & 31);
        bits[other * words + (k >> 5)] |= 1 << (k & 31);
        edges++;
      }
    }
  }
  return { units, nodeOf: node, size, words, bits, edges };
}

/** Whether nodes a and b conflict. */
export function adjacent(graph: ConflictGraph, a: number, b: number): boolean {
  return (graph.bits[a * graph.words + (b >> 5)] & (1 << (b & 31))) !== 0;
}

/** Nodes whose bit is set, rising. */
export function nodesOf(bits: Int32Array): number[] {
  const found: number[] = [];
  for (let w = 0; w < bits.length; w++) {
    for (let rest = bits[w]; rest !== 0; rest &= rest - 1) found.push((w << 5) + 31 - Math.clz32(rest & -rest));
  }
  return found;
}
