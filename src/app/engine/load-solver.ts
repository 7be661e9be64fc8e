/** Loads the exact solver in the worker: 1.2 MB of WebAssembly, fetched only when a choice is to be proven. */
import type { LoadSolver } from '../../geometry/linear-model.ts';
import { solverLoader } from '../../placement/solver.ts';

export const loadSolver: LoadSolver = solverLoader(async () => {
  const [{ default: load }, { default: url }] = await Promise.all([import('highs'), import('highs/runtime?url')]);
  return load({ locateFile: () => url });
});
