/** What the coats need, slot by slot, whatever the shelf holds; how each figure was got, and the maker's own in its place. */
import { say } from '../../../shared-core/wording/say.ts';
import { useMemo } from 'react';
import { slotItems } from '../../../shared-core/flow/estimate.ts';
import type { AmountNeed, Need, ShapesNeed } from '../../../shared-core/requirement/need.ts';
import { requirement } from '../../../shared-core/requirement/requirement.ts';
import { trimmingsOf, trimmingsWords } from '../../../shared-core/requirement/cut/trimmings.ts';
import { layWords } from '../../../shared-core/lay/lay-words.ts';
import { takenInAllMm } from '../../../shared-core/lay/washed.ts';
import type { SlotLay } from '../../../shared-core/lay/plan-lay.ts';
import type { FirstWash } from '../../../shared-core/requirement/cut/first-wash.ts';
import { type Slot, slotById } from '../../../shared-core/plan/model/coat-plan.ts';
import { coatTotal } from '../../../shared-core/plan/model/sizes.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { itemById } from '../../client/wording/coat-words.ts';
import { useSystem } from '../../client/workshop.ts';
import { Amount, clothLengthUnit } from '../../parts/figures/Amount.tsx';
import { BasisNote } from '../../parts/figures/BasisNote.tsx';
import { Figure } from '../../parts/figures/Figure.tsx';
import { KindMark } from '../../parts/drawing/KindMark.tsx';
import { RoomHead } from '../../parts/layout/RoomHead.tsx';
import { Filling } from './Filling.tsx';
import { NeedDetail } from './NeedDetail.tsx';
import style from './NeedsRoom.module.css';
import { OwnAmount } from './OwnAmount.tsx';
import { SewingChoices } from './SewingChoices.tsx';
import { SlotMargin, WithMargin } from './SlotMargin.tsx';
import { ThreadByColour } from './ThreadByColour.tsx';
import { WashFirst } from './WashFirst.tsx';

export function NeedsRoom() {
  const { input, estimate } = useCoat('input', 'estimate');
  const panels = estimate?.panels;
  // Amounts follow each change at once; only lengths of cloth, and what is sewn on panels, wait for their lay.
  const needs = useMemo(
    () => (input ? requirement(input.plan, slotItems(input), panels) : []),
    [input, panels],
  );
  if (!input) return null;
  const coatCount = coatTotal(input.plan);
  return (
    <>
      <RoomHead
        title={say('needs-room.needs')}
        lead={say('needs-room.for-all-coats-before-anything-on', { coatCount })}
      />
      <ul className={style.needs}>
        {needs.map((need) => (
          <NeedRow key={need.slotId} need={need} />
        ))}
      </ul>
      <SewingChoices />
      <ThreadByColour />
      <Filling />
      <WashFirst />
    </>
  );
}

function NeedRow({ need }: { need: Need }) {
  const { input } = useCoat('input');
  if (!input) return null;
  const slot = slotById(input.plan, need.slotId);
  const item = itemById(input, slot.itemId);
  return (
    <li className={style.need}>
      <div>
        <h2 className={`of-card ${style.slot}`}>
          <KindMark kind={slot.kind} /> {slot.name}
        </h2>
        <p className="quiet small">{item?.name ?? say('needs-room.nothing-chosen-yet')}</p>
      </div>
      <div className={style.amounts}>
        {need.kind === 'shapes' ? <Shapes need={need} slot={slot} /> : <Parts need={need} slot={slot} />}
        <NeedDetail slot={slot} />
        <SlotMargin slot={slot} />
      </div>
      <BasisNote basis={need.basis} />
    </li>
  );
}

