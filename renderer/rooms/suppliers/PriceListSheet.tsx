/** A supplier's price list from a CSV file: what it would do is shown first, line by line; one click then brings all of it in. */
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
    if (!file) return [{ where: 'A file', what: 'is not chosen', fix: 'Choose a CSV file.' }];
    if (problems.length > 0) {
      const what = 'has lines that cannot be brought in';
      return [{ where: 'The list', what, fix: 'Mend them in the file and choose it again.' }];
    }
    const answer = await bringIn({ text: fileText(file.bytes) });
    if (!answer.ok) return answer.problems;
    const { addedCount, changedCount } = answer.value;
    onBrought(
      `${addedCount} ${addedCount === 1 ? 'offer was' : 'offers were'} added and ${changedCount} changed.`,
    );
    return [];
  };

  return (
    <FormSheet title="Bring in a price list" saveLabel="Bring it in" onClose={onClose} onSave={save}>
      <FileChoice
        label="Price list"
        hint="A CSV file with one offer a line"
        accept=".csv,text/csv"
        chosen={file}
        maxBytes={maxBytes}
        onChoose={(chosen) => void choose(chosen)}
      />
      <Problems problems={problems.slice(0, maxShown)} />
      {list && list.unread.length > 0 && (
        <p className="quiet">Columns that are not read: {list.unread.join(', ')}.</p>
      )}
      {list && list.rows.length > 0 && <Rows rows={list.rows} />}
      <details className={style.columns}>
        <summary>The columns of a list</summary>
        <p>
          The first line names them, in any order: supplier, item (as it is called in the stash), sold as (by
          length, sheet, spool, by mass, pack or each), price, and priced on (2026-10-12). Then what the way
          of selling asks for: step or length and width in cm, thread in m, mass in g, pieces. Where several
          items have one name: kind and colour. If you like: at least, and breaks, such as “500 cm = 1.05; 20
          m = 0.98”.
        </p>
        <p>
          A heading may name another unit, such as width (mm), and a cell may carry its own, such as 1/8 yd.
          Save the offers you have as CSV to see an example.
        </p>
      </details>
    </FormSheet>
  );
}

function Rows({ rows }: { rows: readonly PriceRow[] }) {
  const count = (does: PriceRow['does']) => rows.filter((row) => row.does === does).length;
  const news = rows.filter(({ does }) => does !== 'nothing new');
  return (
    <section aria-label="What the list would do">
      <p>
        It adds {count('adds')}, changes {count('changes')}, and {count('nothing new')} say nothing new.
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
