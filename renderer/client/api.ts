/** The contract over either door: the preload's functions in Electron, or calls to the loopback host. */
import { say, spokenLanguage } from '../../shared-core/wording/say.ts';
import {
  type BoltAndBaffleApi,
  type CallInput,
  type CallName,
  type CallOutput,
  callNames,
  type Workshop,
} from '../../shared-core/contract/contract.ts';
import { type Result, err } from '../../shared-core/measure/problem.ts';

declare global {
  interface Window {
    readonly boltAndBaffle?: BoltAndBaffleApi;
  }
}

async function post(call: CallName, workshop: Workshop, input: unknown): Promise<Result<unknown>> {
  try {
    const response = await fetch('call', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ call, workshop, input, language: spokenLanguage() }),
    });
    return (await response.json()) as Result<unknown>;
  } catch {
    return err({
      where: say('api.the-workshop-file'),
      what: say('api.could-not-be-reached'),
      fix: say('api.the-program-behind-this-window-has'),
    });
  }
}

function loopbackApi(): BoltAndBaffleApi {
  return Object.fromEntries(
    callNames.map((name) => [name, (workshop: Workshop, input: unknown) => post(name, workshop, input)]),
  ) as unknown as BoltAndBaffleApi;
}

export const api: BoltAndBaffleApi = window.boltAndBaffle ?? loopbackApi();

/** One call of the contract by name. */
export function call<Name extends CallName>(
  name: Name,
  workshop: Workshop,
  input: CallInput<Name>,
): Promise<Result<CallOutput<Name>>> {
  return api[name](workshop, input, spokenLanguage());
}
