/** Which edges a fastening runs along, and how it ends: what its length follows from. */
import { say } from '../../../shared-core/wording/say.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import { useState } from 'react';
import { useController } from 'react-hook-form';
import { z } from 'zod';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { elasticRatios, setAlong } from '../../../shared-core/plan/edits/along-edges.ts';
import type { Slot } from '../../../shared-core/plan/model/coat-plan.ts';
import type { EdgePlace } from '../../../shared-core/plan/model/outline.ts';
import type { Item } from '../../../shared-core/stash/stash.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { itemById } from '../../client/wording/coat-words.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { EdgeChoices } from '../../parts/forms/EdgeChoices.tsx';
import { FormFlag, FormQuantity } from '../../parts/forms/FormFields.tsx';
import { FormSheet } from '../../parts/forms/FormSheet.tsx';
import type { QuantityAsked } from '../../parts/forms/QuantityInput.tsx';
import { quantityText, type Units } from '../../parts/forms/quantity-text.ts';
import { useTypedForm } from '../../parts/forms/typed-form.ts';
import style from './NeedsRoom.module.css';

export function AlongEdges({ slot }: { slot: Slot }) {
  const { input } = useCoat('input');
  const [isOpen, setIsOpen] = useState(false);
  if (!input) return null;
  const names = slot.alongEdges.map(({ pieceId, edge }) => {
    const piece = input.plan.pieces.find((each) => each.id === pieceId);
    return say('along-edges.of', { edge, pieceName: piece?.name ?? pieceId });
  });
  return (
    <>
      <p className="quiet small">
        {names.length > 0 &&
          `${say('along-edges.runs-along', { names: names.join(', '), ifAlongEveryCopy: slot.alongEveryCopy ? 'yes' : 'no' })} `}
        <button type="button" className={style.link} onClick={() => setIsOpen(true)}>
          {names.length > 0 ? say('common.change') : say('along-edges.let-its-length-follow-the-edges')}
          <span className="only-read-aloud">{` ${say('along-edges.of-2', { slotName: slot.name })}`}</span>
        </button>
      </p>
      {isOpen && <AlongSheet slot={slot} onClose={() => setIsOpen(false)} />}
    </>
  );
}

const fields = {
  ratio: {
    label: say('along-edges.length-over-that-of-the-edges'),
    quantity: 'ratio',
    min: 0.3,
    max: 1.5,
    hint: say('along-edges.elastic-70-to-90-stretched-on'),
  },
  shorter: {
    label: say('along-edges.shorter-than-the-edges-by'),
    quantity: 'length',
    min: -5000,
    hint: say('along-edges.below-0-for-ends-that-stick'),
  },
} as const satisfies Record<string, QuantityAsked>;

interface TypedAlong {
  edges: EdgePlace[];
  isEveryCopy: boolean;
  ratio: string;
  shorter: string;
}

/** item: what fills the slot, where something does. */
function alongForm(slot: Slot, item: Item | null, units: Units) {
  const { system } = units;
  const isElastic = item?.kind === 'fastening' && item.facts.form === 'elastic';
  const begins = isElastic && slot.alongEdges.length === 0 ? elasticRatios.usual : 1;
  const value = slot.lengthRatio ?? begins;
  const ratio = { value, text: showQuantity('ratio', value, { system }) };
  const { shorterByMm } = slot;
  const shorter = { value: shorterByMm, text: showQuantity('length', shorterByMm, { system }) };
  const schema = z.object({
    edges: z.array(z.object({ pieceId: z.string(), edge: z.string() })),
    isEveryCopy: z.boolean(),
    ratio: quantityText(fields.ratio, units, ratio),
    shorter: quantityText(fields.shorter, units, shorter),
  });
  const start: TypedAlong = {
    edges: [...slot.alongEdges],
    isEveryCopy: slot.alongEveryCopy ?? false,
    ratio: ratio.text,
    shorter: shorter.text,
  };
  return { start, schema: () => schema };
}

function AlongSheet({ slot, onClose }: { slot: Slot; onClose: () => void }) {
  const { input, edit } = useCoat('input', 'edit');
  const { settings } = useWorkshop().facts;
  const { control, sheet } = useTypedForm({
    ...alongForm(slot, input ? itemById(input, slot.itemId) : null, settings),
    subject: sentenceCase(slot.name),
    save: async ({ edges, isEveryCopy, ratio, shorter }) => {
      const along = { edges, isEveryCopy, shorterByMm: shorter ?? 0, lengthRatio: ratio ?? 1 };
      const answer = await edit((plan) => setAlong(plan, slot.id, along));
      return answer.ok ? [] : answer.problems;
    },
  });
  const { value: edges, onChange: setEdges } = useController({ control, name: 'edges' }).field;
  if (!input) return null;
  return (
    <FormSheet
      title={say('along-edges.what-the-runs-along', { slotName: slot.name })}
      saveLabel={say('along-edges.use-these-edges')}
      onClose={onClose}
      {...sheet}
    >
      <EdgeChoices plan={input.plan} edges={edges} onChange={setEdges} />
      <FormFlag
        control={control}
        name="isEveryCopy"
        label={say('along-edges.on-left-and-right-alike')}
        hint={say('along-edges.a-cord-through-the-whole-hem')}
      />
      <FormQuantity control={control} name="ratio" {...fields.ratio} />
      <FormQuantity control={control} name="shorter" {...fields.shorter} />
      {edges.length > 0 && (
        <Button look="quiet" onClick={() => setEdges([])}>
          {say('along-edges.its-length-does-not-matter')}
        </Button>
      )}
    </FormSheet>
  );
}
