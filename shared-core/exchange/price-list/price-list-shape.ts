/** What reading a price list takes and gives, and the columns that it knows. */
import type { Problem } from '../../measure/problem.ts';
import type { Offer } from '../../stash/offer.ts';
import type { Item } from '../../stash/stash.ts';

/** One line of a list, read, and what it would do. */
export interface PriceRow {
  /** As a spreadsheet counts: the heads are line 1. */
  readonly line: number;
  readonly itemName: string;
  /** With the id of the offer that it replaces, or an empty one. */
  readonly offer: Offer;
  readonly does: 'adds' | 'changes' | 'nothing new';
  readonly before: Offer | null;
}

export interface PriceList {
  readonly rows: readonly PriceRow[];
  readonly problems: readonly Problem[];
  /** Headings of columns that are not read. */
  readonly unread: readonly string[];
}

export interface PriceListSources {
  readonly items: readonly Pick<Item, 'id' | 'kind' | 'name' | 'colour'>[];
  readonly offers: readonly Offer[];
  readonly currency: string;
}

export const columns = [
  'supplier',
  'kind',
  'item',
  'colour',
  'sold as',
  'step or length',
  'width',
  'thread',
  'mass',
  'pieces',
  'at least',
  'price',
  'priced on',
  'breaks',
] as const;

export type ColumnName = (typeof columns)[number];
