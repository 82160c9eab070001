/**
 * The shared workshop that a maker chose under Settings, for the next starts: its address in a file that only its owner
 * may read, and its password beside it, sealed by the system's key store where there is one.
 */
import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { isAddress } from './postgres/address.ts';

/** The key store of the system, as far as a door has it. Both may throw. */
export interface Sealing {
  seal(text: string): string;
  unseal(sealed: string): string;
}

export interface ChosenAddress {
  /** Without its password; null where the workshop is a file. */
  address(): string | null;
  /** Null goes back to the file. Throws where the folder cannot be written. */
  choose(address: string | null): void;
  /** With the password that is kept for it, or that the environment names (PGPASSWORD), where it has none of its own. */
  withPassword(address: string, env?: Readonly<Record<string, string | undefined>>): string;
  readonly isSealed: boolean;
}

interface Kept {
  readonly address: string;
  readonly secret: string;
  readonly isSealed: boolean;
}

const onlyOwner = 0o600;

/** folder: absolute, the usual one of the workshop's files. sealing: null where there is no key store. */
export function chosenAddress(folder: string, sealing: Sealing | null): ChosenAddress {
  const file = join(folder, 'shared-workshop.json');

  /** A file that cannot be read is none: the maker chooses anew. */
  function kept(): Kept | null {
    try {
      const { address, secret, isSealed } = JSON.parse(readFileSync(file, 'utf8')) as Partial<Kept>;
      if (typeof address !== 'string' || !isAddress(address)) return null;
      return { address, secret: typeof secret === 'string' ? secret : '', isSealed: isSealed === true };
    } catch {
      return null;
    }
  }

  /** '' where it cannot be unsealed, as after the key store was cleared: the server then asks for it in vain. */
  function secretOf({ secret, isSealed }: Kept): string {
    if (!isSealed || secret === '') return secret;
    try {
      return sealing?.unseal(secret) ?? '';
    } catch {
      return '';
    }
  }

  return {
    isSealed: sealing !== null,
    address: () => kept()?.address ?? null,
    choose(address) {
      if (address === null) return rmSync(file, { force: true });
      const { bare, password } = parted(address);
      const secret = password === '' || sealing === null ? password : sealing.seal(password);
      const text = JSON.stringify({ address: bare, secret, isSealed: sealing !== null } satisfies Kept);
      writeFileSync(`${file}.new`, text, { mode: onlyOwner });
      renameSync(`${file}.new`, file);
    },
    withPassword(address, env = {}) {
      if (!isAddress(address)) return address;
      const { bare, password } = parted(address);
      if (password !== '') return address;
      const known = kept();
      const secret = known?.address === bare ? secretOf(known) : '';
      return joined(bare, env.PGPASSWORD || secret);
    },
  };
}

/** An address that is not written as one is left as it is: whoever reads it says so. */
function parted(address: string): { readonly bare: string; readonly password: string } {
  try {
    const url = new URL(address);
    const password = decodeURIComponent(url.password);
    url.password = '';
    return { bare: url.href, password };
  } catch {
    return { bare: address, password: '' };
  }
}

function joined(bare: string, password: string): string {
  if (password === '') return bare;
  try {
    const url = new URL(bare);
    url.password = encodeURIComponent(password);
    return url.href;
  } catch {
    return bare;
  }
}
