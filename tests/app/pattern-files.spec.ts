import type { Page } from '@playwright/test';
import type { readPattern } from '../../shared-core/exchange/pattern/formats.ts';
import { line, patternText, point, polyline, words } from '../core/exchange/dxf-text.ts';
import { expect, test } from './door.ts';
import { stopLaying } from './laying.ts';
import { printedBy } from './scripts.ts';

async function openPlan(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  const road = page.getByRole('region', { name: 'The road of this coat' });
  await expect(road.getByRole('link', { name: /^Plan/ })).toBeVisible();
  await road.getByRole('link', { name: /^Plan/ }).click();
  await expect(page.getByRole('heading', { name: 'Fenwalk coat', level: 1 })).toBeVisible();
  // Nothing else moves on the page once no lay is looked for.
  await expect(road.getByRole('link', { name: /^Cost/ })).toContainText('EUR');
  await stopLaying(page);
}

/** A yoke of 21 by 6.5 in with one notch, and a cuff with no sewing line, by the open standard in inches. */
const yoke = [
  [0, 0],
  [21, 0],
  [21, 6.5],
  [0, 6.5],
] as const;
const seam = [
  [0.5, 0.5],
  [20.5, 0.5],
  [20.5, 6],
  [0.5, 6],
] as const;
const pattern = patternText({
  blocks: {
    YOKE: [
      ...words(1, 'Piece Name: Shoulder yoke'),
      ...words(1, 'Size: 16'),
      ...words(1, 'Quantity: 1,1'),
      ...words(1, 'Material: body lining'),
      ...polyline(1, yoke),
      ...polyline(14, seam),
      ...seam.flatMap((at) => point(2, at)),
      ...point(4, [9, 0]),
      ...line(7, [2, 3], [18, 3]),
      ...point(13, [10, 3]),
    ],
    YOKE18: [
      ...words(1, 'Piece Name: Shoulder yoke'),
      ...words(1, 'Size: 18'),
      ...polyline(1, [
        [0, 0],
        [23, 0],
        [23, 7],
        [0, 7],
      ]),
      ...line(7, [2, 3], [18, 3]),
    ],
    CUFF: [
      ...words(1, 'Piece Name: Cuff'),
      ...polyline(1, [
        [0, 0],
        [12, 0],
        [12, 4],
        [0, 4],
      ]),
      ...line(7, [1, 1], [9, 1]),
    ],
  },
  entities: [
    ...words(1, 'Style Name: Saltmarsh'),
    ...words(1, 'Sample Size: 16'),
    ...words(1, 'Units: ENGLISH'),
  ],
});

test('pieces of a pattern file are looked at, put right and brought in with one save', async ({ page }) => {
  await openPlan(page);
  await page.getByRole('button', { name: 'Bring in pieces from a file' }).click();
  const sheet = page.getByRole('dialog', { name: 'Bring in pieces' });
  await sheet
    .getByLabel('Pattern file')
    .setInputFiles({ name: 'saltmarsh.dxf', mimeType: 'application/dxf', buffer: Buffer.from(pattern) });

  // One size of the two is looked at, the sample size first.
  await expect(sheet.getByLabel('Size', { exact: true })).toHaveValue('16');
  await sheet.getByLabel('Size', { exact: true }).selectOption('18');
  await expect(sheet.getByRole('status')).toContainText('Shoulder yoke is 584.2 mm long');
  await sheet.getByLabel('Size', { exact: true }).selectOption('16');
  // The measures stand in the maker's own units: 21 in are 533 mm.
  await expect(sheet.getByRole('status')).toContainText('Shoulder yoke is 533.4 mm long and 165.1 mm wide');
  await sheet.getByLabel('Unit of the file').selectOption('Millimetres');
  await expect(sheet.getByRole('status')).toContainText('Shoulder yoke is 21 mm long');
  await expect(sheet.getByRole('alert')).toContainText('would be 23 mm, small for a coat');
  await sheet.getByLabel('Unit of the file').selectOption({ label: 'As the file says: inches' });
  await expect(sheet.getByRole('alert')).toBeHidden();

  const found = sheet.getByRole('list', { name: 'Pieces found' });
  const newPiece = found.getByRole('listitem', { name: 'Shoulder yoke' });
  await expect(newPiece).toContainText('cut 2, mirrored');
  await expect(newPiece).toContainText('allowances from the file');
  await expect(newPiece.getByLabel('As')).toHaveValue('');
  await expect(newPiece.getByLabel('body lining')).toBeChecked();
  await newPiece.getByLabel('Name').fill('Back yoke');
  await newPiece.getByLabel('shell').check();
  // A piece of the plan's own name is offered in its place.
  const cuff = found.getByRole('listitem', { name: 'Cuff' });
  await expect(cuff.getByLabel('As').locator('option:checked')).toHaveText('in place of Cuff');
  await sheet.getByLabel('Seam allowance').fill('1/2 in');
  await expect(cuff).toContainText('330.2 mm × 127 mm');
  await sheet.getByText('What does not come with it').click();
  await expect(sheet).toContainText('1 drill hole not kept: a piece has no place for them.');

  await sheet.getByLabel('Bring its other sizes too').check();
  await sheet.getByRole('button', { name: 'Bring them in' }).click();
  await expect(sheet).toBeHidden();
  const note = page.getByRole('status', { name: 'What the last change did' });
  await expect(note).toContainText('Back yoke brought in. Cuff replaced from the file.');
  await expect(note).toContainText('Size 18 of the file stands beside it.');
  await expect(page.getByLabel('Coats in size 18')).toHaveValue('0');
  await page.getByRole('button', { name: /^Back yoke, drawn to scale/ }).click();
  const opened = page.getByRole('dialog', { name: 'Back yoke', exact: true });
  await expect(opened.getByLabel('Allowance at edge 1')).toHaveValue('12.7 mm');
  await expect(opened.getByRole('row', { name: /^edge 1/ })).toContainText('508 mm');
  await opened.getByRole('button', { name: 'Done' }).click();

  await note.getByRole('button', { name: 'Undo' }).click();
  await expect(note).toContainText('The last change was taken back.');
  await expect(page.getByRole('button', { name: /^Back yoke/ })).toHaveCount(0);
});

