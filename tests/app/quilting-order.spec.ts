/** What comes first, cutting or quilting: chosen in the plan, and every figure follows. */
import { expect, test } from './door.ts';
import { stopLaying } from './laying.ts';

test('a coat that is rough-cut, one that is cut to its outline, and a batting in its own way', async ({
  page,
}) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  const road = page.getByRole('region', { name: 'The road of this coat' });
  await road.getByRole('link', { name: /^Plan/ }).click();
  const order = page.getByRole('region', { name: 'Cutting and quilting' });
  await expect(order.getByRole('radio', { name: /^Rough-cut, quilt, recut/ })).toBeChecked();
  await expect(order.getByRole('textbox', { name: 'To spare all round' })).toHaveValue('25 mm');
  const note = page.getByRole('status', { name: 'What the last change did' });

  // The needs say what is trimmed off, and so does the cost.
  await road.getByRole('link', { name: /^Needs/ }).click();
  const shell = page.getByRole('listitem').filter({ has: page.getByRole('heading', { name: 'shell' }) });
  await expect(shell).toContainText(/Of these pieces [\d.]+ m², [\d.]+ g is trimmed off after quilting/);
  await stopLaying(page);
  await road.getByRole('link', { name: /^Cost/ }).click();
  const trimmings = page.getByRole('table', { name: 'Trimmed off after quilting' });
  await expect(trimmings.getByRole('row', { name: /^Shell/ })).toContainText(
    /[\d.]+ m², [\d.]+ g.*[\d.]+ EUR/,
  );
  await expect(trimmings.getByRole('row', { name: /^Batting/ })).toBeVisible();
  await road.getByRole('link', { name: /^Quilting/ }).click();
  await expect(
    page.getByText('cut with 25 mm to spare all round, quilted, and recut to the outline'),
  ).toBeVisible();

  // More to spare for the batting alone.
  await road.getByRole('link', { name: /^Plan/ }).click();
  await order.getByRole('button', { name: 'Make a slot or piece in its own way' }).click();
  const batting = order.getByRole('listitem', { name: 'The batting' });
  await order.getByLabel('A slot or piece made in its own way').selectOption('The batting');
  await expect(note).toContainText(
    'The batting is cut to the outline, larger by the take-up, and then quilted.',
  );
  await batting.getByLabel('Made').selectOption('Rough-cut, quilt, recut');
  const spare = batting.getByRole('textbox', { name: 'To spare all round' });
  await spare.fill('40 cm');
  await spare.press('Enter');
  await expect(page.getByRole('alert')).toContainText('The batting would be cut with 400 mm to spare');
  await spare.fill('4 cm');
  await spare.press('Enter');
  await expect(note).toContainText('The batting is cut with 40 mm to spare all round');
  await batting.getByRole('button', { name: 'As the whole coat' }).click();
  await expect(spare).toBeHidden();

  // Cut to the outline nothing is trimmed, and the sum of the trimmings is gone.
  await order.getByRole('radio', { name: /^Cut, then quilt/ }).click();
  await expect(order.getByRole('radio', { name: /^Cut, then quilt/ })).toBeChecked();
  await expect(note).toContainText(
    'Quilted pieces are cut to the outline, larger by the take-up, and then quilted.',
  );
  await road.getByRole('link', { name: /^Cost/ }).click();
  await expect(page.getByRole('heading', { name: 'Cost', level: 1 })).toBeVisible();
  await expect(page.getByRole('row', { name: /^The batch/ })).toBeVisible();
  await expect(trimmings).toBeHidden();

  // Quilted as panels: their sizes are said, their pieces drawn, and a narrower panel is longer.
  await road.getByRole('link', { name: /^Plan/ }).click();
  await order.getByRole('radio', { name: /^Quilt a panel, then cut/ }).click();
  await expect(note).toContainText('Quilted pieces are cut from a panel that is quilted for each coat.');
  await road.getByRole('link', { name: /^Quilting/ }).click();
  const panels = page.getByRole('region', { name: 'Panels to quilt' });
  const body = panels.getByRole('listitem').filter({ hasText: 'Panel of Back and Front' });
  await expect(body).toContainText(
    /Panel of Back and Front, 6 times: [\d.]+ × 1\.\d\d m of shell and 2 plies of batting; quilted [\d.]+ × 1\.\d\d m\./,
  );
  await expect(body.getByRole('img', { name: 'Panel of Back and Front, with its pieces' })).toBeVisible();
  await stopLaying(page);
  await road.getByRole('link', { name: /^Plan/ }).click();
  await order.getByLabel('Width of the panel').fill('1 m');
  await order.getByLabel('Width of the panel').press('Enter');
  await road.getByRole('link', { name: /^Quilting/ }).click();
  await expect(body).toContainText(/× 1\.00 m of shell and 2 plies of batting; quilted [\d.]+ × 0\.98 m\./);
});
