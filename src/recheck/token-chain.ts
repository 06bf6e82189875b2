/**
 * Whether a time stamp's certificate comes from one of the roots that the person gave, over those in the token (RFC 5280 6, by
 * pkijs), as at the stamped time. Revocation is not asked for: that needs a network.
 */
import { Certificate, CertificateChainValidationEngine, type CryptoEngine } from 'pkijs';
import type { Token } from './read-token.ts';
import type { TimeStamp } from './time-stamp.ts';

/** Certificates that sign each other in a ring would lead a search round for ever. */
const LIMIT_STEPS = 60;

export async function reachesRoot(
  { info, certificates }: Token,
  signer: Certificate,
  roots: readonly Uint8Array[],
  crypto: CryptoEngine,
): Promise<TimeStamp['trust']> {
  if (roots.length === 0) return 'not checked';
  let steps = 0;
  const chain = new CertificateChainValidationEngine({
    trustedCerts: roots.map((der) => Certificate.fromBER(Uint8Array.from(der))),
    certs: [...certificates.filter((one) => one !== signer), signer],
    checkDate: info.genTime,
    findIssuer: async (certificate, engine) => {
      if (++steps > LIMIT_STEPS) throw new Error('too many steps');
      return engine.defaultFindIssuer(certificate, engine, crypto);
    },
  });
  const { result } = await chain.verify({}, crypto).catch(() => ({ result: false }));
  return result ? 'reaches a root' : 'reaches no root';
}
