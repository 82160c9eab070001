import { expect, test } from 'vitest';
import { receiptOf } from '../../../shared-core/to-buy/receipt.ts';
import { item } from '../../fixtures/small-workshop.ts';
import { byTenth, line, spool } from './small-list.ts';

test('cloth comes in as one piece of all that was bought, at the price of the list', () => {
  const bought = { ...line('shell item', 'Tallow Lane', byTenth, 43, 115), boughtAmount: 4300 };
  expect(receiptOf(bought, item('cloth', 'shell item'))).toEqual({
    itemId: 'shell item',
    offerId: 'shell item of Tallow Lane',
    supplier: 'Tallow Lane',
    priceMinor: 4945,
    lengths: { widthMm: 1473, lengthMm: 4300, form: 'cut', count: 1 },
    amount: null,
  });
});

test('sheets come in one by one', () => {
  const sheet = { kind: 'sheet', widthMm: 1150, lengthMm: 1500 } as const;
  const bought = { ...line('batting item', 'Tallow Lane', sheet, 3, 990), boughtAmount: 4500 };
  expect(receiptOf(bought, item('batting', 'batting item'))).toMatchObject({
    lengths: { widthMm: 1150, lengthMm: 1500, form: 'sheet', count: 3 },
    amount: null,
  });
});

test('thread comes in as metres, and cloth by the piece says nothing of its length', () => {
  const thread = { ...line('thread item', 'Fernlow', spool, 2, 585), boughtAmount: 2000 };
  expect(receiptOf(thread, item('thread', 'thread item'))).toMatchObject({ lengths: null, amount: 2000 });
  const each = line('shell item', 'Fernlow', { kind: 'each', lengthMm: null }, 2, 585);
  expect(receiptOf(each, item('cloth', 'shell item'))).toMatchObject({ lengths: null, amount: null });
});
