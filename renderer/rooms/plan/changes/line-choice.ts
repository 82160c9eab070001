/** A line on a piece while the maker types where it lies: kept as a draft, and drawn on the piece. */
import { useEffect, useState } from 'react';
import type { Piece } from '../../../../shared-core/plan/model/coat-plan.ts';
import type { StraightLine } from '../../../../shared-core/plan/geometry/outline-cut.ts';
import { type LineDirection, lineAt, lineRoomMm } from '../../../../shared-core/plan/geometry/piece-line.ts';
import { useLengthText } from '../../../client/wording/length-text.ts';
import { draftOf, type QuantityDraft } from '../../../parts/forms/DraftField.tsx';

export interface LineChoice {
  readonly draft: QuantityDraft;
  readonly setDraft: (draft: QuantityDraft) => void;
  /** What is typed, or null where it cannot be read. */
  readonly distanceMm: number | null;
}

/** shareOfPiece: where the line lies until something is typed. */
export function useLineChoice(
  piece: Piece,
  direction: LineDirection,
  shareOfPiece: number,
  onLine: (line: StraightLine | null) => void,
): LineChoice {
  const lengthText = useLengthText();
  const [typed, setTyped] = useState<QuantityDraft | null>(null);
  const defaultMm = Math.round(lineRoomMm(piece, direction) * shareOfPiece * 10) / 10;
  const draft = typed ?? draftOf(defaultMm, lengthText(defaultMm));
  const distanceMm = draft.misread === null ? draft.value : null;
  useEffect(() => {
    onLine(distanceMm === null ? null : lineAt(piece, direction, distanceMm));
    return () => onLine(null);
  }, [piece, direction, distanceMm, onLine]);
  return { draft, setDraft: setTyped, distanceMm };
}
