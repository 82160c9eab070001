/** The same coat in its other sizes and in other cloths of the stash, side by side, with the lays behind the figures. */
import { say } from '../../../shared-core/wording/say.ts';
import { codeWords } from '../../../shared-core/wording/code-words.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import { useState } from 'react';
import type { FlowInput } from '../../../shared-core/contract/contract.ts';
import {
  asPlanned,
  itemVariant,
  sizeVariants,
  type Variant,
  type VariantResult,
} from '../../../shared-core/flow/variants.ts';
import { isWorkSaid, type Price, priceSheet } from '../../../shared-core/cost/price.ts';
import { layWords } from '../../../shared-core/lay/lay-words.ts';
import { slotById } from '../../../shared-core/plan/model/coat-plan.ts';
import { coatTotal } from '../../../shared-core/plan/model/sizes.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { slotName } from '../../client/wording/coat-words.ts';
import { useSystem, useWorkshop } from '../../client/workshop.ts';
import { Amount } from '../../parts/figures/Amount.tsx';
import { Button } from '../../parts/forms/Button.tsx';
import { ChoiceField, FlagField } from '../../parts/forms/Field.tsx';
import { Money } from '../../parts/figures/Figure.tsx';
import { LayPicture } from '../../parts/drawing/LayPicture.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { DataTable } from '../../parts/tables/DataTable.tsx';
import style from './SideBySide.module.css';
import { useVariantRun } from './variant-run.ts';

export function SideBySide() {
  const { input } = useCoat('input');
  const run = useVariantRun();
  const [leftOut, setLeftOut] = useState<ReadonlySet<string>>(new Set());
  const [others, setOthers] = useState<readonly { readonly slotId: string; readonly itemId: string }[]>([]);
  const [shownId, setShownId] = useState('');
  if (!input) return null;
  const sizes = sizeVariants(input.plan);
  const items = others.flatMap(({ slotId, itemId }) => {
    const onShelf = input.shelf.find(({ item }) => item.id === itemId);
    const isStill = input.plan.slots.some((slot) => slot.id === slotId && slot.itemId !== itemId);
    return onShelf && isStill ? [itemVariant(input.plan, slotId, onShelf.item)] : [];
  });
  const chosen = [...sizes, ...items].filter((variant) => !leftOut.has(variant.id));
  const shown = run.results.find(({ variant }) => variant.id === shownId) ?? run.results[0];
  const setChosen = (variant: Variant, isChosen: boolean) =>
    setLeftOut((before) => {
      const next = new Set(before);
      if (isChosen) next.delete(variant.id);
      else next.add(variant.id);
      return next;
    });
  return (
    <>
      <section className={style.choice} aria-label={say('side-by-side.what-is-compared')}>
        {[...sizes, ...items].map((variant) => (
          <FlagField
            key={variant.id}
            label={sentenceCase(variant.name)}
            value={!leftOut.has(variant.id)}
            onChange={(isChosen) => setChosen(variant, isChosen)}
          />
        ))}
        <AddItem input={input} onAdd={(slotId, itemId) => setOthers([...others, { slotId, itemId }])} />
        <div className={style.go}>
          <Button
            look="main"
            disabled={chosen.length === 0 || run.progress !== null}
            onClick={() => void run.begin(input, [asPlanned(input.plan), ...chosen])}
          >
            {say('side-by-side.work-them-out')}
          </Button>
          <p className="quiet small" role="status">
            {run.progress
              ? say('side-by-side.of-done-now', {
                  doneCount: run.progress.doneCount,
                  allCount: run.progress.allCount,
                  now: run.progress.now,
                })
              : chosen.length === 0
                ? say('side-by-side.choose-a-cloth-or-give-the')
                : say('side-by-side.each-goes-the-whole-road-for', {
                    coatsWords: coatsWords(coatTotal(input.plan)),
                    ifCuttingsCount: input.cuttings.length > 0 ? 'yes' : 'no',
                  })}
          </p>
          {run.progress && (
            <Button look="quiet" onClick={run.stop}>
              {say('side-by-side.stop-comparing')}
            </Button>
          )}
        </div>
      </section>
      <Problems problems={run.problems} />
      {run.results.length > 0 && run.from !== input && (
        <p className={style.old}>{say('side-by-side.the-plan-or-the-stash-has')}</p>
      )}
      {run.results.length > 0 && (
        <Results results={run.results} shownId={shown?.variant.id ?? ''} onShow={setShownId} />
      )}
      {shown && <Lays result={shown} />}
    </>
  );
}

function coatsWords(count: number): string {
  return say('side-by-side.coats', { count });
}

