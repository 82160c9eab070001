/** Which edges a fastening runs along, and how it ends: what its length follows from. */
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import { useState } from 'react';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { elasticRatios, setAlong } from '../../../shared-core/plan/edits/along-edges.ts';
import type { Slot } from '../../../shared-core/plan/model/coat-plan.ts';
import type { EdgePlace } from '../../../shared-core/plan/model/outline.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { itemById } from '../../client/wording/coat-words.ts';
import { useSystem } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { DraftField, draftOf, misreadProblems } from '../../parts/forms/DraftField.tsx';
import { EdgeChoices } from '../../parts/forms/EdgeChoices.tsx';
import { FlagField } from '../../parts/forms/Field.tsx';
import { FormSheet } from '../../parts/forms/FormSheet.tsx';
import style from './NeedsRoom.module.css';

export function AlongEdges({ slot }: { slot: Slot }) {
  const { input } = useCoat('input');
  const [isOpen, setIsOpen] = useState(false);
  if (!input) return null;
  const names = slot.alongEdges.map(({ pieceId, edge }) => {
    const piece = input.plan.pieces.find((each) => each.id === pieceId);
    return `${edge} of ${piece?.name ?? pieceId}`;
  });
  return (
    <>
      <p className="quiet small">
        {names.length > 0 &&
          `Runs along ${names.join(', ')}${slot.alongEveryCopy ? ', left and right' : ''}. `}
        <button type="button" className={style.link} onClick={() => setIsOpen(true)}>
          {names.length > 0 ? 'Change' : 'Let its length follow the edges'}
          <span className="only-read-aloud"> of {slot.name}</span>
        </button>
      </p>
      {isOpen && <AlongSheet slot={slot} onClose={() => setIsOpen(false)} />}
    </>
  );
}

function AlongSheet({ slot, onClose }: { slot: Slot; onClose: () => void }) {
  const { input, edit } = useCoat('input', 'edit');
  const system = useSystem();
  const [edges, setEdges] = useState<readonly EdgePlace[]>(slot.alongEdges);
  const [isEveryCopy, setIsEveryCopy] = useState(slot.alongEveryCopy ?? false);
  const [shorter, setShorter] = useState(() =>
    draftOf(slot.shorterByMm, showQuantity('length', slot.shorterByMm, { system })),
  );
  const [ratio, setRatio] = useState(() => {
    const item = input && itemById(input, slot.itemId);
    const isElastic = item?.kind === 'fastening' && item.facts.form === 'elastic';
    const begins = isElastic && slot.alongEdges.length === 0 ? elasticRatios.usual : 1;
    const value = slot.lengthRatio ?? begins;
    return draftOf(value, showQuantity('ratio', value, { system }));
  });
  if (!input) return null;
  const save = async (): Promise<readonly Problem[]> => {
    const misread = misreadProblems(sentenceCase(slot.name), [shorter, ratio]);
    if (misread.length > 0) return misread;
    const answer = await edit((plan) =>
      setAlong(plan, slot.id, {
        edges,
        isEveryCopy,
        shorterByMm: shorter.value ?? 0,
        lengthRatio: ratio.value ?? 1,
      }),
    );
    return answer.ok ? [] : answer.problems;
  };
  return (
    <FormSheet
      title={`What the ${slot.name} runs along`}
      saveLabel="Use these edges"
      onClose={onClose}
      onSave={save}
    >
      <EdgeChoices plan={input.plan} edges={edges} onChange={setEdges} />
      <FlagField
        label="On left and right alike"
        hint="a cord through the whole hem; a zip has one front edge"
        value={isEveryCopy}
        onChange={setIsEveryCopy}
      />
      <DraftField
        label="Length over that of the edges"
        quantity="ratio"
        draft={ratio}
        onChange={setRatio}
        min={0.3}
        max={1.5}
        hint="elastic 70 to 90 %, stretched on; 100 % for a zip or cord"
      />
      <DraftField
        label="Shorter than the edges by"
        quantity="length"
        draft={shorter}
        onChange={setShorter}
        min={-5000}
        hint="below 0 for ends that stick out, such as -30 cm"
      />
      {edges.length > 0 && (
        <Button look="quiet" onClick={() => setEdges([])}>
          Its length does not matter
        </Button>
      )}
    </FormSheet>
  );
}
