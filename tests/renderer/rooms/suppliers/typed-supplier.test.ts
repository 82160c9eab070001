import { expect, test } from 'vitest';
import { supplierForm } from '../../../../renderer/rooms/suppliers/typed-supplier.ts';

const units = { system: 'metric', currency: 'EUR' } as const;
const known = {
  name: 'Marl & Wick',
  facts: { name: 'Marl & Wick', deliveryMinor: 590, freeFromMinor: 9000, leadDays: 4 },
  offerCount: 2,
};

test('a supplier that is opened and saved as it stands asks the same', () => {
  const { start, schema } = supplierForm(known, units);
  expect(schema(start).parse(start)).toEqual({
    name: 'Marl & Wick',
    deliveryMinor: 590,
    freeFromMinor: 9000,
    leadDays: 4,
  });
});

test('one that is fetched from costs nothing, and what is not known stays so', () => {
  const { start, schema } = supplierForm(null, units);
  const typed = { ...start, name: 'The mill' };
  expect(schema(typed).parse(typed)).toEqual({
    name: 'The mill',
    deliveryMinor: 0,
    freeFromMinor: null,
    leadDays: null,
  });
});

test('what cannot be read is told at its field, and all of it at once', () => {
  const { start, schema } = supplierForm(known, units);
  const typed = { ...start, delivery: 'five', freeFrom: '0', days: '1001' };
  const outcome = schema(typed).safeParse(typed);
  expect(outcome.error?.issues.map(({ path }) => path.join('.'))).toEqual(['delivery', 'freeFrom', 'days']);
  expect(outcome.error?.issues[0]?.message).toContain('five');
});
