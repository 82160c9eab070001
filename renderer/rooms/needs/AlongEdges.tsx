/** Which edges a fastening runs along, and how it ends: what its length follows from. */
import { sentenceCase } from '../../../shared-core/measure/sentence-case.ts';
import { useState } from 'react';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { setAlong } from '../../../shared-core/plan/along-edges.ts';
import type { Slot } from '../../../shared-core/plan/coat-plan.ts';
import type { EdgePlace } from '../../../shared-core/plan/outline.ts';
import { useCoat } from '../../client/coat-context.ts';
import { useSystem } from '../../client/workshop.ts';
import { Button } from '../../parts/Button.tsx';
import { DraftField, draftOf, misreadProblems } from '../../parts/DraftField.tsx';
import { ChoiceField, FlagField } from '../../parts/Field.tsx';
import { FormSheet } from '../../parts/FormSheet.tsx';
import style from './NeedsRoom.module.css';

export function AlongEdges({ slot }: { slot: Slot }) {
  const { input } = useCoat();
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

const separator = ' / ';
const keyOf = ({ pieceId, edge }: EdgePlace) => `${pieceId}${separator}${edge}`;
function placeOf(key: string): EdgePlace {
  const at = key.indexOf(separator);
  return { pieceId: key.slice(0, at), edge: key.slice(at + separator.length) };
}

function AlongSheet({ slot, onClose }: { slot: Slot; onClose: () => void }) {
  const { input, edit } = useCoat();
  const system = useSystem();
  const [keys, setKeys] = useState<readonly string[]>(() => [...slot.alongEdges.map(keyOf), '']);
  const [isEveryCopy, setIsEveryCopy] = useState(slot.alongEveryCopy ?? false);
  const [shorter, setShorter] = useState(() =>
    draftOf(slot.shorterByMm, showQuantity('length', slot.shorterByMm, { system })),
  );
  if (!input) return null;
  const options = input.plan.pieces.flatMap((piece) =>
    piece.outline.edges
      .filter(({ name }) => name !== piece.foldEdge)
      .map(({ name }) => ({
        value: keyOf({ pieceId: piece.id, edge: name }),
        label: `${piece.name}: ${name}`,
      })),
  );
  const choose = (at: number, key: string) => {
    const next = keys.map((each, index) => (index === at ? key : each)).filter((each) => each !== '');
    setKeys([...next, '']);
  };
  const save = async (): Promise<readonly Problem[]> => {
    const misread = misreadProblems(sentenceCase(slot.name), [shorter]);
    if (misread.length > 0) return misread;
    const edges = keys.filter((key) => key !== '').map(placeOf);
    const answer = await edit((plan) =>
      setAlong(plan, slot.id, { edges, isEveryCopy, shorterByMm: shorter.value ?? 0 }),
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
      {keys.map((key, index) => (
        <ChoiceField
          // biome-ignore lint/suspicious/noArrayIndexKey: an edge is known by its place in the list
          key={index}
          label={key === '' ? 'Another edge' : `Edge ${index + 1}`}
          value={key}
          options={options}
          emptyLabel={key === '' ? 'Choose an edge' : 'Not along this one'}
          onChange={(next) => choose(index, next)}
        />
      ))}
      <FlagField
        label="On left and right alike"
        hint="a cord through the whole hem; a zip has one front edge"
        value={isEveryCopy}
        onChange={setIsEveryCopy}
      />
      <DraftField
        label="Shorter than the edges by"
        quantity="length"
        draft={shorter}
        onChange={setShorter}
        min={-5000}
        hint="below 0 for ends that stick out, such as -30 cm"
      />
      {keys.length > 1 && (
        <Button look="quiet" onClick={() => setKeys([''])}>
          Its length does not matter
        </Button>
      )}
    </FormSheet>
  );
}
