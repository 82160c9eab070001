/** Rows of the stash for one question, read page by page as they come into sight. */
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { CallInput, CallOutput, ItemRow } from '../../../shared-core/contract/contract.ts';
import { queryClient, readOptions } from '../../client/queries/query-client.ts';
import { type Read, readTogether, useReads } from '../../client/queries/reads.ts';
import { useWorkshop } from '../../client/workshop.ts';

export type StashQuestion = Omit<CallInput<'listItems'>, 'offset' | 'limit'>;

const pageSize = 100;

interface Rows {
  readonly total: number;
  /** By row number. */
  readonly rows: ReadonlyMap<number, ItemRow>;
}

export interface ItemPages extends Rows {
  /** False until the first answer is here. */
  readonly isRead: boolean;
  /** What was refused, and the way to try again. */
  readonly read: Pick<Read<unknown>, 'problems' | 'again' | 'data'>;
  /** Tells which rows are in sight; those that are not here yet are read. */
  readonly see: (first: number, last: number) => void;
}

/** Pages that were in sight under a question. */
interface Seen {
  readonly question: StashQuestion;
  readonly first: number;
  readonly last: number;
  readonly pages: readonly number[];
}

/** Rows of the question before stay in sight until those of the next are here. */
export function useItemPages(question: StashQuestion): ItemPages {
  const { workshop } = useWorkshop();
  const [seen, setSeen] = useState<Seen>({ question, first: 0, last: 0, pages: [0] });
  const inSight = useMemo(() => pagesBetween(seen.first, seen.last), [seen.first, seen.last]);
  const reads = useReads(
    'listItems',
    inSight.map((page) => pageOf(question, page)),
  );
  // Pages out of sight are shown as they were read, and read again when they are looked at.
  const known = seen.question === question ? seen.pages.filter((page) => !inSight.includes(page)) : [];
  const answers = [
    ...known.map((page) => ({
      page,
      answer: queryClient.getQueryData<Answer>(
        readOptions(workshop, 'listItems', pageOf(question, page)).queryKey,
      ),
    })),
    ...inSight.map((page, index) => ({ page, answer: reads[index]?.data })),
  ];
  const rows = useRowsOf(answers);
  const before = useRef<Rows | null>(null);
  useEffect(() => {
    if (rows) before.current = rows;
  }, [rows]);
  const shown = rows ?? before.current;

  const see = useCallback(
    (firstRow: number, lastRow: number) =>
      setSeen((now) => {
        const [first, last] = [Math.floor(firstRow / pageSize), Math.floor(lastRow / pageSize)];
        if (now.question === question && now.first === first && now.last === last) return now;
        const earlier = now.question === question ? now.pages : [];
        return { question, first, last, pages: [...new Set([...earlier, ...pagesBetween(first, last)])] };
      }),
    [question],
  );
  return {
    total: shown?.total ?? 0,
    rows: shown?.rows ?? noRows,
    isRead: shown !== null,
    read: { ...readTogether(reads), data: shown ?? undefined },
    see,
  };
}

type Answer = CallOutput<'listItems'>;
type PageAnswer = { readonly page: number; readonly answer: Answer | undefined };

const noRows: ReadonlyMap<number, ItemRow> = new Map();

/** The same rows for as long as the same answers stand; null while there is none. */
function useRowsOf(answers: readonly PageAnswer[]): Rows | null {
  const known = useRef<{ readonly of: readonly PageAnswer[]; readonly rows: Rows | null } | null>(null);
  const isSame =
    known.current?.of.length === answers.length &&
    known.current.of.every(
      ({ page, answer }, index) => page === answers[index]?.page && answer === answers[index]?.answer,
    );
  if (!isSame) known.current = { of: answers, rows: rowsOf(answers) };
  return known.current?.rows ?? null;
}

function rowsOf(answers: readonly PageAnswer[]): Rows | null {
  // The page in sight comes last and is the newest.
  const total = answers.findLast(({ answer }) => answer)?.answer?.total;
  if (total === undefined) return null;
  const rows = new Map<number, ItemRow>();
  for (const { page, answer } of answers)
    for (const [index, row] of (answer?.rows ?? []).entries()) rows.set(page * pageSize + index, row);
  return { total, rows };
}

function pageOf(question: StashQuestion, page: number): CallInput<'listItems'> {
  return { ...question, offset: page * pageSize, limit: pageSize };
}

function pagesBetween(first: number, last: number): readonly number[] {
  return Array.from({ length: last - first + 1 }, (_, index) => first + index);
}
