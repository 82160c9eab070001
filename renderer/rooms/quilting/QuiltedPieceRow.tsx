import { memo, useMemo } from 'react';
import { ringBox } from '../../../shared-core/geometry/ring.ts';
import { ringPath } from '../../../shared-core/lay/lay-svg.ts';
import { setQuilted } from '../../../shared-core/plan/quilted.ts';
import type { Piece } from '../../../shared-core/plan/coat-plan.ts';
import { wholeSeamRing } from '../../../shared-core/quilting/lines.ts';
import type { QuiltedPiece } from '../../../shared-core/quilting/map.ts';
import { useCoat } from '../../client/coat-context.ts';
import { ChoiceField } from '../../parts/Field.tsx';
import { Figure } from '../../parts/Figure.tsx';
import style from './QuiltingRoom.module.css';

/** One piece with its lines, and their distances from the hem to mark on the cloth. */
export function QuiltedPieceRow({ piece, quilted }: { piece: Piece; quilted: QuiltedPiece }) {
  const { edit } = useCoat();
  const narrow = Math.min(...quilted.channels.map((channel) => channel.widthMm));
  const wide = Math.max(...quilted.channels.map((channel) => channel.widthMm));
  return (
    <li className={style.piece}>
      <LinesDrawing piece={piece} quilted={quilted} />
      <div className={style.words}>
        <h3>{piece.name}</h3>
        <div className={style.choice}>
          <ChoiceField
            label={`Lines of ${piece.name} run`}
            value={quilted.direction}
            options={[
              { value: 'across', label: 'across the grain' },
              { value: 'along', label: 'along the grain' },
            ]}
            emptyLabel="not at all"
            onChange={(way) => void edit((plan) => setQuilted(plan, piece.id, way === '' ? null : way))}
          />
        </div>
        <p className="quiet small">
          {quilted.lines.length} lines,{' '}
          <Figure
            quantity="length"
            value={quilted.stitchingMm}
            options={{ unit: { metric: 'm', imperial: 'yd' }, digits: 2 }}
          />{' '}
          of stitching in one; channels <Figure quantity="length" value={narrow} /> to{' '}
          <Figure quantity="length" value={wide} /> wide.
        </p>
        <ol
          className={style.offsets}
          aria-label={`Lines of ${piece.name} from the ${quilted.direction === 'across' ? 'hem' : 'edge'}`}
        >
          {quilted.offsetsMm.map((offsetMm) => (
            <li key={offsetMm}>
              <Figure
                quantity="length"
                value={offsetMm}
                options={{ unit: { metric: 'mm', imperial: 'in' } }}
              />
            </li>
          ))}
        </ol>
      </div>
    </li>
  );
}

const LinesDrawing = memo(function LinesDrawing({ piece, quilted }: { piece: Piece; quilted: QuiltedPiece }) {
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
      viewBox={`${-widthMm / 2 - 6} ${-heightMm / 2 - 6} ${widthMm + 12} ${heightMm + 12}`}
      role="img"
      aria-label={`${piece.name} with its quilting lines`}
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
