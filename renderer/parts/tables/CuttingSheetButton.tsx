/** Saves what lies where on each length as PDF, to lay it out on the floor by. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import { dayWords } from '../../../shared-core/measure/calendar-date.ts';
import type { CuttingSheet } from '../../../shared-core/paper/cutting-sheet.ts';
import { sheetFormat } from '../../../shared-core/paper/paper-table.ts';
import { Button } from '../forms/Button.tsx';
import { todayIso } from '../figures/calendar.ts';
import style from './CuttingSheetButton.module.css';
import { savePdf } from './save-pdf.ts';

export interface CuttingSheetButtonProps {
  /** The coat's. */
  readonly name: string;
  readonly isOff?: boolean;
  /** Made when it is asked for. */
  readonly sheet: () => CuttingSheet;
}

export function CuttingSheetButton({ name, isOff = false, sheet }: CuttingSheetButtonProps) {
  const [said, setSaid] = useState('');
  const save = async () => {
    setSaid(say('common.writing-the-pdf'));
    const unsaid = await savePdf(say('cutting-sheet-button.cutting-sheet', { name }), async (files) => {
      // Loaded when it is first wanted: no screen needs it.
      const { cuttingPdf } = await import('../../../shared-core/paper/cutting-pdf.ts');
      const drawn = sheet();
      return cuttingPdf(drawn, { format: sheetFormat(drawn.system), day: dayWords(todayIso()) }, files);
    });
    setSaid(unsaid);
  };
  return (
    <>
      <Button disabled={isOff} onClick={() => void save()}>
        {say('cutting-sheet-button.save-cutting-sheet')}
      </Button>
      <span role="status" className={`quiet small ${style.said}`}>
        {said}
      </span>
    </>
  );
}
