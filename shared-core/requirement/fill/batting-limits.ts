/** How far apart a batting may be quilted, and whether it wants a cloth behind it: as its packet says, else what is usual. */
import { say } from '../../wording/say.ts';
import type { Basis } from '../../measure/basis.ts';
import type { FactsOf } from '../../stash/kinds.ts';
import { mainFibre } from '../law/fibre.ts';
import { fibres } from '../law/fibre-names.ts';

type BattingFacts = FactsOf<'batting'>;

const inMm = 25.4;

/** From this loft on a polyester batting is one of high loft: common practice, no source. */
const highLoftMm = 6;

/** What packets say. Wool 3 in, high-loft polyester 3 in, plain cotton 1 1/2 to 2 in, needled cotton 8 and 10 in. */
const packets = () => say('batting-limits.packets-of-batting-read-by-generations');

/** Longest distance of lines, mm, with how it was got; null where neither figure nor fibre is known. */
export function lineLimit(facts: BattingFacts): { readonly limitMm: number; readonly basis: Basis } | null {
  if (facts.lineLimitMm !== null) {
    return {
      limitMm: facts.lineLimitMm,
      basis: { kind: 'measured', how: say('batting-limits.as-it-is-printed-on-the'), source: '' },
    };
  }
  const usual = defaultLimit(facts);
  if (usual === null) return null;
  const { inches, of, source } = usual;
  return {
    limitMm: inches * inMm,
    basis: {
      kind: 'rule of thumb',
      how: say('batting-limits.usual-for-its-own-packet-decides', { of }),
      source,
    },
  };
}

function defaultLimit({ heldBy, fibre, loftMm }: BattingFacts) {
  if (heldBy === 'needling' || heldBy === 'scrim')
    return { inches: 8, of: say('batting-limits.needled-batting'), source: packets() };
  if (heldBy === 'bonding')
    return {
      inches: 4,
      of: say('batting-limits.bonded-batting'),
      source: say('batting-limits.quiltingboard-com-2-to-10-in'),
    };
  const main = mainFibre(fibre);
  if (main === null) return null;
  if (fibres[main].isWool) return { inches: 3, of: 'wool', source: packets() };
  if (main === 'polyester' && (loftMm ?? 0) >= highLoftMm)
    return { inches: 3, of: say('batting-limits.polyester-of-high-loft'), source: packets() };
  if (main === 'cotton') return { inches: 2, of: say('batting-limits.plain-cotton'), source: packets() };
  return null;
}

/**
 * Whether its bare side may not be sewn over: as it was written down, else true of fibres that nothing holds together.
 * Common practice, no source.
 */
export function needsBacking({ needsBacking: known, heldBy }: BattingFacts): boolean {
  return known ?? heldBy === 'nothing';
}
