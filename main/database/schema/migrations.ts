/** Every migration there is, oldest first. A released one is never edited, moved or taken out. */
import type { Migration } from './migration.ts';
import { first } from './migrations/0001-first.ts';
import { suppliers } from './migrations/0002-suppliers.ts';
import { cutting } from './migrations/0003-cutting.ts';
import { shopping } from './migrations/0004-shopping.ts';
import { season } from './migrations/0005-season.ts';
import { photo } from './migrations/0006-photo.ts';
import { reversals } from './migrations/0007-reversals.ts';
import { minorUnits } from './migrations/0008-minor-units.ts';
import { layers } from './migrations/0009-layers.ts';
import { careAndZips } from './migrations/0010-care-and-zips.ts';
import { battingFacts } from './migrations/0011-batting-facts.ts';
import { washed } from './migrations/0012-washed.ts';
import { undo } from './migrations/0013-undo.ts';

export const migrations: readonly Migration[] = [
  first,
  suppliers,
  cutting,
  shopping,
  season,
  photo,
  reversals,
  minorUnits,
  layers,
  careAndZips,
  battingFacts,
  washed,
  undo,
];
