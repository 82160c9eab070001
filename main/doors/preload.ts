/** The Electron window's only way out: one function for each call of the contract, and nothing else. */
import { contextBridge, ipcRenderer } from 'electron';
import {
  type BoltAndBaffleApi,
  type CallName,
  callNames,
  type Workshop,
} from '../../shared-core/contract/contract.ts';

function carry(call: CallName) {
  return (workshop: Workshop, input: unknown) => ipcRenderer.invoke(`bolt:${call}`, workshop, input);
}

const api = Object.fromEntries(callNames.map((call) => [call, carry(call)])) as Record<
  CallName,
  ReturnType<typeof carry>
>;

contextBridge.exposeInMainWorld('boltAndBaffle', api satisfies BoltAndBaffleApi);
