/**
 * The question that a time stamping authority answers: 'when did you see this hash?'. It holds nothing of the package but the hash.
 * Asks for the authority's certificate in the answer, so that the answer can be checked without a network.
 * Source: RFC 3161 2.4.1 (clause from memory).
 */
import { Null, OctetString } from 'asn1js';
import { AlgorithmIdentifier, MessageImprint, TimeStampReq } from 'pkijs';
import { bytesFromHex } from '../basics/hex.ts';

export const SHA256_OID = '2.16.840.1.101.3.4.2.1';

export function timeStampRequest(manifestSha256: string): Uint8Array<ArrayBuffer> {
  const request = new TimeStampReq({
    version: 1,
    messageImprint: new MessageImprint({
      hashAlgorithm: new AlgorithmIdentifier({ algorithmId: SHA256_OID, algorithmParams: new Null() }),
      hashedMessage: new OctetString({ valueHex: bytesFromHex(manifestSha256).buffer }),
    }),
    certReq: true,
  });
  return new Uint8Array(request.toSchema().toBER());
}
