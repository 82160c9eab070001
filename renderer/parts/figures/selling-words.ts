/** How an offer is sold, in words. */
import { say } from '../../../shared-core/wording/say.ts';
import type { MeasureSystem } from '../../../shared-core/measure/quantity.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import type { SellingUnit } from '../../../shared-core/stash/offer.ts';
import { clothLengthUnit, clothWidthUnit } from './Amount.tsx';

export const sellingUnitNames: Readonly<Record<SellingUnit['kind'], string>> = {
  'by length': say('selling-words.by-length'),
  sheet: say('selling-words.sheet'),
  spool: say('selling-words.spool'),
  'by mass': say('selling-words.by-mass'),
  pack: say('selling-words.pack'),
  each: say('common.each'),
};

/** How much so many units are: "15 m", "600 g", "6 spools". */
export function unitCountWords(unit: SellingUnit, count: number, system: MeasureSystem): string {
  switch (unit.kind) {
    case 'by length':
      return showQuantity('length', count * unit.stepMm, { system, unit: clothLengthUnit });
    case 'by mass':
      return showQuantity('mass', count * unit.stepG, { system });
    case 'sheet':
      return say('selling-words.sheets', { count });
    case 'spool':
      return say('selling-words.spools', { count });
    case 'pack':
      return say('selling-words.packs', { count });
    case 'each':
      return `${count} ${say('selling-words.pieces', { count })}`;
    default:
      return unit satisfies never;
  }
}

/** "0.1 m of 147 cm width, 0.5 m at least"; what the price is for comes first. */
export function sellingWords(unit: SellingUnit, system: MeasureSystem): string {
  // Steps of an eighth of a yard would round to 0.11 m; in cm they stay apart from 10 cm.
  const along = (valueMm: number) =>
    showQuantity('length', valueMm, {
      system,
      unit: valueMm < 1000 ? { metric: 'cm', imperial: 'yd' } : clothLengthUnit,
    });
  const across = (valueMm: number) => showQuantity('length', valueMm, { system, unit: clothWidthUnit });
  switch (unit.kind) {
    case 'by length':
      return say('selling-words.wide', {
        along: along(unit.stepMm),
        across: across(unit.widthMm),
        leastMm:
          unit.leastMm > unit.stepMm ? say('selling-words.at-least', { along: along(unit.leastMm) }) : '',
      });
    case 'sheet':
      return say('selling-words.sheet-of-by', {
        across: across(unit.widthMm),
        across2: across(unit.lengthMm),
      });
    case 'spool':
      return say('selling-words.spool-of', {
        threadM: showQuantity('threadLength', unit.threadM, { system }),
      });
    case 'by mass': {
      const mass = (valueG: number) => showQuantity('mass', valueG, { system });
      return `${mass(unit.stepG)}${unit.leastG > unit.stepG ? say('selling-words.at-least-2', { mass: mass(unit.leastG) }) : ''}`;
    }
    case 'pack':
      return say('selling-words.pack-of', { pieceCount: unit.pieceCount });
    case 'each':
      return unit.lengthMm === null
        ? say('selling-words.one-piece')
        : say('selling-words.one-of', {
            lengthMm: showQuantity('length', unit.lengthMm, { system, unit: clothWidthUnit }),
          });
    default:
      return unit satisfies never;
  }
}
