/** What a length of cloth is called above its drawing and in a table. */
import type { FlowInput } from '../../../shared-core/contract/contract.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import type { MeasureSystem } from '../../../shared-core/measure/quantity.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { clothLengthUnit, clothWidthUnit } from '../../parts/figures/Amount.tsx';

/** "Cloth of 147 cm, 143 cm between the selvages, as long as it takes". */
export function endlessCaption(usableMm: number, selvageMm: number, system: MeasureSystem) {
  const show = (mm: number) => showQuantity('length', mm, { system, unit: clothWidthUnit });
  return (
    <>
      {show(usableMm + 2 * selvageMm)} wide
      <span>{selvageMm > 0 && `, ${show(usableMm)} between the selvages`}, as long as it takes</span>
    </>
  );
}

/** "Roll of 6.2 m, dye lot 7", "to buy". */
export function lengthName(
  input: FlowInput,
  lengthId: string,
  lengthMm: number | null,
  system: MeasureSystem,
): string {
  if (lengthMm === null) return 'to buy';
  const show = showQuantity('length', lengthMm, { system, unit: clothLengthUnit, digits: 2 });
  for (const { lots } of input.shelf) {
    for (const lot of lots) {
      const length = lot.lengths.find((candidate) => candidate.id === lengthId);
      if (length)
        return sentenceCase(`${length.form} of ${show}${lot.dyeLot ? `, dye lot ${lot.dyeLot}` : ''}`);
    }
  }
  return show;
}

export function lengthCaption(
  input: FlowInput,
  lengthId: string,
  lengthMm: number | null,
  usedMm: number,
  system: MeasureSystem,
) {
  const show = (mm: number) => showQuantity('length', mm, { system, unit: clothLengthUnit, digits: 2 });
  if (lengthMm === null) return `To buy: ${show(usedMm)}`;
  for (const { lots } of input.shelf) {
    for (const lot of lots) {
      const length = lot.lengths.find((candidate) => candidate.id === lengthId);
      if (!length) continue;
      return (
        <>
          {sentenceCase(length.form)} of {show(lengthMm)}
          {lot.dyeLot && `, dye lot ${lot.dyeLot}`}
          <span>
            : {show(usedMm)} used, {lengthMm - usedMm < 10 ? 'nothing' : show(lengthMm - usedMm)} left
          </span>
        </>
      );
    }
  }
  return show(lengthMm);
}
