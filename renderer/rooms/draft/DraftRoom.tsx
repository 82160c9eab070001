/** Draft a coat: measures and choices on the left, every piece to scale and how it fits on the right; then it is a plan. */
import { say } from '../../../shared-core/wording/say.ts';
import { useDeferredValue, useMemo, useState } from 'react';
import { useWatch } from 'react-hook-form';
import type { Body } from '../../../shared-core/draft/body.ts';
import {
  draftCoat,
  type DraftedCoat,
  draftStyle,
  type SizeToDraft,
} from '../../../shared-core/draft/draft.ts';
import { type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import { useChange } from '../../client/queries/changes.ts';
import { ask } from '../../client/queries/reads.ts';
import { goTo } from '../../client/route.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { useTypedForm } from '../../parts/forms/typed-form.ts';
import { useTypingIn } from '../../parts/forms/typing-in.ts';
import { Problems } from '../../parts/notes/Problems.tsx';
import { RoomHead } from '../../parts/layout/RoomHead.tsx';
import { CoatFields } from './CoatFields.tsx';
import { bodyOfSize, paddedInput, plainInput, wearer } from './draft-form.ts';
import style from './DraftRoom.module.css';
import { FitReport } from './FitReport.tsx';
import { PaddingPanel } from './PaddingPanel.tsx';
import { PieceSheetDrawing } from './PieceSheetDrawing.tsx';
import { type DraftForm, draftForm, draftNow, type TypedDraft } from './typed-draft.ts';
import { WearerFields } from './WearerFields.tsx';

/** The draft of the form's own size. Until it has a name it is drawn as "Coat". */
function draftOfForm(form: DraftForm, body: Result<Body>): Result<DraftedCoat> {
  if (!body.ok) return body;
  const named = { ...form, name: form.name.trim() || say('common.coat') };
  const input = paddedInput(named, plainInput(named, body.value, 'draft', form.size));
  return input.ok ? draftCoat(input.value) : input;
}

export function DraftRoom() {
  const { workshop, facts } = useWorkshop();
  const { settings } = facts;
  const { make: savePlan } = useChange('savePlan');
  const [refusals, setRefusals] = useState<readonly Problem[]>([]);
  const [isSaving, setIsSaving] = useState(false);
  const typing = useTypingIn();
  const { control, setValue, sheet } = useTypedForm({
    ...draftForm(settings),
    subject: say('draft-room.the-draft'),
    save: async (form): Promise<readonly Problem[]> => {
      const drafted = draftedStyle(form);
      if (!drafted.ok) return drafted.problems;
      const { plan } = drafted.value;
      const listed = await ask(workshop, 'listPlans', {});
      if (!listed.ok) return listed.problems;
      if (listed.value.rows.some((row) => row.name === plan.name)) {
        return [
          {
            where: say('draft-room.a-coat-called', { planName: plan.name }),
            what: say('draft-room.is-planned-already'),
            fix: say('common.choose-another-name'),
          },
        ];
      }
      // The workshop gives the plan an id of its own.
      const saved = await savePlan({ plan, basedOn: null, said: say('draft-room.drafted-from-measures') });
      if (!saved.ok) return saved.problems;
      goTo({ kind: 'coat', planId: saved.value.planId, step: 'plan' });
      return [];
    },
  });
  const typed = useWatch({ control }) as TypedDraft;
  const drawnTyped = useDeferredValue(typed);
  const form = useMemo(() => draftNow(drawnTyped, settings), [drawnTyped, settings]);
  const body = useMemo(() => wearer(form), [form]);
  const draft = useMemo(() => draftOfForm(form, body), [form, body]);

  const make = async () => {
    if (isSaving) return;
    setIsSaving(true);
    try {
      setRefusals(await sheet.onSave());
    } finally {
      setIsSaving(false);
    }
  };

  return (
    <div className={style.room}>
      <RoomHead
        title={say('common.draft-a-coat')}
        lead={say('draft-room.from-measures-or-a-size-to')}
        actions={
          <Button look="main" disabled={isSaving || !draft.ok} onClick={() => void make()}>
            {form.moreSizes.length > 0
              ? say('draft-room.make-the-plan-in-sizes', { moreSizesCount: form.moreSizes.length + 1 })
              : say('draft-room.make-this-plan')}
          </Button>
        }
      />
      <Problems problems={refusals} />
      <div className={style.columns} {...typing.around}>
        <form className={style.form} noValidate onSubmit={(event) => event.preventDefault()}>
          <WearerFields control={control} setValue={setValue} body={body.ok ? body.value : null} />
          <CoatFields control={control} body={body.ok ? body.value : null} />
        </form>
        <div className={style.drawn}>
          {draft.ok && body.ok ? (
            <>
              <PieceSheetDrawing pieces={draft.value.plan.pieces} />
              <PaddingPanel
                form={form}
                control={control}
                setValue={setValue}
                body={body.value}
                report={draft.value.report}
              />
              <FitReport report={draft.value.report} />
            </>
          ) : (
            <>
              <Problems problems={draft.ok ? [] : draft.problems} isQuiet={typing.isTyping} />
              {form.way === 'go up sizes' && (
                <Button onClick={() => setValue('way', 'add the girth')}>
                  {say('draft-room.add-the-girth-instead')}
                </Button>
              )}
            </>
          )}
        </div>
      </div>
    </div>
  );
}

/** The coat in the form's size, with the further sizes beside it. */
function draftedStyle(form: DraftForm): Result<DraftedCoat> {
  const body = wearer(form);
  if (!body.ok) return body;
  const input = paddedInput(form, plainInput(form, body.value, 'draft', form.size));
  if (!input.ok) return input;
  if (form.moreSizes.length === 0) return draftCoat(input.value);
  const sizes: SizeToDraft[] = [];
  const problems: Problem[] = [];
  for (const size of form.moreSizes) {
    const wears = bodyOfSize(form, body.value, size);
    if (!wears) continue;
    const padded = paddedInput(form, plainInput(form, wears, 'draft', size));
    if (padded.ok) sizes.push({ size, body: padded.value.body });
    else problems.push(...padded.problems);
  }
  return problems.length > 0 ? err(...problems) : draftStyle(input.value, sizes);
}
