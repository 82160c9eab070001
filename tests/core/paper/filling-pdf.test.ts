import { expect, test } from 'vitest';
import { demoWorkshop } from '../../../shared-core/demo/demo-workshop.ts';
import { tablePdf } from '../../../shared-core/paper/table-pdf.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import { fillSlots, setStuffed } from '../../../shared-core/plan/model/stuffing.ts';
import { fillingList } from '../../../shared-core/requirement/fill/fill.ts';
import { fillingTable } from '../../../shared-core/requirement/fill/filling-table.ts';
import { item } from '../../fixtures/small-workshop.ts';
import { pdfSheets } from './pdf-text.ts';
import { typefaceFiles } from './typeface.ts';

test('the filling list has every chamber with its grams, under its piece, and the fill by its own name', async () => {
  const demo = demoWorkshop().plans[0]!;
  const [back] = demo.pieces.filter(({ quilted }) => quilted !== null);
  const stuffed = setStuffed(demo, back!.id, true);
  const plan: CoatPlan = stuffed.ok ? stuffed.value.plan : demo;
  const [slot] = fillSlots(plan);
  const list = fillingList(
    plan,
    slot!,
    new Map([[slot!.id, item('fill', 'fill', { fillPowerCm3PerG: 375 })]]),
  );
  expect(list.chambers.length).toBeGreaterThan(5);
  const title = `${plan.name}: Пух «Иней»`;
  const table = fillingTable(list, { system: 'metric', title, cautions: ['Down dust: wear a mask.'] });
  const { bytes, missingLetters } = await tablePdf(table, { format: 'A4', day: '' }, typefaceFiles);
  expect(missingLetters).toEqual([]);
  const words = (await pdfSheets(bytes)).flatMap(({ texts }) => texts.map(({ text }) => text));
  expect(words).toContain(title);
  expect(words).toContain(back!.name);
  expect(words).toContain('Down dust: wear a mask.');
  for (const { massG } of list.chambers) expect(words).toContain(`${massG.toFixed(1)} g`);
  expect(words).toContain(`${list.filledG.toFixed(1)} g`);
});
