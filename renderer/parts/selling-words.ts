/** How an offer is sold, in words. */
import type { MeasureSystem } from '../../shared-core/measure/quantity.ts';
import { showQuantity } from '../../shared-core/measure/show.ts';
import type { SellingUnit } from '../../shared-core/stash/offer.ts';
import { clothLengthUnit, clothWidthUnit } from './Amount.tsx';

export const sellingUnitNames: Readonly<Record<SellingUnit['kind'], string>> = {
  'by length': 'By length',
  sheet: 'Sheet',
  spool: 'Spool',
  'by mass': 'By mass',
  pack: 'Pack',
  each: 'Each',
};

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
      return `${along(unit.stepMm)}, ${across(unit.widthMm)} wide${unit.leastMm > unit.stepMm ? `, at least ${along(unit.leastMm)}` : ''}`;
    case 'sheet':
      return `sheet of ${across(unit.widthMm)} by ${across(unit.lengthMm)}`;
    case 'spool':
      return `spool of ${showQuantity('threadLength', unit.threadM, { system })}`;
    case 'by mass': {
      const mass = (valueG: number) => showQuantity('mass', valueG, { system });
      return `${mass(unit.stepG)}${unit.leastG > unit.stepG ? `, at least ${mass(unit.leastG)}` : ''}`;
    }
    case 'pack':
      return `pack of ${unit.pieceCount}`;
    case 'each':
      return unit.lengthMm === null
        ? 'one piece'
        : `one of ${showQuantity('length', unit.lengthMm, { system, unit: clothWidthUnit })}`;
    default:
      return unit satisfies never;
  }
}