function Shapes({ need, slot }: { need: ShapesNeed; slot: Slot }) {
  const { input, estimate } = useCoat('input', 'estimate');
  const system = useSystem();
  const slotLay = estimate?.lays.find((each) => each.slotId === need.slotId);
  if (need.shapes.length === 0) return <p className="quiet">{say('needs-room.no-piece-is-cut-from-it')}</p>;
  if (!slotLay) return <p className="quiet">{say('needs-room.its-pieces-are-being-laid')}</p>;
  // Panels stand in the place of the pieces that are cut from them.
  const laid = estimate?.requirement.find((each) => each.slotId === need.slotId);
  const laidNeed = laid?.kind === 'shapes' ? laid : need;
  const panelCount = laidNeed.shapes.reduce((sum, { carries, count }) => sum + (carries ? count : 0), 0);
  const trimmings = trimmingsOf(laidNeed, (input && itemById(input, slot.itemId)) ?? undefined);
  const cutCount = need.shapes.reduce((sum, shape) => sum + shape.count + shape.mirroredCount, 0);
  return (
    <div>
      <p className={style.figure}>
        <Figure
          quantity="length"
          value={takenInAllMm(slotLay)}
          options={{ unit: clothLengthUnit, digits: 2 }}
        />
        <span className={style.of}>
          {say('common.of')}{' '}
          <Figure
            quantity="length"
            value={unwashedWidthMm(slotLay)}
            options={{ unit: { metric: 'cm', imperial: 'in' } }}
          />{' '}
          {say('needs-room.usable-width')}
        </span>
      </p>
      <p className="quiet small">
        {cutCount} {say('needs-room.pieces-of')}{' '}
        {say('needs-room.shapes', { shapesCount: need.shapes.length })},{' '}
        <Figure
          quantity="area"
          value={laidNeed.areaMm2}
          options={{ unit: { metric: 'm2', imperial: 'yd2' }, digits: 2 }}
        />
        . {layWords(slotLay.result, system, slotLay.washed)}.
      </p>
      {need.firstWash && <WashOfNeed wash={need.firstWash} slotLay={slotLay} />}
      {trimmings && (
        <p className="small">
          {say('needs-room.is-trimmed-off-after-quilting', {
            panelCount:
              panelCount > 0
                ? `${say('needs-room.some-are-cut-from-quilted-panels', { panelCount })} `
                : `${say('needs-room.of-these-pieces')} `,
            trimmingsWords: trimmingsWords(trimmings, system),
            ifPanelCount: panelCount > 0 ? 'yes' : 'no',
          })}
        </p>
      )}
      <WithMargin need={need} slotLay={slotLay} slot={slot} />
    </div>
  );
}

function unwashedWidthMm({ job, washed }: SlotLay): number {
  return (job.lengths[0]?.widthMm ?? 0) / (1 - (washed?.[0]?.acrossRatio ?? 0));
}

/** When its first wash is, and for cloth that is washed before it is cut what that leaves of the width. */
function WashOfNeed({ wash, slotLay }: { wash: FirstWash; slotLay: SlotLay }) {
  if (!wash.isBeforeCutting) {
    return <p className="small">{say('needs-room.cut-unwashed-its-pieces-are-larger')}</p>;
  }
  return (
    <p className="small">
      {say('needs-room.washed-before-cutting-laid-on-the')}{' '}
      <Figure
        quantity="length"
        value={slotLay.job.lengths[0]?.widthMm ?? 0}
        options={{ unit: { metric: 'cm', imperial: 'in' } }}
      />{' '}
      {say('needs-room.that-the-wash-leaves-the-length')}
    </p>
  );
}

function Parts({ need, slot }: { need: AmountNeed; slot: Slot }) {
  const isWhole = need.counted === 'pieces' || need.counted === 'thread';
  return (
    <>
      <p className={style.figure}>
        <Amount kind={slot.kind} amount={isWhole ? Math.ceil(need.amount - 1e-9) : need.amount} />
        {need.isFloor && <span className={style.of}>{say('needs-room.at-least')}</span>}
        {need.wantedLengthMm !== null && (
          <span className={style.of}>
            {say('needs-room.each')} <Figure quantity="length" value={need.wantedLengthMm} />{' '}
            {say('needs-room.long-at-least')}
          </span>
        )}
      </p>
      <WithMargin need={need} slot={slot} />
      {need.parts.length === 1 && <p className="quiet small">{need.parts[0]?.what}</p>}
      {need.parts.length > 1 && (
        <details className="small">
          <summary className={style.summary}>{say('needs-room.how-it-adds-up')}</summary>
          <ul className={style.parts}>
            {need.parts.map((part) => (
              <li key={part.what}>
                <span>{part.what}</span>
                <Amount kind={slot.kind} amount={Math.round(part.amount * 10) / 10} />
              </li>
            ))}
          </ul>
        </details>
      )}
      <OwnAmount slot={slot} />
    </>
  );
}
