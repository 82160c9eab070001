/** What a coat and the batch cost, and what a coat is sold for; each way of looking at it under a tab of its own. */
import { Tabs } from '@base-ui/react/tabs';
import { type ReactNode, useState } from 'react';
import { costTable } from '../../../shared-core/cost/cost-table.ts';
import { priceSheet } from '../../../shared-core/cost/price.ts';
import { coatTotal } from '../../../shared-core/plan/model/sizes.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { Money } from '../../parts/figures/Figure.tsx';
import { RoomAwaited } from '../../parts/layout/EstimateAwaited.tsx';
import { RoomHead } from '../../parts/layout/RoomHead.tsx';
import { TableActions } from '../../parts/tables/TableActions.tsx';
import style from './CostRoom.module.css';
import { CutCost } from './CutCost.tsx';
import { MaterialCost } from './MaterialCost.tsx';
import { OverTime } from './OverTime.tsx';
import { PriceOfCoat } from './PriceOfCoat.tsx';
import { SideBySide } from './SideBySide.tsx';

const views: readonly { readonly name: string; readonly view: () => ReactNode }[] = [
  { name: 'Material', view: MaterialCost },
  { name: 'Price', view: PriceOfCoat },
  { name: 'As cut', view: CutCost },
  { name: 'Side by side', view: SideBySide },
  { name: 'Over time', view: OverTime },
];

export function CostRoom() {
  const { input, estimate } = useCoat('input', 'estimate');
  const { settings } = useWorkshop().facts;
  const [shown, setShown] = useState(views[0]?.name ?? '');
  if (!input) return null;
  if (!estimate) return <RoomAwaited title="Cost" lead="Working out what the material costs." />;
  return (
    <>
      <RoomHead
        title="Cost"
        lead="What goes into a coat, and what it is sold for."
        actions={
          <TableActions
            table={costTable(
              input,
              estimate.cost,
              settings.pricing ? priceSheet(input.plan, estimate.cost, settings.pricing) : null,
              settings,
            )}
            name={`${input.plan.name} cost`}
          />
        }
      />
      <Headline />
      <Tabs.Root value={shown} onValueChange={(next) => setShown(String(next))} className={style.views}>
        <Tabs.List className={style.tabs} aria-label="Cost by">
          {views.map(({ name }) => (
            <Tabs.Tab key={name} value={name} className={`${style.tab} eased`}>
              {name}
            </Tabs.Tab>
          ))}
        </Tabs.List>
        {views.map(({ name, view: View }) => (
          <Tabs.Panel key={name} value={name} tabIndex={-1} className={style.view}>
            <View />
          </Tabs.Panel>
        ))}
      </Tabs.Root>
    </>
  );
}

/** The figures that are asked for first: material of one coat and of the batch, and the prices where rules are set. */
function Headline() {
  const { input, estimate } = useCoat('input', 'estimate');
  const { pricing } = useWorkshop().facts.settings;
  if (!input || !estimate) return null;
  const { perCoatMinor, batchMinor } = estimate.cost;
  const count = coatTotal(input.plan);
  const dearestMinor = perCoatMinor[0] ?? 0;
  const prices = pricing ? priceSheet(input.plan, estimate.cost, pricing) : null;
  return (
    <>
      <dl className={style.headline}>
        <Headed name="One coat" note="material" amountMinor={dearestMinor} />
        <Headed
          name={`The batch of ${count} ${count === 1 ? 'coat' : 'coats'}`}
          note="material"
          amountMinor={batchMinor}
        />
        {prices?.wholesale && prices.retail && (
          <>
            <Headed name="Wholesale" note="one coat" amountMinor={prices.wholesale.priceMinor} />
            <Headed name="Retail" note="one coat" amountMinor={prices.retail.priceMinor} />
          </>
        )}
      </dl>
      {dearestMinor !== perCoatMinor.at(-1) && (
        <p className="quiet small">
          The batch does not divide evenly; this is the coat that carries the odd cent.
        </p>
      )}
    </>
  );
}

function Headed({ name, note, amountMinor }: { name: string; note: string; amountMinor: number }) {
  return (
    <div className={style.figure}>
      <dt className="quiet">{name}</dt>
      <dd>
        <Money amountMinor={amountMinor} />
      </dd>
      <dd className={`${style.about} quiet small`}>{note}</dd>
    </div>
  );
}
