/** The lay of each slot, drawn to scale: on endless cloth, as the coats need it, or on what the stash has. */
import { say } from '../../../shared-core/wording/say.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import { Tabs } from '@base-ui/react/tabs';
import { useMemo, useRef, useState } from 'react';
import type { FlowInput } from '../../../shared-core/contract/contract.ts';
import type { Estimate } from '../../../shared-core/flow/estimate.ts';
import { cuttingSheet, laysToCut } from '../../../shared-core/flow/output/lay-sheets.ts';
import { laySentence } from '../../../shared-core/flow/falls-of-estimate.ts';
import { laySvg } from '../../../shared-core/lay/lay-svg.ts';
import { layWords } from '../../../shared-core/lay/lay-words.ts';
import { layStillFalls } from '../../../shared-core/lay/still-falls/still-falls.ts';
import type { SlotLay } from '../../../shared-core/lay/plan-lay.ts';
import { takenInAllMm } from '../../../shared-core/lay/washed.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { sizedPieceName } from '../../../shared-core/plan/model/sizes.ts';
import { useCoat, useCoatStore } from '../../client/coat/coat-context.ts';
import { isLookingForLays } from '../../client/coat/coat-store.ts';
import { itemById, slotName } from '../../client/wording/coat-words.ts';
import { routeHash, slotInAddress } from '../../client/route.ts';
import { jobHash, keepLay } from '../../client/workers/kept-lays.ts';
import { quickSeconds } from '../../client/workers/lay-seconds.ts';
import { layInWorker } from '../../client/workers/lay-pool.ts';
import { useSystem, useWorkshop } from '../../client/workshop.ts';
import { clothLengthUnit } from '../../parts/figures/Amount.tsx';
import { Button } from '../../parts/forms/Button.tsx';
import { EmptyState } from '../../parts/layout/EmptyState.tsx';
import { RoomAwaited } from '../../parts/layout/EstimateAwaited.tsx';
import { RoomHead } from '../../parts/layout/RoomHead.tsx';
import { CuttingSheetButton } from '../../parts/tables/CuttingSheetButton.tsx';
import { fileName, saveFile } from '../../parts/tables/save-file.ts';
import { StillFallsNote } from '../../parts/notes/StillFallsNote.tsx';
import { bestLay, useBestLay } from './best-lay.ts';
import { HandTable } from './hand/HandTable.tsx';
import style from './LayRoom.module.css';
import { LengthDrawing } from './LengthDrawing.tsx';
import { endlessCaption, lengthCaption, lengthName } from './length-words.tsx';
import { useZoom } from './use-zoom.ts';

type Where = 'needs' | 'stash';

export function LayRoom() {
  const { input, estimate } = useCoat('input', 'estimate');
  const [slotId, setSlotId] = useState(slotInAddress);
  // Who comes for one slot comes from what the stash has for it.
  const [where, setWhere] = useState<Where>(() => (slotInAddress() === null ? 'needs' : 'stash'));
  if (!input) return null;
  if (!estimate)
    return <RoomAwaited title={say('lay-room.lay')} lead={say('lay-room.the-pieces-are-being-laid')} />;
  const shown = estimate.lays.find((candidate) => candidate.slotId === slotId) ?? estimate.lays[0];
  if (!shown) {
    return (
      <>
        <RoomHead title={say('lay-room.lay')} />
        <EmptyState
          title={say('lay-room.there-is-nothing-to-lay-yet')}
          action={
            <a href={routeHash({ kind: 'coat', planId: input.plan.id, step: 'plan' })}>
              {say('lay-room.go-to-the-plan')}
            </a>
          }
        >
          {say('lay-room.a-lay-is-drawn-for-each')}
        </EmptyState>
      </>
    );
  }
  const onStash = estimate.cover.find((slotCover) => slotCover.slotId === shown.slotId)?.lay ?? null;
  const slotLay = where === 'stash' && onStash ? onStash : shown;
  return (
    <OneLay
      input={input}
      slotLay={slotLay}
      estimate={estimate}
      where={where === 'stash' && onStash ? 'stash' : 'needs'}
      hasStash={onStash !== null}
      onWhere={setWhere}
      onSlot={setSlotId}
    />
  );
}

