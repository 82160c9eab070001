/** What stands behind a need: layers and loft, stitches and spools, the needle, the length to cut a zip to. */
import { say } from '../../../shared-core/wording/say.ts';
import { useMemo } from 'react';
import { slotItems } from '../../../shared-core/flow/estimate.ts';
import type { Slot } from '../../../shared-core/plan/model/coat-plan.ts';
import type { BattedPiece } from '../../../shared-core/requirement/fill/batted-pieces.ts';
import type { CutLengths } from '../../../shared-core/requirement/cut/cut-lengths.ts';
import { needDetail } from '../../../shared-core/requirement/need-detail.ts';
import { needleWords } from '../../../shared-core/requirement/need-words.ts';
import type { NeedleChoice } from '../../../shared-core/requirement/thread/needles.ts';
import type { ThreadUse } from '../../../shared-core/requirement/thread/thread-use.ts';
import { howText } from '../../../shared-core/measure/basis.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import type { Item } from '../../../shared-core/stash/stash.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { itemById } from '../../client/wording/coat-words.ts';
import { routeHash } from '../../client/route.ts';
import { useSystem } from '../../client/workshop.ts';
import { AdviceNotes } from '../../parts/notes/AdviceNotes.tsx';
import { Figure } from '../../parts/figures/Figure.tsx';
import { DataTable } from '../../parts/tables/DataTable.tsx';
import { AlongEdges } from './AlongEdges.tsx';
import style from './NeedsRoom.module.css';
import { stitchNames } from './stitch-names.ts';

export function NeedDetail({ slot }: { slot: Slot }) {
  const { input, estimate } = useCoat('input', 'estimate');
  const system = useSystem();
  const panels = estimate?.panels;
  const detail = useMemo(
    () => input && needDetail(input.plan, slot.id, slotItems(input), input.offers, system, panels),
    [input, slot.id, system, panels],
  );
  if (!input || !detail) return null;
  switch (detail.kind) {
    case 'cloth':
      return detail.bands.length === 0 ? null : (
        <ul className="small">
          {detail.bands.map(({ name, how }) => (
            <li key={name}>
              {name}: {howText(how, system)}
            </li>
          ))}
        </ul>
      );
    case 'batting':
      return <Layers pieces={detail.pieces} planId={input.plan.id} />;
    case 'fill':
      return null;
    case 'thread':
      return <Stitches use={detail.use} />;
    case 'needle':
      return <Needle choice={detail.choice} />;
    case 'fastening':
      return (
        <>
          <Lengths lengths={detail.lengths} />
          {hasLength(slot, itemById(input, slot.itemId)) && <AlongEdges slot={slot} />}
        </>
      );
    default:
      return detail satisfies never;
  }
}

/** Snaps, buttons and labels run along nothing. */
function hasLength(slot: Slot, item: Item | null): boolean {
  if (slot.alongEdges.length > 0) return true;
  const form = item?.kind === 'fastening' ? item.facts.form : null;
  return form === null || ['zip', 'cord', 'elastic', 'tape', 'hook and loop'].includes(form);
}

const loftUnit = { unit: { metric: 'mm', imperial: 'in' } } as const;

function Loft({ mm }: { mm: number | null }) {
  return mm === null ? say('common.not-known') : <Figure quantity="length" value={mm} options={loftUnit} />;
}

function Layers({ pieces, planId }: { pieces: readonly BattedPiece[]; planId: string }) {
  const system = useSystem();
  if (pieces.length === 0) return null;
  return (
    <details className="small">
      <summary className={style.summary}>{say('need-detail.layers-and-loft-by-piece')}</summary>
      <DataTable
        className={style.detail}
        rows={pieces}
        keyOf={({ pieceId }) => pieceId}
        rowProps={({ basis }) => ({ title: howText(basis.how, system) })}
        columns={[
          { head: say('common.piece'), cell: ({ pieceName }) => pieceName },
          { head: say('need-detail.layers'), align: 'end', isNumber: true, cell: ({ plyCount }) => plyCount },
          { head: say('need-detail.as-bought'), align: 'end', cell: ({ loftMm }) => <Loft mm={loftMm} /> },
          {
            head: say('need-detail.in-the-coat'),
            align: 'end',
            cell: ({ finishedMm }) => <Loft mm={finishedMm} />,
          },
        ]}
      />
      <p className="quiet">
        {say('need-detail.in-the-coat-midway-between-two')}{' '}
        <a href={routeHash({ kind: 'coat', planId, step: 'quilting' })}>
          {say('need-detail.put-in-a-rise-you-measured')}
        </a>
      </p>
    </details>
  );
}

