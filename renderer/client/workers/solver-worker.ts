/** Solves integer programmes beside the window. The solver comes from the app's own files, at the first programme. */
import highsLoader from 'highs';
import solverUrl from 'highs/runtime?url';
import {
  lpText,
  type Programme,
  solverNumbers,
  solverOptions,
} from '../../../shared-core/to-buy/programme.ts';

export interface SolverAsked {
  readonly id: number;
  readonly programme: Programme;
}

export type SolverAnswered =
  | { readonly ok: true; readonly id: number; readonly numbers: readonly number[] | null }
  | { readonly ok: false; readonly id: number; readonly sentence: string };

let loading: ReturnType<typeof highsLoader> | undefined;

self.onmessage = async (event: MessageEvent<SolverAsked>) => {
  const { id, programme } = event.data;
  try {
    loading ??= highsLoader({ locateFile: () => new URL(solverUrl, self.location.href).href });
    const solver = await loading;
    const numbers = solverNumbers(programme, solver.solve(lpText(programme), solverOptions));
    self.postMessage({ ok: true, id, numbers } satisfies SolverAnswered);
  } catch (error) {
    const sentence = error instanceof Error ? error.message : String(error);
    self.postMessage({ ok: false, id, sentence } satisfies SolverAnswered);
  }
};
