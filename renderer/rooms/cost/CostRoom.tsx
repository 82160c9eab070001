/** What a coat and the batch cost, and what a coat is sold for; each way of looking at it under a tab of its own. */
import { say } from '../../../shared-core/wording/say.ts';
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
  { name: say('common.material'), view: MaterialCost },
  { name: say('common.price'), view: PriceOfCoat },
  { name: say('cost-room.as-cut'), view: CutCost },
  { name: say('cost-room.side-by-side'), view: SideBySide },
  { name: say('cost-room.over-time'), view: OverTime },
];

export function CostRoom() {
  const { input, estimate } = useCoat('input', 'estimate');
  const { settings } = useWorkshop().facts;
  const [shown, setShown] = useState(views[0]?.name ?? '');
  if (!input) return null;
  if (!estimate)
    return (
      <RoomAwaited title={say('common.cost')} lead={say('cost-room.working-out-what-the-material-costs')} />
    );
  return (
    <>
      <RoomHead
        title={say('common.cost')}
        lead={say('cost-room.what-goes-into-a-coat-and')}
        actions={
          <TableActions
            makeTable={() =>
              costTable(
                input,
                estimate.cost,
                settings.pricing ? priceSheet(input.plan, estimate.cost, settings.pricing) : null,
                settings,
              )
            }
            name={say('cost-room.cost', { planName: input.plan.name })}
          />
        }
      />
      <Headline />
      <Tabs.Root value={shown} onValueChange={(next) => setShown(String(next))} className={style.views}>
        <Tabs.List className={style.tabs} aria-label={say('cost-room.cost-by')}>
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
        <Headed
          name={say('cost-room.one-coat')}
          note={say('cost-room.material')}
          amountMinor={dearestMinor}
        />
        <Headed
          name={say('cost-room.the-batch-of-coats', { count })}
          note={say('cost-room.material')}
          amountMinor={batchMinor}
        />
        {prices?.wholesale && prices.retail && (
          <>
            <Headed
              name={say('common.wholesale')}
              note={say('common.one-coat')}
              amountMinor={prices.wholesale.priceMinor}
            />
            <Headed
              name={say('common.retail')}
              note={say('common.one-coat')}
              amountMinor={prices.retail.priceMinor}
            />
          </>
        )}
      </dl>
      {dearestMinor !== perCoatMinor.at(-1) && (
        <p className="quiet small">{say('cost-room.the-batch-does-not-divide-evenly')}</p>
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