const threadUnit = { unit: { metric: 'threadM', imperial: 'threadYd' }, digits: 0 } as const;

function Stitches({ use }: { use: ThreadUse }) {
  if (use.byStitch.length === 0) return null;
  return (
    <details className="small">
      <summary className={style.summary}>{say('need-detail.by-stitch-needle-and-bobbin')}</summary>
      <DataTable
        className={style.detail}
        rows={use.byStitch}
        keyOf={({ stitch }) => stitch}
        columns={[
          { head: say('need-detail.stitch'), cell: ({ stitch }) => stitchNames[stitch] },
          {
            head: say('need-detail.seams'),
            align: 'end',
            cell: ({ seamMm }) => (
              <Figure
                quantity="length"
                value={seamMm}
                options={{ unit: { metric: 'm', imperial: 'yd' }, digits: 0 }}
              />
            ),
          },
          {
            head: say('need-detail.needle'),
            align: 'end',
            cell: ({ needleM }) => <Figure quantity="threadLength" value={needleM} options={threadUnit} />,
          },
          {
            head: say('need-detail.bobbin-or-looper'),
            align: 'end',
            cell: ({ under, underM }) =>
              under === 'none' ? (
                'none'
              ) : (
                <Figure quantity="threadLength" value={underM} options={threadUnit} />
              ),
          },
        ]}
      />
    </details>
  );
}

function Needle({ choice }: { choice: NeedleChoice | null }) {
  const system = useSystem();
  if (!choice) {
    return <p className="quiet small">{say('need-detail.choose-the-cloth-and-its-needle')}</p>;
  }
  // The size and point stand out, the reason follows.
  const words = needleWords(choice, system);
  const at = words.indexOf(', for');
  const [sized, why] = [words.slice(0, at), words.slice(at)];
  return (
    <div className="small">
      <p>
        <strong>{sized}</strong>
        {why}.
      </p>
      <AdviceNotes kinds={['needle']} />
      <p className="quiet">{say('need-detail.a-rule-of-thumb-what-sews', { source: choice.source })}</p>
    </div>
  );
}

function Lengths({ lengths }: { lengths: CutLengths }) {
  const { input } = useCoat('input');
  const system = useSystem();
  if (!input || lengths.bySize.length === 0) return null;
  const show = (mm: number) => showQuantity('length', mm, { system });
  const isSeveral = lengths.bySize.length > 1;
  return (
    <ul className="small">
      {lengths.bySize.map((each) => (
        <li key={each.size}>
          {isSeveral &&
            `${say('need-detail.of', { eachCount: each.size, pieceCount: each.pieceCount, show: show(each.lengthMm) })} `}
          {each.soldMm === null
            ? lengths.soldMm.length > 0 && say('need-detail.longer-than-any-that-is-sold')
            : each.shortenToMm === null
              ? say('need-detail.sold-as-right-as-it-is', { show: show(each.soldMm) })
              : say('need-detail.sold-as-cut-to', {
                  show: show(each.soldMm),
                  ifZip: lengths.isZip ? 'yes' : 'no',
                  show2: show(each.shortenToMm),
                })}
        </li>
      ))}
      {lengths.isUsual && (
        <li className="quiet">
          {say('need-detail.by-the-usual-steps-of-separating', {
            ifSystem: system === 'imperial' ? 'yes' : 'no',
          })}
        </li>
      )}
    </ul>
  );
}
