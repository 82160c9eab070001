/** A binding or a rib by what it is sewn to: its length follows, and how many strips or how large a square it takes. */
import { useState } from 'react';
import { howText } from '../../../shared-core/measure/basis.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { addBand, bandWords, ribRatios } from '../../../shared-core/plan/edits/bands.ts';
import type { Band, CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import type { EdgePlace } from '../../../shared-core/plan/model/outline.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { itemById } from '../../client/wording/coat-words.ts';
import { useSystem } from '../../client/workshop.ts';
import { DraftField, draftOf, misreadProblems } from '../../parts/forms/DraftField.tsx';
import { EdgeChoices } from '../../parts/forms/EdgeChoices.tsx';
import { ChoiceField, FlagField, TextField } from '../../parts/forms/Field.tsx';
import { FormSheet } from '../../parts/forms/FormSheet.tsx';
import style from './PlanRoom.module.css';

const kinds: readonly { readonly value: Band['kind']; readonly label: string; readonly name: string }[] = [
  { value: 'straight binding', label: 'Binding on the straight', name: 'Binding' },
  { value: 'bias binding', label: 'Binding on the bias', name: 'Bias binding' },
  { value: 'rib', label: 'Rib, stretched on', name: 'Rib' },
];

/** What a band begins with: a binding folded to 1 cm on both sides, a rib of 6 cm with its seams. Common practice, no source. */
const usual = {
  binding: { cutWidthMm: 40, endsMm: 30, ratio: 1 },
  rib: { cutWidthMm: 136, endsMm: 16, ratio: ribRatios.usual },
} as const;

export function BandSheet({ onClose }: { onClose: () => void }) {
  const { input, edit } = useCoat('input', 'edit');
  const system = useSystem();
  const cloths = input?.plan.slots.filter((slot) => slot.kind === 'cloth') ?? [];
  const shown = (mm: number) => draftOf(mm, showQuantity('length', mm, { system }));
  const share = (ratio: number) => draftOf(ratio, showQuantity('ratio', ratio, { system }));
  const [kind, setKind] = useState<Band['kind']>('straight binding');
  const [name, setName] = useState('Binding');
  const [slotId, setSlotId] = useState(cloths[0]?.id ?? '');
  const [edges, setEdges] = useState<readonly EdgePlace[]>([]);
  const [isEach, setIsEach] = useState(false);
  const [width, setWidth] = useState(() => shown(usual.binding.cutWidthMm));
  const [ends, setEnds] = useState(() => shown(usual.binding.endsMm));
  const [ratio, setRatio] = useState(() => share(usual.rib.ratio));
  const [strip, setStrip] = useState(() => shown(usableWidthMm(input?.plan, slotId) ?? 1000));
  if (!input) return null;

  /** Usable width of what fills the slot: strips of a straight binding are cut across it. */
  function usableWidthMm(plan: CoatPlan | undefined, of: string): number | null {
    const itemId = plan?.slots.find((slot) => slot.id === of)?.itemId ?? null;
    const item = input ? itemById(input, itemId) : null;
    if (item?.kind !== 'cloth' || item.facts.widthMm === null) return null;
    return item.facts.widthMm - 2 * (item.facts.selvageMm ?? 0);
  }

  const choose = (next: Band['kind']) => {
    const begins = next === 'rib' ? usual.rib : usual.binding;
    if ((kind === 'rib') !== (next === 'rib')) {
      setWidth(shown(begins.cutWidthMm));
      setEnds(shown(begins.endsMm));
    }
    // A name that nobody typed changes with the kind.
    if (kinds.some((each) => each.name === name)) setName(kinds.find((each) => each.value === next)!.name);
    setKind(next);
  };
  const chooseSlot = (next: string) => {
    setSlotId(next);
    const widthMm = usableWidthMm(input.plan, next);
    if (widthMm !== null) setStrip(shown(widthMm));
  };
  const band: Band = {
    kind,
    edges,
    isEach,
    cutWidthMm: width.value ?? Number.NaN,
    lengthRatio: kind === 'rib' ? (ratio.value ?? Number.NaN) : 1,
    endsMm: ends.value ?? 0,
    stripMm: kind === 'straight binding' ? strip.value : null,
  };
  const added = () => addBand(input.plan, { name, slotId, band });
  const save = async (): Promise<readonly Problem[]> => {
    const misread = misreadProblems(name, [width, ends, ratio, strip]);
    if (misread.length > 0) return misread;
    const answer = await edit((plan) => addBand(plan, { name, slotId, band }));
    return answer.ok ? [] : answer.problems;
  };
  const preview = added();
  const made = preview.ok ? preview.value.plan.pieces.at(-1) : undefined;
  const words = made ? bandWords(made, input.plan.pieces) : null;
  return (
    <FormSheet title="Add a binding or a rib" saveLabel="Add it" onClose={onClose} onSave={save}>
      <div className={style.pair}>
        <ChoiceField
          label="What it is"
          value={kind}
          options={kinds}
          onChange={(next) => next !== '' && choose(next)}
        />
        <TextField label="Name" value={name} onChange={setName} />
        <ChoiceField
          label="Cut from"
          value={slotId}
          options={cloths.map((slot) => ({ value: slot.id, label: slot.name }))}
          onChange={(next) => next !== '' && chooseSlot(next)}
        />
        <DraftField
          label="Width as cut"
          quantity="length"
          draft={width}
          onChange={setWidth}
          min={0}
          hint={kind === 'rib' ? 'twice what shows, and two seams' : 'four times what shows on one side'}
        />
        <DraftField
          label="For seam or ends"
          quantity="length"
          draft={ends}
          onChange={setEnds}
          min={0}
          hint="added to the length of each"
        />
        {kind === 'rib' && (
          <DraftField
            label="Length over that of the edges"
            quantity="ratio"
            draft={ratio}
            onChange={setRatio}
            min={0.3}
            max={1.5}
            hint="75 to 85 % for most ribs; try it over the hand"
          />
        )}
        {kind === 'straight binding' && (
          <DraftField
            label="Longest strip"
            quantity="length"
            draft={strip}
            onChange={setStrip}
            min={0}
            hint="across the cloth: its usable width"
          />
        )}
      </div>
      <EdgeChoices plan={input.plan} edges={edges} onChange={setEdges} />
      <FlagField
        label="One for each copy of the piece"
        hint="as at two cuffs; else one goes along all of them, as round the hem"
        value={isEach}
        onChange={setIsEach}
      />
      <p className="quiet">
        {words ? howText(words, system) : 'What it takes stands here once its edges are chosen.'}
      </p>
    </FormSheet>
  );
}
