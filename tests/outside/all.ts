/** Every module of outside checks; a new one is one import and one line. */
import type { OutsideCheck } from './outside.ts';
import units from './units.ts';

export interface OutsideModule {
  readonly name: string;
  readonly rows: readonly OutsideCheck[];
}

export const outsideModules: readonly OutsideModule[] = [{ name: 'units', rows: units }];
