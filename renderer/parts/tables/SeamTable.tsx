/** The seams of a coat walked: both sides of each measured against each other, in words and figures. */
import type { SeamReport } from '../../../shared-core/plan/geometry/seam-walk.ts';
import { Figure } from '../figures/Figure.tsx';
import table from './table.module.css';

interface SeamsProps {
  readonly seams: readonly SeamReport[];
}

export function SeamsInWords({ seams }: SeamsProps) {
  const joined = seams.filter((seam) => seam.sides === 'two');
  const misfits = joined.filter((seam) => !seam.fits);
  const eased = joined.filter(isEased);
  if (joined.length === 0) return <>No two pieces are sewn to each other yet.</>;
  return (
    <>
      {misfits.length === 0
        ? `All ${joined.length} seams between pieces fit.`
        : `${misfits.length} of ${joined.length} seams between pieces do not fit: ${labels(misfits)}.`}
      {eased.length > 0 && ` Longer on one side by intent: ${labels(eased)}.`}
    </>
  );
}

/** Seams between pieces, for one coat; those that do not fit first. */
export function SeamTable({ seams }: SeamsProps) {
  const joined = seams.filter((seam) => seam.sides === 'two');
  const ordered = [...joined.filter((seam) => !seam.fits), ...joined.filter((seam) => seam.fits)];
  return (
    <table className={table.table}>
      <thead>
        <tr>
          <th>Seam</th>
          <th className={table.amount}>One side</th>
          <th className={table.amount}>Other side</th>
          <th className={table.amount}>Difference</th>
          <th>
            <span className="only-read-aloud">Fits</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {ordered.map((seam) => (
          <tr key={seam.seamId}>
            <td>{seam.label}</td>
            <Side mm={seam.firstMm} />
            <Side mm={seam.secondMm} />
            <td className={table.amount}>
              <Figure
                quantity="length"
                value={Math.abs(seam.differenceMm) < 0.05 ? 0 : seam.differenceMm}
                options={{ unit: { metric: 'mm', imperial: 'in' } }}
              />
            </td>
            <td className={seam.fits ? 'quiet' : undefined}>
              {seam.fits ? (isEased(seam) ? 'eased' : 'fits') : 'does not fit'}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Side({ mm }: { mm: number }) {
  return (
    <td className={table.amount}>
      <Figure quantity="length" value={mm} options={{ unit: { metric: 'cm', imperial: 'in' } }} />
    </td>
  );
}

/** Meant to be longer on one side. */
function isEased(seam: SeamReport): boolean {
  return seam.fits && Math.abs(seam.differenceMm) > 1;
}

function labels(seams: readonly SeamReport[]): string {
  return seams.map((seam) => seam.label).join(', ');
}
