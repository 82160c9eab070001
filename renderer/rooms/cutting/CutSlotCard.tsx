/** One slot of a cutting: what is taken of each length or lot, which rests go back, and what falls away. */
import { say } from '../../../shared-core/wording/say.ts';
import { dayWords } from '../../../shared-core/measure/calendar-date.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import type { ProposedLine, ProposedSlot } from '../../../shared-core/cover/cutting-proposal.ts';
import type { MeasureSystem } from '../../../shared-core/measure/quantity.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { slotById } from '../../../shared-core/plan/model/coat-plan.ts';
import { type ItemKind, kindRecords } from '../../../shared-core/stash/kinds.ts';
import { trimmingsWords } from '../../../shared-core/requirement/cut/trimmings.ts';
import { type ItemOnShelf, lengthName } from '../../../shared-core/stash/stash.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { countedQuantity } from '../../client/wording/words.ts';
import { useSystem } from '../../client/workshop.ts';
import { amountText, amountUnit, clothLengthUnit, clothWidthUnit } from '../../parts/figures/Amount.tsx';
import { DraftField, draftOf } from '../../parts/forms/DraftField.tsx';
import { FlagField } from '../../parts/forms/Field.tsx';
import { Money } from '../../parts/figures/Figure.tsx';
import style from './CuttingRoom.module.css';
import { CutDrawing } from './CutDrawing.tsx';
import {
  type CuttingDraft,
  isDropped,
  keptRests,
  type LineDraft,
  lineCost,
  lineDraft,
  withLine,
  withRest,
} from './cutting-drafts.ts';
import { letterOf } from './letters.ts';

export interface CutSlotCardProps {
  readonly slot: ProposedSlot;
  readonly draft: CuttingDraft;
  readonly onChange: (change: (now: CuttingDraft) => CuttingDraft) => void;
  /** An amount or a rest was changed: from now on it belongs to the lay that is shown. */
  readonly onOwn: () => void;
}

export function CutSlotCard({ slot, draft, onChange, onOwn }: CutSlotCardProps) {
  const { input } = useCoat('input');
  const shelf = input?.shelf.find(({ item }) => item.id === slot.itemId);
  if (!input || !shelf) return null;
  const name = sentenceCase(slotById(input.plan, slot.slotId).name);
  const isCut = !draft.leftOut.includes(slot.slotId);
  const toggle = () =>
    onChange((now) => ({
      ...now,
      leftOut: isCut ? [...now.leftOut, slot.slotId] : now.leftOut.filter((slotId) => slotId !== slot.slotId),
    }));
  return (
    <li className={style.slot} aria-label={name} data-cut={isCut}>
      <div className={style.head}>
        <label className={style.tick}>
          <input type="checkbox" checked={isCut} onChange={toggle} />
          <strong>{name}</strong>
        </label>
        <span className="quiet">{shelf.item.name}</span>
        <span className={`${style.pieces} quiet small`}>{metWords(slot)}</span>
      </div>
      {isCut &&
        slot.lines.map((line) => (
          <Line
            key={`${line.lotId} ${line.lengthId ?? ''}`}
            line={line}
            shelf={shelf}
            draft={lineDraft(draft, slot.slotId, line)}
            onChange={(own) => {
              onOwn();
              onChange((now) => withLine(now, slot.slotId, line, own));
            }}
          />
        ))}
      {isCut && slot.isShort && (
        <p className={style.short}>{say('cut-slot-card.the-stash-has-not-enough-for')}</p>
      )}
    </li>
  );
}

function metWords({ met }: ProposedSlot): string {
  if (met.kind === 'amount') return '';
  const count = met.shapes.reduce((sum, shape) => sum + shape.count + shape.mirroredCount, 0);
  return say('cut-slot-card.pieces', { count });
}

interface LineProps {
  readonly line: ProposedLine;
  readonly shelf: ItemOnShelf;
  readonly draft: LineDraft;
  readonly onChange: (draft: LineDraft) => void;
}

