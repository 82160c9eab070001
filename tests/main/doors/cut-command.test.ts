import { expect, test } from 'vitest';
import { runEstimate } from '../../../main/doors/command.ts';
import { emptySlot } from '../../../shared-core/plan/model/coat-plan.ts';
import { newPlan } from '../../../shared-core/plan/model/new-plan.ts';
import { openAsking, receivedFill } from '../asking.ts';

test('the JSON of a coat that is being cut holds what the ledger says of it', async () => {
  const asking = openAsking();
  const fill = await receivedFill(asking, 640);
  const slots = [{ ...emptySlot('fill', 'fill', 'fill'), itemId: fill.itemId, amountPerCoat: 160 }];
  const plan = { ...newPlan('any', 'Lapwing', '40'), coatCount: 3, slots, quilting: null };
  const { planId } = await asking.get('savePlan', { plan, basedOn: null, said: '' });
  await asking.get('recordCutting', {
    planId,
    basedOn: 1,
    coats: [{ size: '40', coatCount: 1 }],
    note: '',
    releasesRest: false,
    slots: [
      {
        slotId: 'fill',
        met: { kind: 'amount', amount: 160 },
        lines: [{ lotId: fill.lotId, lengthId: null, amount: 163, pieceAreaMm2: null, kept: [] }],
      },
    ],
  });
  asking.services.close();
  let out = '';
  const words = ['--data', asking.dataFile, '--coat', 'Lapwing', '--json', '--iterations', '100'];
  expect(await runEstimate(words, (text) => (out += text))).toMatchObject({ ok: true });
  const { cost } = JSON.parse(out);
  // 163 of 640 g for 123.45 are cut, 320 g are still to be filled.
  expect(cost.cut).toMatchObject({ batchMinor: 3144, coatCount: 1, perCoatMinor: [3144] });
  expect(cost.lines[0].parts).toMatchObject([
    { isCut: true, amount: 163, costMinor: 3144 },
    { amount: 320, costMinor: 6173 },
  ]);
  expect(cost.batchMinor).toBe(9317);
});
