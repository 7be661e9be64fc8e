/** The exact solver as the command line finds it. */
import loadHighs from 'highs';
import { solverLoader } from '../placement/solver.ts';

export const loadSolver = solverLoader(
  () => loadHighs(),
  () => performance.now() / 1000,
);
