/** Facts of care, the same for every kind that is washed. */
import { choice } from './fact-field.ts';

/**
 * Care by its five processes, each with what the material bears at most, the gentlest first. The processes are
 * independent: what must not be washed may bear a hot iron. Source: ISO 3758:2012, care labelling by symbols, from
 * memory; the edition of 2023 has replaced it and was not read.
 */
export const careFields = {
  careWash: choice('care-fields.wash', 'care-fields.hottest-wash-it-bears', [
    'do not wash',
    'hand wash',
    'wash at 30, gentle',
    'wash at 30',
    'wash at 40, gentle',
    'wash at 40',
    'wash at 60',
    'wash at 95',
  ] as const),
  careBleach: choice('care-fields.bleach', 'care-fields.strongest-bleach-it-bears', [
    'do not bleach',
    'oxygen bleach only',
    'any bleach',
  ] as const),
  careDry: choice('care-fields.dry', 'care-fields.hottest-drying-it-bears', [
    'dry flat',
    'line dry',
    'tumble dry low',
    'tumble dry normal',
  ] as const),
  careIron: choice('care-fields.iron', 'care-fields.hottest-sole-of-the-iron-it', [
    'do not iron',
    'iron at 110',
    'iron at 150',
    'iron at 200',
  ] as const),
  careProfessional: choice('care-fields.dry-clean', 'care-fields.strongest-solvent-it-bears-f-hydrocarbons', [
    'do not dry clean',
    'dry clean F',
    'dry clean P',
  ] as const),
};