function Line({ line, shelf, draft, onChange }: LineProps) {
  const { input } = useCoat('input');
  const system = useSystem();
  const { item } = shelf;
  const { counted } = kindRecords[item.kind];
  if (!input) return null;
  const show = (amount: number) => amountText(item.kind, amount, system);
  const lot = shelf.lots.find((candidate) => candidate.id === line.lotId);
  const cost = lineCost(input, line, draft);
  const kept = keptRests(line, draft);
  const widthMm = lot?.lengths.find((length) => length.id === line.lengthId)?.widthMm ?? 0;
  const side = (mm: number) => showQuantity('length', mm, { system, unit: clothWidthUnit, digits: 0 });
  return (
    <div className={style.line}>
      <div className={style.taken}>
        <DraftField
          label={say('cut-slot-card.used-from-the', {
            ifHasLengths: kindRecords[item.kind].hasLengths ? 'yes' : 'no',
            placeWords: placeWords(line, shelf),
          })}
          quantity={countedQuantity(counted)}
          draft={draft.amount ?? draftOf(line.amount, exactText(item.kind, line.amount, system))}
          onChange={(amount) => onChange({ ...draft, amount })}
          unit={amountUnit(item.kind)}
          aboveZero
          max={line.free}
          hint={say('cut-slot-card.the-lay-uses-of', {
            ifPieceAreaMm2: line.pieceAreaMm2 === null ? 'yes' : 'no',
            show: show(line.amount),
            show2: show(line.free),
            ifWashed: line.washed ? 'yes' : 'no',
          })}
        />
      </div>
      <div className={style.rests}>
        {line.rests.length > 0 && (
          <fieldset className={style.keep}>
            <legend className="small quiet">
              {say('cut-slot-card.back-to-the-shelf')}
              {line.washed && say('common.washed')}
            </legend>
            {line.rests.map((rest, index) => {
              const isFitting = kept.includes(rest) || isDropped(draft, rest);
              return (
                <FlagField
                  key={`${rest.x} ${rest.y}`}
                  label={say('cut-slot-card.long-wide-beyond-what-is-cut', {
                    letterOf: letterOf(index),
                    side: side(rest.widthX),
                    side2: side(rest.widthY),
                    ifFitting: isFitting ? 'yes' : 'no',
                  })}
                  value={kept.includes(rest)}
                  onChange={(isKept) => onChange(withRest(draft, rest, isKept))}
                />
              );
            })}
          </fieldset>
        )}
        {cost && (
          <p className="small">
            {say('cut-slot-card.costs')} <Money amountMinor={cost.costMinor} />
            {cost.area && (
              <span className="quiet">
                {say('cut-slot-card.of-it')} <Money amountMinor={cost.area.wasteMinor} />{' '}
                {say('cut-slot-card.waste')} {wasteWords(cost.area, system)}
                {cost.area.trimmedMm2 !== undefined && (
                  <>
                    ; <Money amountMinor={cost.area.trimmedMinor ?? 0} />{' '}
                    {say('cut-slot-card.trimmed-off-after-quilting')}{' '}
                    {trimmingsWords(
                      { areaMm2: cost.area.trimmedMm2, massG: cost.area.trimmedG ?? null },
                      system,
                    )}
                  </>
                )}
              </span>
            )}
          </p>
        )}
      </div>
      {line.placed.length > 0 && (
        <CutDrawing line={line} kept={kept} widthMm={widthMm * (1 - (line.washed?.acrossRatio ?? 0))} />
      )}
      {line.washed && <p className={`${style.washed} quiet small`}>{washedWords(line, widthMm, system)}</p>}
    </div>
  );
}

/** What the drawing shows of cloth that is washed before it is cut. */
function washedWords(line: ProposedLine, widthMm: number, system: MeasureSystem): string {
  const { alongRatio = 0, acrossRatio = 0 } = line.washed ?? {};
  const along = showQuantity('length', line.amount * (1 - alongRatio), {
    system,
    unit: clothLengthUnit,
    digits: 3,
  });
  const across = showQuantity('length', widthMm * (1 - acrossRatio), { system, unit: clothWidthUnit });
  return alongRatio + acrossRatio > 0
    ? say('cut-slot-card.drawn-as-washed-cloth-of-what', { along, across })
    : say('cut-slot-card.drawn-as-washed-cloth-it-was');
}

/** To the millimetre, as the blade is set. */
function exactText(kind: ItemKind, amount: number, system: MeasureSystem): string {
  return kindRecords[kind].counted === 'length'
    ? showQuantity('length', amount, { system, unit: clothLengthUnit, digits: 3 })
    : amountText(kind, amount, system);
}

function wasteWords(
  area: { readonly wasteMm2: number; readonly wasteG: number | null },
  system: MeasureSystem,
): string {
  const size = showQuantity('area', area.wasteMm2, { system });
  return area.wasteG === null ? size : `${size}, ${showQuantity('mass', area.wasteG, { system })}`;
}

function placeWords(line: ProposedLine, shelf: ItemOnShelf): string {
  const lot = shelf.lots.find((candidate) => candidate.id === line.lotId);
  const length = lot?.lengths.find((candidate) => candidate.id === line.lengthId);
  const from = lot?.dyeLot
    ? say('cut-slot-card.dye-lot', { dyeLot: lot.dyeLot })
    : say('cut-slot-card.lot-of', { receivedOn: dayWords(lot?.receivedOn ?? '') });
  return length ? `${lengthName(length)}, ${from}` : from;
}
