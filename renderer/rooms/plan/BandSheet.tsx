/** A binding or a rib by what it is sewn to: its length follows, and how many strips or how large a square it takes. */
import { say } from '../../../shared-core/wording/say.ts';
import { useController, useWatch } from 'react-hook-form';
import { howText } from '../../../shared-core/measure/basis.ts';
import { addBand, bandWords } from '../../../shared-core/plan/edits/bands.ts';
import type { Band } from '../../../shared-core/plan/model/coat-plan.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { itemById } from '../../client/wording/coat-words.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { EdgeChoices } from '../../parts/forms/EdgeChoices.tsx';
import { FormChoice, FormFlag, FormQuantity, FormText } from '../../parts/forms/FormFields.tsx';
import { FormSheet } from '../../parts/forms/FormSheet.tsx';
import { useTypedForm } from '../../parts/forms/typed-form.ts';
import style from './PlanRoom.module.css';
import { bandBegins, bandFields, bandForm, bandKinds, bandNow, bandOf } from './typed-band.ts';

export function BandSheet({ onClose }: { onClose: () => void }) {
  const { input, edit } = useCoat('input', 'edit');
  const { settings } = useWorkshop().facts;
  const cloths = input?.plan.slots.filter((slot) => slot.kind === 'cloth') ?? [];
  /** Usable width of what fills the slot: strips of a straight binding are cut across it. */
  const usableWidthMm = (slotId: string): number | null => {
    const itemId = cloths.find((slot) => slot.id === slotId)?.itemId ?? null;
    const item = input ? itemById(input, itemId) : null;
    if (item?.kind !== 'cloth' || item.facts.widthMm === null) return null;
    return item.facts.widthMm - 2 * (item.facts.selvageMm ?? 0);
  };
  const { control, getValues, setValue, sheet } = useTypedForm({
    ...bandForm(cloths[0]?.id ?? '', usableWidthMm, settings),
    subject: ({ name }) => name,
    save: async (read) => {
      const { name, slotId } = read;
      const answer = await edit((plan) => addBand(plan, { name, slotId, band: bandOf(read) }));
      return answer.ok ? [] : answer.problems;
    },
  });
  const typed = useWatch({ control }) as Parameters<typeof bandNow>[0];
  const { kind } = typed;
  const edges = useController({ control, name: 'edges' }).field;
  if (!input) return null;

  const put = (name: 'name' | 'width' | 'ends' | 'strip', text: string) =>
    setValue(name, text, { shouldDirty: true, shouldValidate: true });
  const choose = (next: Band['kind']) => {
    if ((kind === 'rib') !== (next === 'rib')) {
      const begins = bandBegins(next, null, settings);
      put('width', begins.width.text);
      put('ends', begins.ends.text);
    }
    // A name that nobody typed changes with the kind.
    if (bandKinds.some((each) => each.name === getValues('name')))
      put('name', bandKinds.find((each) => each.value === next)!.name);
  };
  const chooseSlot = (next: string) => {
    const widthMm = usableWidthMm(next);
    if (widthMm !== null) put('strip', bandBegins(kind, widthMm, settings).strip.text);
  };
  const preview = addBand(input.plan, {
    name: typed.name,
    slotId: typed.slotId,
    band: bandNow(typed, usableWidthMm(typed.slotId), settings),
  });
  const made = preview.ok ? preview.value.plan.pieces.at(-1) : undefined;
  const words = made ? bandWords(made, input.plan.pieces) : null;
  const fields = bandFields(kind);
  return (
    <FormSheet
      title={say('band-sheet.add-a-binding-or-a-rib')}
      saveLabel={say('band-sheet.add-it')}
      onClose={onClose}
      {...sheet}
    >
      <div className={style.pair}>
        <FormChoice
          control={control}
          name="kind"
          label={say('band-sheet.what-it-is')}
          options={bandKinds}
          onChosen={(next) => next !== '' && choose(next)}
        />
        <FormText control={control} name="name" label={say('common.name')} />
        <FormChoice
          control={control}
          name="slotId"
          label={say('common.cut-from')}
          options={cloths.map((slot) => ({ value: slot.id as string, label: slot.name }))}
          onChosen={chooseSlot}
        />
        <FormQuantity control={control} name="width" {...fields.width} />
        <FormQuantity control={control} name="ends" {...fields.ends} />
        {kind === 'rib' && <FormQuantity control={control} name="ratio" {...fields.ratio} />}
        {kind === 'straight binding' && <FormQuantity control={control} name="strip" {...fields.strip} />}
      </div>
      <EdgeChoices plan={input.plan} edges={edges.value} onChange={edges.onChange} />
      <FormFlag
        control={control}
        name="isEach"
        label={say('band-sheet.one-for-each-copy-of-the')}
        hint={say('band-sheet.as-at-two-cuffs-else-one')}
      />
      <p className="quiet">
        {words ? howText(words, settings.system) : say('band-sheet.what-it-takes-stands-here-once')}
      </p>
    </FormSheet>
  );
}
