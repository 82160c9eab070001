/** One coat: its road in the rail, a line that says how the estimate stands, and the room of the chosen step. */
import { say } from '../../shared-core/wording/say.ts';
import { useEffect, useState } from 'react';
import { createPortal } from 'react-dom';
import { CoatContext, useCoat, useCoatValue } from '../client/coat/coat-context.ts';
import { coatServices } from '../client/coat/coat-services.ts';
import { createCoatStore, isLookingForLays } from '../client/coat/coat-store.ts';
import { finishedOf } from '../client/coat/finished-coat.ts';
import { onRefreshAll } from '../client/queries/query-client.ts';
import { useSystem, useWorkshop } from '../client/workshop.ts';
import type { FlowInput } from '../../shared-core/contract/contract.ts';
import { tableSizes } from '../../shared-core/flow/requirements-table/requirements-table.ts';
import type { MeasureSystem } from '../../shared-core/measure/quantity.ts';
import { showQuantity } from '../../shared-core/measure/show.ts';
import { coatsCut } from '../../shared-core/stash/cutting.ts';
import { coatTotal } from '../../shared-core/plan/model/sizes.ts';
import { takenInAllMm } from '../../shared-core/lay/washed.ts';
import { Cautions } from '../parts/notes/Cautions.tsx';
import { EditNote } from '../parts/notes/EditNote.tsx';
import { Problems } from '../parts/notes/Problems.tsx';
import { CostRoom } from '../rooms/cost/CostRoom.tsx';
import { CuttingRoom } from '../rooms/cutting/CuttingRoom.tsx';
import { CoverRoom } from '../rooms/cover/CoverRoom.tsx';
import { PatternFiles } from '../rooms/import/PatternFiles.tsx';
import { FinishedRoom } from '../rooms/finished/FinishedRoom.tsx';
import { LayRoom } from '../rooms/lay/LayRoom.tsx';
import { NeedsRoom } from '../rooms/needs/NeedsRoom.tsx';
import { PatternTableRoom } from '../rooms/pattern-table/PatternTableRoom.tsx';
import { PlanRoom } from '../rooms/plan/PlanRoom.tsx';
import { QuiltingRoom } from '../rooms/quilting/QuiltingRoom.tsx';
import { ToBuyRoom } from '../rooms/to-buy/ToBuyRoom.tsx';
import { Boundary } from './Boundary.tsx';
import style from './Coat.module.css';
import { routeHash, type Step, stepNames, steps } from '../client/route.ts';

interface CoatProps {
  readonly planId: string;
  readonly step: Step;
  /** Where in the rail the road of the coat stands; null until that is there. */
  readonly road: Element | null;
}

/** For one coat of one workshop: another is given by another key. */
export function Coat({ planId, step, road }: CoatProps) {
  const { workshop } = useWorkshop();
  const [store] = useState(() => createCoatStore(coatServices(workshop, planId)));
  useEffect(() => store.getState().open(), [store]);
  useEffect(() => onRefreshAll(() => void store.getState().reload()), [store]);
  return (
    <CoatContext value={store}>
      {road && createPortal(<Road planId={planId} step={step} />, road)}
      <div className={style.coat}>
        <Progress />
        <CoatProblems />
        <EditNote />
        <StepRoom step={step} />
      </div>
    </CoatContext>
  );
}

function CoatProblems() {
  const { problems, phase, reload } = useCoat('problems', 'phase', 'reload');
  return <Problems problems={problems} {...(phase === 'failed' && { onTryAgain: () => void reload() })} />;
}

/** The room of a step, once the coat has been read. */
function StepRoom({ step }: { step: Step }) {
  const isRead = useCoatValue(({ input }) => input !== null);
  return (
    isRead && (
      <Boundary place={step}>
        <RoomOfStep step={step} />
      </Boundary>
    )
  );
}

function RoomOfStep({ step }: { step: Step }) {
  switch (step) {
    case 'plan':
      return <PlanRoom patternFiles={<PatternFiles />} />;
    case 'quilting':
      return <QuiltingRoom />;
    case 'needs':
      return <NeedsRoom />;
    case 'lay':
      return (
        <>
          <LayRoom />
          <Cautions kinds={['blade']} />
        </>
      );
    case 'cover':
      return <CoverRoom />;
    case 'to-buy':
      return <ToBuyRoom />;
    case 'cost':
      return <CostRoom />;
    case 'cutting':
      return <CuttingRoom />;
    case 'finished':
      return <FinishedRoom />;
    case 'table':
      return <PatternTableRoom />;
    default:
      return step satisfies never;
  }
}

