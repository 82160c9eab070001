/** Which reads a change makes old: one line for each call that changes something, so that a new one does not compile without. */
import { type CallName, callNames, calls } from '../../../shared-core/contract/contract.ts';

export type ReadName = {
  [Name in CallName]: (typeof calls)[Name]['changes'] extends false ? Name : never;
}[CallName];
export type ChangeName = Exclude<CallName, ReadName>;

export const readNames: readonly ReadName[] = callNames.filter(isRead);

function isRead(name: CallName): name is ReadName {
  return !calls[name].changes;
}

/** What lies on the shelf, what it is worth, and what is reckoned from it. */
const stash: readonly ReadName[] = [
  'workshopFacts',
  'listItems',
  'readItem',
  'readShelf',
  'readLastChange',
  'find',
  'flowInput',
  'readSeason',
  'readAccount',
  'readCutSheet',
  'listCuttings',
  'readCutting',
  'stashFile',
  'lookAtStashFile',
  'priceList',
  'checkPriceList',
];

/** What suppliers sell, and for how much. */
const offers: readonly ReadName[] = [
  'readItem',
  'readLastChange',
  'listSuppliers',
  'priceList',
  'checkPriceList',
  'find',
  'flowInput',
  'readSeason',
];

/** Plans, and what names them. */
const plans: readonly ReadName[] = [
  'workshopFacts',
  'listPlans',
  'readPlan',
  'find',
  'flowInput',
  'readSeason',
  'readItem',
  'readAccount',
  'readCutSheet',
  'listCuttings',
];

/** Units, currency and rules of pricing go with what is worked out. */
const ofSettings: readonly ReadName[] = [
  'workshopFacts',
  'flowInput',
  'readSeason',
  'readAccount',
  'readCutSheet',
  'stashFile',
  'lookAtStashFile',
  'priceList',
  'checkPriceList',
];

export const touched: { readonly [Name in ChangeName]: readonly ReadName[] } = {
  saveSettings: ofSettings,
  markUpgradeNotesSeen: ['workshopFacts'],
  shareWorkshop: ['readSharing'],
  openDemo: readNames,
  backUp: ['listBackups'],
  restoreBackup: readNames,

  saveItem: stash,
  receiveLot: stash,
  writeOff: stash,
  correctCount: stash,
  takeStock: stash,
  archiveItem: stash,
  bringInStashFile: stash,
  undoLastChange: [...stash, 'listSuppliers'],
  savePhoto: ['readPhoto'],
  removePhoto: ['readPhoto'],

  saveOffer: offers,
  removeOffer: offers,
  saveSupplier: offers,
  bringInPriceList: offers,

  setTick: ['readTicks'],
  setTicks: ['readTicks'],
  receiveLots: [...stash, 'readTicks'],

  savePlan: plans,
  undoPlan: plans,
  saveSeason: ['readSeason'],
  setAside: stash,
  recordCutting: stash,
  undoCutting: stash,
  // What keeps a lay puts it into the cache itself (workers/kept-lays.ts); the others are as they were.
  keepLay: [],
};
