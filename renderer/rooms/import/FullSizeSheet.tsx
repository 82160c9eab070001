/** The pieces at full size as PDF: which paper, and how many sheets it takes. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import { patternDrawing } from '../../../shared-core/flow/output/pattern-sheets.ts';
import { dayWords } from '../../../shared-core/measure/calendar-date.ts';
import { sheetFormat } from '../../../shared-core/paper/paper-table.ts';
import { paperSizes, type TileFormat, tileMarginMm, tilingOf } from '../../../shared-core/paper/tiles.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import { useSystem } from '../../client/workshop.ts';
import { Button } from '../../parts/forms/Button.tsx';
import { todayIso } from '../../parts/figures/calendar.ts';
import { OneOf } from '../../parts/forms/OneOf.tsx';
import { savePdf } from '../../parts/tables/save-pdf.ts';
import { Sheet } from '../../parts/layout/Sheet.tsx';

/** On small paper, rows of so many sheets: as wide as an arm reaches while they are stuck together. */
const sheetsInRow = 6;

function drawingFor(plan: CoatPlan, format: TileFormat) {
  const sheetMm = paperSizes[format].widthMm - 2 * tileMarginMm;
  return patternDrawing(plan, { rowWidthMm: sheetMm * (format === 'A0' ? 1 : sheetsInRow) });
}

const papers: readonly { readonly value: TileFormat; readonly label: string }[] = [
  { value: 'A4', label: 'A4' },
  { value: 'letter', label: say('common.letter') },
  { value: 'A0', label: say('full-size-sheet.a0-for-a-copy-shop') },
];

export function FullSizeSheet({ plan, onClose }: { plan: CoatPlan; onClose: () => void }) {
  const system = useSystem();
  const [format, setFormat] = useState<TileFormat>(sheetFormat(system));
  const [said, setSaid] = useState('');
  const save = async () => {
    setSaid(say('common.writing-the-pdf'));
    let sheetCount = 0;
    const unsaid = await savePdf(
      say('full-size-sheet.full-size', { planName: plan.name, format }),
      async (files) => {
        // Loaded when it is first wanted: no screen needs it.
        const { tiledPdf } = await import('../../../shared-core/paper/tiled-pdf.ts');
        const day = dayWords(todayIso());
        const written = await tiledPdf(drawingFor(plan, format), { format, day }, files);
        sheetCount = written.sheetCount;
        return written;
      },
    );
    const sheets = `${sheetCount} ${say('full-size-sheet.sheets', { sheetCount })}`;
    setSaid(
      [sheetCount > 0 ? say('full-size-sheet.saved-a-map-and', { sheets }) : '', unsaid]
        .filter(Boolean)
        .join(' '),
    );
  };
  return (
    <Sheet
      title={say('full-size-sheet.pieces-at-full-size')}
      isOpen
      onClose={onClose}
      footer={
        <>
          <Button onClick={onClose}>{say('common.close')}</Button>
          <Button look="main" onClick={() => void save()}>
            {say('full-size-sheet.save-pdf')}
          </Button>
        </>
      }
    >
      <OneOf
        label={say('full-size-sheet.paper')}
        value={format}
        options={papers.map(({ value, label }) => {
          const { length } = tilingOf(drawingFor(plan, value), value).tiles;
          return { value, label, hint: `${length} ${say('full-size-sheet.sheets-2', { length })}` };
        })}
        onChange={setFormat}
      />
      <p className="quiet">{say('full-size-sheet.the-first-page-has-a-square')}</p>
      <p role="status">{said}</p>
    </Sheet>
  );
}
