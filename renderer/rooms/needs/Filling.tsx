/** Loose fill: which pieces are stuffed, how full, and the list to weigh each chamber out by. */
import { say } from '../../../shared-core/wording/say.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import { useMemo, useState } from 'react';
import { slotItems } from '../../../shared-core/flow/estimate.ts';
import { type Problem, problemSentence } from '../../../shared-core/measure/problem.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import type { FillAim, Slot } from '../../../shared-core/plan/model/coat-plan.ts';
import {
  fillSlots,
  isStuffed,
  setFillAim,
  setOverfill,
  setSpareFill,
  setStuffed,
} from '../../../shared-core/plan/model/stuffing.ts';
import { type FillingList, fillingList, spareRatio } from '../../../shared-core/requirement/fill/fill.ts';
import { byPiece, fillingTable, weightWords } from '../../../shared-core/requirement/fill/filling-table.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { itemById } from '../../client/wording/coat-words.ts';
import { finishedOf } from '../../client/coat/finished-coat.ts';
import { routeHash } from '../../client/route.ts';
import { useSystem } from '../../client/workshop.ts';
import { AdviceNotes } from '../../parts/notes/AdviceNotes.tsx';
import { Button } from '../../parts/forms/Button.tsx';
import { Cautions } from '../../parts/notes/Cautions.tsx';
import { Figure } from '../../parts/figures/Figure.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import { OptionalSettledField, SettledField } from '../../parts/forms/SettledField.tsx';
import table from '../../parts/tables/table.module.css';
import { TableActions } from '../../parts/tables/TableActions.tsx';
import style from './NeedsRoom.module.css';

export function Filling() {
  const { input, edit } = useCoat('input', 'edit');
  const [isChoosing, setIsChoosing] = useState(false);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  if (!input) return null;
  const { plan } = input;
  const stuffed = plan.pieces.filter((piece) => isStuffed(plan, piece));
  const choose = async (pieceId: string, is: boolean) => {
    const answer = await edit((current) => setStuffed(current, pieceId, is));
    setProblems(answer.ok ? [] : answer.problems);
  };
  return (
    <section aria-labelledby="filling" className={style.section}>
      <div className={style.sectionHead}>
        <h2 id="filling">{say('filling.loose-fill')}</h2>
        <Button aria-expanded={isChoosing} onClick={() => setIsChoosing(!isChoosing)}>
          {say('filling.choose-stuffed-pieces')}
        </Button>
      </div>
      {stuffed.length === 0 && <p className="quiet">{say('filling.no-piece-is-stuffed-down-clusters')}</p>}
      <Problems problems={problems} />
      {isChoosing && (
        <ul className={style.pieces} aria-label={say('filling.stuffed-pieces')}>
          {plan.pieces.map((piece) => (
            <li key={piece.id}>
              <label>
                <input
                  type="checkbox"
                  checked={stuffed.includes(piece)}
                  onChange={(event) => void choose(piece.id, event.target.checked)}
                />
                <span>{piece.name}</span>
              </label>
            </li>
          ))}
        </ul>
      )}
      {stuffed.length > 0 && (
        <>
          <HowFull />
          <AdviceNotes kinds={['loose fill']} />
          <Cautions kinds={['down dust']} />
          {fillSlots(plan).map((slot) => (
            <FillingOf key={slot.id} slot={slot} />
          ))}
        </>
      )}
    </section>
  );
}

function HowFull() {
  const { input, edit } = useCoat('input', 'edit');
  const system = useSystem();
  const [problem, setProblem] = useState<string | null>(null);
  if (!input) return null;
  const { plan } = input;
  const make = async (change: Parameters<typeof edit>[0]) => {
    const answer = await edit(change);
    setProblem(answer.ok ? null : answer.problems.map(problemSentence).join(' '));
  };
  const text = (aim: FillAim) =>
    aim.kind === 'loft'
      ? showQuantity('length', aim.loftMm, { system })
      : showQuantity('arealMass', aim.gPerM2, { system });
  const aim = (next: FillAim | null) => void make((current) => setFillAim(current, next, text));
  return (
    <div className={style.choices}>
      <OptionalSettledField
        label={say('filling.loft-of-the-fill')}
        quantity="length"
        value={plan.fillAim?.kind === 'loft' ? plan.fillAim.loftMm : null}
        hint={say('filling.midway-between-two-lines-both-faces')}
        aboveZero
        onSet={(loftMm) => aim(loftMm === null ? null : { kind: 'loft', loftMm })}
      />
      <OptionalSettledField
        label={say('filling.weight-of-the-fill')}
        quantity="arealMass"
        value={plan.fillAim?.kind === 'weight' ? plan.fillAim.gPerM2 : null}
        hint={say('filling.instead-of-a-loft-over-the')}
        aboveZero
        onSet={(gPerM2) => aim(gPerM2 === null ? null : { kind: 'weight', gPerM2 })}
      />
      <SettledField
        label={say('filling.overfill')}
        quantity="ratio"
        unit="fold"
        value={plan.overfillFactor ?? 1.2}
        hint={say('filling.1-2-is-20-more-than')}
        problem={problem}
        onSet={(factor) => void make((current) => setOverfill(current, factor))}
      />
      <SettledField
        label={say('filling.spare')}
        quantity="ratio"
        value={spareRatio(plan)}
        hint={say('filling.for-what-flies-and-clings')}
        onSet={(ratio) => void make((current) => setSpareFill(current, ratio))}
      />
    </div>
  );
}

