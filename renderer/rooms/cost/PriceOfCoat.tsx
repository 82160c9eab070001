/** From material to price: work, overhead and what is put on top, by rules that hold for the whole workshop. */
import { codeWords } from '../../../shared-core/wording/code-words.ts';
import { say } from '../../../shared-core/wording/say.ts';
import { type ReactNode, useRef, useState } from 'react';
import {
  type Addition,
  isWorkSaid,
  type Overhead,
  type Price,
  type PriceRules,
  priceSheet,
  defaultPriceRules,
} from '../../../shared-core/cost/price.ts';
import { additionWords, noPriceWords, shareWords } from '../../../shared-core/cost/price-words.ts';
import { labourMinutesPerCoat } from '../../../shared-core/plan/model/coat-plan.ts';
import { setLabourMinutes } from '../../../shared-core/plan/edits/labour.ts';
import { coatTotal } from '../../../shared-core/plan/model/sizes.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import type { Settings } from '../../../shared-core/contract/schemas.ts';
import { useChange } from '../../client/queries/changes.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { ChoiceField } from '../../parts/forms/Field.tsx';
import { Money } from '../../parts/figures/Figure.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { SettledField } from '../../parts/forms/SettledField.tsx';
import { DataTable } from '../../parts/tables/DataTable.tsx';
import style from './PriceOfCoat.module.css';

/** Where the maker begins to count work or overhead; both are theirs to change. */
const firstHourMinor = 2000;
const firstOverhead = { share: 0.1, perCoatMinor: 500 };

export function PriceOfCoat() {
  const { input, estimate, edit } = useCoat('input', 'estimate', 'edit');
  const { facts } = useWorkshop();
  const { make: saveSettings } = useChange('saveSettings');
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  // A change builds on what was saved last, whatever the screen still shows: they go one after another.
  const saved = useRef<Settings | null>(null);
  const lastSaving = useRef<Promise<void>>(Promise.resolve());
  if (!input || !estimate) return null;
  const rules = facts.settings.pricing ?? defaultPriceRules;
  const sheet = priceSheet(input.plan, estimate.cost, rules);
  const count = coatTotal(input.plan);
  const save = async (part: Partial<PriceRules>) => {
    const settings = saved.current ?? facts.settings;
    const pricing = { ...(settings.pricing ?? defaultPriceRules), ...part };
    const answer = await saveSettings({ ...settings, pricing });
    setProblems(answer.ok ? [] : answer.problems);
    if (answer.ok) saved.current = answer.value;
  };
  const setRules = (part: Partial<PriceRules>): Promise<void> => {
    lastSaving.current = lastSaving.current.then(() => save(part));
    return lastSaving.current;
  };
  const setMinutes = async (minutes: number) => {
    const answer = await edit((plan) => setLabourMinutes(plan, minutes));
    setProblems(answer.ok ? [] : answer.problems);
  };
  const priced = (price: Price | null) => ({
    coatMinor: price?.priceMinor ?? null,
    batchMinor: price && price.priceMinor * count,
    isSum: true,
  });
  const priceRows = (): readonly PriceLine[] => [
    {
      name: say('common.material'),
      coatMinor: sheet.coat.materialMinor,
      batchMinor: sheet.batch.materialMinor,
      how: <p className="quiet small">{say('price-of-coat.waste-between-the-pieces-is-in')}</p>,
    },
    {
      name: say('price-of-coat.work'),
      coatMinor: sheet.coat.labourMinor,
      batchMinor: sheet.batch.labourMinor,
      how: (
        <>
          <ChoiceField
            label={say('price-of-coat.work-is')}
            value={rules.hourlyRateMinor !== null ? 'counted' : rules.isWorkLeftOut ? 'not counted' : ''}
            options={[
              { value: 'counted', label: say('price-of-coat.paid-by-the-hour') },
              { value: 'not counted', label: say('price-of-coat.not-counted') },
            ]}
            emptyLabel={say('price-of-coat.not-said-yet')}
            onChange={(next) =>
              void setRules({
                hourlyRateMinor: next === 'counted' ? firstHourMinor : null,
                isWorkLeftOut: next === 'not counted',
              })
            }
          />
          {rules.hourlyRateMinor !== null && (
            <>
              <SettledField
                label={say('price-of-coat.rate-of-an-hour')}
                quantity="money"
                value={rules.hourlyRateMinor}
                onSet={(hourlyRateMinor) => void setRules({ hourlyRateMinor })}
              />
              <SettledField
                label={say('price-of-coat.work-on-one-coat-your-estimate')}
                quantity="duration"
                value={labourMinutesPerCoat(input.plan)}
                max={100_000}
                onSet={(minutes) => void setMinutes(minutes)}
              />
            </>
          )}
        </>
      ),
    },
    {
      name: say('price-of-coat.overhead'),
      coatMinor: sheet.coat.overheadMinor,
      batchMinor: sheet.batch.overheadMinor,
      how: <OverheadFields overhead={rules.overhead} onChange={(overhead) => void setRules({ overhead })} />,
    },
    {
      name: say('common.cost'),
      coatMinor: sheet.coat.costMinor,
      batchMinor: sheet.batch.costMinor,
      isSum: true,
    },
    {
      name: say('common.wholesale'),
      ...priced(sheet.wholesale),
      how: (
        <AdditionFields
          name={say('common.wholesale')}
          of="cost"
          price={sheet.wholesale}
          addition={rules.wholesale}
          onChange={(wholesale) => void setRules({ wholesale })}
        />
      ),
    },
    {
      name: say('common.retail'),
      ...priced(sheet.retail),
      how: (
        <AdditionFields
          name={say('common.retail')}
          of="wholesale"
          price={sheet.retail}
          addition={rules.retail}
          onChange={(retail) => void setRules({ retail })}
        />
      ),
    },
  ];
  return (
    <>
      <p className="quiet">
        {say('price-of-coat.rates-and-factors-hold-for-all')}
        {facts.settings.pricing === undefined && ` ${say('price-of-coat.until-you-change-them-cost-is')}`}
      </p>
      {!isWorkSaid(rules) && <p role="status">{sentenceCase(noPriceWords())}.</p>}
      <Problems problems={problems} />
      <DataTable
        className={style.price}
        rows={priceRows()}
        keyOf={({ name }) => name}
        rowProps={({ isSum }) => ({ className: isSum ? style.sum : undefined })}
        columns={[
          { head: say('price-of-coat.what'), isRowHead: true, cell: ({ name }) => name },
          {
            head: say('price-of-coat.how-it-is-reckoned'),
            cell: ({ how }) => <div className={style.fields}>{how}</div>,
          },
          {
            head: say('price-of-coat.a-coat'),
            align: 'end',
            cell: ({ coatMinor }) => coatMinor !== null && <Money amountMinor={coatMinor} />,
          },
          {
            key: 'batch',
            head: say('price-of-coat.all', { count }),
            align: 'end',
            cell: ({ batchMinor }) => batchMinor !== null && <Money amountMinor={batchMinor} />,
          },
        ]}
      />
      {estimate.cost.isIncomplete && (
        <p className="quiet">{say('price-of-coat.some-of-the-material-has-no')}</p>
      )}
    </>
  );
}

