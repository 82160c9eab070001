/** Changes in the middle of the work: each is saved, said in a sentence, and shows what it does to the rest. */
import { expect, test } from './door.ts';

test('lengthening the back says what it changes, and undo takes it back', async ({ page }) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  const road = page.getByRole('region', { name: 'The road of this coat' });
  await road.getByRole('link', { name: /^Plan/ }).click();
  await expect(page.getByRole('heading', { name: 'Fenwalk coat', level: 1 })).toBeVisible();
  await expect(road.getByRole('link', { name: /^Cost/ })).toContainText('EUR');
  await expect(page.getByRole('button', { name: 'Stop here' })).toBeHidden();

  await page.getByRole('button', { name: /^Back, drawn to scale/ }).click();
  const sheet = page.getByRole('dialog', { name: 'Back', exact: true });
  const sideLength = sheet.getByRole('row', { name: /^centre back/ });
  const before = (await sideLength.textContent()) ?? '';
  await sheet.getByLabel('By').fill('4.5 cm');
  await sheet.getByRole('button', { name: 'Lengthen' }).click();
  const note = page.getByRole('status', { name: 'What the last change did' });
  await expect(note).toContainText(/^Back.* lengthened by 45 mm at the lower third\./);
  await expect(note).toContainText(/What is on the shelf is (still|not) enough\./);
  await expect(note.getByRole('listitem').first()).toContainText(
    /^\w.*: [\d.]+ m (more|less), [\d.]+ m in all/,
  );

  // What is sewn together was lengthened together.
  const seams = page.getByRole('region', { name: 'Seams' });
  await expect(seams).toContainText(/All \d+ seams between pieces fit\./);

  await page.getByRole('button', { name: /^Back, drawn to scale/ }).click();
  await expect(sideLength).not.toHaveText(before);
  await sheet.getByRole('button', { name: 'Done' }).click();
  await note.getByRole('button', { name: 'Undo' }).click();
  await expect(note).toContainText('The last change was taken back.');
  await page.getByRole('button', { name: /^Back, drawn to scale/ }).click();
  await expect.poll(() => sideLength.textContent()).toBe(before);

  // The back alone no longer fits the front, and the seam is named with its difference.
  await sheet.getByLabel('By').fill('2.5 cm');
  await sheet.getByLabel('Together with what is sewn to it').uncheck();
  await sheet.getByRole('button', { name: 'Lengthen' }).click();
  await expect(seams).toContainText(/\d+ of \d+ seams between pieces do not fit: .*Side/);
  await seams.getByText('Every seam, for one coat').click();
  await expect(seams.getByRole('row', { name: /^Side / })).toContainText('does not fit');
});
