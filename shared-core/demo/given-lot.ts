/** A lot of the demo workshop as it is written down: bought once, and used once since. */
import type { Flaw, Length } from '../stash/stash.ts';

export interface GivenLength {
  readonly id: string;
  readonly widthMm: number;
  readonly form: Length['form'];
  /** As received, and what was cut from it since. */
  readonly receivedMm: number;
  readonly cutMm?: number;
  readonly cutOn?: string;
  readonly flaws?: readonly Flaw[];
}

export interface GivenLot {
  readonly id: string;
  readonly itemId: string;
  readonly receivedOn: string;
  readonly supplier: string;
  readonly dyeLot?: string;
  readonly priceMinor: number;
  /** The lot's lengths, or what it holds where the kind has none: received, and used since. */
  readonly lengths?: readonly GivenLength[];
  readonly received?: number;
  readonly used?: number;
  readonly usedOn?: string;
}
