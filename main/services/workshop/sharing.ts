/** The calls about where the workshop is kept: a file of this machine, or a database that several desks share. */
import { say } from '../../../shared-core/wording/say.ts';
import type { CallInput } from '../../../shared-core/contract/contract.ts';
import type { Sharing } from '../../../shared-core/contract/program-calls.ts';
import { err, ok, type Problem, type Result } from '../../../shared-core/measure/problem.ts';
import type { ChosenAddress } from '../../database/chosen-address.ts';
import { openStore, type StoreOptions } from '../../database/open-store.ts';

const notHere: Problem = {
  get where() {
    return say('sharing.the-shared-workshop');
  },
  get what() {
    return say('sharing.cannot-be-chosen-here');
  },
  get fix() {
    return say('sharing.choose-it-in-the-window-of');
  },
};

/** chosen: null where the program cannot remember it. name: of the store that is open now. */
export function sharingNow(chosen: ChosenAddress | null, name: string): Sharing {
  return {
    now: name,
    chosenAddress: chosen?.address() ?? null,
    isSecretSealed: chosen?.isSealed ?? false,
  };
}

/** Tries the address before it is remembered; it counts from the next start. */
export async function shareWorkshop(
  chosen: ChosenAddress | null,
  { address }: CallInput<'shareWorkshop'>,
  options: StoreOptions,
): Promise<Result<null>> {
  if (chosen === null) return err(notHere);
  if (address !== null) {
    const dataFile = chosen.withPassword(address);
    const tried = await openStore({ ...options, dataFile, mayOpenLater: false });
    if (!tried.ok) return tried;
    await tried.value.close();
    chosen.choose(dataFile);
  } else chosen.choose(null);
  return ok(null);
}
