/** The care label of a coat as a draft in words, and what its maker should know before it is printed. */
import { say } from '../../wording/say.ts';
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
  get 'do not wash'() {
    return say('care-label.do-not-wash');
  },
  get 'hand wash'() {
    return say('care-label.hand-wash-cold-30-c-86');
  },
  get 'wash at 30, gentle'() {
    return say('care-label.machine-wash-cold-gentle-cycle-30');
  },
  get 'wash at 30'() {
    return say('care-label.machine-wash-cold-30-c-86');
  },
  get 'wash at 40, gentle'() {
    return say('care-label.machine-wash-warm-gentle-cycle-40');
  },
  get 'wash at 40'() {
    return say('care-label.machine-wash-warm-40-c-104');
  },
  get 'wash at 60'() {
    return say('care-label.machine-wash-hot-60-c-140');
  },
  get 'wash at 95'() {
    return say('care-label.machine-wash-hot-95-c-203');
  },
  get 'do not bleach'() {
    return say('care-label.do-not-bleach');
  },
  get 'oxygen bleach only'() {
    return say('care-label.only-non-chlorine-bleach-when-needed');
  },
  get 'any bleach'() {
    return say('care-label.bleach-when-needed');
  },
  get 'dry flat'() {
    return say('care-label.dry-flat-do-not-tumble-dry');
  },
  get 'line dry'() {
    return say('care-label.line-dry-do-not-tumble-dry');
  },
  get 'tumble dry low'() {
    return say('care-label.tumble-dry-low');
  },
  get 'tumble dry normal'() {
    return say('care-label.tumble-dry');
  },
  get 'do not iron'() {
    return say('care-label.do-not-iron');
  },
  get 'iron at 110'() {
    return say('care-label.cool-iron-no-steam-110-c');
  },
  get 'iron at 150'() {
    return say('care-label.warm-iron-150-c-300-f');
  },
  get 'iron at 200'() {
    return say('care-label.hot-iron-200-c-390-f');
  },
  get 'do not dry clean'() {
    return say('care-label.do-not-dry-clean');
  },
  get 'dry clean F'() {
    return say('care-label.dry-clean-hydrocarbon-solvents-only-f');
  },
  get 'dry clean P'() {
    return say('care-label.dry-clean-p');
  },
};

const downDried = () => say('care-label.tumble-dry-low-with-clean-balls');

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
    return [{ process, text: hasDown && isTumbled ? downDried() : sentences[said]!, isOnSafeSide: isOpen }];
  });
  const isSafe = lines.some(({ isOnSafeSide }) => isOnSafeSide);
  return {
    lines,
    asides: [
      ...(isSafe ? [say('care-label.bleach-and-dry-cleaning-are-forbidden')] : []),
      say('care-label.a-label-needs-a-reasonable-basis'),
      say('care-label.symbols-are-those-of-iso-3758'),
    ],
  };
}
