/** What was looked for once before all specs (demo-lays.ts). */
import type { CallInput } from '../../shared-core/contract/contract.ts';

export type KeptLay = CallInput<'keepLay'>;

export interface Found {
  readonly lays: readonly KeptLay[];
  /** What the solver gave for each programme, which is named by its JSON. */
  readonly solved: Readonly<Record<string, readonly number[] | null>>;
}
