import { codeWords } from '../../../shared-core/wording/code-words.ts';
import { say } from '../../../shared-core/wording/say.ts';
import { memo, useMemo } from 'react';
import { slotItems } from '../../../shared-core/flow/estimate.ts';
import { ringBox } from '../../../shared-core/geometry/ring.ts';
import { ringPath } from '../../../shared-core/lay/lay-svg.ts';
import { editEverySize } from '../../../shared-core/plan/edits/every-size.ts';
import { setOwnSpacing, setQuilted } from '../../../shared-core/plan/edits/quilted.ts';
import type { Piece } from '../../../shared-core/plan/model/coat-plan.ts';
import { wholeSeamRing } from '../../../shared-core/quilting/lines.ts';
import type { QuiltedPiece } from '../../../shared-core/quilting/map.ts';
import { offsetsToMark, pieceTakeUp } from '../../../shared-core/requirement/cut/slot-take-up.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { useLengthText } from '../../client/wording/length-text.ts';
import { usePlanChange } from '../../client/coat/plan-change.ts';
import { ChoiceField } from '../../parts/forms/Field.tsx';
import { Figure } from '../../parts/figures/Figure.tsx';
import { OptionalSettledField } from '../../parts/forms/SettledField.tsx';
import { DataTable } from '../../parts/tables/DataTable.tsx';
import style from './QuiltingRoom.module.css';

const inSmallUnit = { unit: { metric: 'mm', imperial: 'in' } } as const;

/** One piece with its lines, and a table of them to mark on the cloth. mmPerPixel: the same for all, to compare them. */
export function QuiltedPieceRow({
  piece,
  quilted,
  mmPerPixel,
}: {
  piece: Piece;
  quilted: QuiltedPiece;
  mmPerPixel: number;
}) {
  const { input } = useCoat('input');
  const markAtMm = useMemo(
    () =>
      input ? offsetsToMark(quilted, pieceTakeUp(input.plan, piece, slotItems(input))) : quilted.offsetsMm,
    [input, quilted, piece],
  );
  const from = codeWords(quilted.direction === 'across' ? 'hem' : 'edge');
  // The channel below the first line, then between each two, then above the last.
  const last = quilted.channels.at(-1);
  return (
    <li className={style.piece}>
      <div className={style.head}>
        <h3>{piece.name}</h3>
        <DirectionField piece={piece} />
        <OwnSpacingField piece={piece} />
      </div>
      <div className={style.frame}>
        <LinesDrawing piece={piece} quilted={quilted} mmPerPixel={mmPerPixel} />
      </div>
      <div className={style.words}>
        <p className="quiet small">
          {quilted.lines.length} {say('quilted-piece-row.lines')} {codeWords(quilted.direction)}{' '}
          {say('quilted-piece-row.the-grain')}{' '}
          <Figure quantity="length" value={quilted.spacingMm} options={inSmallUnit} />{' '}
          {say('quilted-piece-row.apart')}{' '}
          <Figure
            quantity="length"
            value={quilted.stitchingMm}
            options={{ unit: { metric: 'm', imperial: 'yd' }, digits: 2 }}
          />{' '}
          {say('quilted-piece-row.of-stitching-in-one')}
        </p>
        <DataTable
          className={style.lines}
          label={say('quilted-piece-row.lines-of-from-the', { pieceName: piece.name, from })}
          rows={[
            ...quilted.offsetsMm.map((offsetMm, index) => ({
              name: <span className="number">{index + 1}</span>,
              offsetMm,
              markMm: markAtMm[index] ?? offsetMm,
              channelMm: quilted.channels[index]?.widthMm ?? 0,
            })),
            ...(last && quilted.lines.length > 0
              ? [
                  {
                    name: <span className="quiet">{say('quilted-piece-row.top')}</span>,
                    offsetMm: null,
                    markMm: null,
                    channelMm: last.widthMm,
                  },
                ]
              : []),
          ]}
          keyOf={({ offsetMm }) => offsetMm ?? 'top'}
          columns={[
            { head: say('quilted-piece-row.line'), cell: ({ name }) => name },
            {
              head: say('quilted-piece-row.from-the', { from }),
              align: 'end',
              cell: ({ offsetMm }) => offsetMm !== null && <SmallLength mm={offsetMm} />,
            },
            {
              head: say('quilted-piece-row.mark-at'),
              align: 'end',
              cell: ({ markMm }) => markMm !== null && <SmallLength mm={markMm} />,
            },
            {
              head: say('quilted-piece-row.channel'),
              align: 'end',
              cell: ({ channelMm }) => <SmallLength mm={channelMm} />,
            },
          ]}
        />
      </div>
    </li>
  );
}

