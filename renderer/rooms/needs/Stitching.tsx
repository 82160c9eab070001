/** How each seam is sewn, as the maker sews it: what its thread follows from. */
import { say } from '../../../shared-core/wording/say.ts';
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
import { type Column, DataTable } from '../../parts/tables/DataTable.tsx';
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
          label={say('stitching.baste-quilted-pieces-with')}
          value={plan.bastingThreadSlotId ?? ''}
          emptyLabel={say('stitching.no-basting')}
          options={threads.map((slot) => ({ value: slot.id, label: slot.name }))}
          hint={say('stitching.round-the-edge-by-hand-before')}
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
        <summary className={style.summary}>{say('stitching.how-each-seam-is-sewn')}</summary>
        <p className="quiet small">
          {say('stitching.without-a-length-of-its-own', {
            seam: showQuantity('length', defaultStitchMm.seam, { system }),
            topstitching: showQuantity('length', defaultStitchMm.topstitching, { system }),
          })}
        </p>
        <DataTable
          className={style.detail}
          label={say('stitching.how-each-seam-is-sewn')}
          rows={plan.seams}
          keyOf={({ id }) => id}
          columns={seamColumns(
            threads,
            (seam, change) => void make((current) => setSeamStitches(current, seam.id, change, text)),
          )}
        />
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
      label={say('stitching.raw-edges-of-the-lining')}
      value={isMixed ? 'mixed' : (seams[0]?.overcast ?? '')}
      emptyLabel={say('stitching.left-as-they-are')}
      options={[
        { value: '503', label: say('stitching.overcast-2', { stitchNames: stitchNames['503'] }) },
        { value: '504', label: say('stitching.overcast-2', { stitchNames: stitchNames['504'] }) },
        ...(isMixed ? [{ value: 'mixed', label: say('stitching.seam-by-seam-as-below') }] : []),
      ]}
      hint={say('stitching.a-closed-lining-hides-them')}
      onChange={(choice) => choice !== 'mixed' && onSet((choice || null) as Seam['overcast'])}
    />
  );
}

function seamColumns(
  threads: readonly { readonly id: string; readonly name: string }[],
  onChange: (seam: Seam, change: SeamChange) => void,
): readonly Column<Seam>[] {
  const choice = `${fields.input} ${fields.choice}`;
  return [
    { head: say('common.seam'), cell: ({ label }) => label },
    {
      head: say('stitching.stitch'),
      cell: (seam) => (
        <select
          className={choice}
          aria-label={say('stitching.stitch-of', { seamLabel: seam.label })}
          value={seam.stitch}
          onChange={(event) => onChange(seam, { stitch: event.target.value as StitchType })}
        >
          {stitchTypes.map((stitch) => (
            <option key={stitch} value={stitch}>
              {stitchNames[stitch]}
            </option>
          ))}
        </select>
      ),
    },
    {
      head: say('stitching.stitch-length'),
      cellClass: style.rows,
      cell: (seam) =>
        seam.stitch !== 'hand' && (
          <OptionalSettledField
            label={say('stitching.stitch-length-of', { seamLabel: seam.label })}
            isLabelHidden
            quantity="length"
            value={seam.stitchLengthMm ?? null}
            onSet={(stitchLengthMm) => onChange(seam, { stitchLengthMm })}
          />
        ),
    },
    {
      head: say('stitching.rows-of-topstitching'),
      cellClass: style.rows,
      cell: (seam) => (
        <SettledField
          label={say('stitching.rows-of-topstitching-at', { seamLabel: seam.label })}
          isLabelHidden
          quantity="count"
          value={seam.topstitchRowCount}
          max={20}
          onSet={(topstitchRowCount) => onChange(seam, { topstitchRowCount })}
        />
      ),
    },
    {
      head: say('stitching.overcast'),
      cell: (seam) => (
        <select
          className={choice}
          aria-label={say('stitching.overcasting-of', { seamLabel: seam.label })}
          value={seam.overcast ?? ''}
          onChange={(event) => onChange(seam, { overcast: (event.target.value || null) as Seam['overcast'] })}
        >
          <option value="">{say('stitching.not-overcast')}</option>
          <option value="503">{stitchNames['503']}</option>
          <option value="504">{stitchNames['504']}</option>
        </select>
      ),
    },
    {
      head: say('common.thread'),
      cell: (seam) => (
        <select
          className={choice}
          aria-label={say('stitching.thread-of', { seamLabel: seam.label })}
          value={seam.threadSlotId}
          onChange={(event) => onChange(seam, { threadSlotId: event.target.value })}
        >
          {threads.map((slot) => (
            <option key={slot.id} value={slot.id}>
              {slot.name}
            </option>
          ))}
        </select>
      ),
    },
  ];
}
