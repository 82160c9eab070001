/** Every room, and every sheet, tab and list that opens in one, on the demo: how the specs of access come to each. */
import type { Locator, Page } from '@playwright/test';

/** The demo's coat. */
const coat = '#/coats/plan-fenwalk-40';

export interface Place {
  readonly name: string;
  readonly hash: string;
  /** What stands there once the place is whole. */
  readonly sign: (page: Page) => Locator;
  /** From the room of the hash into what opens in it. */
  readonly open?: (page: Page) => Promise<void>;
  /** The component of the sheet that opens. */
  readonly sheet?: string;
}

const heading = (name: string) => (page: Page) => page.getByRole('heading', { name, level: 1 });
const dialog = (name: string | RegExp) => (page: Page) => page.getByRole('dialog', { name });
const press =
  (...names: readonly (string | RegExp)[]) =>
  async (page: Page) => {
    for (const name of names) await page.getByRole('main').getByRole('button', { name }).first().click();
  };

function room(name: string, hash: string): Place {
  return { name, hash, sign: heading(name) };
}

/** A step of the coat's road, whole once its figures stand. */
function step(name: string, word: string, sign: (page: Page) => Locator): Place {
  return { name, hash: `${coat}/${word}`, sign };
}

function sheet(
  component: string,
  hash: string,
  title: string | RegExp,
  ...buttons: readonly (string | RegExp)[]
): Place {
  return { name: `${title}`, hash, sign: dialog(title), open: press(...buttons), sheet: component };
}

function tab(hash: string, name: string, sign: (page: Page) => Locator): Place {
  return { name, hash, sign, open: (page) => page.getByRole('tab', { name }).click() };
}

/** What a sheet shows once something is pressed in it. */
function within(place: Place, name: string, deeper: (dialog: Locator) => Promise<void>): Place {
  return {
    ...place,
    name: `${place.name}: ${name}`,
    open: async (page) => {
      await place.open?.(page);
      await deeper(page.getByRole('dialog'));
    },
  };
}

const stashItem = '#/stash/item-peatwater';

export const rooms: readonly Place[] = [
  { name: 'Welcome', hash: '#/', sign: heading('Lantern Moth Coats') },
  room('Stash', '#/stash'),
  {
    name: 'an item',
    hash: stashItem,
    sign: (page) => page.getByRole('article', { name: 'Peatwater nylon' }),
  },
  room('Coats', '#/coats'),
  room('Draft a coat', '#/draft'),
  { name: 'Season', hash: '#/season', sign: (page) => page.getByRole('table').first() },
  room('Suppliers', '#/suppliers'),
  room('Account', '#/account'),
  room('Settings', '#/settings'),
  step('Plan', 'plan', heading('Fenwalk coat')),
  step('Quilting', 'quilting', (page) => page.getByRole('table').first()),
  step('Needs', 'needs', (page) => page.locator('main details').first()),
  step('Lay', 'lay', (page) => page.getByTestId('lay-words').first()),
  step('Cover', 'cover', (page) => page.getByRole('list', { name: 'Cover by slot' })),
  step('To buy', 'to-buy', (page) => page.getByRole('table').first()),
  step('Cost', 'cost', (page) => page.getByRole('table').first()),
  step('Cutting', 'cutting', (page) => page.getByRole('button', { name: 'Book the cutting' })),
  step('Finished', 'finished', (page) => page.getByRole('button', { name: 'Print' })),
  step('Pattern table', 'table', (page) => page.getByRole('button', { name: 'Add sizes' })),
];

const back = sheet('PieceSheet', `${coat}/plan`, 'Back', /^Back, drawn/);
const changesOfPiece = ['Wider or narrower', 'Split at a line', 'Fold', 'Grain', 'Plies and number'] as const;

/** A workshop of one's own, before anything is in it. */
export const emptyRooms: readonly Place[] = [
  room('Stash', '#/stash'),
  room('Coats', '#/coats'),
  room('Season', '#/season'),
  room('Suppliers', '#/suppliers'),
  room('Settings', '#/settings'),
];

