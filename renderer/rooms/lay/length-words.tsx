/** What a length of cloth is called above its drawing and in a table. */
import { say } from '../../../shared-core/wording/say.ts';
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
      {isWashed && `${say('length-words.washed-cloth')} `}
      {show(usableMm + 2 * selvageMm)} {say('length-words.wide')}
      <span>
        {selvageMm > 0 && say('length-words.between-the-selvages', { show: show(usableMm) })}
        {say('length-words.as-long-as-it-takes')}
      </span>
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
  if (lengthMm === null) return say('common.to-buy');
  const show = showQuantity('length', lengthMm, { system, unit: clothLengthUnit, digits: 2 });
  for (const { lots } of input.shelf) {
    for (const lot of lots) {
      const length = lot.lengths.find((candidate) => candidate.id === lengthId);
      if (length)
        return sentenceCase(
          say('length-words.of', {
            lengthForm: lengthForm(length),
            show,
            ifWashed: isWashed && !length.isWashed ? 'yes' : 'no',
            dyeLot: lot.dyeLot ? say('length-words.dye-lot', { dyeLot: lot.dyeLot }) : '',
          }),
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
  const washed = lost && lost.alongRatio + lost.acrossRatio > 0 ? say('common.washed') : '';
  if (lengthMm === null) {
    return say('length-words.to-buy', {
      show: show(unwashedMm(usedMm)),
      washed: washed && say('length-words.after-its-wash', { show: show(usedMm) }),
    });
  }
  for (const { lots } of input.shelf) {
    for (const lot of lots) {
      const length = lot.lengths.find((candidate) => candidate.id === lengthId);
      if (!length) continue;
      return (
        <>
          {sentenceCase(lengthForm(length))} {say('common.of')} {show(unwashedMm(lengthMm))}
          {lot.dyeLot && say('length-words.dye-lot', { dyeLot: lot.dyeLot })}
          {washed && say('length-words.after-its-wash', { show: show(lengthMm) })}
          <span>
            {say('length-words.used-left', {
              show: show(usedMm),
              lengthMm: lengthMm - usedMm < 10 ? say('length-words.nothing') : show(lengthMm - usedMm),
            })}
          </span>
        </>
      );
    }
  }
  return show(lengthMm);
}
