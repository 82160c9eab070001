/** Ticks come back from the page on a phone: by the code that it shows, or by the file that it saves. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import type { OfferId } from '../../../shared-core/stash/stash.ts';
import { readTickCode } from '../../../shared-core/to-buy/phone/tick-code.ts';
import { maxTicksBytes, readTicksFile } from '../../../shared-core/to-buy/phone/ticks-file.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { type ChosenFile, FileChoice } from '../../parts/forms/FileChoice.tsx';
import { TextField } from '../../parts/forms/Field.tsx';
import { Sheet } from '../../parts/layout/Sheet.tsx';
import { Problems } from '../../parts/notes/Problems.tsx';
import type { ShoppingTrip } from './shopping-trip.ts';

export interface TicksFromPhoneProps {
  readonly plan: CoatPlan;
  readonly trip: ShoppingTrip;
  readonly lists: readonly (readonly OfferId[])[];
  readonly onClose: () => void;
}

export function TicksFromPhone({ plan, trip, lists, onClose }: TicksFromPhoneProps) {
  const [code, setCode] = useState('');
  const [file, setFile] = useState<ChosenFile | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [said, setSaid] = useState('');

  const take = async (
    ticks: { readonly ticked: readonly OfferId[]; readonly open: readonly OfferId[] },
    goneNames: readonly string[],
  ) => {
    const refusals = await trip.takeTicks(ticks);
    setProblems(refusals);
    if (refusals.length > 0) return;
    const gone =
      goneNames.length === 0
        ? ''
        : ` ${say('ticks-from-phone.no-longer-on-the-list', { goneNames: goneNames.join(', ') })}`;
    setSaid(
      say('ticks-from-phone.of-lines-are-ticked', {
        tickedCount: ticks.ticked.length,
        tickedCount2: ticks.ticked.length + ticks.open.length,
        gone,
      }),
    );
  };
  const takeCode = async () => {
    setSaid('');
    const read = readTickCode(code, plan.id, lists);
    setProblems(read.ok ? [] : read.problems);
    if (read.ok) await take(read.value, []);
  };
  const takeFile = async (chosen: ChosenFile) => {
    setFile(chosen);
    setSaid('');
    const read = readTicksFile(new TextDecoder().decode(chosen.bytes), plan.id, [...new Set(lists.flat())]);
    setProblems(read.ok ? [] : read.problems);
    if (read.ok) await take(read.value, read.value.goneNames);
  };
  return (
    <Sheet
      title={say('ticks-from-phone.ticks-from-the-phone')}
      isOpen
      onClose={onClose}
      footer={
        <>
          <Button onClick={onClose}>{say('common.close')}</Button>
          <Button look="main" disabled={code.trim() === ''} onClick={() => void takeCode()}>
            {say('ticks-from-phone.take-the-ticks')}
          </Button>
        </>
      }
    >
      <TextField
        label={say('ticks-from-phone.code')}
        value={code}
        onChange={(text) => setCode(text.slice(0, 400))}
        hint={say('ticks-from-phone.it-stands-at-the-end-of')}
      />
      <FileChoice
        label={say('ticks-from-phone.or-the-file-that-the-page')}
        hint={say('ticks-from-phone.ticks-json-it-is-good-for')}
        accept=".json,application/json"
        chosen={file}
        maxBytes={maxTicksBytes}
        onChoose={(chosen) => void takeFile(chosen)}
      />
      <Problems problems={problems} />
      <p role="status">{said}</p>
    </Sheet>
  );
}
