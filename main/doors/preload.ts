/**
 * The Electron window's only way out: one function for each call of the contract. And its one way in: that another desk
 * has changed something, which says nothing of what.
 */
import { contextBridge, ipcRenderer } from 'electron';
import {
  type BoltAndBaffleApi,
  type CallName,
  callNames,
  type Workshop,
} from '../../shared-core/contract/contract.ts';

function carry(call: CallName) {
  return (workshop: Workshop, input: unknown, language?: string) =>
    ipcRenderer.invoke(`bolt:${call}`, workshop, input, language);
}

const api = Object.fromEntries(callNames.map((call) => [call, carry(call)])) as Record<
  CallName,
  ReturnType<typeof carry>
>;

contextBridge.exposeInMainWorld('boltAndBaffle', api satisfies BoltAndBaffleApi);
contextBridge.exposeInMainWorld('boltAndBaffleChanges', (listener: () => void) => {
  // The event itself stays outside: it holds the sender.
  ipcRenderer.on('bolt-change', () => listener());
});
