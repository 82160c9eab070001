import { describe, expect, test } from 'vitest';
import { callNames } from '../../../../shared-core/contract/contract.ts';
import {
  type ChangeName,
  type ReadName,
  readNames,
  touched,
} from '../../../../renderer/client/queries/touched.ts';

/** What no change of a workshop makes old, and why. */
const untouched: Readonly<Partial<Record<ReadName, string>>> = {
  programFacts: 'the program is what it is until it is started anew',
  askForNews: 'asked for at a press of the button alone',
  noteWindowFailure: 'says something, and asks nothing',
  readFailureLog: 'grows by failures, not by changes',
};

/** Touched by these alone: whatever puts another file in the place of the one that was read. */
const wholeFile: readonly ChangeName[] = ['openDemo', 'restoreBackup'];

describe('which change makes which read old', () => {
  test('every read is made old by some change, or has a reason why none does', () => {
    const small = Object.entries(touched).filter(([name]) => !wholeFile.includes(name as ChangeName));
    const old = new Set(small.flatMap(([, reads]) => reads));
    const never = readNames.filter((name) => !old.has(name));
    // A kept lay is put into the cache by what found it.
    expect(never.sort()).toEqual([...Object.keys(untouched), 'readLay'].sort());
  });

  test('every call either reads or has its line', () => {
    const lines = Object.keys(touched);
    expect([...readNames, ...lines].sort()).toEqual([...callNames].sort());
  });

  test('a file that is put in the place of another makes everything old', () => {
    for (const name of wholeFile) expect(touched[name]).toEqual(readNames);
  });

  const shelf: readonly ReadName[] = ['listItems', 'readItem', 'readShelf', 'readAccount', 'flowInput'];

  test.each<[ChangeName, readonly ReadName[]]>([
    ['receiveLot', [...shelf, 'workshopFacts', 'readLastChange', 'readSeason']],
    ['receiveLots', [...shelf, 'readTicks']],
    ['takeStock', [...shelf, 'readLastChange']],
    ['recordCutting', [...shelf, 'listCuttings', 'readCutSheet']],
    ['undoCutting', [...shelf, 'listCuttings', 'readCutSheet']],
    ['setAside', ['readItem', 'flowInput', 'readSeason']],
    ['undoLastChange', [...shelf, 'readLastChange', 'listSuppliers', 'priceList']],
    ['saveOffer', ['readItem', 'listSuppliers', 'priceList', 'flowInput', 'find', 'readLastChange']],
    [
      'savePlan',
      ['listPlans', 'readPlan', 'flowInput', 'readSeason', 'workshopFacts', 'readAccount', 'find'],
    ],
    ['saveSettings', ['workshopFacts', 'flowInput', 'readSeason']],
    ['savePhoto', ['readPhoto']],
    ['backUp', ['listBackups']],
  ])('%s makes old what shows it', (name, reads) => {
    expect(touched[name]).toEqual(expect.arrayContaining([...reads]));
  });

  test.each<[ChangeName, readonly ReadName[]]>([
    ['setTick', ['flowInput', 'listItems', 'readAccount']],
    ['savePhoto', ['readItem', 'listItems']],
    ['receiveLot', ['readPhoto', 'listPlans', 'listBackups', 'readTicks']],
    ['backUp', ['workshopFacts']],
    ['keepLay', readNames],
  ])('%s leaves alone what does not show it', (name, reads) => {
    expect(touched[name].filter((read) => reads.includes(read))).toEqual([]);
  });
});
