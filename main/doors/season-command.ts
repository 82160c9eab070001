/** The season without a window: every plan in its order, and one list for all. */
import type { SeasonInput } from '../../shared-core/contract/cost-calls.ts';
import { season, seasonBasket } from '../../shared-core/flow/season/season.ts';
import { seasonJson, seasonText } from '../../shared-core/flow/season/season-report.ts';
import type { RunLay } from '../../shared-core/lay/plan-lay.ts';
import { ok, type Result, err } from '../../shared-core/measure/problem.ts';
import { solveHere } from '../services/threads/solver.ts';

export async function seasonOutput(
  input: SeasonInput,
  isJson: boolean,
  runLay: RunLay,
): Promise<Result<string>> {
  if (input.entries.length === 0) {
    return err({
      where: 'The season',
      what: 'has no plans in it',
      fix: 'Put coats into it in the app first, under Season.',
    });
  }
  const watch = { signal: { aborted: false }, onDone: () => {} };
  const plans = await season(input, runLay, solveHere, watch);
  const bought = await seasonBasket(input, plans, runLay, solveHere);
  const said = { plans, bought, shelf: input.shelf };
  return ok(
    isJson ? JSON.stringify(seasonJson(said, input.settings), null, 1) : seasonText(said, input.settings),
  );
}
