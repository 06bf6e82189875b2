/**
 * A time stamp token as it came from the authority, read as a stranger's: the answer to a request (.tsr) or the token alone
 * (.tst). The token is kept byte for byte.
 * Source: RFC 3161 2.4.2 for both forms, RFC 5652 5 for the signed data in it (clauses from memory).
 */
import { type BaseBlock, fromBER, ObjectIdentifier, Sequence } from 'asn1js';
import {
  Certificate,
  ContentInfo,
  id_ContentType_SignedData,
  SignedData,
  TimeStampResp,
  TSTInfo,
} from 'pkijs';
import { fail, ok, type Result } from '../basics/result.ts';
import { type TimeStampFault, TOKEN_LIMIT_BYTES } from './time-stamp.ts';

export type Token = {
  /** The token alone, as it stood in what was given. */
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly signed: SignedData;
  readonly info: TSTInfo;
  readonly certificates: readonly Certificate[];
};

export const TST_INFO_OID = '1.2.840.113549.1.9.16.1.4';
/** Of an authority's own chain; more would only keep a computer busy. */
const LIMIT_CERTIFICATES = 20;
/** PKIStatus: granted, and granted with changes. */
const GRANTED = [0, 1];

export function readToken(given: Uint8Array): Result<Token, TimeStampFault> {
  if (given.length > TOKEN_LIMIT_BYTES)
    return fail({ code: 'time-stamp/too-large', sizeBytes: given.length, limitBytes: TOKEN_LIMIT_BYTES });
  try {
    const outer = wholeOf(given);
    if (!outer) return fail({ code: 'time-stamp/not-readable' });
    if (outer.valueBlock.value[0] instanceof ObjectIdentifier) return tokenOf(given);
    const { status, timeStampToken } = new TimeStampResp({ schema: outer });
    if (!GRANTED.includes(status.status)) return fail({ code: 'time-stamp/refused', status: status.status });
    const inside = outer.valueBlock.value[1];
    return timeStampToken && inside
      ? tokenOf(inside.valueBeforeDecodeView)
      : fail({ code: 'time-stamp/not-readable' });
  } catch {
    // The library throws at what does not fit its schemas, and overflows the stack where it is nested without end.
    return fail({ code: 'time-stamp/not-readable' });
  }
}

function tokenOf(raw: Uint8Array): Result<Token, TimeStampFault> {
  const bytes = Uint8Array.from(raw);
  const outer = wholeOf(bytes);
  const content = outer && new ContentInfo({ schema: outer });
  if (content?.contentType !== id_ContentType_SignedData) return fail({ code: 'time-stamp/not-readable' });
  const signed = new SignedData({ schema: content.content });
  const { encapContentInfo, signerInfos, certificates = [] } = signed;
  const isOne = encapContentInfo.eContentType === TST_INFO_OID && signerInfos.length === 1;
  if (!isOne || !encapContentInfo.eContent || certificates.length > LIMIT_CERTIFICATES)
    return fail({ code: 'time-stamp/not-readable' });
  const info = TSTInfo.fromBER(encapContentInfo.eContent.getValue());
  if (info.version !== 1 || Number.isNaN(info.genTime.getTime()))
    return fail({ code: 'time-stamp/not-readable' });
  return ok({ bytes, signed, info, certificates: certificates.filter((one) => one instanceof Certificate) });
}

/** Null where anything follows it, or it is cut short. */
function wholeOf(bytes: Uint8Array): Sequence | null {
  const { offset, result }: { offset: number; result: BaseBlock } = fromBER(Uint8Array.from(bytes).buffer);
  return offset === bytes.length && result instanceof Sequence ? result : null;
}
