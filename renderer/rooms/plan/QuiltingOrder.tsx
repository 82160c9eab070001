/** What comes first, cutting or quilting: for the whole coat, and for slots and pieces that are made in a way of their own. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import type { CoatPlan, QuiltingOrder as Order } from '../../../shared-core/plan/model/coat-plan.ts';
import { editEverySize } from '../../../shared-core/plan/edits/every-size.ts';
import { defaultOrder, defaultPanel } from '../../../shared-core/plan/model/new-plan.ts';
import {
  isQuiltLayer,
  setPieceOrder,
  setPlanOrder,
  setSlotOrder,
  toOutline,
} from '../../../shared-core/plan/model/quilting-order.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useLengthText } from '../../client/wording/length-text.ts';
import { usePlanChange } from '../../client/coat/plan-change.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { ChoiceField } from '../../parts/forms/Field.tsx';
import { OneOf } from '../../parts/forms/OneOf.tsx';
import { OptionalSettledField, SettledField } from '../../parts/forms/SettledField.tsx';
import type { Change } from './piece-change.ts';
import style from './QuiltingOrder.module.css';

type Kind = Order['kind'];

const choices: readonly { readonly value: Kind; readonly label: string; readonly hint: string }[] = [
  {
    value: 'outline',
    label: say('quilting-order.cut-then-quilt'),
    hint: say('quilting-order.to-the-outline-larger-by-the'),
  },
  {
    value: 'rough',
    label: say('quilting-order.rough-cut-quilt-recut'),
    hint: say('quilting-order.with-something-to-spare-all-round'),
  },
  {
    value: 'panel',
    label: say('quilting-order.quilt-a-panel-then-cut'),
    hint: say('quilting-order.all-layers-in-one-piece-as'),
  },
];

/** A slot or a piece that may have an order of its own. */
interface Part {
  readonly key: string;
  readonly name: string;
  readonly own: Order | undefined;
  readonly set: (order: Order | null) => Change;
}

export function QuiltingOrder() {
  const { input } = useCoat('input');
  const lengthText = useLengthText();
  const { problem, change } = usePlanChange();
  if (!input?.plan.quilting) return null;
  const { plan } = input;
  const parts = partsOf(plan, lengthText);
  if (parts.length === 0) return null;
  const order = plan.quilting?.order ?? toOutline;
  const choose = (next: Order) => void change((now) => setPlanOrder(now, next, lengthText));
  return (
    <section aria-labelledby="quilting-order">
      <h2 id="quilting-order" className={style.title}>
        {say('quilting-order.cutting-and-quilting')}
      </h2>
      <div className={style.choices}>
        <OneOf
          label={say('quilting-order.order-of-cutting-and-quilting')}
          value={order.kind}
          options={choices}
          onChange={(kind) => choose(orderOfKind(kind))}
        />
      </div>
      <div className={style.fields}>
        <OrderFields order={order} onSet={choose} problem={problem} />
      </div>
      <OwnOrders parts={parts} order={order} />
    </section>
  );
}

function orderOfKind(kind: Kind): Order {
  switch (kind) {
    case 'outline':
      return toOutline;
    case 'rough':
      return defaultOrder;
    case 'panel':
      return defaultPanel;
    default:
      return kind satisfies never;
  }
}

/** What an order of its kind asks for. */
function OrderFields({
  order,
  onSet,
  problem,
}: {
  order: Order;
  onSet: (order: Order) => void;
  problem: string | null;
}) {
  if (order.kind === 'outline') return null;
  const isPanel = order.kind === 'panel';
  return (
    <>
      <SettledField
        label={isPanel ? say('quilting-order.edge-left-unused') : say('quilting-order.to-spare-all-round')}
        quantity="length"
        value={order.marginMm}
        {...(isPanel ? { min: 0 } : { aboveZero: true })}
        onSet={(marginMm) => onSet({ ...order, marginMm })}
        problem={problem}
      />
      {order.kind === 'panel' && (
        <>
          <ChoiceField
            label={say('quilting-order.a-panel-for')}
            value={order.coats}
            options={[
              { value: 'each', label: say('quilting-order.each-coat') },
              { value: 'all', label: say('quilting-order.all-coats-together') },
            ]}
            onChange={(coats) => coats !== '' && onSet({ ...order, coats })}
          />
          <OptionalSettledField
            label={say('quilting-order.width-of-the-panel')}
            quantity="length"
            value={order.widthMm}
            onSet={(widthMm) => onSet({ ...order, widthMm })}
            hint={say('quilting-order.before-quilting-empty-as-the-narrowest')}
            problem={null}
            aboveZero
          />
        </>
      )}
    </>
  );
}

