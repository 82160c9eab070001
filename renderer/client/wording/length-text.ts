/** Lengths in sentences of the plan's edits, in the maker's system. */
import { useCallback } from 'react';
import type { LengthText } from '../../../shared-core/plan/edits/edited.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { useSystem } from '../workshop.ts';

export function useLengthText(): LengthText {
  const system = useSystem();
  return useCallback((mm: number) => showQuantity('length', mm, { system }), [system]);
}
