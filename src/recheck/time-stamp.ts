/** What a time stamp token says of a package's manifest, and how it can fail to say it. */

/** Real ones have 2 to 10 kB, with all certificates of their chain. */
export const TOKEN_LIMIT_BYTES = 100_000;

export type TimeStamp = {
  /** By the authority's clock, ISO 8601 in UTC. */
  readonly time: string;
  /** As the authority states it; null where it states none. */
  readonly accuracyMs: number | null;
  /** Subject of the certificate that signed, as in 'Name, Organisation'. */
  readonly authority: string;
  /** SHA-256 of that certificate. */
  readonly certificateSha256: string;
  /**
   * Whether its certificate comes from one of the roots that the person gave; not checked where none were given. Whether a
   * certificate was revoked is never checked: that needs a network.
   */
  readonly trust: 'reaches a root' | 'reaches no root' | 'not checked';
};

export type TimeStampFault =
  | { readonly code: 'time-stamp/too-large'; readonly sizeBytes: number; readonly limitBytes: number }
  | { readonly code: 'time-stamp/not-readable' }
  /** The authority answered, and did not grant the stamp. */
  | { readonly code: 'time-stamp/refused'; readonly status: number }
  /** It stamps something else. */
  | { readonly code: 'time-stamp/other-hash'; readonly stamped: string; readonly manifest: string }
  /** An algorithm that is too weak, or that this program does not know. */
  | { readonly code: 'time-stamp/algorithm'; readonly oid: string }
  /** The answer came without the certificate that signed it. */
  | { readonly code: 'time-stamp/no-certificate' }
  | { readonly code: 'time-stamp/does-not-fit' }
  /** The certificate in it is not the one that the signer named under the signature. */
  | { readonly code: 'time-stamp/other-certificate' }
  /** The certificate is not for time stamping, or not for that alone. */
  | { readonly code: 'time-stamp/wrong-purpose'; readonly authority: string }
  | {
      readonly code: 'time-stamp/outside-validity';
      readonly time: string;
      readonly from: string;
      readonly to: string;
    }
  | { readonly code: 'time-stamp/not-trusted'; readonly authority: string };
