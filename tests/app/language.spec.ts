/** The window in German: chosen under Settings, spoken by the rooms, the services and the workers, and left again. */
import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { expect, test } from './door.ts';

async function chooseGerman(page: Page): Promise<void> {
  await page.getByRole('navigation', { name: 'Rooms' }).getByRole('link', { name: 'Settings' }).click();
  await page.getByLabel('Deutsch').check();
  await expect(page.getByRole('heading', { name: 'Einstellungen', level: 1 })).toBeVisible();
  await expect(page.locator('html')).toHaveAttribute('lang', 'de');
}

async function goTo(page: Page, room: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Bereiche' }).getByRole('link', { name: room }).click();
}

/** Opens the form of a new cloth and says what it must have. */
async function beginCloth(page: Page) {
  await page.getByRole('button', { name: 'Neuer Artikel' }).click();
  const sheet = page.getByRole('dialog', { name: 'Neuer Artikel' });
  await sheet.getByLabel('Name').fill('Hollin-Taft');
  await sheet.getByLabel('Farbe').fill('tannengrün');
  await sheet.getByLabel('Breite', { exact: true }).fill('1,5 m');
  return sheet;
}

test('a cloth is typed and shown back with the decimal comma, and stays when the window speaks English again', async ({
  page,
  workshop,
}) => {
  await chooseGerman(page);
  await goTo(page, 'Bestand');
  const sheet = await beginCloth(page);
  await sheet.getByLabel('Länge', { exact: true }).fill('62,5 m');
  await sheet.getByLabel('Preis der Partie').fill('1 234,50');
  await sheet.getByText('Mehr Angaben: Stoff').click();
  await sheet.getByLabel('Rapport längs').fill('11,5 cm');
  await sheet.getByRole('button', { name: 'In den Bestand aufnehmen' }).click();
  await expect(sheet).toBeHidden();

  const item = page.getByRole('article', { name: 'Hollin-Taft' });
  for (const shown of ['1,5 m', '11,5 cm', '62,5 m']) await expect(item).toContainText(shown);
  await expect(item).toContainText(/1\s234,50\sEUR/);

  // Two of one name and colour: the service says so, in the language of this window.
  const twin = await beginCloth(page);
  await twin.getByRole('button', { name: 'In den Bestand aufnehmen' }).click();
  await expect(twin.getByRole('alert').last()).toContainText('ist schon vergeben: Stoff');
  await page.keyboard.press('Escape');
  await page.getByRole('alertdialog').getByRole('button', { name: 'Verwerfen' }).click();

  const reopened = await workshop.reopen();
  await expect(reopened.locator('html')).toHaveAttribute('lang', 'en');
  await reopened.getByRole('navigation', { name: 'Rooms' }).getByRole('link', { name: 'Stash' }).click();
  await reopened.getByRole('option', { name: /Hollin-Taft/ }).click();
  const again = reopened.getByRole('article', { name: 'Hollin-Taft' });
  await expect(again).toContainText('62.5 m');
  await expect(again).toContainText('1,234.50 EUR');
});

test('what a pattern file lacks is said in German, and the file of the list to buy keeps its English headings', async ({
  page,
}) => {
  await chooseGerman(page);
  await page.getByRole('link', { name: 'Bolt & Baffle' }).click();
  await page.getByRole('button', { name: 'Demo-Werkstatt öffnen' }).click();
  const road = page.getByRole('region', { name: 'Der Weg dieses Mantels' });
  await road.getByRole('link', { name: /^Plan/ }).click();
  await page.getByRole('button', { name: 'Teile aus einer Datei einlesen' }).click();
  const sheet = page.getByRole('dialog', { name: 'Teile importieren' });
  await sheet.getByLabel('Schnittmusterdatei').setInputFiles({
    name: 'brief.dxf',
    mimeType: 'text/plain',
    buffer: Buffer.from('Liebe Moss, hier ist der Schnitt.'),
  });
  await expect(sheet.getByRole('alert')).toContainText('Zeile 1 sollte ein DXF-Gruppencode sein');
  await sheet.getByRole('button', { name: 'Abbrechen' }).click();

  await road.getByRole('link', { name: /^Einkauf/ }).click();
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Als CSV speichern' }).click();
  const text = await readFile(await (await saving).path(), 'utf8');
  expect(text).toContain('item,buy,units,for slots,price each (EUR),price (EUR),priced on');

  await goTo(page, 'Einstellungen');
  await page.getByLabel('English').check();
  await expect(page.getByRole('heading', { name: 'Settings', level: 1 })).toBeVisible();
  await expect(page.locator('html')).toHaveAttribute('lang', 'en');
});
