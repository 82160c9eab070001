/** What a maker of experience would say before the coat is sewn: each where the work is, with its fix. */
import type { Basis } from '../measure/basis.ts';

export type AdviceKind =
  | 'pattern matching'
  | 'one way'
  | 'interfacing'
  | 'batting'
  | 'loose fill'
  | 'seam bulk'
  | 'needle';

export interface Advice {
  readonly kind: AdviceKind;
  /** Sentences; a measure in them stands as measureIn writes it, and howText shows it. */
  readonly says: string;
  readonly fix: string;
  readonly basis: readonly Basis[];
}
