/** What the lines take up by number of layers: estimated, or as the maker measured it on a swatch. */
import { say } from '../../../shared-core/wording/say.ts';
import { useMemo, useState } from 'react';
import { slotItems } from '../../../shared-core/flow/estimate.ts';
import type { CoatPlan, Piece, QuiltedMeasure } from '../../../shared-core/plan/model/coat-plan.ts';
import { listed } from '../../../shared-core/wording/listed.ts';
import { battingPlyCount, layersWords, measureOf } from '../../../shared-core/plan/model/quilted-layers.ts';
import { forgetSlotTakeUp, forgetSwatch, setRise } from '../../../shared-core/plan/edits/swatch.ts';
import { plansBySize } from '../../../shared-core/plan/model/sizes.ts';
import { isPieceQuilted } from '../../../shared-core/quilting/lines.ts';
import type { SlotItems } from '../../../shared-core/requirement/need.ts';
import {
  type PieceTakeUp,
  pieceTakeUp,
  takeUpBasis,
  type TakeUpRange,
} from '../../../shared-core/requirement/cut/slot-take-up.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useLengthText } from '../../client/wording/length-text.ts';
import { usePlanChange } from '../../client/coat/plan-change.ts';
import { BasisNote } from '../../parts/figures/BasisNote.tsx';
import { Button } from '../../parts/forms/Button.tsx';
import fieldStyle from '../../parts/forms/Field.module.css';
import { Figure } from '../../parts/figures/Figure.tsx';
import { OptionalSettledField } from '../../parts/forms/SettledField.tsx';
import { DataTable } from '../../parts/tables/DataTable.tsx';
import style from './QuiltingRoom.module.css';
import { SwatchSheet } from './SwatchSheet.tsx';

/** Quilted pieces of so many layers, with what a swatch of as many showed. */
interface Layers {
  readonly plyCount: number;
  readonly pieces: readonly Piece[];
  readonly measure: QuiltedMeasure | null;
}

export function TakeUp() {
  const { input } = useCoat('input');
  const change = usePlanChange();
  const [measuring, setMeasuring] = useState<number | null>(null);
  const items = useMemo(() => (input ? slotItems(input) : new Map()), [input]);
  const rows = useMemo(() => (input ? layersOf(input.plan) : []), [input]);
  if (!input || rows.length === 0) return null;
  const { plan } = input;
  const isOwnBySlot = plan.slots.some(
    (slot) => slot.takeUpAlongRatio !== null || slot.takeUpAcrossRatio !== null,
  );
  const bases = rows.flatMap(({ pieces }) =>
    pieces.flatMap((piece) => {
      const takeUp = pieceTakeUp(plan, piece, items);
      return takeUp ? takeUpBasis(takeUp) : [];
    }),
  );
  const basis = bases.filter(({ how }, index) => bases.findIndex((other) => other.how === how) === index);
  return (
    <section aria-labelledby="take-up">
      <h2 id="take-up" className={style.title}>
        {say('take-up.take-up')}
      </h2>
      <p className={style.lead}>{say('take-up.quilting-draws-the-cloth-in-so')}</p>
      <DataTable
        className={style.layers}
        label={say('take-up.take-up-by-layers')}
        rows={rows.map((layers) => takenBy(layers, plan, items))}
        keyOf={({ layers }) => layers.plyCount}
        columns={[
          {
            head: say('take-up.layers'),
            cell: ({ layers, words }) => (
              <>
                {sentenceCase(words)}
                <span className={`${style.names} quiet small`}>
                  {listed(layers.pieces.map(({ name }) => name))}
                </span>
              </>
            ),
          },
          { head: say('take-up.rise-of-one-face'), cell: (taken) => <RiseField taken={taken} /> },
          { head: say('take-up.over-the-lines'), align: 'end', cell: ({ over }) => <Way ways={over} /> },
          { head: say('take-up.along-the-lines'), align: 'end', cell: ({ along }) => <Way ways={along} /> },
          {
            head: say('take-up.swatch'),
            isHeadHidden: true,
            cellClass: style.swatchCell,
            cell: (taken) => (
              <SwatchActions taken={taken} onMeasure={() => setMeasuring(taken.layers.plyCount)} />
            ),
          },
        ]}
      />
      {isOwnBySlot && (
        <p>
          {say('take-up.an-earlier-swatch-was-measured-for')}{' '}
          <Button look="quiet" onClick={() => void change.change(forgetSlotTakeUp)}>
            {say('take-up.forget-it')}
          </Button>
        </p>
      )}
      {change.problem && (
        <p role="alert" className={fieldStyle.problem}>
          {change.problem}
        </p>
      )}
      <BasisNote basis={basis} />
      {measuring !== null && (
        <SwatchSheet plan={plan} battingPlyCount={measuring} onClose={() => setMeasuring(null)} />
      )}
    </section>
  );
}

/** By the number of layers, the fewest first; pieces of all sizes are quilted alike, so each is named once. */
function layersOf(plan: CoatPlan): readonly Layers[] {
  const pieces = plansBySize(plan)
    .flatMap((each) => each.pieces)
    .filter((piece) => isPieceQuilted(plan, piece));
  const unique = [...new Map(pieces.map((piece) => [piece.id, piece])).values()];
  return [...Map.groupBy(unique, (piece) => battingPlyCount(plan, piece))]
    .sort(([a], [b]) => a - b)
    .map(([plyCount, alike]) => ({ plyCount, pieces: alike, measure: measureOf(plan, plyCount) }));
}

