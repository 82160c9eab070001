/** What is proposed to be cut: for the whole batch what the estimate covers, for some of its coats by lays of their own. */
import { say } from '../../../shared-core/wording/say.ts';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { FlowInput } from '../../../shared-core/contract/contract.ts';
import { cuttingProposal, type ProposedSlot } from '../../../shared-core/cover/cutting-proposal.ts';
import { proposedCutting } from '../../../shared-core/flow/next-cutting.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import type { CutCoats } from '../../../shared-core/stash/cutting.ts';
import { useCoat } from '../../client/coat/coat-context.ts';
import { failureOf } from '../../client/failure.ts';
import { keptRun } from '../../client/workers/kept-run.ts';
import { thoroughSeconds } from '../../client/workers/lay-seconds.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { isSameProposal } from './cutting-drafts.ts';

export interface Proposal {
  /** Null while it is worked out, or where that failed. */
  readonly slots: readonly ProposedSlot[] | null;
  /** Why it could not be worked out. */
  readonly problems: readonly Problem[];
  readonly lookAgain: () => void;
}

/** coats: null for the whole batch. */
export function useProposal(coats: readonly CutCoats[] | null): Proposal {
  const { input, estimate, estimatedFrom } = useCoat('input', 'estimate', 'estimatedFrom');
  const { workshop } = useWorkshop();
  const whole = useMemo(
    () =>
      input && estimate && estimatedFrom === input
        ? cuttingProposal(input.plan, estimate.requirement, estimate.cover)
        : null,
    [input, estimate, estimatedFrom],
  );
  const [some, setSome] = useState<readonly ProposedSlot[] | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const looking = useRef<AbortController | null>(null);
  const look = useCallback(() => {
    looking.current?.abort();
    setSome(null);
    setProblems([]);
    if (!coats || !input) return;
    const control = new AbortController();
    looking.current = control;
    const { signal } = control;
    proposedCutting(input, coats, keptRun({ workshop, seconds: thoroughSeconds, signal })).then(
      (found) => !signal.aborted && setSome(found),
      (error: unknown) =>
        !signal.aborted &&
        setProblems([
          failureOf(
            say('proposal.what-to-cut-for-these-coats'),
            error,
            say('proposal.try-again-or-choose-another-number'),
          ),
        ]),
    );
  }, [coats, input, workshop]);
  useEffect(() => {
    look();
    return () => looking.current?.abort();
  }, [look]);
  return { slots: coats ? some : whole, problems, lookAgain: look };
}

/** What a proposal answers: these coats of this plan on this shelf. */
interface Question {
  readonly input: FlowInput | null;
  readonly coats: readonly CutCoats[] | null;
}

export interface HeldProposal {
  readonly slots: readonly ProposedSlot[] | null;
  /** Another lay was found for the same coats since the maker began to change this one. */
  readonly isOlder: boolean;
  readonly hold: () => void;
  readonly takeNewer: () => void;
}

/** What the maker works on: once it is held it stays as it is, for as long as the same is asked. */
export function useHeldProposal(newest: readonly ProposedSlot[] | null, question: Question): HeldProposal {
  const [held, setHeld] = useState<(Question & { readonly slots: readonly ProposedSlot[] }) | null>(null);
  const isHeld = held !== null && held.input === question.input && held.coats === question.coats;
  const slots = isHeld ? held.slots : newest;
  return {
    slots,
    isOlder: isHeld && newest !== null && !isSameProposal(held.slots, newest),
    hold: () => slots && setHeld({ ...question, slots }),
    takeNewer: () => setHeld(null),
  };
}
