/** Ticks come back from the page on a phone: by the code that it shows, or by the file that it saves. */
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
    const gone = goneNames.length === 0 ? '' : ` No longer on the list: ${goneNames.join(', ')}.`;
    setSaid(`${ticks.ticked.length} of ${ticks.ticked.length + ticks.open.length} lines are ticked.${gone}`);
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
      title="Ticks from the phone"
      isOpen
      onClose={onClose}
      footer={
        <>
          <Button onClick={onClose}>Close</Button>
          <Button look="main" disabled={code.trim() === ''} onClick={() => void takeCode()}>
            Take the ticks
          </Button>
        </>
      }
    >
      <TextField
        label="Code"
        value={code}
        onChange={(text) => setCode(text.slice(0, 400))}
        hint="it stands at the end of the page on the phone; lines are then ticked as they are there"
      />
      <FileChoice
        label="Or the file that the page saved"
        hint="ticks.json; it is good for a list that has changed since, too"
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
