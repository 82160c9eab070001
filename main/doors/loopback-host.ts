/**
 * The loopback door as a program of its own, run by the launcher and by the specs.
 *   node main/doors/loopback-host.ts [--data FILE] [--attached]
 * Prints the address to open on its first line, a new one for each line that it is sent, and "window open" and
 * "window closed" as pages come and go. With --attached it ends when its input does, so that it cannot outlive the
 * program that started it.
 */
import { existsSync, readFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { problemSentence } from '../../shared-core/measure/problem.ts';
import { chosenAddress } from '../database/chosen-address.ts';
import { askedDataFile } from '../database/file/data-file.ts';
import type { RunningProgram } from '../services/workshop/program.ts';
import { openServicesAt, type Services } from '../services/calls/services.ts';
import { askedWorkshop } from './asked-workshop.ts';
import { startLoopback } from './loopback.ts';
import { openOwnFolder } from './own-folder.ts';

/** Tells the launcher that no other door would do better. */
const dataFileRefused = 3;

const asked = askedDataFile(process.argv);
const files = askedWorkshop(asked, homedir());
const services = await open();
const loopback = await startLoopback({
  services,
  rendererDir: rendererDir(),
  onWindow: (state) => console.log(`window ${state}`),
  onFailure: (error) => services.noteFailure('the door', error),
});
process.on('uncaughtExceptionMonitor', (error) => services.noteFailure('the host', error));

let isEnding = false;
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, end);
if (process.argv.includes('--attached')) process.stdin.on('end', end).on('error', end);
const printAddress = () => console.log(loopback.newAddress());
createInterface({ input: process.stdin }).on('line', printAddress);
printAddress();

/** Built, this file stands in out/main beside it; as a source, in main/doors. */
function rendererDir(): string {
  const places = ['../renderer', '../../out/renderer'].map((path) =>
    fileURLToPath(new URL(path, import.meta.url)),
  );
  return places.find((place) => existsSync(join(place, 'index.html'))) ?? places[1]!;
}

async function open(): Promise<Services> {
  // A folder that the maker names is theirs to make; the usual one is ours.
  if (files.isUsual) openOwnFolder(files.folder);
  const { localFile, demoFile } = files;
  const chosen = chosenAddress(files.usualFolder, null);
  const dataFile = chosen.withPassword(files.dataFile, process.env);
  const program = programHere();
  const opened = await openServicesAt({ dataFile, localFile, demoFile, program, chosen, mayOpenLater: true });
  if (opened.ok) return opened.value;
  for (const problem of opened.problems) console.error(problemSentence(problem));
  process.exit(dataFileRefused);
}

/** package.json stands two folders above this file, as a source and as built. */
function programHere(): RunningProgram {
  const manifest = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
  return {
    version: JSON.parse(manifest).version,
    runsOn: [{ name: 'Node', version: process.versions.node }],
  };
}

async function end(): Promise<void> {
  if (isEnding) return;
  isEnding = true;
  await loopback.close();
  await services.close();
  process.exit(0);
}
