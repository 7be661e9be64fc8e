/** The rows of the exact model: at most one unit of each clique, the stronger rows found on the way, at most so many of each bird. */
import type { LinearModel, LinearRows } from '../geometry/linear-model.ts';
import { onesRows, stackRows } from '../geometry/linear-model.ts';
import type { Clique } from './cliques.ts';
import type { Field } from './field.ts';
import type { WeightedRow } from './local-cuts.ts';

export interface PackingModel {
  readonly model: LinearModel;
  /** Column of each unit; −1 where it has none. */
  readonly column: Int32Array;
}

/** One column for each unit of `alive`; `caps`: most units of each bird. */
export function packingModel(
  field: Field,
  alive: Int32Array,
  caps: readonly number[],
  cliques: readonly Clique[],
  stronger: readonly WeightedRow[],
): PackingModel {
  const column = new Int32Array(field.count).fill(-1);
  alive.forEach((u, k) => {
    column[u] = k;
  });
  const lists = cliques.map((clique) => clique.map((u) => column[u]).filter((k) => k >= 0));
  const rows = [
    onesRows(
      lists.filter((list) => list.length > 1),
      -Infinity,
      1,
    ),
    weightedRows(stronger, column),
  ];
  caps.forEach((cap, bird) => {
    const list = [...alive.keys()].filter((k) => field.bird[alive[k]] === bird);
    if (list.length > cap) rows.push(onesRows([list], -Infinity, cap));
  });
  return {
    column,
    model: {
      maximize: true,
      cost: Float64Array.from(alive, (u) => field.weight[u]),
      columnLower: new Float64Array(alive.length),
      columnUpper: new Float64Array(alive.length).fill(1),
      rows: stackRows(...rows),
    },
  };
}

/** The rows over the columns that are left; those that nothing left can break are dropped. */
export function weightedRows(rows: readonly WeightedRow[], column: Int32Array): LinearRows {
  const kept = rows
    .map(({ units, values, limit }) => {
      const here = [...units.keys()].filter((i) => column[units[i]] >= 0);
      return { columns: here.map((i) => column[units[i]]), values: here.map((i) => values[i]), limit };
    })
    .filter((row) => row.values.reduce((sum, v) => sum + v, 0) > row.limit);
  const starts = new Int32Array(kept.length + 1);
  kept.forEach((row, r) => {
    starts[r + 1] = starts[r] + row.columns.length;
  });
  return {
    starts,
    columns: Int32Array.from(kept.flatMap((row) => row.columns)),
    values: Float64Array.from(kept.flatMap((row) => row.values)),
    lower: new Float64Array(kept.length).fill(-Infinity),
    upper: Float64Array.from(kept, (row) => row.limit),
  };
}
