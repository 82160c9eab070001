import { expect, it } from 'vitest';
import { layers } from '../../../../shared-core/exchange/dxf/dxf-layers.ts';

it('layers stand where the open standard has them: ASTM D6673-10 by a written description, 84 to 87 from memory', () => {
  const bySpell = Object.entries(layers).map(([name, layer]) => `${layer} ${name}`);
  expect(bySpell).toEqual([
    '1 boundary',
    '2 turnPoints',
    '3 curvePoints',
    '4 notch',
    '5 gradeReference',
    '6 mirrorLine',
    '7 grainLine',
    '8 internalLine',
    '9 stripeReference',
    '10 plaidReference',
    '11 internalCutOut',
    '12 blank',
    '13 drillHole',
    '14 sewLine',
    '15 annotation',
    '80 tNotch',
    '81 castleNotch',
    '82 checkNotch',
    '83 uNotch',
    '84 boundaryCheck',
    '85 internalLineCheck',
    '86 internalCutOutCheck',
    '87 sewLineCheck',
  ]);
});