test('a file that is no pattern says what it is, and nothing is changed', async ({ page }) => {
  await openPlan(page);
  const cards = page.getByRole('button', { name: /drawn to scale/ });
  const before = await cards.count();
  await page.getByRole('button', { name: 'Bring in pieces from a file' }).click();
  const sheet = page.getByRole('dialog', { name: 'Bring in pieces' });
  const choose = (name: string, text: string) =>
    sheet
      .getByLabel('Pattern file')
      .setInputFiles({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });
  await choose('letter.dxf', 'Dear Moss, here is the pattern.');
  await expect(sheet.getByRole('alert')).toContainText('Line 1 should be a group code of DXF');
  await choose('sheets.pdf', '%PDF-1.7');
  await expect(sheet.getByRole('alert')).toContainText('The file is a PDF');
  await choose('bare.svg', '<svg xmlns="http://www.w3.org/2000/svg"><rect width="300" height="90"/></svg>');
  await expect(sheet.getByRole('alert')).toContainText('does not say its unit; mm are taken');
  await sheet.getByLabel('Unit of the file').selectOption('By a length I know');
  await sheet.getByLabel('Real length of Piece 1').fill('7 1/2 in');
  await expect(sheet.getByRole('status')).toContainText('Piece 1 is 190.5 mm long and 635 mm wide');
  await sheet.getByRole('button', { name: 'Cancel' }).click();
  await expect(cards).toHaveCount(before);
});

test.describe('by a clock of the spec’s own', () => {
  test.use({ ownWindow: true });

  test('a file that is never read to its end leaves the window free, and is given up', async ({ page }) => {
    await page.clock.install();
    await page.route('**/pattern-worker-*.js', (route) =>
      route.fulfill({ contentType: 'text/javascript', body: 'onmessage = () => { for (;;); };' }),
    );
    await openPlan(page);
    const cards = page.getByRole('button', { name: /drawn to scale/ });
    const before = await cards.count();
    await page.getByRole('button', { name: 'Bring in pieces from a file' }).click();
    const sheet = page.getByRole('dialog', { name: 'Bring in pieces' });
    const choose = (name: string) =>
      sheet
        .getByLabel('Pattern file')
        .setInputFiles({ name, mimeType: 'application/dxf', buffer: Buffer.from(pattern) });
    await choose('endless.dxf');
    await expect(sheet.getByText('Reading the pattern…')).toBeVisible();
    // What is asked meanwhile is answered.
    await sheet.getByRole('button', { name: 'Bring them in' }).click();
    await expect(sheet.getByRole('alert')).toContainText('is still being read');
    await sheet.getByRole('button', { name: 'Stop reading' }).click();
    await expect(sheet.getByRole('alert').first()).toContainText('because you stopped it');
    await expect(sheet.getByText('Reading the pattern…')).toBeHidden();

    await choose('again.dxf');
    await expect(sheet.getByText('Reading the pattern…')).toBeVisible();
    await page.clock.fastForward(21_000);
    await expect(sheet.getByRole('alert').first()).toContainText('takes longer than 20 seconds to read');
    // Another file is read by a worker of its own.
    await page.unroute('**/pattern-worker-*.js');
    await choose('saltmarsh.dxf');
    await expect(sheet.getByRole('status').first()).toContainText('Shoulder yoke is 533.4 mm long');
    await sheet.getByRole('button', { name: 'Cancel' }).click();
    await expect(cards).toHaveCount(before);
  });
});

test('the pieces go out as DXF and as SVG, and are read again', async ({ page }) => {
  await openPlan(page);
  for (const format of ['DXF', 'SVG']) {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: `Save pieces as ${format}` }).click(),
    ]);
    expect(download.suggestedFilename()).toBe(`fenwalk-coat-pieces.${format.toLowerCase()}`);
    const printed = printedBy('tests/app/read-pattern-file.ts', await download.path());
    const { found, problems } = JSON.parse(String(printed)) as ReturnType<typeof readPattern>;
    expect(problems).toEqual([]);
    expect(found?.styleName).toBe('Fenwalk coat');
    expect(found?.pieces.map(({ name }) => name)).toContain('Top sleeve lining');
  }
});