function SmallLength({ mm }: { mm: number }) {
  return <Figure quantity="length" value={mm} options={inSmallUnit} />;
}

/** Its own distance of the lines, where it is not that of the whole coat. */
function OwnSpacingField({ piece }: { piece: Piece }) {
  const lengthText = useLengthText();
  const { problem, change } = usePlanChange();
  return (
    <OptionalSettledField
      label={say('quilted-piece-row.lines-of-apart', { pieceName: piece.name })}
      quantity="length"
      value={piece.quiltingSpacingMm ?? null}
      onSet={(spacingMm) =>
        void change((plan) =>
          editEverySize(plan, piece.id, (each) => setOwnSpacing(each, piece.id, spacingMm, lengthText)),
        )
      }
      hint={say('quilted-piece-row.empty-as-in-the-whole-coat')}
      problem={problem}
      aboveZero
    />
  );
}

/** Which way the lines of a piece run, or that it has none. */
export function DirectionField({ piece }: { piece: Piece }) {
  const { problem, change } = usePlanChange();
  return (
    <ChoiceField
      label={say('quilted-piece-row.lines-of-run', { pieceName: piece.name })}
      value={piece.quilted ?? ''}
      options={[
        { value: 'across', label: say('quilted-piece-row.across-the-grain') },
        { value: 'along', label: say('common.along-the-grain') },
      ]}
      emptyLabel={say('quilted-piece-row.not-at-all')}
      problem={problem}
      onChange={(way) =>
        void change((plan) =>
          editEverySize(plan, piece.id, (each) => setQuilted(each, piece.id, way === '' ? null : way)),
        )
      }
    />
  );
}

interface LinesDrawingProps {
  readonly piece: Piece;
  readonly quilted: QuiltedPiece;
  readonly mmPerPixel: number;
}

const LinesDrawing = memo(function LinesDrawing({ piece, quilted, mmPerPixel }: LinesDrawingProps) {
  const { path, box } = useMemo(() => {
    const ring = wholeSeamRing(piece);
    return { path: ringPath(ring), box: ringBox(ring) };
  }, [piece]);
  const widthMm = box.maxY - box.minY;
  const heightMm = box.maxX - box.minX;
  const lines = quilted.lines
    .flatMap(({ atMm, spans }) => spans.map(([fromMm, toMm]) => ({ atMm, fromMm, toMm })))
    .map(({ atMm, fromMm, toMm }) =>
      quilted.direction === 'across' ? `M${atMm} ${fromMm}V${toMm}` : `M${fromMm} ${atMm}H${toMm}`,
    );
  return (
    <svg
      className={style.drawing}
      width={(widthMm + 12) / mmPerPixel}
      height={(heightMm + 12) / mmPerPixel}
      viewBox={`${-widthMm / 2 - 6} ${-heightMm / 2 - 6} ${widthMm + 12} ${heightMm + 12}`}
      role="img"
      aria-label={say('quilted-piece-row.with-its-quilting-lines', { pieceName: piece.name })}
    >
      <g
        transform={`rotate(-90) scale(1 -1) translate(${-(box.minX + box.maxX) / 2} ${-(box.minY + box.maxY) / 2})`}
      >
        <path className={style.outline} d={path} />
        <path className={style.line} d={lines.join('')} />
      </g>
    </svg>
  );
});
