/** Where news of later versions is to be had, and whose word on them counts. */

export interface ReleaseSource {
  /** Of a static file, by https. */
  readonly address: string;
  /** Ed25519, as PEM. Its other half signs the file (docs/packaging.md) and never lies with the project. */
  readonly publicKey: string;
}

/** Unset until somebody publishes packages: they put their address and key here. */
export const releaseSource: ReleaseSource | null = null;
