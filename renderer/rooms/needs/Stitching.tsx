/** How each seam is sewn, as the maker sews it: what its thread follows from. */
import { useState } from 'react';
import { type Problem, problemSentence } from '../../../shared-core/measure/problem.ts';
import type { Seam, StitchType } from '../../../shared-core/plan/model/outline.ts';
import {
  liningSeams,
  type SeamChange,
  setBasting,
  setLiningOvercast,
  setSeamStitches,
  stitchTypes,
} from '../../../shared-core/plan/edits/stitches.ts';
import { defaultStitchMm } from '../../../shared-core/requirement/thread/thread-ratios.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useLengthText } from '../../client/wording/length-text.ts';
import { useSystem } from '../../client/workshop.ts';
import { ChoiceField } from '../../parts/forms/Field.tsx';
import fields from '../../parts/forms/Field.module.css';
import { OptionalSettledField, SettledField } from '../../parts/forms/SettledField.tsx';
import table from '../../parts/tables/table.module.css';
import style from './NeedsRoom.module.css';
import { stitchNames } from './stitch-names.ts';

export function Stitching() {
  const { input, edit } = useCoat('input', 'edit');
  const text = useLengthText();
  const system = useSystem();
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  if (!input || input.plan.seams.length === 0) return null;
  const { plan } = input;
  const threads = plan.slots.filter((slot) => slot.kind === 'thread');
  const make = async (change: Parameters<typeof edit>[0]) => {
    const answer = await edit(change);
    setProblems(answer.ok ? [] : answer.problems);
  };
  return (
    <div className={style.filling}>
      <div className={style.choices}>
        <ChoiceField
          label="Baste quilted pieces with"
          value={plan.bastingThreadSlotId ?? ''}
          emptyLabel="no basting"
          options={threads.map((slot) => ({ value: slot.id, label: slot.name }))}
          hint="round the edge, by hand, before the lines"
          onChange={(slotId) => void make((current) => setBasting(current, slotId || null))}
        />
        <LiningEdges onSet={(overcast) => void make((current) => setLiningOvercast(current, overcast))} />
      </div>
      {problems.length > 0 && (
        <p role="alert" className={style.problem}>
          {problems.map(problemSentence).join(' ')}
        </p>
      )}
      <details>
        <summary className={style.summary}>How each seam is sewn</summary>
        <p className="quiet small">
          Without a length of its own a stitch is {showQuantity('length', defaultStitchMm.seam, { system })}{' '}
          long, of topstitching {showQuantity('length', defaultStitchMm.topstitching, { system })}. Quilting
          has its own.
        </p>
        <table className={`${table.table} ${style.detail}`} aria-label="How each seam is sewn">
          <thead>
            <tr>
              <th scope="col">Seam</th>
              <th scope="col">Stitch</th>
              <th scope="col">Stitch length</th>
              <th scope="col">Rows of topstitching</th>
              <th scope="col">Overcast</th>
              <th scope="col">Thread</th>
            </tr>
          </thead>
          <tbody>
            {plan.seams.map((seam) => (
              <SeamRow
                key={seam.id}
                seam={seam}
                threads={threads}
                onChange={(change) => void make((current) => setSeamStitches(current, seam.id, change, text))}
              />
            ))}
          </tbody>
        </table>
      </details>
    </div>
  );
}

/** A closed lining hides its raw edges; where they are overcast all the same, that is most of a coat's thread. */
function LiningEdges({ onSet }: { onSet: (overcast: Seam['overcast']) => void }) {
  const { input } = useCoat('input');
  const seams = input ? liningSeams(input.plan) : [];
  if (seams.length === 0) return null;
  const found = new Set(seams.map(({ overcast }) => overcast));
  const isMixed = found.size > 1;
  return (
    <ChoiceField
      label="Raw edges of the lining"
      value={isMixed ? 'mixed' : (seams[0]?.overcast ?? '')}
      emptyLabel="left as they are"
      options={[
        { value: '503', label: `overcast ${stitchNames['503']}` },
        { value: '504', label: `overcast ${stitchNames['504']}` },
        ...(isMixed ? [{ value: 'mixed', label: 'seam by seam, as below' }] : []),
      ]}
      hint="a closed lining hides them"
      onChange={(choice) => choice !== 'mixed' && onSet((choice || null) as Seam['overcast'])}
    />
  );
}

interface SeamRowProps {
  readonly seam: Seam;
  readonly threads: readonly { readonly id: string; readonly name: string }[];
  readonly onChange: (change: SeamChange) => void;
}

function SeamRow({ seam, threads, onChange }: SeamRowProps) {
  const choice = `${fields.input} ${fields.choice}`;
  return (
    <tr>
      <td>{seam.label}</td>
      <td>
        <select
          className={choice}
          aria-label={`Stitch of ${seam.label}`}
          value={seam.stitch}
          onChange={(event) => onChange({ stitch: event.target.value as StitchType })}
        >
          {stitchTypes.map((stitch) => (
            <option key={stitch} value={stitch}>
              {stitchNames[stitch]}
            </option>
          ))}
        </select>
      </td>
      <td className={style.rows}>
        {seam.stitch !== 'hand' && (
          <OptionalSettledField
            label={`Stitch length of ${seam.label}`}
            isLabelHidden
            quantity="length"
            value={seam.stitchLengthMm ?? null}
            onSet={(stitchLengthMm) => onChange({ stitchLengthMm })}
          />
        )}
      </td>
      <td className={style.rows}>
        <SettledField
          label={`Rows of topstitching at ${seam.label}`}
          isLabelHidden
          quantity="count"
          value={seam.topstitchRowCount}
          max={20}
          onSet={(topstitchRowCount) => onChange({ topstitchRowCount })}
        />
      </td>
      <td>
        <select
          className={choice}
          aria-label={`Overcasting of ${seam.label}`}
          value={seam.overcast ?? ''}
          onChange={(event) => onChange({ overcast: (event.target.value || null) as Seam['overcast'] })}
        >
          <option value="">not overcast</option>
          <option value="503">{stitchNames['503']}</option>
          <option value="504">{stitchNames['504']}</option>
        </select>
      </td>
      <td>
        <select
          className={choice}
          aria-label={`Thread of ${seam.label}`}
          value={seam.threadSlotId}
          onChange={(event) => onChange({ threadSlotId: event.target.value })}
        >
          {threads.map((slot) => (
            <option key={slot.id} value={slot.id}>
              {slot.name}
            </option>
          ))}
        </select>
      </td>
    </tr>
  );
}
