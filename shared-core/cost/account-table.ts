/** The account of the stash as a table for paper and files. */
import type { MeasureSystem } from '../measure/quantity.ts';
import { moneyCell } from '../paper/money-cell.ts';
import type { PaperRow, PaperTable } from '../paper/paper-table.ts';
import { kindRecords } from '../stash/kinds.ts';
import type { StashAccount } from './stash-account.ts';
import type { Account } from './valuation.ts';

export interface AccountTableOptions {
  readonly system: MeasureSystem;
  readonly currency: string;
}

export function accountTable({ items, total }: StashAccount, options: AccountTableOptions): PaperTable {
  const money = (amountMinor: number) => moneyCell(amountMinor, options);
  const figures = (account: Account): PaperRow => [
    money(account.receivedMinor),
    money(account.correctedMinor),
    money(account.consumedMinor),
    money(account.writtenOffMinor),
    money(account.onHandMinor),
  ];
  const heads = ['Received', 'Counted over or under', 'Cut into coats', 'Written off', 'On hand'];
  return {
    title: 'Account of the stash',
    lead: 'What was received and found is what was cut, written off and lies on the shelf.',
    sectionHead: '',
    columns: [
      { head: 'Item', kind: 'text' },
      { head: 'kind', kind: 'text', only: 'file' },
      ...heads.map((head) => ({
        head,
        kind: 'number' as const,
        fileHead: `${head.toLowerCase()} (${options.currency})`,
      })),
    ],
    sections: [
      {
        title: '',
        rows: items.map(({ itemName, kind, account }) => [
          itemName,
          kindRecords[kind].label,
          ...figures(account),
        ]),
      },
    ],
    total: ['In all', '', ...figures(total)],
    notes: [],
  };
}