function Road({ planId, step }: { planId: string; step: Step }) {
  const figures = useRoadFigures();
  const name = useCoatValue(({ input }) => input?.plan.name ?? '');
  return (
    <section aria-label={say('coat.the-road-of-this-coat')}>
      <p className={style.coatName}>{name}</p>
      <ol className={style.road}>
        {steps.map((each) => (
          <li key={each}>
            <a
              className={`${style.step} eased`}
              href={routeHash({ kind: 'coat', planId, step: each })}
              aria-current={each === step ? 'step' : undefined}
            >
              <span>{stepNames[each]}</span>
              <span className={`${style.figure} number`} data-tone={figures[each].tone}>
                {figures[each].text}
              </span>
            </a>
          </li>
        ))}
      </ol>
    </section>
  );
}

type Tone = 'plain' | 'short' | 'good';

/** The one figure that tells how each step stands. */
function useRoadFigures(): Record<Step, { text: string; tone: Tone }> {
  const system = useSystem();
  const { currency } = useWorkshop().facts.settings;
  const { input, estimate } = useCoat('input', 'estimate');
  const plain = (text: string) => ({ text, tone: 'plain' as const });
  if (!input || !estimate) {
    const waiting = plain(input ? '…' : '');
    return {
      plan: plain(input ? `${coatTotal(input.plan)} ×` : ''),
      quilting: plain(spacingText(input, system)),
      needs: waiting,
      lay: waiting,
      cover: waiting,
      'to-buy': waiting,
      cost: waiting,
      cutting: plain(input ? cutText(input) : ''),
      finished: plain(input ? finishedText(input, system) : ''),
      table: plain(sizesText(input)),
    };
  }
  const shortCount = estimate.cover.filter(
    (slotCover) => slotCover.state === 'short' || slotCover.state === 'open',
  ).length;
  const clothMm = estimate.lays.reduce((sum, slotLay) => sum + takenInAllMm(slotLay), 0);
  return {
    plan: plain(`${coatTotal(input.plan)} ×`),
    quilting: plain(spacingText(input, system)),
    needs: plain(say('coat.slots', { requirementCount: estimate.requirement.length })),
    lay: plain(showQuantity('length', clothMm, { system, unit: { metric: 'm', imperial: 'yd' }, digits: 1 })),
    cover:
      shortCount > 0
        ? { text: say('coat.short', { shortCount }), tone: 'short' }
        : { text: say('coat.enough'), tone: 'good' },
    'to-buy': plain(showQuantity('money', estimate.toBuy.payMinor, { system, currency })),
    cost: plain(showQuantity('money', estimate.cost.batchMinor, { system, currency })),
    cutting: plain(cutText(input)),
    finished: plain(finishedText(input, system)),
    table: plain(sizesText(input)),
  };
}

function sizesText(input: FlowInput | null): string {
  if (!input) return '';
  const sizeCount = tableSizes(input.plan).length;
  return say('coat.sizes', { sizeCount });
}

/** Weight of one coat of the size at hand; with a plus where a material's weight is still missing. */
function finishedText(input: FlowInput, system: MeasureSystem): string {
  const [coat] = finishedOf(input).coats;
  if (!coat) return '';
  const isWhole = coat.isMassMeasured || coat.mass.isComplete;
  return `${showQuantity('mass', coat.massG, { system, digits: 2 })}${isWhole ? '' : ' +'}`;
}

/** "2 of 6 cut"; nothing before cutting has begun. */
function cutText({ plan, cuttings }: FlowInput): string {
  const cut = coatsCut(cuttings).reduce((sum, { coatCount }) => sum + coatCount, 0);
  return cuttings.length === 0 ? '' : say('coat.of-cut', { cut, coatTotal: coatTotal(plan) });
}

/** Distance of the lines, or nothing for a coat that is not quilted. */
function spacingText(input: FlowInput | null, system: MeasureSystem): string {
  const spacingMm = input?.plan.quilting?.spacingMm;
  return spacingMm === undefined ? '' : showQuantity('length', spacingMm, { system });
}

function Progress() {
  const { input, estimate, estimatedFrom, phase } = useCoat('input', 'estimate', 'estimatedFrom', 'phase');
  const { stop, lookLonger } = useCoat('stop', 'lookLonger');
  const firstLaid = useCoatValue(({ laying }) => laying[0]);
  const isWorking = isLookingForLays(phase);
  if (!input || (!isWorking && phase !== 'stopped')) return null;
  return (
    <div className={style.progress} role="status">
      {isWorking ? (
        <>
          <span className={style.thread} aria-hidden="true" />
          <span>
            {estimate ? say('coat.looking-for-better-lays') : say('coat.laying-the-pieces')}
            {firstLaid ? `: ${firstLaid}` : ''}
          </span>
          <button type="button" className={style.stop} onClick={stop}>
            {say('coat.stop-here')}
          </button>
        </>
      ) : (
        <>
          <span>
            {estimatedFrom === input
              ? say('coat.stopped-the-figures-are-those-of')
              : estimate
                ? say('coat.stopped-before-the-first-lays-of')
                : say('coat.stopped-before-the-first-lays-were')}
          </span>
          <button type="button" className={style.stop} onClick={() => lookLonger(3)}>
            {say('coat.go-on')}
          </button>
        </>
      )}
    </div>
  );
}