/** What quilting takes of some layers, in words and by direction. */
interface Taken {
  readonly layers: Layers;
  readonly words: string;
  readonly over: readonly OneWay[];
  readonly along: readonly OneWay[];
  readonly risesMm: readonly number[];
  readonly plan: CoatPlan;
}

function takenBy(layers: Layers, plan: CoatPlan, items: SlotItems): Taken {
  const takeUps = layers.pieces.flatMap((piece) => {
    const takeUp = pieceTakeUp(plan, piece, items);
    return takeUp ? [{ piece, takeUp }] : [];
  });
  return {
    layers,
    words: layers.plyCount === 0 ? say('take-up.no-batting') : layersWords(layers.plyCount),
    over: takeUps.map(({ piece, takeUp }) => wayOf(piece, takeUp, 'over')),
    along: takeUps.map(({ piece, takeUp }) => wayOf(piece, takeUp, 'along')),
    risesMm: takeUps.map(({ takeUp }) => takeUp.rise.riseMm),
    plan,
  };
}

function RiseField({ taken: { layers, words, risesMm } }: { taken: Taken }) {
  const { plyCount, measure } = layers;
  const lengthText = useLengthText();
  const rise = usePlanChange();
  return (
    <OptionalSettledField
      label={say('take-up.rise-of-one-face-2', { words })}
      isLabelHidden
      quantity="length"
      value={measure?.riseMm ?? null}
      onSet={(riseMm) => void rise.change((now) => setRise(now, plyCount, riseMm, lengthText))}
      hint={measure?.riseMm == null ? estimatedRise(risesMm, lengthText) : say('take-up.as-measured')}
      problem={rise.problem}
      min={0}
    />
  );
}

function SwatchActions({ taken, onMeasure }: { taken: Taken; onMeasure: () => void }) {
  const { layers, words, plan } = taken;
  const { plyCount, pieces, measure } = layers;
  const forget = usePlanChange();
  return (
    <>
      <Button aria-label={say('take-up.measure-a-swatch', { words })} onClick={onMeasure}>
        {measure?.overLinesRatio == null ? say('take-up.measure-a-swatch-2') : say('take-up.measure-again')}
      </Button>
      {measure && (
        <Button
          look="quiet"
          aria-label={say('take-up.forget-the-swatch', { words })}
          onClick={() => void forget.change((now) => forgetSwatch(now, plyCount))}
        >
          {say('take-up.forget-it')}
        </Button>
      )}
      {measure && <PitchNote measure={measure} plan={plan} pieces={pieces} />}
    </>
  );
}

/** Lines much nearer or further than those of the swatch draw in more or less than it did. */
function PitchNote({
  measure,
  plan,
  pieces,
}: {
  measure: QuiltedMeasure;
  plan: CoatPlan;
  pieces: readonly Piece[];
}) {
  const planMm = plan.quilting?.spacingMm ?? 0;
  const isFar = pieces.some(
    ({ quiltingSpacingMm = planMm }) => Math.abs(quiltingSpacingMm / measure.spacingMm - 1) > 0.1,
  );
  if (!isFar) return null;
  return (
    <span className="quiet small">
      {say('take-up.its-lines-are')} <Figure quantity="length" value={measure.spacingMm} />{' '}
      {say('take-up.apart-not-as-far-as-on')}
    </span>
  );
}

interface OneWay {
  readonly ratio: number;
  readonly range: TakeUpRange | null;
}

function wayOf(piece: Piece, takeUp: PieceTakeUp, way: 'over' | 'along'): OneWay {
  const isAlongGrain = (piece.quilted === 'across') === (way === 'over');
  return isAlongGrain
    ? { ratio: takeUp.alongRatio, range: takeUp.alongRange }
    : { ratio: takeUp.acrossRatio, range: takeUp.acrossRange };
}

/** One figure, or from the least to the most where pieces differ by their lines; below it how sure it is. */
function Way({ ways }: { ways: readonly OneWay[] }) {
  if (ways.length === 0) return null;
  const ratios = ways.map(({ ratio }) => ratio);
  const ranges = ways.flatMap(({ range }) => range ?? []);
  const min = Math.min(...ratios);
  const max = Math.max(...ratios);
  return (
    <>
      <Figure quantity="ratio" value={min} options={{ digits: 1 }} />
      {max - min > 0.0005 && (
        <>
          {' '}
          {say('common.to')} <Figure quantity="ratio" value={max} options={{ digits: 1 }} />
        </>
      )}
      <span className={`${style.names} quiet small`}>
        {ranges.length > 0 ? (
          <>
            {say('take-up.estimated')} <Percent ratio={Math.min(...ranges.map(({ minRatio }) => minRatio))} />{' '}
            {say('common.to')}{' '}
            <Percent ratio={wholeUp(Math.max(...ranges.map(({ maxRatio }) => maxRatio)))} />
          </>
        ) : min > 0 ? (
          say('take-up.as-measured')
        ) : (
          ''
        )}
      </span>
    </>
  );
}

/** To the whole per cent that is not below it. */
function wholeUp(ratio: number): number {
  return Math.ceil(ratio * 100 - 1e-9) / 100;
}

function Percent({ ratio }: { ratio: number }) {
  return <Figure quantity="ratio" value={ratio} options={{ digits: 0 }} />;
}

function estimatedRise(risesMm: readonly number[], text: (mm: number) => string): string {
  const min = Math.min(...risesMm);
  const max = Math.max(...risesMm);
  return min === max
    ? say('take-up.estimated-2', { text: text(min) })
    : say('take-up.estimated-to', { text: text(min), text2: text(max) });
}
