/** Reads the files that it is sent with the readers of a module, in a folder of its own. */
import { parentPort, workerData } from 'node:worker_threads';
import type { FuzzFile, Judged, OpenReaders } from './fuzz-file.ts';
import { judged } from './judge.ts';

const { module, folder } = workerData as { readonly module: string; readonly folder: string };
const { openReaders } = (await import(module)) as { readonly openReaders: OpenReaders };
const readers = await openReaders(folder);

parentPort!.on('message', async (file: FuzzFile) => {
  const answer: Judged = await judged(readers, file);
  parentPort!.postMessage(answer);
});
parentPort!.postMessage('ready');
