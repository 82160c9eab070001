/** The way from an empty workshop to its first answer, and which of its steps the facts show as taken. */
import { say } from '../../../shared-core/wording/say.ts';
import type { WorkshopFacts } from '../../../shared-core/contract/contract.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import type { Route } from '../../client/route.ts';

export interface FirstStep {
  readonly ask: string;
  readonly why: string;
  /** The room where it is taken. */
  readonly route: Route;
  readonly isTaken: boolean;
}

/** What the steps are told from. */
export interface FirstFacts {
  /** Whether some cloth is on hand. */
  readonly hasCloth: boolean;
  /** The coat planned first, with the slots that say what it is made of; null where none is planned. */
  readonly coat: Pick<CoatPlan, 'id' | 'slots'> | null;
}

/** Whether the list may still be of use: in a workshop of the maker's own, with one coat at most, until it is put away. */
export function mayHaveFirstSteps({ workshop, settings, planCount }: WorkshopFacts): boolean {
  return workshop === 'own' && planCount <= 1 && settings.isFirstStepsPutAway === undefined;
}

/** A coat is answered once something of the stash is chosen for it: its cover then says whether that reaches. */
export function firstSteps({ hasCloth, coat }: FirstFacts): readonly FirstStep[] {
  return [
    {
      ask: say('first-steps-taken.put-a-cloth-on-the-shelf'),
      why: say('first-steps-taken.its-name-its-width-and-how'),
      route: { kind: 'stash', itemId: null },
      isTaken: hasCloth,
    },
    {
      ask: say('common.draft-a-coat'),
      why: say('first-steps-taken.in-a-size-or-from-measures'),
      route: { kind: 'draft' },
      isTaken: coat !== null,
    },
    {
      ask: say('first-steps-taken.see-if-it-is-covered'),
      why: say('first-steps-taken.under-cover-say-that-your-cloth'),
      route: coat ? { kind: 'coat', planId: coat.id, step: 'cover' } : { kind: 'coats' },
      isTaken: coat?.slots.some(({ itemId }) => itemId !== null) ?? false,
    },
  ];
}
