/** Pieces changed in the middle of the work: a shape added, a back split, opened, turned, widened and copied. */
import { expect, test } from './door.ts';

test('a coat of simple shapes is split, folded, widened, turned and copied, and each change is said', async ({
  page,
}) => {
  await page.getByRole('link', { name: 'Coats', exact: true }).click();
  await page.getByRole('button', { name: 'New coat' }).first().click();
  const form = page.getByRole('dialog', { name: 'New coat' });
  await form.getByLabel('Name').fill('Sedgemoor gilet');
  await form.getByRole('button', { name: 'Begin the plan' }).click();
  const note = page.getByRole('status', { name: 'What the last change did' });
  const card = (name: string) => page.getByRole('button', { name: new RegExp(`^${name}, drawn to scale`) });

  // A rectangle on the fold: typed in both systems, and drawn as a half.
  await page.getByRole('button', { name: 'Add a shape' }).first().click();
  const shape = page.getByRole('dialog', { name: 'Add a shape' });
  await shape.getByLabel('Shape').selectOption('Rectangle');
  await shape.getByLabel('Name').fill('Panel');
  await shape.getByRole('button', { name: 'Add the rectangle' }).click();
  await expect(shape.getByRole('alert')).toContainText('Length is missing');
  await shape.getByLabel('Length').fill('72 cm');
  await shape.getByLabel('Width').fill('20 in');
  await shape.getByLabel('How many for one coat').fill('1');
  await shape.getByLabel('On the fold').check();
  await shape.getByRole('button', { name: 'Add the rectangle' }).click();
  await expect(note).toContainText('Panel added, 720 mm by 508 mm, cut on the fold and 15.9 mm of allowance');
  await expect(card('Panel')).toContainText('cut 1 on the fold');

  const open = async (name: string, section: string) => {
    await card(name).click();
    const sheet = page.getByRole('dialog', { name, exact: true });
    await sheet.getByRole('button', { name: section, exact: true }).click();
    return sheet;
  };

  // Wider at a line that is drawn on it.
  const wider = await open('Panel', 'Wider or narrower');
  await wider.getByLabel('By').fill('1.5 cm');
  await wider.getByLabel('Line from the fold').fill('10 cm');
  await wider.getByRole('button', { name: 'Widen' }).click();
  await expect(note).toContainText(
    'Panel widened by 15 mm 100 mm from the fold. Panel on the fold: 30 mm in all.',
  );

  // Allowances of all edges and the hem, each said in the sheet and taken back there.
  const edges = await open('Panel', 'Plies and number');
  await edges.getByLabel('Allowance for all edges').fill('12 mm');
  await edges.getByRole('button', { name: 'Set all edges' }).click();
  await expect(edges.getByText('Allowance of Panel is now 12 mm at every edge that is cut.')).toBeVisible();
  await edges.getByLabel('Hem depth').fill('45 mm');
  await edges.getByLabel('Hem depth').press('Enter');
  await expect(edges.getByText('Hem of Panel is now 45 mm deep.')).toBeVisible();
  await expect(edges.getByLabel('Allowance at foot')).toHaveValue('45 mm');
  await edges.getByRole('button', { name: 'Undo' }).click();
  await expect(edges.getByLabel('Allowance at foot')).toHaveValue('12 mm');
  await edges.getByRole('button', { name: 'Done' }).click();

  // Split into a yoke and what hangs from it: both on the fold, both with allowance.
  const split = await open('Panel', 'Split at a line');
  await split.getByLabel('Line above the hem').fill('80 cm');
  await split.getByRole('button', { name: 'Split the piece' }).click();
  await expect(split.getByText(/does not cross Panel/)).toBeVisible();
  await split.getByLabel('Line above the hem').fill('480 mm');
  await split.getByLabel('Other part').fill('Yoke');
  await split.getByRole('button', { name: 'Split the piece' }).click();
  await expect(note).toContainText('Panel split 480 mm above the hem into Panel lower and Yoke');
  await expect(card('Panel lower')).toContainText('on the fold');

  // The yoke opened flat, and put on the fold again.
  const opened = await open('Yoke', 'Fold');
  await opened.getByRole('button', { name: 'Open it flat' }).click();
  await expect(note).toContainText('Yoke is opened flat');
  await expect(card('Yoke')).toContainText('cut 1');
  await expect(card('Yoke')).not.toContainText('fold');
  const folded = await open('Yoke', 'Fold');
  await folded.getByRole('button', { name: 'Put it on the fold' }).click();
  await expect(note).toContainText('Yoke is now drafted as a half and cut on the fold.');

  // Its grain to the bias, and a copy of it in lining.
  const grain = await open('Yoke', 'Grain');
  await grain.getByRole('button', { name: 'To the bias, 45°' }).click();
  await expect(note).toContainText('Grain of Yoke turned by 45°: it is cut on the bias.');
  const copy = await open('Yoke', 'Copy for another slot');
  await copy.getByLabel('Name of the copy').fill('Yoke lining');
  await copy.getByRole('button', { name: 'Copy the piece' }).click();
  await expect(note).toContainText('Yoke lining copied from Yoke, cut from lining.');
  await expect(card('Yoke lining')).toContainText('lining');

  // Undo takes the last back and no more.
  await note.getByRole('button', { name: 'Undo' }).click();
  await expect(note).toContainText('The last change was taken back.');
  await expect(card('Yoke lining')).toBeHidden();
  await expect(card('Yoke')).toBeVisible();
});
