/** Where the marks of the tape stand that runs along a lay. */
import type { MeasureSystem } from '../../../shared-core/measure/quantity.ts';

export interface TapeMark {
  readonly atMm: number;
  /** Set at whole metres or yards. */
  readonly label: string | null;
}

const tapes = {
  metric: { wholeMm: 1000, partCount: 10, unit: 'm' },
  imperial: { wholeMm: 914.4, partCount: 8, unit: 'yd' },
} as const;

/** Nearer than this the small marks run together. */
const minApartPx = 4;
const minLabelPx = 34;

/** Marks by 10 cm with a number at each metre, or by eighths with a number at each yard, as far as they stay apart. */
export function tapeMarks(lengthMm: number, pxPerMm: number, system: MeasureSystem): TapeMark[] {
  const { wholeMm, partCount, unit } = tapes[system];
  const partMm = wholeMm / partCount;
  const every = partMm * pxPerMm >= minApartPx ? 1 : partCount;
  const labelEvery = Math.max(1, Math.ceil(minLabelPx / (wholeMm * pxPerMm)));
  const marks: TapeMark[] = [];
  for (let part = 0; part * partMm <= lengthMm + 1e-6; part += every) {
    const whole = part / partCount;
    const hasLabel = part % partCount === 0 && whole % labelEvery === 0;
    marks.push({ atMm: part * partMm, label: hasLabel ? (whole === 0 ? '0' : `${whole} ${unit}`) : null });
  }
  return marks;
}
