/** The ticks as a file that the phone's page saves: which offers of which coat are ticked, by their names too. */
import { say } from '../../wording/say.ts';
import { ok, type Result, type Problem, err } from '../../measure/problem.ts';
import type { OfferId, PlanId } from '../../stash/stash.ts';

export const ticksFileKind = 'Bolt & Baffle ticks';
export const maxTicksBytes = 256_000;

export interface ReadTicks {
  readonly ticked: readonly OfferId[];
  readonly open: readonly OfferId[];
  /** Ticked on the phone, but no longer on the list: what they were called there. */
  readonly goneNames: readonly string[];
}

interface FileLine {
  readonly offerId: string;
  readonly name: string;
  readonly isTicked: boolean;
}

/** offerIds: those on the list now. */
export function readTicksFile(text: string, planId: PlanId, offerIds: readonly OfferId[]): Result<ReadTicks> {
  const file = parsed(text);
  const lines = file && linesOf(file);
  if (!file || !lines) return err(notTicks);
  if (file.version !== 1) {
    return err({
      where: say('common.the-file'),
      what: say('ticks-file.is-of-a-later-version-of'),
      fix: say('ticks-file.save-the-page-for-the-phone'),
    });
  }
  if (file.planId !== planId) {
    return err({
      where: say('common.the-file'),
      what: say('ticks-file.holds-the-ticks-of-another-coat'),
      fix: say('ticks-file.open-that-coat-s-list-and'),
    });
  }
  const now = new Set(offerIds);
  const onList = lines.filter(({ offerId }) => now.has(offerId));
  return ok({
    ticked: onList.filter(({ isTicked }) => isTicked).map(({ offerId }) => offerId),
    open: onList.filter(({ isTicked }) => !isTicked).map(({ offerId }) => offerId),
    goneNames: lines.filter(({ offerId, isTicked }) => isTicked && !now.has(offerId)).map(({ name }) => name),
  });
}

const notTicks: Problem = {
  get where() {
    return say('common.the-file');
  },
  get what() {
    return say('ticks-file.holds-no-ticks-of-a-shopping');
  },
  get fix() {
    return say('ticks-file.choose-the-file-that-the-page');
  },
};

function parsed(text: string): Readonly<Record<string, unknown>> | null {
  if (text.length > maxTicksBytes) return null;
  try {
    const value: unknown = JSON.parse(text);
    const isRecord = typeof value === 'object' && value !== null && !Array.isArray(value);
    return isRecord && 'kind' in value && value.kind === ticksFileKind ? { ...value } : null;
  } catch {
    return null;
  }
}

function linesOf({ lines }: Readonly<Record<string, unknown>>): readonly FileLine[] | null {
  if (!Array.isArray(lines) || lines.length > 1000) return null;
  return lines.every(isLine) ? lines : null;
}

function isLine(value: unknown): value is FileLine {
  if (typeof value !== 'object' || value === null) return false;
  const line = value as Readonly<Record<string, unknown>>;
  return (
    typeof line.offerId === 'string' && typeof line.name === 'string' && typeof line.isTicked === 'boolean'
  );
}
