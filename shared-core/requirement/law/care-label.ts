/** The care label of a coat as a draft in words, and what its maker should know before it is printed. */
import { type CareLimit, type CareProcess, careSteps } from './care-limits.ts';

export interface CareLine {
  readonly process: CareProcess;
  readonly text: string;
  /** True where a part is not known, so that the line forbids what might harm it. */
  readonly isOnSafeSide: boolean;
}

export interface CareLabel {
  /** In the order of the symbols; a process that nothing is known of has no line. */
  readonly lines: readonly CareLine[];
  readonly asides: readonly string[];
}

/** What each limit says on a label. Cold, warm and hot by the glossary of 16 CFR 423, from memory: cold to 30 °C, warm to 43. */
const sentences: Readonly<Record<string, string>> = {
  'do not wash': 'Do not wash.',
  'hand wash': 'Hand wash cold (30 °C, 86 °F).',
  'wash at 30, gentle': 'Machine wash cold, gentle cycle (30 °C, 86 °F).',
  'wash at 30': 'Machine wash cold (30 °C, 86 °F).',
  'wash at 40, gentle': 'Machine wash warm, gentle cycle (40 °C, 104 °F).',
  'wash at 40': 'Machine wash warm (40 °C, 104 °F).',
  'wash at 60': 'Machine wash hot (60 °C, 140 °F).',
  'wash at 95': 'Machine wash hot (95 °C, 203 °F).',
  'do not bleach': 'Do not bleach.',
  'oxygen bleach only': 'Only non-chlorine bleach, when needed.',
  'any bleach': 'Bleach when needed.',
  'dry flat': 'Dry flat. Do not tumble dry.',
  'line dry': 'Line dry. Do not tumble dry.',
  'tumble dry low': 'Tumble dry low.',
  'tumble dry normal': 'Tumble dry.',
  'do not iron': 'Do not iron.',
  'iron at 110': 'Cool iron, no steam (110 °C, 230 °F).',
  'iron at 150': 'Warm iron (150 °C, 300 °F).',
  'iron at 200': 'Hot iron (200 °C, 390 °F).',
  'do not dry clean': 'Do not dry clean.',
  'dry clean F': 'Dry clean, hydrocarbon solvents only (F).',
  'dry clean P': 'Dry clean (P).',
};

const downDried = 'Tumble dry low with clean balls until the filling is dry and full again.';

/** Where a part is not known, what might harm it is forbidden rather than allowed. */
const forbiddenUnknown: readonly CareProcess[] = ['careBleach', 'careProfessional'];

/** hasDown: the filling is down or feathers. */
export function careLabel(limits: readonly CareLimit[], hasDown: boolean): CareLabel {
  const lines = limits.flatMap(({ process, limit, unknownSlotIds }): CareLine[] => {
    const [gentlest] = careSteps(process);
    const isOpen = unknownSlotIds.length > 0 && forbiddenUnknown.includes(process) && limit !== gentlest;
    const said = isOpen ? gentlest : limit;
    if (said === undefined || said === null) return [];
    const isTumbled = process === 'careDry' && said.startsWith('tumble dry');
    return [{ process, text: hasDown && isTumbled ? downDried : sentences[said]!, isOnSafeSide: isOpen }];
  });
  const isSafe = lines.some(({ isOnSafeSide }) => isOnSafeSide);
  return {
    lines,
    asides: [
      ...(isSafe ? ['Bleach and dry cleaning are forbidden while they are not known of a part.'] : []),
      'A label needs a reasonable basis for the whole coat, each of its parts and the coat as sewn (US 16 CFR 423): wash one before you print it.',
      'Symbols are those of ISO 3758, and trade marks in some countries. Its edition of 2023 has replaced that of 2012; whether it moved the temperatures of the iron was not verified here.',
    ],
  };
}
