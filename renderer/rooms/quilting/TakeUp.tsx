/** What the lines take up, by geometry or as the maker measured it on a swatch. */
import { sentenceCase } from '../../../shared-core/measure/sentence-case.ts';
import { useMemo, useState } from 'react';
import { slotItems } from '../../../shared-core/flow.ts';
import { setRise, setSwatch, type Swatch } from '../../../shared-core/plan/quilted.ts';
import { pieceTakeUp } from '../../../shared-core/requirement/take-up.ts';
import { howText } from '../../../shared-core/measure/basis.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { useCoat } from '../../client/coat-context.ts';
import { useLengthText } from '../../client/length-text.ts';
import { usePlanChange } from '../../client/plan-change.ts';
import { useSystem } from '../../client/workshop.ts';
import { Button } from '../../parts/Button.tsx';
import { DraftField, emptyDraft, misreadProblems } from '../../parts/DraftField.tsx';
import fieldStyle from '../../parts/Field.module.css';
import { Figure } from '../../parts/Figure.tsx';
import { FormSheet } from '../../parts/FormSheet.tsx';
import { OptionalSettledField } from '../../parts/SettledField.tsx';
import table from '../../parts/table.module.css';
import style from './QuiltingRoom.module.css';

export function TakeUp() {
  const { input } = useCoat();
  const system = useSystem();
  const geometry = usePlanChange();
  const [isMeasuring, setIsMeasuring] = useState(false);
  const rows = useMemo(() => {
    if (!input?.plan.quilting) return [];
    const { plan } = input;
    const items = slotItems(input);
    return plan.pieces.flatMap((piece) => {
      const takeUp = pieceTakeUp(plan, piece, items);
      return takeUp ? [{ piece, ...takeUp }] : [];
    });
  }, [input]);
  if (!input) return null;
  const bases = [
    ...new Set(
      rows.map(
        ({ rise: { basis } }) =>
          `${howText(basis.how, system)} (${[basis.kind, basis.source].filter(Boolean).join('; ')})`,
      ),
    ),
  ];
  const measured = input.plan.slots.find((slot) => slot.isQuilted && slot.takeUpAlongRatio !== null);
  return (
    <section aria-labelledby="take-up">
      <h2 id="take-up" className={style.title}>
        Take-up
      </h2>
      {measured ? (
        <p>
          Cut <Figure quantity="ratio" value={measured.takeUpAlongRatio ?? 0} options={{ digits: 1 }} />{' '}
          longer and{' '}
          <Figure quantity="ratio" value={measured.takeUpAcrossRatio ?? 0} options={{ digits: 1 }} /> wider,
          as your swatch measured it.{' '}
          <Button look="quiet" onClick={() => void geometry.change((plan) => setSwatch(plan, null))}>
            Go back to the geometry
          </Button>
        </p>
      ) : (
        <>
          <p className={style.lead}>
            By geometry: the cloth rises in an arc between two lines, so more is cut than is finished.
            {bases.map((how) => ` ${sentenceCase(how)}.`)} A swatch of your own beats it.
          </p>
          <table className={`${table.table} ${style.meetings}`}>
            <thead>
              <tr>
                <th>Piece</th>
                <th className={table.amount}>Rise</th>
                <th className={table.amount}>Longer</th>
                <th className={table.amount}>Wider</th>
              </tr>
            </thead>
            <tbody>
              {rows.map(({ piece, rise, alongRatio, acrossRatio }) => (
                <tr key={piece.id} title={howText(rise.basis.how, system)}>
                  <td>{piece.name}</td>
                  <td className={table.amount}>
                    <Figure
                      quantity="length"
                      value={rise.riseMm}
                      options={{ unit: { metric: 'mm', imperial: 'in' }, digits: 1 }}
                    />
                  </td>
                  <td className={table.amount}>
                    <Figure quantity="ratio" value={alongRatio} options={{ digits: 1 }} />
                  </td>
                  <td className={table.amount}>
                    <Figure quantity="ratio" value={acrossRatio} options={{ digits: 1 }} />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
      {geometry.problem && (
        <p role="alert" className={fieldStyle.problem}>
          {geometry.problem}
        </p>
      )}
      <div className={style.measured}>
        <Rise />
        <Button onClick={() => setIsMeasuring(true)}>Measured on a swatch</Button>
      </div>
      {isMeasuring && <SwatchSheet onClose={() => setIsMeasuring(false)} />}
    </section>
  );
}

/** The rise between two lines as the maker measured it; without a measure it comes from the batting. */
function Rise() {
  const { input } = useCoat();
  const lengthText = useLengthText();
  const { problem, change } = usePlanChange();
  return (
    <OptionalSettledField
      label="Rise of one face, measured"
      quantity="length"
      value={input?.plan.quilting?.riseMm ?? null}
      onSet={(riseMm) => void change((plan) => setRise(plan, riseMm, lengthText))}
      hint="leave it empty to take it from the batting"
      problem={problem}
      min={0}
    />
  );
}

const fields = [
  ['beforeAlongMm', 'Along the grain, before'],
  ['afterAlongMm', 'Along the grain, after'],
  ['beforeAcrossMm', 'Across the grain, before'],
  ['afterAcrossMm', 'Across the grain, after'],
] as const satisfies readonly (readonly [keyof Swatch, string])[];

function SwatchSheet({ onClose }: { onClose: () => void }) {
  const { edit } = useCoat();
  const [drafts, setDrafts] = useState(() => fields.map(() => emptyDraft));
  const save = async (): Promise<readonly Problem[]> => {
    const misread = misreadProblems('The swatch', drafts);
    if (misread.length > 0) return misread;
    const missing = fields.filter((_, index) => drafts[index]?.value == null);
    if (missing.length > 0) {
      return missing.map(([, label]) => ({
        where: label,
        what: 'is missing',
        mend: 'Type it, such as 300 mm or 12 in.',
      }));
    }
    const swatch = Object.fromEntries(
      fields.map(([key], index) => [key, drafts[index]?.value]),
    ) as unknown as Swatch;
    const answer = await edit((plan) => setSwatch(plan, swatch));
    return answer.ok ? [] : answer.problems;
  };
  return (
    <FormSheet title="Measured on a swatch" saveLabel="Use these measures" onClose={onClose} onSave={save}>
      <p className="quiet">
        Quilt a square of shell and batting as the coat will be, and measure it before and after.
      </p>
      <div className={style.pair}>
        {fields.map(([key, label], index) => (
          <DraftField
            key={key}
            label={label}
            quantity="length"
            draft={drafts[index] ?? emptyDraft}
            aboveZero
            onChange={(draft) => setDrafts(drafts.map((each, at) => (at === index ? draft : each)))}
          />
        ))}
      </div>
    </FormSheet>
  );
}
