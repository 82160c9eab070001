import jsQR from 'jsqr';
import { describe, expect, test } from 'vitest';
import { labelsOfShelf } from '../../../shared-core/flow/output/labels-of-shelf.ts';
import { labelsPdf } from '../../../shared-core/paper/labels-pdf.ts';
import {
  labelGrids,
  labelSpot,
  labelsOnSheet,
  type ShelfLabel,
} from '../../../shared-core/paper/shelf-labels.ts';
import { isCodeOf, isItemCode, itemCode } from '../../../shared-core/stash/item-code.ts';
import { clothLot, item, lot, onShelf } from '../../fixtures/small-workshop.ts';
import { mmPerPt, type PdfSheet, pdfSheets } from './pdf-text.ts';
import { typefaceFiles } from './typeface.ts';

const itemId = 'e646110f-597f-456b-b245-186c19e3a4a0';
const label: ShelfLabel = {
  name: 'Тафта «Иней», очень длинное имя, которое не помещается ни на одну, ни на две строки этикетки',
  colour: 'серебристый',
  lines: ['147 cm, 62 g/m²', 'Lot Ж-7, 14 Apr 2026', '14.4 m left', 'Fennmoor Textiles'],
  code: itemCode(itemId),
};

async function sheetsOf(count: number, usedCount = 0, format: 'A4' | 'letter' = 'A4') {
  const labels = Array.from({ length: count }, (_, index) => ({ ...label, name: `Cloth ${index + 1}` }));
  const { bytes, missingLetters } = await labelsPdf(labels, { format, usedCount }, typefaceFiles);
  expect(missingLetters).toEqual([]);
  return pdfSheets(bytes);
}

/** The filled squares of a page as a camera would see them, read by another library; 8 dots to the mm. */
function scanned({ width, height, paths }: PdfSheet): string | undefined {
  const perMm = 8;
  const size = { x: Math.ceil(width * mmPerPt * perMm), y: Math.ceil(height * mmPerPt * perMm) };
  const picture = new Uint8ClampedArray(size.x * size.y * 4).fill(255);
  const [code] = [...paths].sort((a, b) => b.points.length - a.points.length);
  // Each module's bar is five corners: the first four of a rectangle and its first again.
  const corners = code!.points;
  for (let k = 0; k + 4 < corners.length; k += 5) {
    const bar = corners.slice(k, k + 4);
    const [left, right] = [Math.min(...bar.map(({ x }) => x)), Math.max(...bar.map(({ x }) => x))];
    const [low, high] = [Math.min(...bar.map(({ y }) => y)), Math.max(...bar.map(({ y }) => y))];
    for (let y = Math.round(low * perMm); y < Math.round(high * perMm); y++) {
      for (let x = Math.round(left * perMm); x < Math.round(right * perMm); x++) {
        picture.fill(0, ((size.y - y) * size.x + x) * 4, ((size.y - y) * size.x + x) * 4 + 3);
      }
    }
  }
  return jsQR(picture, size.x, size.y)?.data;
}

describe('a sheet of shelf labels', () => {
  test('has as many as it says, beginning after those that are used', async () => {
    const [first, second] = await sheetsOf(26);
    expect([first!.width, first!.height]).toEqual([595.28, 841.89]);
    const names = (sheet: PdfSheet | undefined) =>
      sheet!.texts.map(({ text }) => text).filter((text) => text.startsWith('Cloth'));
    expect(names(first)).toHaveLength(24);
    expect(names(second)).toEqual(['Cloth 25', 'Cloth 26']);
    const [after] = await sheetsOf(1, 5);
    const at = after!.texts.find(({ text }) => text === 'Cloth 1')!;
    const { leftMm, topMm } = labelSpot(labelGrids.A4, 5);
    expect(at.x * mmPerPt).toBeCloseTo(leftMm + 3, 1);
    expect((841.89 - at.y) * mmPerPt).toBeGreaterThan(topMm + 3);
    expect((841.89 - at.y) * mmPerPt).toBeLessThan(topMm + 10);
  });

  test.each(['A4', 'letter'] as const)('keeps every label on the paper of %s', (format) => {
    const grid = labelGrids[format];
    const paper = { A4: [210, 297], letter: [215.9, 279.4] }[format];
    const { leftMm, topMm } = labelSpot(grid, labelsOnSheet(grid) - 1);
    expect(leftMm + grid.labelWidthMm).toBeCloseTo(paper[0]! - grid.leftMm, 6);
    expect(topMm + grid.labelHeightMm).toBeCloseTo(paper[1]! - grid.topMm, 6);
  });

  test('has a code that another reader reads back to the item', async () => {
    const [sheet] = await sheetsOf(1);
    expect(scanned(sheet!)).toBe(`boltbaffle:item/${itemId}`);
  });

  test('breaks and shortens long words inside the label, clear of the code', async () => {
    const { bytes } = await labelsPdf([label], { format: 'letter', usedCount: 0 }, typefaceFiles);
    const [sheet] = await pdfSheets(bytes);
    const grid = labelGrids.letter;
    const codeLeft = (grid.leftMm + grid.labelWidthMm - 3 - 18) / mmPerPt;
    for (const { x, width } of sheet!.texts) expect(x + width).toBeLessThan(codeLeft);
    expect(sheet!.texts.map(({ text }) => text)).toEqual(
      expect.arrayContaining(['14.4 m left', 'серебристый']),
    );
    for (const { y } of sheet!.texts)
      expect((sheet!.height - y) * mmPerPt).toBeLessThan(grid.topMm + grid.labelHeightMm - 2);
  });
});

test('a label says the lot, what is left of it, width, weight and supplier; an item without a lot has one too', () => {
  const taffeta = item('cloth', 'taffeta', { widthMm: 1470, arealMassGPerM2: 62 });
  const zips = item('fastening', 'zips');
  const amountText = (_: string, amount: number) => `${amount}`;
  const labels = labelsOfShelf(
    [
      onShelf(taffeta, clothLot('taffeta', 'lot 1', 1470, [6000], 9000, { dyeLot: 'P-7' }), {
        ...clothLot('taffeta', 'lot 2', 1470, [], 100),
        onHand: 0,
      }),
      onShelf(zips),
      onShelf(item('fill', 'down'), lot('down', 'sack', 500, 320, 4000)),
    ],
    { system: 'metric', amountText },
  );
  expect(labels.map(({ lines }) => lines)).toEqual([
    ['147 cm, 62 g/m²', 'Lot P-7, 14 Sept 2026', '6000 left', 'Fennmoor Textiles'],
    ['None left'],
    ['14 Sept 2026', '320 left', 'Fennmoor Textiles'],
  ]);
  expect(labels[0]!.code).toBe('boltbaffle:item/taffeta');
});

test('a code is known whatever a scanner of another keyboard makes of its signs, and no other text is one', () => {
  for (const typed of [
    itemCode(itemId),
    itemCode(itemId).toUpperCase(),
    'boltbaffleÖitem-e646110fß597fß456bßb245ß186c19e3a4a0',
  ])
    expect(isCodeOf(typed, itemId)).toBe(true);
  expect(isCodeOf(itemCode('other'), itemId)).toBe(false);
  for (const text of ['bolt', 'boltbaffle:item/', 'item', 'Bolt & Baffle'])
    expect(isItemCode(text)).toBe(false);
});
