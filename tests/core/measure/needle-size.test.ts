import { expect, it } from 'vitest';
import { readQuantity } from '../../../shared-core/measure/read.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';

it.each([
  [60, 8],
  [65, 9],
  [70, 10],
  [75, 11],
  [80, 12],
  [90, 14],
  [100, 16],
  [110, 18],
  [120, 19],
])('a needle NM %i is a US %i: sewing guides, sizes in pairs', (nm, us) => {
  const read = readQuantity('needleSize', `US ${us}`, { system: 'metric', where: 'Size', min: 0 });
  expect(read).toMatchObject({ ok: true, value: nm });
  expect(showQuantity('needleSize', nm, { system: 'imperial' })).toBe(`NM ${nm}/${us}`);
});
