/** What one coat is when it is sewn: its weight, its label, its warmth, how it is cared for, and what to mind before it is sold. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import type { MeasuredCoat } from '../../../shared-core/plan/model/coat-plan.ts';
import { setMeasured } from '../../../shared-core/plan/edits/measured.ts';
import type { FinishedCoat } from '../../../shared-core/requirement/finished/finished-coat.ts';
import {
  cloWords,
  massWords,
  packedWords,
} from '../../../shared-core/requirement/finished/finished-words.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { finishedOf } from '../../client/coat/finished-coat.ts';
import { useSystem } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { ChoiceField } from '../../parts/forms/Field.tsx';
import { OwnFigure, type OwnFigureProps } from '../../parts/forms/OwnFigure.tsx';
import { RoomHead } from '../../parts/layout/RoomHead.tsx';
import { CareOfCoat } from './CareOfCoat.tsx';
import { FibreLabelText } from './FibreLabelText.tsx';
import style from './FinishedRoom.module.css';
import { Selling } from './Selling.tsx';
import { Warmth } from './Warmth.tsx';
import { WeightBySlot } from './WeightBySlot.tsx';

export function FinishedRoom() {
  const { input } = useCoat('input');
  const [size, setSize] = useState<string | null>(null);
  if (!input) return null;
  const { coats, care } = finishedOf(input);
  const coat = coats.find((each) => each.size === size) ?? coats[0];
  if (!coat) return null;
  return (
    <>
      <RoomHead
        title={say('finished-room.finished')}
        lead={say('finished-room.what-one-coat-is-when-it')}
        actions={<Button onClick={() => window.print()}>{say('common.print')}</Button>}
      />
      {coats.length > 1 && (
        <div className={style.size}>
          <ChoiceField
            label={say('common.size')}
            value={coat.size}
            options={coats.map((each) => ({ value: each.size, label: each.size }))}
            onChange={(next) => setSize(next || null)}
          />
        </div>
      )}
      <Headline coat={coat} />
      <WeightBySlot coat={coat} />
      <FibreLabelText label={coat.label} />
      <Warmth coat={coat} />
      <CareOfCoat care={care} />
      <Selling />
    </>
  );
}

interface Measure {
  readonly what: keyof MeasuredCoat;
  readonly title: string;
  readonly shown: string;
  readonly own: Pick<OwnFigureProps, 'label' | 'quantity' | 'ask' | 'isOwn' | 'computed'> &
    Partial<Pick<OwnFigureProps, 'unit' | 'hint'>>;
}

/** The three figures that a maker can check on a sewn coat, and put in as measured. */
function Headline({ coat }: { coat: FinishedCoat }) {
  const { input, edit } = useCoat('input', 'edit');
  const system = useSystem();
  const isAtHand = coat.size === input?.plan.size;
  const measures: readonly Measure[] = [
    {
      what: 'massG',
      title: say('finished-room.one-coat-weighs'),
      shown: massWords(coat, system),
      own: {
        label: say('finished-room.weight-of-one-coat'),
        quantity: 'mass',
        ask: say('finished-room.i-have-weighed-one'),
        isOwn: coat.isMassMeasured,
        computed: showQuantity('mass', coat.mass.knownG, { system }),
      },
    },
    {
      what: 'clo',
      title: say('finished-room.how-warm-it-is'),
      shown: cloWords(coat) ?? say('common.not-known-yet'),
      own: {
        label: say('finished-room.warmth-of-one-coat'),
        quantity: 'warmth',
        hint: say('finished-room.clo-or-tog-of-the-whole'),
        ask: say('finished-room.i-have-it-measured'),
        isOwn: coat.measuredClo !== null,
        computed: cloWords({ ...coat, measuredClo: null }),
      },
    },
    {
      what: 'packedCm3',
      title: say('finished-room.packed-in-a-sack'),
      shown: packedWords(coat, system) ?? say('common.not-known-yet'),
      own: {
        label: say('finished-room.packed-size-of-one-coat'),
        quantity: 'volume',
        unit: { metric: 'L', imperial: 'in3' },
        ask: say('finished-room.i-have-packed-one'),
        isOwn: coat.measuredPackedCm3 !== null,
        computed: packedWords({ ...coat, measuredPackedCm3: null }, system),
      },
    },
  ];
  return (
    <>
      <dl className={style.headline}>
        {measures.map(({ what, title, shown, own }) => (
          <div key={what} className={style.figure}>
            <dt className="quiet">{title}</dt>
            <dd className={`${style.value} number`}>{shown}</dd>
            {isAtHand && (
              <dd>
                <OwnFigure {...own} onSet={(value) => edit((plan) => setMeasured(plan, what, value))} />
              </dd>
            )}
          </div>
        ))}
      </dl>
      {!isAtHand && (
        <p className="quiet small">
          {say('finished-room.bring-size-to-hand-in-the', { coatCount: coat.size })}
        </p>
      )}
    </>
  );
}
