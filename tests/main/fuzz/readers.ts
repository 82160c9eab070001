/** The program's own readers, on a small workshop of real files. */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { backupFolder } from '../../../main/database/backups/backup-folder.ts';
import { openServices, type Services } from '../../../main/services/calls/services.ts';
import { bringIn } from '../../../shared-core/exchange/pattern/bring-in.ts';
import { fileText } from '../../../shared-core/exchange/file-text.ts';
import { readPattern } from '../../../shared-core/exchange/pattern/formats.ts';
import { defaultChoices, defaultLimits } from '../../../shared-core/exchange/pattern/pattern.ts';
import { stashFileText } from '../../../shared-core/exchange/stash-csv/stash-file-bytes.ts';
import { type QuantityKind, quantityFacts } from '../../../shared-core/measure/quantity.ts';
import { readQuantity } from '../../../shared-core/measure/read.ts';
import { newPlan } from '../../../shared-core/plan/model/new-plan.ts';
import { clothLot, down, fillLot, taffeta } from '../asking-inputs.ts';
import { dump } from '../dump.ts';
import type { FuzzFile, Readers } from './fuzz-file.ts';

const backupName = 'brought.sqlite';
/** After so many files that were taken, the workshop begins anew, so that it stays small. */
const maxTaken = 25;

export async function openReaders(folder: string): Promise<Readers> {
  const failures: unknown[] = [];
  let open = await smallWorkshop(folder, failures);
  let takenCount = 0;

  async function take(file: FuzzFile): Promise<boolean> {
    const { bytes } = file;
    switch (file.kind) {
      case 'DXF':
      case 'SVG':
      case 'typed texts':
        return look(file);
      case 'price list':
        return open.ask('bringInPriceList', { text: fileText(bytes) });
      case 'stash file': {
        const text = stashFileText(bytes);
        return text.ok && open.ask('bringInStashFile', { text: text.value });
      }
      case 'photo':
        return open.ask('savePhoto', {
          itemId: open.itemId,
          photoBase64: Buffer.from(bytes).toString('base64'),
        });
      case 'backup':
        putBackup(open.dataFile, bytes);
        return open.ask('restoreBackup', { name: backupName });
      default:
        return file.kind satisfies never;
    }
  }

  async function look(file: FuzzFile): Promise<boolean> {
    const { bytes } = file;
    switch (file.kind) {
      case 'DXF':
      case 'SVG':
        return lookAtPattern(bytes, `a.${file.kind.toLowerCase()}`);
      case 'price list':
        return open.ask('checkPriceList', { text: fileText(bytes) });
      case 'stash file': {
        const text = stashFileText(bytes);
        return text.ok && open.ask('lookAtStashFile', { text: text.value });
      }
      case 'photo':
        return open.ask('readPhoto', { itemId: open.itemId });
      case 'backup':
        putBackup(open.dataFile, bytes);
        return open.ask('listBackups', {});
      case 'typed texts':
        return readTyped(JSON.parse(Buffer.from(bytes).toString()));
      default:
        return file.kind satisfies never;
    }
  }

  return {
    look,
    async take(file) {
      const isTaken = await take(file);
      // A backup brings another workshop, in which the things of this one are not.
      if (isTaken && (file.kind === 'backup' || ++takenCount % maxTaken === 0)) {
        open.services.close();
        open = await smallWorkshop(folder, failures);
      }
      return isTaken;
    },
    contents: () => dump(open.dataFile),
    failures: () => failures.splice(0),
    close: () => open.services.close(),
  };
}

async function smallWorkshop(folder: string, failures: unknown[]) {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  const dataFile = join(folder, 'own.sqlite');
  const opened = openServices({
    dataFile,
    demoFile: join(folder, 'demo.sqlite'),
    log: (error) => failures.push(error),
  });
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  const services = opened.value;
  const get = async (call: string, input: unknown) => answered(await ask(services, call, input));
  const { itemId } = await get('saveItem', taffeta);
  await get('receiveLot', clothLot(itemId!));
  const fill = await get('saveItem', down);
  await get('receiveLot', fillLot(fill.itemId!, 640));
  return {
    services,
    dataFile,
    itemId,
    ask: async (call: string, input: unknown) => (await ask(services, call, input)).ok,
  };
}

function ask(services: Services, call: string, input: unknown) {
  return services.answer({ call, workshop: 'own', input });
}

function answered(outcome: Awaited<ReturnType<typeof ask>>): { readonly itemId?: string } {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value as { readonly itemId?: string };
}

function putBackup(dataFile: string, bytes: Uint8Array): void {
  mkdirSync(backupFolder(dataFile), { recursive: true });
  writeFileSync(join(backupFolder(dataFile), backupName), bytes);
}

/** Read, and what was found brought into a plan. */
function lookAtPattern(bytes: Uint8Array, name: string): boolean {
  const { found } = readPattern(bytes, name, defaultLimits, defaultChoices);
  if (!found) return false;
  const brought = found.pieces.map((piece, index) => ({
    found: piece,
    name: `${piece.name} ${index}`.slice(0, 120),
    replacesId: null,
    slotIds: [],
  }));
  const outcome = bringIn(newPlan('fuzz', 'Fuzz', ''), brought);
  return outcome.ok;
}

const kinds = Object.keys(quantityFacts) as QuantityKind[];

/** Each text as every kind of quantity: a number within its limits, or a sentence. */
function readTyped(texts: readonly string[]): boolean {
  for (const [index, text] of texts.entries()) {
    const kind = kinds[index % kinds.length]!;
    const { min, max } = quantityFacts[kind];
    const system = index % 2 === 0 ? 'metric' : 'imperial';
    const read = readQuantity(kind, text, { system, where: 'Here', currency: 'EUR' });
    const isSound = read.ok
      ? read.value >= min * (1 - 1e-9) && read.value <= max * (1 + 1e-9)
      : read.problems.every(({ what, fix }) => what !== '' && fix !== '');
    if (!isSound) throw new Error(`${kind} "${text}" was read as ${JSON.stringify(read)}`);
  }
  return true;
}
