/** All criteria judged at a post, in display order. To add one: a file, a test, a line here and a row in docs/criteria.md. */
import { afternoonSun } from './afternoon-sun.ts';
import { brush } from './brush.ts';
import { buildingsAndFeeders } from './buildings-and-feeders.ts';
import type { Criterion } from './criterion.ts';
import { entrance } from './entrance.ts';
import { openness } from './openness.ts';
import { perch } from './perch.ts';
import { predatorPath } from './predator-path.ts';
import { water } from './water.ts';
import { woodsEdge } from './woods-edge.ts';

export const criteria: readonly Criterion[] = [
  openness,
  woodsEdge,
  brush,
  buildingsAndFeeders,
  afternoonSun,
  perch,
  predatorPath,
  entrance,
  water,
];
