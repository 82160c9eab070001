/** A supplier's price list from a CSV file: what it would do is shown first, line by line; one click then brings all of it in. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import { fileText } from '../../../shared-core/exchange/file-text.ts';
import type { PriceList, PriceRow } from '../../../shared-core/exchange/price-list/price-list-shape.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { useChange } from '../../client/queries/changes.ts';
import { ask } from '../../client/queries/reads.ts';
import { useSystem, useWorkshop } from '../../client/workshop.ts';
import { Money } from '../../parts/figures/Figure.tsx';
import { type ChosenFile, FileChoice } from '../../parts/forms/FileChoice.tsx';
import { FormSheet } from '../../parts/forms/FormSheet.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { sellingWords } from '../../parts/figures/selling-words.ts';
import style from './PriceListSheet.module.css';

/** As large as the workshop takes a list. */
const maxBytes = 4_000_000;
/** More lines would be a wall; the count tells of the rest. */
const maxShown = 200;

export interface PriceListSheetProps {
  readonly onClose: () => void;
  /** Told what was done, in a sentence. */
  readonly onBrought: (sentence: string) => void;
}

export function PriceListSheet({ onClose, onBrought }: PriceListSheetProps) {
  const { workshop } = useWorkshop();
  const { make: bringIn } = useChange('bringInPriceList');
  const [file, setFile] = useState<ChosenFile | null>(null);
  const [list, setList] = useState<PriceList | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);

  const choose = async (chosen: ChosenFile) => {
    setFile(chosen);
    setList(null);
    const answer = await ask(workshop, 'checkPriceList', { text: fileText(chosen.bytes) });
    setProblems(answer.ok ? answer.value.problems : answer.problems);
    setList(answer.ok ? answer.value : null);
  };
  const save = async (): Promise<readonly Problem[]> => {
    if (!file)
      return [
        {
          where: say('price-list-sheet.a-file'),
          what: say('price-list-sheet.is-not-chosen'),
          fix: say('price-list-sheet.choose-a-csv-file'),
        },
      ];
    if (problems.length > 0) {
      const what = say('price-list-sheet.has-lines-that-cannot-be-brought');
      return [
        {
          where: say('price-list-sheet.the-list'),
          what,
          fix: say('price-list-sheet.mend-them-in-the-file-and'),
        },
      ];
    }
    const answer = await bringIn({ text: fileText(file.bytes) });
    if (!answer.ok) return answer.problems;
    const { addedCount, changedCount } = answer.value;
    onBrought(say('price-list-sheet.offers-were-added-and-changed', { addedCount, changedCount }));
    return [];
  };

  return (
    <FormSheet
      title={say('price-list-sheet.bring-in-a-price-list')}
      saveLabel={say('price-list-sheet.bring-it-in')}
      onClose={onClose}
      onSave={save}
    >
      <FileChoice
        label={say('price-list-sheet.price-list')}
        hint={say('price-list-sheet.a-csv-file-with-one-offer')}
        accept=".csv,text/csv"
        chosen={file}
        maxBytes={maxBytes}
        onChoose={(chosen) => void choose(chosen)}
      />
      <Problems problems={problems.slice(0, maxShown)} />
      {list && list.unread.length > 0 && (
        <p className="quiet">
          {say('price-list-sheet.columns-that-are-not-read', { unread: list.unread.join(', ') })}
        </p>
      )}
      {list && list.rows.length > 0 && <Rows rows={list.rows} />}
      <details className={style.columns}>
        <summary>{say('price-list-sheet.the-columns-of-a-list')}</summary>
        <p>{say('price-list-sheet.the-first-line-names-them-in')}</p>
        <p>{say('price-list-sheet.a-heading-may-name-another-unit')}</p>
      </details>
    </FormSheet>
  );
}

function Rows({ rows }: { rows: readonly PriceRow[] }) {
  const count = (does: PriceRow['does']) => rows.filter((row) => row.does === does).length;
  const news = rows.filter(({ does }) => does !== 'nothing new');
  return (
    <section aria-label={say('price-list-sheet.what-the-list-would-do')}>
      <p>
        {say('price-list-sheet.it-adds-changes-and-say-nothing', {
          count: count('adds'),
          count2: count('changes'),
          count3: count('nothing new'),
        })}
      </p>
      <ul className={style.rows}>
        {news.slice(0, maxShown).map((row) => (
          <Line key={row.line} row={row} />
        ))}
      </ul>
    </section>
  );
}

function Line({ row: { itemName, offer, before } }: { row: PriceRow }) {
  const system = useSystem();
  return (
    <li className={style.line}>
      <span>
        {itemName}
        <span className="quiet small">
          {' '}
          {offer.supplier}, {sellingWords(offer.unit, system)}
        </span>
      </span>
      <span>
        {before && (
          <span className="quiet">
            <Money amountMinor={before.priceMinor} /> →{' '}
          </span>
        )}
        <Money amountMinor={offer.priceMinor} />
      </span>
    </li>
  );
}
