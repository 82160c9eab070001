/** What a length of cloth is called above its drawing and in a table. */
import type { FlowInput } from '../../../shared-core/contract/contract.ts';
import { sentenceCase } from '../../../shared-core/measure/text/sentence-case.ts';
import type { MeasureSystem } from '../../../shared-core/measure/quantity.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { beforeWashMm, type Shrinkage } from '../../../shared-core/stash/shrinkage.ts';
import { lengthName as lengthForm } from '../../../shared-core/stash/stash.ts';
import { clothLengthUnit, clothWidthUnit } from '../../parts/figures/Amount.tsx';

/** "Cloth of 147 cm, 143 cm between the selvages, as long as it takes". widthMm and selvageMm: as it is laid. */
export function endlessCaption(
  usableMm: number,
  selvageMm: number,
  { isWashed, system }: { readonly isWashed: boolean; readonly system: MeasureSystem },
) {
  const show = (mm: number) => showQuantity('length', mm, { system, unit: clothWidthUnit });
  return (
    <>
      {isWashed && 'Washed cloth, '}
      {show(usableMm + 2 * selvageMm)} wide
      <span>{selvageMm > 0 && `, ${show(usableMm)} between the selvages`}, as long as it takes</span>
    </>
  );
}

/** "Roll of 6.2 m, dye lot 7", "to buy". lengthMm: as it is laid. */
export function lengthName(
  input: FlowInput,
  lengthId: string,
  lengthMm: number | null,
  { isWashed, system }: { readonly isWashed: boolean; readonly system: MeasureSystem },
): string {
  if (lengthMm === null) return 'to buy';
  const show = showQuantity('length', lengthMm, { system, unit: clothLengthUnit, digits: 2 });
  for (const { lots } of input.shelf) {
    for (const lot of lots) {
      const length = lot.lengths.find((candidate) => candidate.id === lengthId);
      if (length)
        return sentenceCase(
          `${lengthForm(length)} of ${show}${isWashed && !length.isWashed ? ' after its wash' : ''}${lot.dyeLot ? `, dye lot ${lot.dyeLot}` : ''}`,
        );
    }
  }
  return show;
}

/** What of a length is used and left, as it is laid; where it is washed first, also what it was on the shelf. */
export function lengthCaption(
  input: FlowInput,
  lengthId: string,
  lengthMm: number | null,
  usedMm: number,
  { lost, system }: { readonly lost: Shrinkage | undefined; readonly system: MeasureSystem },
) {
  const show = (mm: number) => showQuantity('length', mm, { system, unit: clothLengthUnit, digits: 2 });
  const unwashedMm = (mm: number) => beforeWashMm(mm, lost?.alongRatio ?? 0);
  const washed = lost && lost.alongRatio + lost.acrossRatio > 0 ? ', washed' : '';
  if (lengthMm === null) {
    return `To buy: ${show(unwashedMm(usedMm))}${washed && `, after its wash ${show(usedMm)}`}`;
  }
  for (const { lots } of input.shelf) {
    for (const lot of lots) {
      const length = lot.lengths.find((candidate) => candidate.id === lengthId);
      if (!length) continue;
      return (
        <>
          {sentenceCase(lengthForm(length))} of {show(unwashedMm(lengthMm))}
          {lot.dyeLot && `, dye lot ${lot.dyeLot}`}
          {washed && `, after its wash ${show(lengthMm)}`}
          <span>
            : {show(usedMm)} used, {lengthMm - usedMm < 10 ? 'nothing' : show(lengthMm - usedMm)} left
          </span>
        </>
      );
    }
  }
  return show(lengthMm);
}