function FillingOf({ slot }: { slot: Slot }) {
  const { input } = useCoat('input');
  const system = useSystem();
  const list = useMemo(() => (input ? fillingList(input.plan, slot, slotItems(input)) : null), [input, slot]);
  const item = input ? itemById(input, slot.itemId) : null;
  if (!input || !list || list.chambers.length === 0) return null;
  const makeTable = () =>
    fillingTable(fillingList(input.plan, slot, slotItems(input)), {
      system,
      title: `${input.plan.name}: ${item?.name ?? slot.name}`,
      cautions: finishedOf(input)
        .cautions.filter(({ kind }) => kind === 'down dust')
        .map(({ says }) => says),
    });
  return (
    <div className={style.filling}>
      <div className={style.sectionHead}>
        <h3>{say('filling.what-each-chamber-takes', { slotName: sentenceCase(slot.name) })}</h3>
        <TableActions
          makeTable={makeTable}
          name={say('filling.filling-list', { planName: input.plan.name })}
        />
      </div>
      <p>
        {item ? (
          <a href={routeHash({ kind: 'stash', itemId: item.id })}>{item.name}</a>
        ) : (
          <>
            {say('filling.no-fill-is-chosen-yet')}{' '}
            <a href={routeHash({ kind: 'coat', planId: input.plan.id, step: 'plan' })}>
              {say('filling.choose-it-in-the-plan')}
            </a>
          </>
        )}
        {item?.kind === 'fill' && item.facts.fillPowerCm3PerG !== null && (
          <>
            {say('filling.fill-power')} <Figure quantity="fillPower" value={item.facts.fillPowerCm3PerG} />
          </>
        )}
        . <Sum list={list} />
      </p>
      <Problems problems={list.problems} />
      <Chambers list={list} />
    </div>
  );
}

const grams = { unit: { metric: 'g', imperial: 'oz' }, digits: 1 } as const;
/** A scale for down shows tenths of a gram; thousandths of an ounce are as fine. */
const fineGrams = {
  metric: { unit: 'g', digits: 1 },
  imperial: { unit: 'oz', digits: 3 },
} as const;

function Sum({ list }: { list: FillingList }) {
  const system = useSystem();
  return (
    <>
      <strong>
        <Figure quantity="mass" value={list.filledG} options={grams} />
      </strong>{' '}
      {say('filling.go-in-with')} <Figure quantity="mass" value={list.spareG} options={grams} />{' '}
      {say('filling.to-spare-have')}{' '}
      <Figure quantity="mass" value={list.filledG + list.spareG} options={grams} /> {say('filling.at-hand')}{' '}
      {sentenceCase(weightWords(list, system))}.
    </>
  );
}

function Chambers({ list }: { list: FillingList }) {
  const system = useSystem();
  return (
    <table className={`${table.table} ${style.chambers}`} aria-label={say('filling.filling-list-2')}>
      <thead>
        <tr>
          {[
            say('filling.chamber'),
            say('common.width'),
            say('common.length'),
            say('filling.holds'),
            say('common.each'),
            say('filling.times'),
            say('common.together'),
          ].map((head, index) => (
            <th key={head} scope="col" className={index === 0 ? undefined : table.amount}>
              {head}
            </th>
          ))}
        </tr>
      </thead>
      {byPiece(list.chambers).map(({ pieceName, chambers }) => (
        <tbody key={pieceName}>
          <tr>
            <th scope="rowgroup" colSpan={7} className={style.pieceHead}>
              {pieceName}
            </th>
          </tr>
          {chambers.map((chamber) => (
            <tr key={chamber.number}>
              <td className="number">{chamber.number}</td>
              <td className={table.amount}>
                <Figure quantity="length" value={chamber.widthMm} options={loose} />
              </td>
              <td className={table.amount}>
                <Figure quantity="length" value={chamber.lengthMm} options={loose} />
              </td>
              <td className={table.amount}>
                <Figure quantity="volume" value={chamber.volumeCm3} options={holds} />
              </td>
              <td className={table.amount}>
                <strong>
                  <Figure quantity="mass" value={chamber.massG} options={fineGrams[system]} />
                </strong>
              </td>
              <td className={`${table.amount} number`}>{chamber.count}</td>
              <td className={table.amount}>
                <Figure quantity="mass" value={chamber.massG * chamber.count} options={fineGrams[system]} />
              </td>
            </tr>
          ))}
        </tbody>
      ))}
    </table>
  );
}

const loose = { unit: { metric: 'mm', imperial: 'in' } } as const;
const holds = { unit: { metric: 'cm3', imperial: 'in3' }, digits: 0 } as const;