/** Another item of the stash for one of the slots. */
function AddItem({ input, onAdd }: { input: FlowInput; onAdd: (slotId: string, itemId: string) => void }) {
  const [slotId, setSlotId] = useState(input.plan.slots[0]?.id ?? '');
  const [itemId, setItemId] = useState('');
  const slot = input.plan.slots.find((each) => each.id === slotId);
  const fitting = input.shelf.filter(({ item }) => item.kind === slot?.kind && item.id !== slot?.itemId);
  return (
    <div className={style.add}>
      <ChoiceField
        label={say('common.slot')}
        value={slotId}
        options={input.plan.slots.map(({ id, name }) => ({ value: id, label: name }))}
        onChange={(next) => {
          setSlotId(next);
          setItemId('');
        }}
      />
      <ChoiceField
        label={say('side-by-side.another-item-of-the-stash')}
        value={itemId}
        options={fitting.map(({ item }) => ({ value: item.id as string, label: item.name }))}
        onChange={setItemId}
        emptyLabel={
          fitting.length === 0 ? say('side-by-side.none-of-this-kind') : say('side-by-side.choose-one')
        }
      />
      <Button
        disabled={itemId === ''}
        onClick={() => {
          onAdd(slotId, itemId);
          setItemId('');
        }}
      >
        {say('side-by-side.add-to-compare')}
      </Button>
    </div>
  );
}

interface ResultsProps {
  readonly results: readonly VariantResult[];
  readonly shownId: string;
  readonly onShow: (id: string) => void;
}

function Results({ results, shownId, onShow }: ResultsProps) {
  const { pricing: rules } = useWorkshop().facts.settings;
  // No price without a word on the work.
  const pricing = rules && isWorkSaid(rules) ? rules : null;
  const planned = results[0];
  return (
    <DataTable
      rows={results}
      keyOf={({ variant }) => variant.id}
      rowProps={({ variant }) => ({ className: variant.id === shownId ? style.shown : undefined })}
      columns={[
        { head: say('side-by-side.variant'), cell: ({ variant }) => sentenceCase(variant.name) },
        {
          head: say('side-by-side.laid-in-all'),
          align: 'end',
          cell: ({ usedMm }) => <Amount kind="cloth" amount={usedMm} />,
        },
        { head: say('side-by-side.short'), align: 'end', cell: ({ estimate }) => shortWords(estimate) },
        {
          head: say('common.to-buy-2'),
          align: 'end',
          cell: ({ toBuyMinor }) => <Money amountMinor={toBuyMinor} />,
        },
        {
          head: say('side-by-side.material-a-coat'),
          align: 'end',
          cell: ({ coatMinor, estimate }) => (
            <>
              <Money amountMinor={coatMinor} />
              {estimate.cost.isIncomplete && (
                <span className="quiet small">{` ${say('side-by-side.not-complete')}`}</span>
              )}
            </>
          ),
        },
        {
          head: say('side-by-side.against-the-plan'),
          align: 'end',
          cell: (result) =>
            result !== planned &&
            planned && <Money amountMinor={result.coatMinor - planned.coatMinor} withSign />,
        },
        ...(pricing
          ? [
              {
                head: say('common.retail'),
                align: 'end' as const,
                cell: ({ variant, estimate }: VariantResult) => (
                  <RetailOf price={priceSheet(variant.plan, estimate.cost, pricing).retail} />
                ),
              },
            ]
          : []),
        {
          head: say('side-by-side.lays'),
          isHeadHidden: true,
          align: 'end',
          cell: ({ variant }) => (
            <Button
              look="quiet"
              aria-pressed={variant.id === shownId}
              aria-label={say('side-by-side.lays-of', { variantName: variant.name })}
              onClick={() => onShow(variant.id)}
            >
              {say('side-by-side.lays')}
            </Button>
          ),
        },
      ]}
    />
  );
}

function shortWords({ cover }: VariantResult['estimate']): string {
  const shortCount = cover.filter(({ state }) => state === 'short' || state === 'open').length;
  if (shortCount === 0) return codeWords('nothing');
  return `${shortCount} ${say('side-by-side.slots', { shortCount })}`;
}

function Lays({ result }: { result: VariantResult }) {
  const { input } = useCoat('input');
  const system = useSystem();
  if (!input) return null;
  const { variant, estimate } = result;
  return (
    <section aria-label={say('side-by-side.lays-of', { variantName: variant.name })} className={style.lays}>
      <h2>{say('side-by-side.the-lays-behind-it', { variantName: sentenceCase(variant.name) })}</h2>
      <ul className={style.pictures}>
        {estimate.lays.map((slotLay) => {
          const itemId = slotById(variant.plan, slotLay.slotId).itemId;
          const item = input.shelf.find((onShelf) => onShelf.item.id === itemId)?.item;
          const name = sentenceCase(slotName(input, slotLay.slotId));
          return (
            <li key={slotLay.slotId} className={style.picture}>
              <h3>{name}</h3>
              <p className="quiet small">{item?.name ?? say('common.nothing-chosen')}</p>
              <LayPicture slotLay={slotLay} label={say('side-by-side.lay-of', { name })} />
              <p className="small">{layWords(slotLay.result, system)}</p>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function RetailOf({ price }: { price: Price | null }) {
  return price && <Money amountMinor={price.priceMinor} />;
}
