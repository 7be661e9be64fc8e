/** Loads the exact solver in the worker: 1.2 MB of WebAssembly, fetched only when a choice is to be proven. */
import type { LoadSolver } from '../../geometry/linear-model.ts';
import { solverLoader } from '../../placement/solver.ts';

/** A fetch that hangs ends after this, ms (ours): the plan then stands unproven and says so. */
const patience = 30_000;

export const loadSolver: LoadSolver = solverLoader(
  () => Promise.race([load(), tooLong()]),
  () => performance.now() / 1000,
);

async function load() {
  const [{ default: highs }, { default: url }] = await Promise.all([import('highs'), import('highs/runtime?url')]);
  return highs({ locateFile: () => url });
}

function tooLong(): Promise<never> {
  return new Promise((_, reject) => setTimeout(() => reject(new Error('the solver did not come')), patience));
}
