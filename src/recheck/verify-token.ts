/**
 * Whether a time stamp token says what it should: of this manifest, signed by a certificate that is for time stamping.
 *
 * Checks   message imprint = SHA-256 of the manifest; the content type under the signature; the signature over the token's
 *          info; the certificate that the signer names under the signature is the one that fits it; its extended key usage is
 *          time stamping alone and critical; the stamped time lies in its validity; where roots are given, its chain reaches one.
 * Not      whether a certificate was revoked, and without roots who the authority is.
 * Source   RFC 3161 2.3, 2.4.2; RFC 5816 for SHA-256 in the signer's reference; RFC 5652 5.4, 11.1 (clauses from memory).
 */
import { CryptoEngine } from 'pkijs';
import { hexFromBytes } from '../basics/hex.ts';
import { fail, ok, type Result } from '../basics/result.ts';
import type { Subtle } from '../evidence/signature.ts';
import { SHA256_OID } from '../evidence/time-stamp-request.ts';
import { readToken, type Token, TST_INFO_OID } from './read-token.ts';
import type { TimeStamp, TimeStampFault } from './time-stamp.ts';
import { reachesRoot } from './token-chain.ts';
import {
  certificateHash,
  contentTypeOf,
  HASHES,
  isForTimeStamping,
  isNamedBySigner,
  nameOf,
} from './token-signer.ts';

export type VerifiedToken = { readonly token: Uint8Array<ArrayBuffer>; readonly stamp: TimeStamp };

export type TokenTools = {
  readonly subtle: Subtle;
  /** Certificates that the person trusts, DER; empty where none were given. */
  readonly timeRoots: readonly Uint8Array[];
};

export type StampedManifest = { readonly bytes: Uint8Array<ArrayBuffer>; readonly sha256: string };

/** RSA (PKCS #1) and ECDSA with SHA-256, SHA-384, SHA-512: with SHA-1 a second text for one signature can be made. */
const SIGNATURES = [
  '1.2.840.113549.1.1.1',
  '1.2.840.113549.1.1.11',
  '1.2.840.113549.1.1.12',
  '1.2.840.113549.1.1.13',
  '1.2.840.10045.4.3.2',
  '1.2.840.10045.4.3.3',
  '1.2.840.10045.4.3.4',
];

export async function verifyToken(
  given: Uint8Array,
  manifest: StampedManifest,
  tools: TokenTools,
): Promise<Result<VerifiedToken, TimeStampFault>> {
  const token = readToken(given);
  if (!token.ok) return token;
  try {
    return await verified(token.value, manifest, tools);
  } catch {
    // A key or a signature that Web Crypto does not take, a field that is not what it is declared to be.
    return fail({ code: 'time-stamp/does-not-fit' });
  }
}

async function verified(
  token: Token,
  manifest: StampedManifest,
  tools: TokenTools,
): Promise<Result<VerifiedToken, TimeStampFault>> {
  const { info, signed, certificates } = token;
  const { hashAlgorithm, hashedMessage } = info.messageImprint;
  if (hashAlgorithm.algorithmId !== SHA256_OID)
    return fail({ code: 'time-stamp/algorithm', oid: hashAlgorithm.algorithmId });
  const stamped = hexFromBytes(hashedMessage.valueBlock.valueHexView);
  if (stamped !== manifest.sha256)
    return fail({ code: 'time-stamp/other-hash', stamped, manifest: manifest.sha256 });

  const [signer] = signed.signerInfos;
  if (!signer) return fail({ code: 'time-stamp/not-readable' });
  const { digestAlgorithm, signatureAlgorithm } = signer;
  if (!HASHES[digestAlgorithm.algorithmId])
    return fail({ code: 'time-stamp/algorithm', oid: digestAlgorithm.algorithmId });
  if (!SIGNATURES.includes(signatureAlgorithm.algorithmId))
    return fail({ code: 'time-stamp/algorithm', oid: signatureAlgorithm.algorithmId });
  if (certificates.length === 0) return fail({ code: 'time-stamp/no-certificate' });

  // It uses the whole of SubtleCrypto, of which this project's own type names a part.
  const engine = new CryptoEngine({ crypto: { subtle: tools.subtle } as never });
  const answer = await signed.verify(
    { signer: 0, data: manifest.bytes.buffer, extendedMode: true, checkDate: info.genTime },
    engine,
  );
  const certificate = answer.signerCertificate;
  if (!answer.signatureVerified || contentTypeOf(signer) !== TST_INFO_OID || !certificate)
    return fail({ code: 'time-stamp/does-not-fit' });
  if (!(await isNamedBySigner(signer, certificate, tools.subtle)))
    return fail({ code: 'time-stamp/other-certificate' });

  const authority = nameOf(certificate);
  if (!isForTimeStamping(certificate)) return fail({ code: 'time-stamp/wrong-purpose', authority });
  const [time, from, to] = [info.genTime, certificate.notBefore.value, certificate.notAfter.value];
  if (time < from || time > to)
    return fail({ code: 'time-stamp/outside-validity', time: iso(time), from: iso(from), to: iso(to) });
  const trust = await reachesRoot(token, certificate, tools.timeRoots, engine);
  return ok({
    token: token.bytes,
    stamp: {
      time: iso(time),
      accuracyMs: accuracyMs(token),
      authority,
      certificateSha256: await certificateHash(tools.subtle, 'SHA-256', certificate),
      trust,
    },
  });
}

function accuracyMs({ info: { accuracy } }: Token): number | null {
  if (!accuracy) return null;
  return (accuracy.seconds ?? 0) * 1000 + (accuracy.millis ?? 0) + (accuracy.micros ?? 0) / 1000;
}

const iso = (time: Date) => time.toISOString();