interface PriceLine {
  readonly name: string;
  /** null: no amount. */
  readonly coatMinor: number | null;
  readonly batchMinor: number | null;
  readonly isSum?: boolean;
  readonly how?: ReactNode;
}

function OverheadFields({
  overhead,
  onChange,
}: {
  overhead: Overhead | null;
  onChange: (overhead: Overhead | null) => void;
}) {
  const choose = (kind: Overhead['kind'] | 'left out' | '') => {
    if (kind === 'share') onChange({ kind, ratio: firstOverhead.share });
    else if (kind === 'per coat') onChange({ kind, amountMinor: firstOverhead.perCoatMinor });
    else onChange(null);
  };
  return (
    <>
      <ChoiceField
        label={say('price-of-coat.overhead-is')}
        value={overhead?.kind ?? 'left out'}
        options={[
          { value: 'left out', label: say('common.left-out') },
          { value: 'share', label: say('price-of-coat.a-share-of-material-and-work') },
          { value: 'per coat', label: say('price-of-coat.a-sum-for-each-coat') },
        ]}
        onChange={choose}
      />
      {overhead?.kind === 'share' && (
        <SettledField
          label={say('price-of-coat.share-of-material-and-work')}
          quantity="ratio"
          value={overhead.ratio}
          max={10}
          onSet={(ratio) => onChange({ kind: 'share', ratio })}
        />
      )}
      {overhead?.kind === 'per coat' && (
        <SettledField
          label={say('price-of-coat.overhead-of-a-coat')}
          quantity="money"
          value={overhead.amountMinor}
          onSet={(amountMinor) => onChange({ kind: 'per coat', amountMinor })}
        />
      )}
    </>
  );
}

interface AdditionFieldsProps {
  readonly name: string;
  readonly of: 'cost' | 'wholesale';
  /** null while nothing is said of the work. */
  readonly price: Price | null;
  readonly addition: Addition;
  readonly onChange: (addition: Addition) => void;
}

/** A price by margin or mark-up, the formula beside it, and what of it is left above the cost of the coat. */
function AdditionFields({ name, of, price, addition, onChange }: AdditionFieldsProps) {
  const max = (kind: Addition['kind']) => (kind === 'margin' ? 0.95 : 20);
  return (
    <>
      <ChoiceField
        label={say('price-of-coat.by', { name })}
        value={addition.kind}
        options={[
          { value: 'margin', label: codeWords('margin') },
          { value: 'mark-up', label: codeWords('mark-up') },
        ]}
        onChange={(kind) =>
          kind !== '' && onChange({ kind, ratio: Math.min(addition.ratio, kind === 'margin' ? 0.5 : 20) })
        }
      />
      <SettledField
        label={say('price-of-coat.addition', { name, kind: codeWords(addition.kind) })}
        quantity="ratio"
        value={addition.ratio}
        max={max(addition.kind)}
        onSet={(ratio) => onChange({ ...addition, ratio })}
      />
      <p className={`${style.formula} small number`}>
        {additionWords(of, addition)}
        {price && price.marginRatio !== null && price.markUpRatio !== null && (
          <span className="quiet">
            {say('price-of-coat.above-the-coat-s-cost-margin', {
              shareWords: shareWords(price.marginRatio),
              shareWords2: shareWords(price.markUpRatio),
            })}
          </span>
        )}
      </p>
    </>
  );
}
