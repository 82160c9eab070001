/** The seams of a coat walked: both sides of each measured against each other, in words and figures. */
import type { SeamReport } from '../../../shared-core/plan/geometry/seam-walk.ts';
import { Figure } from '../figures/Figure.tsx';
import { DataTable } from './DataTable.tsx';

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
    <DataTable
      rows={ordered}
      keyOf={({ seamId }) => seamId}
      columns={[
        { head: 'Seam', cell: ({ label }) => label },
        { head: 'One side', align: 'end', cell: ({ firstMm }) => <Side mm={firstMm} /> },
        { head: 'Other side', align: 'end', cell: ({ secondMm }) => <Side mm={secondMm} /> },
        {
          head: 'Difference',
          align: 'end',
          cell: ({ differenceMm }) => (
            <Figure
              quantity="length"
              value={Math.abs(differenceMm) < 0.05 ? 0 : differenceMm}
              options={{ unit: { metric: 'mm', imperial: 'in' } }}
            />
          ),
        },
        {
          head: 'Fits',
          isHeadHidden: true,
          cellClass: ({ fits }) => (fits ? 'quiet' : undefined),
          cell: (seam) => (seam.fits ? (isEased(seam) ? 'eased' : 'fits') : 'does not fit'),
        },
      ]}
    />
  );
}

function Side({ mm }: { mm: number }) {
  return <Figure quantity="length" value={mm} options={{ unit: { metric: 'cm', imperial: 'in' } }} />;
}

/** Meant to be longer on one side. */
function isEased(seam: SeamReport): boolean {
  return seam.fits && Math.abs(seam.differenceMm) > 1;
}

function labels(seams: readonly SeamReport[]): string {
  return seams.map((seam) => seam.label).join(', ');
}
