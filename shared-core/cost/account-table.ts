/** The account of the stash as a table for paper and files. */
import { say } from '../wording/say.ts';
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
  const heads = [
    say('common.received'),
    say('account-table.counted-over-or-under'),
    say('account-table.cut-into-coats'),
    say('account-table.written-off'),
    say('common.on-hand'),
  ];
  return {
    title: say('account-table.account-of-the-stash'),
    lead: say('account-table.what-was-received-and-found-is'),
    sectionHead: '',
    columns: [
      { head: say('common.item'), kind: 'text' },
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
    total: [say('common.in-all'), '', ...figures(total)],
    notes: [],
  };
}