/** All that opens in a room: sheets, and what a tab or a button puts in the place of what stood there. */
export const openings: readonly Place[] = [
  {
    name: 'Find',
    hash: '#/coats',
    sign: (page) => page.getByRole('combobox', { name: 'Find' }),
    open: (page) => page.keyboard.press('Control+k'),
  },
  sheet('ItemForm', '#/stash', 'New item', 'New item'),
  {
    name: 'a form that is refused',
    hash: '#/stash',
    sign: (page) => page.getByRole('dialog').getByRole('alert').first(),
    open: async (page) => {
      await press('New item')(page);
      await page.getByRole('dialog').getByLabel('Width', { exact: true }).fill('-3');
      await page.getByRole('dialog').getByRole('button', { name: 'Add to the stash' }).click();
    },
  },
  sheet('StashFileSheet', '#/stash', 'Stash from a file or pasted rows', 'Stash from a file'),
  sheet('ReceiveForm', stashItem, /^Receive/, /^Receive/),
  within(sheet('ReceiveForm', stashItem, /^Receive/, /^Receive/), 'a flaw', (dialog) =>
    dialog.getByRole('button', { name: 'Note a flaw' }).click(),
  ),
  within(
    sheet('StashFileSheet', '#/stash', 'Stash from a file or pasted rows', 'Stash from a file'),
    'rows',
    (dialog) => dialog.getByLabel('Or rows from a spreadsheet').fill('kind\tname\nthread\tTarnspun 40'),
  ),
  sheet('LabelSheet', '#/stash', 'Shelf labels', 'Shelf labels'),
  sheet('TakeForm', stashItem, /^Write off/, /^Write off/),
  sheet('TakeForm', stashItem, /^Count/, /^Count/),
  sheet('ItemForm', stashItem, /^Edit/, /^Edit$/),
  sheet('OfferForm', stashItem, /^New offer/, 'Add an offer'),
  {
    name: 'Take stock',
    hash: '#/stash',
    sign: (page) => page.getByRole('button', { name: 'Back to the list' }),
    open: press('Take stock'),
  },
  sheet('Coats', '#/coats', 'New coat', 'New coat'),
  sheet('SupplierForm', '#/suppliers', 'New supplier', 'Add a supplier'),
  sheet('PriceListSheet', '#/suppliers', 'Bring in a price list', 'Bring in a price list'),
  sheet('PlanHeadSheet', `${coat}/plan`, 'Name, size and notes', 'Change name, size or notes'),
  back,
  ...changesOfPiece.map((name) =>
    within(back, name, (dialog) => dialog.getByRole('button', { name, exact: true }).click()),
  ),
  sheet('ShapeSheet', `${coat}/plan`, 'Add a shape', 'Add a shape'),
  sheet('BandSheet', `${coat}/plan`, 'Add a binding or a rib', 'Add a binding or a rib'),
  sheet('ImportSheet', `${coat}/plan`, 'Bring in pieces', 'Bring in pieces from a file'),
  sheet('FullSizeSheet', `${coat}/plan`, 'Pieces at full size', 'Pieces at full size'),
  sheet('SwatchSheet', `${coat}/quilting`, /^A swatch/, /^Measure a swatch, 2/),
  sheet('AlongEdges', `${coat}/needs`, /hang loop/, /^Let its length follow/),
  sheet('AddSizes', `${coat}/table`, 'Add sizes', 'Add sizes'),
  tab(`${coat}/cost`, 'Price', (page) => page.getByRole('tabpanel')),
  tab(`${coat}/cost`, 'As cut', (page) => page.getByRole('tabpanel')),
  tab(`${coat}/cost`, 'Side by side', (page) => page.getByRole('tabpanel')),
  tab(`${coat}/cost`, 'Over time', (page) => page.getByRole('tabpanel')),
  {
    name: 'In the shop',
    hash: `${coat}/to-buy`,
    sign: (page) => page.getByRole('checkbox').first(),
    open: press('In the shop'),
  },
  sheet('TicksFromPhone', `${coat}/to-buy`, 'Ticks from the phone', 'In the shop', 'Ticks from the phone'),
  {
    name: 'Receive one purchase',
    hash: `${coat}/to-buy`,
    sign: dialog('Receive one purchase'),
    sheet: 'ReceiveBought',
    open: async (page) => {
      await page.getByRole('checkbox').first().check();
      await press('Receive what is ticked')(page);
    },
  },
  {
    name: 'the cutting table',
    hash: `${coat}/lay`,
    sign: (page) => page.locator('[data-hand-piece]').first(),
    open: press('Lay by hand'),
  },
];

/** Whether a place stands on the road of the coat. */
export const isOfCoat = ({ hash }: Place) => hash.startsWith(coat);

/** The rooms with the most text, in German, whose words are longer. */
export const germanRooms: readonly Place[] = [
  room('Bestand', '#/stash'),
  ...rooms.filter(({ name }) => ['an item', 'Quilting', 'Needs', 'To buy', 'Cost'].includes(name)),
  room('Mantel konstruieren', '#/draft'),
  step('Fertig', 'finished', (page) => page.getByRole('button', { name: 'Drucken' })),
];

/** The demo, open at a place without a sheet. */
export async function openDemo(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^(Open the demo workshop|Demo-Werkstatt öffnen)$/ }).click();
  await page.getByRole('heading', { name: /^(Cover|Deckung)$/, level: 1 }).waitFor();
}

/** Into a place, from wherever the page was. */
export async function enter(page: Page, { hash, sign, open }: Place): Promise<void> {
  await page.evaluate((next) => {
    window.location.hash = next;
  }, hash);
  if (open) await open(page);
  await sign(page).waitFor();
}

/** Shuts what is open over the room. */
export async function leave(page: Page): Promise<void> {
  const open = page.getByRole('dialog');
  if ((await open.count()) === 0) return;
  await page.keyboard.press('Escape');
  // What was typed is asked about before it is thrown away.
  await page.waitForFunction(
    () =>
      document.querySelector('[role=alertdialog]') !== null ||
      document.querySelector('[role=dialog]') === null,
  );
  const thrown = page.getByRole('alertdialog').getByRole('button', { name: 'Throw it away' });
  if ((await thrown.count()) > 0) await thrown.click();
  await open.waitFor({ state: 'detached' });
}
