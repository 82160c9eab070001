/** The seams of a coat walked: both sides of each measured against each other, in words and figures. */
import { say } from '../../../shared-core/wording/say.ts';
import { codeWords } from '../../../shared-core/wording/code-words.ts';
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
  if (joined.length === 0) return <>{say('seam-table.no-two-pieces-are-sewn-to')}</>;
  return (
    <>
      {misfits.length === 0
        ? say('seam-table.all-seams-between-pieces-fit', { joinedCount: joined.length })
        : say('seam-table.of-seams-between-pieces-do-not', {
            misfitsCount: misfits.length,
            joinedCount: joined.length,
            labels: labels(misfits),
          })}
      {eased.length > 0 && ` ${say('seam-table.longer-on-one-side-by-intent', { labels: labels(eased) })}`}
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
        { head: say('common.seam'), cell: ({ label }) => label },
        { head: say('seam-table.one-side'), align: 'end', cell: ({ firstMm }) => <Side mm={firstMm} /> },
        { head: say('seam-table.other-side'), align: 'end', cell: ({ secondMm }) => <Side mm={secondMm} /> },
        {
          head: say('seam-table.difference'),
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
          head: say('seam-table.fits'),
          isHeadHidden: true,
          cellClass: ({ fits }) => (fits ? 'quiet' : undefined),
          cell: (seam) =>
            seam.fits ? codeWords(isEased(seam) ? 'eased' : 'fits') : say('seam-table.does-not-fit'),
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
