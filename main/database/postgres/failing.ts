/** What the server or the way to it refused, in the maker's words. */
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { codeOf } from '../failures/failure.ts';

const unchanged = 'Nothing was changed.';

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
    what: 'was lost just as this step was being kept',
    fix: 'Whether it was kept is not known. Once the workshop answers again, look before you do it anew.',
  },
  {
    codes: /^28/,
    what: 'lets nobody in with this name and password',
    fix: 'Check both in the address, or ask whoever looks after the database.',
  },
  {
    codes: /^3D000/,
    what: 'has no workshop of this name',
    fix: 'Check the last part of the address, or let the database be made first.',
  },
  {
    codes: /^42501/,
    what: 'does not let this name do that',
    fix: 'Let whoever looks after the database make it the owner of the workshop.',
  },
  {
    codes: /^NO_TLS$/,
    what: 'offers no TLS, and all that is typed would go through the network for anybody to read',
    fix: 'Let the server offer TLS (ssl = on), then try again.',
  },
  {
    codes:
      /^(DEPTH_ZERO_SELF_SIGNED_CERT|SELF_SIGNED_CERT|UNABLE_TO|CERT_|ERR_TLS|ERR_SSL|HOSTNAME_MISMATCH|INVALID_CA)/,
    what: 'shows a certificate that cannot be trusted',
    fix: 'Name the file of the authority that made it, at the end of the address: ?sslrootcert=FILE.',
  },
  {
    codes: /^53100|^53200/,
    what: 'has no room left',
    fix: `${unchanged} Make room on the machine of the database, then try again.`,
  },
  {
    codes: /^53300/,
    what: 'has as many desks connected as it allows',
    fix: 'Close the program at a desk that does not need it, or let the database allow more connections.',
  },
  {
    codes: /^(40001|40P01|55P03)$/,
    what: 'is being changed by other desks just now',
    fix: `${unchanged} Try again in a moment.`,
  },
  {
    codes: /^25006/,
    what: 'can only be read there',
    fix: 'Name the host on which the workshop is written, not a copy of it.',
  },
  {
    codes: /^22021|^22P05/,
    what: 'cannot keep a sign in this text (the one with the number 0)',
    fix: `${unchanged} Type the text anew.`,
  },
  {
    codes: /^(ENOTFOUND|EAI_AGAIN)/,
    what: 'is at a host that is not known',
    fix: 'Check the host in the address, and whether this machine is in the network.',
  },
  {
    codes: /^(LOST|08|57P0|ECONN|EPIPE|ETIMEDOUT|EHOSTUNREACH|ENETUNREACH|ENETDOWN|EADDR)/,
    what: 'cannot be reached',
    fix: `${unchanged} See that its machine runs and that this one is in the network, then try again.`,
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
    /Connection terminated|timeout exceeded when trying to connect|connection error and is not queryable|Query read timeout|Client was closed/;
  return isGone.test(error.message) ? 'LOST' : '';
}
