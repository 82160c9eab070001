/** Solves the basket's integer programme in this process. The solver is loaded at the first one. */
import highsLoader from 'highs';
import { lpText, type Solve, solverNumbers, solverOptions } from '../../../shared-core/to-buy/programme.ts';

let loading: ReturnType<typeof highsLoader> | undefined;

export const solveHere: Solve = async (programme) => {
  loading ??= highsLoader();
  const solver = await loading;
  return solverNumbers(programme, solver.solve(lpText(programme), solverOptions));
};