interface OneLayProps {
  readonly input: FlowInput;
  readonly slotLay: SlotLay;
  readonly estimate: Estimate;
  readonly where: Where;
  readonly hasStash: boolean;
  readonly onWhere: (where: Where) => void;
  readonly onSlot: (slotId: string) => void;
}

function OneLay({ input, estimate, slotLay, where, hasStash, onWhere, onSlot }: OneLayProps) {
  const { phase, stop, lookLonger, reload } = useCoat('phase', 'stop', 'lookLonger', 'reload');
  const store = useCoatStore();
  const { workshop } = useWorkshop();
  const system = useSystem();
  const best = useBestLay(slotLay);
  const { job, result, slotId, washed } = best;
  const name = slotName(input, slotId);
  const isWorking = isLookingForLays(phase);
  const falls = layStillFalls(result, isWorking);
  const sheet = useRef<HTMLElement>(null);
  const { pxPerMm, zoom, fit } = useZoom(
    sheet,
    drawnLengthMm(best),
    job.lengths[0]?.widthMm ?? 1500,
    `${slotId} ${where}`,
  );
  const pieceNames = useMemo(
    () => new Map(job.shapes.map((shape) => [shape.id, sizedPieceName(input.plan, shape.id)])),
    [input.plan, job],
  );
  const item = itemById(input, input.plan.slots.find((slot) => slot.id === slotId)?.itemId ?? null);
  const lostAcross = Math.max(0, ...(washed ?? []).map(({ acrossRatio }) => acrossRatio));
  const selvageMm = item?.kind === 'cloth' ? (item.facts.selvageMm ?? 0) * (1 - lostAcross) : 0;
  const drawn = job.lengths
    .map((length, index) => ({ length, index, usedMm: result.usedLengthMm[index] ?? 0 }))
    .filter(({ usedMm }) => usedMm > 0);
  const [isByHand, setIsByHand] = useState(false);
  const lengthNames = job.lengths.map((length) =>
    lengthName(input, length.id, length.lengthMm, { isWashed: washed !== undefined, system }),
  );
  const giveUpHandLay = async () => {
    const laid = await layInWorker({ job, seconds: quickSeconds, isThorough: false });
    await keepLay(workshop, await jobHash(job), laid);
    await reload();
  };
  const saveDrawing = () =>
    saveFile(
      fileName(say('lay-room.lay-2', { planName: input.plan.name, name }), 'svg'),
      'image/svg+xml',
      laySvg(input.plan, best),
    );
  return (
    <>
      <RoomHead
        title={say('lay-room.lay')}
        lead={`${sentenceCase(name)}, ${item?.name ?? say('lay-room.cloth-still-to-be-chosen')}`}
        actions={
          <>
            <CuttingSheetButton
              name={input.plan.name}
              sheet={() =>
                cuttingSheet(
                  {
                    ...input,
                    needs: estimate.requirement,
                    lays: laysToCut(estimate).map((each) => bestLay(each, store.getState().live)),
                  },
                  system,
                )
              }
            />
            <Button onClick={saveDrawing}>{say('lay-room.save-drawing')}</Button>
            <Button onClick={() => window.print()}>{say('common.print')}</Button>
          </>
        }
      />
      <Tabs.Root value={slotId} onValueChange={(next) => onSlot(String(next))} className={style.room}>
        <Tabs.List className={style.slots} aria-label={say('common.slot')}>
          {estimate.lays.map((each) => (
            <SlotTab key={each.slotId} slotId={each.slotId} slotLay={each} />
          ))}
        </Tabs.List>
        <Tabs.Panel value={slotId} tabIndex={-1} className={style.room}>
          {isByHand ? (
            <HandTable
              key={`${slotId} ${where}`}
              slotLay={best}
              name={name}
              selvageMm={selvageMm}
              isOneWay={item?.kind === 'cloth' && item.facts.hasNap === true}
              pieceNames={pieceNames}
              lengthNames={lengthNames}
              onClose={() => setIsByHand(false)}
            />
          ) : (
            <>
              <div className={style.bar}>
                <div className={style.where}>
                  <button type="button" aria-pressed={where === 'needs'} onClick={() => onWhere('needs')}>
                    {say('lay-room.what-the-coats-need')}
                  </button>
                  <button
                    type="button"
                    aria-pressed={where === 'stash'}
                    disabled={!hasStash}
                    onClick={() => onWhere('stash')}
                  >
                    {say('lay-room.on-your-stash')}
                  </button>
                </div>
                <div className={style.group}>
                  <Button aria-label={say('lay-room.smaller')} onClick={() => zoom(1 / 1.4)}>
                    −
                  </Button>
                  <Button aria-label={say('lay-room.larger')} onClick={() => zoom(1.4)}>
                    +
                  </Button>
                  <Button onClick={fit}>{say('lay-room.whole-length')}</Button>
                </div>
                <div className={style.group}>
                  <Button onClick={() => setIsByHand(true)}>{say('lay-room.lay-by-hand')}</Button>
                  {isWorking ? (
                    <Button onClick={stop}>{say('lay-room.stop')}</Button>
                  ) : (
                    <>
                      {result.stoppedBy === 'by hand' && (
                        <Button onClick={() => void giveUpHandLay()}>
                          {say('lay-room.back-to-the-found-lay')}
                        </Button>
                      )}
                      <Button onClick={() => lookLonger(10)}>{say('lay-room.look-10-s-longer')}</Button>
                      <Button onClick={() => lookLonger(60)}>{say('lay-room.look-60-s-longer')}</Button>
                    </>
                  )}
                </div>
              </div>
              <p className={`${style.words} number`} data-testid="lay-words">
                {sentenceCase(layWords(result, system, washed))}.
              </p>
              {falls && <StillFallsNote falls={falls} sentence={laySentence(falls, isWorking)} />}
              <section
                ref={sheet}
                className={style.sheet}
                // biome-ignore lint/a11y/noNoninteractiveTabindex: what is wider than the window is scrolled with the keys.
                tabIndex={0}
                aria-label={say('lay-room.drawing-of-the-lay')}
              >
                {drawn.map(({ length, index, usedMm }) => (
                  <div key={length.id}>
                    <p className={style.caption}>
                      {where === 'stash'
                        ? lengthCaption(input, length.id, length.lengthMm, usedMm, {
                            lost: washed?.[index],
                            system,
                          })
                        : endlessCaption(length.widthMm, selvageMm, {
                            isWashed: washed !== undefined,
                            system,
                          })}
                    </p>
                    <LengthDrawing
                      job={job}
                      result={result}
                      lengthIndex={index}
                      pxPerMm={pxPerMm}
                      selvageMm={selvageMm}
                      pieceNames={pieceNames}
                      label={say('lay-room.lay-of-the', {
                        name,
                        usedMm: showQuantity('length', usedMm, { system, unit: clothLengthUnit, digits: 2 }),
                      })}
                    />
                  </div>
                ))}
              </section>
            </>
          )}
        </Tabs.Panel>
      </Tabs.Root>
    </>
  );
}

/** A slot with the length off the roll that its coats need and how much of that is used. */
function SlotTab({ slotId, slotLay }: { slotId: string; slotLay: SlotLay }) {
  const { input } = useCoat('input');
  const system = useSystem();
  const best = useBestLay(slotLay);
  if (!input) return null;
  return (
    <Tabs.Tab value={slotId} className={`${style.slot} eased`}>
      {sentenceCase(slotName(input, slotId))}
      <span className="number">
        {showQuantity('length', takenInAllMm(best), { system, unit: clothLengthUnit, digits: 2 })} ·{' '}
        {Math.floor(best.result.utilisation * 100)} %
      </span>
    </Tabs.Tab>
  );
}

function drawnLengthMm({ job, result }: SlotLay): number {
  const drawn = job.lengths.map((length, index) => {
    const usedMm = result.usedLengthMm[index] ?? 0;
    return usedMm > 0 ? (length.lengthMm ?? usedMm + 150) : 0;
  });
  return Math.max(500, ...drawn);
}