/** Layers of the quilt, then the pieces with lines. */
function partsOf(plan: CoatPlan, text: (mm: number) => string): readonly Part[] {
  const quilted = plan.pieces.filter((piece) => piece.quilted !== null);
  const layers = plan.slots.filter((slot) => quilted.some((piece) => isQuiltLayer(plan, piece, slot)));
  return [
    ...layers.map(
      (slot): Part => ({
        key: `slot ${slot.id}`,
        name: say('quilting-order.the-2', { slotName: slot.name }),
        own: slot.quiltingOrder,
        set: (order) => (now) => setSlotOrder(now, slot.id, order, text),
      }),
    ),
    ...quilted.map(
      (piece): Part => ({
        key: `piece ${piece.id}`,
        name: piece.name,
        own: piece.quiltingOrder,
        set: (order) => (now) =>
          editEverySize(now, piece.id, (each) => setPieceOrder(each, piece.id, order, text)),
      }),
    ),
  ];
}

function OwnOrders({ parts, order }: { parts: readonly Part[]; order: Order }) {
  const adding = usePlanChange();
  const [isAdding, setIsAdding] = useState(false);
  const own = parts.filter((part) => part.own);
  const others = parts.filter((part) => !part.own);
  const add = (key: string) => {
    setIsAdding(false);
    const part = others.find((each) => each.key === key);
    if (part) void adding.change(part.set(order.kind === 'outline' ? defaultOrder : toOutline));
  };
  return (
    <div className={style.own}>
      {own.length > 0 && (
        <ul className={style.rows} aria-label={say('quilting-order.made-in-a-way-of-their')}>
          {own.map((part) => (
            <OwnRow key={part.key} part={part} />
          ))}
        </ul>
      )}
      {isAdding ? (
        <div className={style.fields}>
          <ChoiceField
            label={say('quilting-order.a-slot-or-piece-made-in')}
            value=""
            emptyLabel={say('quilting-order.choose-one')}
            options={others.map(({ key, name }) => ({ value: key, label: sentenceCase(name) }))}
            onChange={add}
            problem={adding.problem}
          />
        </div>
      ) : (
        others.length > 0 && (
          <div>
            <Button look="quiet" onClick={() => setIsAdding(true)}>
              {say('quilting-order.make-a-slot-or-piece-in')}
            </Button>
          </div>
        )
      )}
    </div>
  );
}

function OwnRow({ part }: { part: Part }) {
  const { problem, change } = usePlanChange();
  const own = part.own ?? toOutline;
  const set = (order: Order | null) => void change(part.set(order));
  return (
    <li className={style.row} aria-label={sentenceCase(part.name)}>
      <strong>{sentenceCase(part.name)}</strong>
      <ChoiceField
        label={say('quilting-order.made')}
        value={own.kind}
        options={choices}
        onChange={(kind) => kind !== '' && set(orderOfKind(kind))}
        problem={own.kind === 'outline' ? problem : null}
      />
      <div className={style.rowFields}>
        <OrderFields order={own} onSet={set} problem={problem} />
      </div>
      <Button
        look="quiet"
        aria-label={say('quilting-order.as-the-whole-coat-2', { partName: sentenceCase(part.name) })}
        onClick={() => set(null)}
      >
        {say('quilting-order.as-the-whole-coat')}
      </Button>
    </li>
  );
}
