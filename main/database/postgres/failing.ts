/** What the server or the way to it refused, in the maker's words. */
import { say } from '../../../shared-core/wording/say.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { codeOf } from '../failures/failure.ts';

const unchanged = () => say('failing.nothing-was-changed');

/** The connection went while a step was being kept, and the server has not answered since. */
export class UnknownOutcome extends Error {
  readonly code = 'OUTCOME_UNKNOWN';
}

interface Failure {
  readonly codes: RegExp;
  readonly what: string;
  readonly fix: string;
}

/** Codes of PostgreSQL (appendix A of its manual), of Node's sockets and of TLS. */
const failures: readonly Failure[] = [
  {
    codes: /^OUTCOME_UNKNOWN$/,
    get what() {
      return say('failing.was-lost-just-as-this-step');
    },
    get fix() {
      return say('failing.whether-it-was-kept-is-not');
    },
  },
  {
    codes: /^28/,
    get what() {
      return say('failing.lets-nobody-in-with-this-name');
    },
    get fix() {
      return say('failing.check-both-in-the-address-or');
    },
  },
  {
    codes: /^3D000/,
    get what() {
      return say('failing.has-no-workshop-of-this-name');
    },
    get fix() {
      return say('failing.check-the-last-part-of-the');
    },
  },
  {
    codes: /^(42501|3F000)/,
    get what() {
      return say('failing.does-not-let-this-name-do');
    },
    get fix() {
      return say('failing.let-whoever-looks-after-the-database');
    },
  },
  {
    codes: /^NO_TLS$/,
    get what() {
      return say('failing.offers-no-tls-and-all-that');
    },
    get fix() {
      return say('failing.let-the-server-offer-tls-ssl');
    },
  },
  {
    codes:
      /^(DEPTH_ZERO_SELF_SIGNED_CERT|SELF_SIGNED_CERT|UNABLE_TO|CERT_|ERR_TLS|ERR_SSL|HOSTNAME_MISMATCH|INVALID_CA)/,
    get what() {
      return say('failing.shows-a-certificate-that-cannot-be');
    },
    get fix() {
      return say('failing.name-the-file-of-the-authority');
    },
  },
  {
    codes: /^53100|^53200/,
    get what() {
      return say('failing.has-no-room-left');
    },
    get fix() {
      return say('failing.make-room-on-the-machine-of', { unchanged: unchanged() });
    },
  },
  {
    codes: /^53300/,
    get what() {
      return say('failing.has-as-many-desks-connected-as');
    },
    get fix() {
      return say('failing.close-the-program-at-a-desk');
    },
  },
  {
    codes: /^(40001|40P01|55P03)$/,
    get what() {
      return say('failing.is-being-changed-by-other-desks');
    },
    get fix() {
      return say('failing.try-again-in-a-moment', { unchanged: unchanged() });
    },
  },
  {
    codes: /^25P03/,
    get what() {
      return say('failing.waited-in-vain-for-this-desk');
    },
    get fix() {
      return say('failing.try-again', { unchanged: unchanged() });
    },
  },
  {
    codes: /^25006/,
    get what() {
      return say('failing.can-only-be-read-there');
    },
    get fix() {
      return say('failing.name-the-host-on-which-the');
    },
  },
  {
    codes: /^22021|^22P05/,
    get what() {
      return say('failing.cannot-keep-a-sign-in-this');
    },
    get fix() {
      return say('failing.type-the-text-anew', { unchanged: unchanged() });
    },
  },
  {
    codes: /^(ENOTFOUND|EAI_AGAIN)/,
    get what() {
      return say('failing.is-at-a-host-that-is');
    },
    get fix() {
      return say('failing.check-the-host-in-the-address');
    },
  },
  {
    codes: /^(LOST|08|57P0|ECONN|EPIPE|ETIMEDOUT|EHOSTUNREACH|ENETUNREACH|ENETDOWN|EADDR)/,
    get what() {
      return say('failing.cannot-be-reached');
    },
    get fix() {
      return say('failing.see-that-its-machine-runs-and', { unchanged: unchanged() });
    },
  },
];

/** A sentence for a failure that the maker can do something about; null for anything else. shown: the address without its password. */
export function serverProblem(error: unknown, shown: string): Problem | null {
  const failure = failures.find(({ codes }) => codes.test(kindOf(error)));
  return failure ? { where: shown, what: failure.what, fix: failure.fix } : null;
}

/** Whether the connection is gone, so that the same may go well over another. */
export function isLost(error: unknown): boolean {
  return /^(LOST|08|57P0|ECONN|EPIPE|ETIMEDOUT)/.test(kindOf(error));
}

/** Whether another desk was in the way, so that the same may go well a moment later. */
export function isConflict(error: unknown): boolean {
  return /^(40001|40P01)$/.test(kindOf(error));
}

/** pg says some of its failures in words alone. */
function kindOf(error: unknown): string {
  const code = codeOf(error);
  if (code !== '' || !(error instanceof Error)) return code;
  if (error instanceof AggregateError) return kindOf(error.errors[0]);
  if (/does not support SSL/.test(error.message)) return 'NO_TLS';
  const isGone =
    /Connection terminated|timeout exceeded when trying to connect|connection error and is not queryable|Client was closed|has been discarded/;
  return isGone.test(error.message) ? 'LOST' : '';
}
