/** Rows of the stash for one question, fetched page by page as they come into sight. */
import { useCallback, useEffect, useRef, useState } from 'react';
import type { CallInput, ItemRow, Workshop } from '../../../shared-core/contract/contract.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { call } from '../../client/api.ts';

export type StashQuestion = Omit<CallInput<'listItems'>, 'offset' | 'limit'>;

const pageSize = 100;

interface Pages {
  readonly total: number;
  /** By row number. */
  readonly rows: ReadonlyMap<number, ItemRow>;
}

export interface ItemPages extends Pages {
  /** False until the first answer is here. */
  readonly isRead: boolean;
  readonly problems: readonly Problem[];
  /** Tells which rows are in sight; those that are not here yet are fetched. */
  readonly see: (first: number, last: number) => void;
}

/** version: another number reads everything again, and keeps the old rows in sight until the new ones are here. */
export function useItemPages(workshop: Workshop, question: StashQuestion, version: number): ItemPages {
  const [pages, setPages] = useState<Pages | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const asked = useRef({ run: 0, pages: new Set<number>() });
  const seen = useRef({ first: 0, last: 0 });

  const fetchPage = useCallback(
    async (page: number) => {
      const { run, pages: askedPages } = asked.current;
      if (askedPages.has(page)) return;
      const isFirst = askedPages.size === 0;
      askedPages.add(page);
      const answer = await call('listItems', workshop, {
        ...question,
        offset: page * pageSize,
        limit: pageSize,
      });
      if (asked.current.run !== run) return;
      if (!answer.ok) return setProblems(answer.problems);
      const { rows, total } = answer.value;
      setProblems([]);
      setPages((now) => {
        const kept = isFirst || !now ? new Map<number, ItemRow>() : new Map(now.rows);
        for (const [index, row] of rows.entries()) kept.set(page * pageSize + index, row);
        return { total, rows: kept };
      });
    },
    [workshop, question],
  );

  // biome-ignore lint/correctness/useExhaustiveDependencies: another version asks the same question again.
  useEffect(() => {
    asked.current = { run: asked.current.run + 1, pages: new Set() };
    // The page in sight first; the others again as they are looked at.
    void fetchPage(Math.floor(seen.current.first / pageSize)).then(() => {
      if (seen.current.first > 0) void fetchPage(0);
    });
  }, [fetchPage, version]);

  const see = useCallback(
    (first: number, last: number) => {
      seen.current = { first, last };
      for (let page = Math.floor(first / pageSize); page <= Math.floor(last / pageSize); page += 1)
        void fetchPage(page);
    },
    [fetchPage],
  );

  return { total: pages?.total ?? 0, rows: pages?.rows ?? new Map(), isRead: pages !== null, problems, see };
}
