/**
 * The signature over the manifest: ECDSA on P-256 with SHA-256, as Web Crypto has it, the same in a page and in Node.
 * It tells that the manifest is as it was when the holder of the key signed it; whose key that is, only the fingerprint can
 * tell, compared with one that was got by another way.
 * Source: FIPS 186-4 for ECDSA, RFC 7518 6.2 for the key's form (both from memory).
 */
import { z } from 'zod';
import { bytesFromHex, hexFromBytes } from '../basics/hex.ts';

export const SIGNATURE_FORMAT = 'strokewitness-signature';
export const SIGNATURE_VERSION = 1;

/** 32 bytes in base64url. */
const coordinate = z.string().regex(/^[A-Za-z0-9_-]{43}$/);

const publicKeySchema = z
  .strictObject({ kty: z.literal('EC'), crv: z.literal('P-256'), x: coordinate, y: coordinate })
  .readonly();

export const signatureSchema = z
  .strictObject({
    format: z.literal(SIGNATURE_FORMAT),
    version: z.literal(SIGNATURE_VERSION),
    algorithm: z.literal('ECDSA P-256 SHA-256'),
    /** What was signed: the exact bytes of a package's manifest, or the canonical JSON of a recheck's document. */
    signed: z.enum(['manifest.json', 'recheck']),
    publicKey: publicKeySchema,
    fingerprint: z.string().regex(/^[0-9a-f]{4}(?: [0-9a-f]{4}){3}$/),
    /** r and s, 32 bytes each, hexadecimal. */
    signature: z.string().regex(/^[0-9a-f]{128}$/),
  })
  .readonly();

export type Signature = z.infer<typeof signatureSchema>;

/** What is used of Web Crypto's SubtleCrypto; keys are its own objects. */
export type Subtle = {
  importKey(
    format: 'jwk',
    key: { kty: string; crv: string; x: string; y: string },
    algorithm: typeof KEY_ALGORITHM,
    extractable: boolean,
    usages: 'verify'[],
  ): Promise<object>;
  exportKey(format: 'raw', key: object): Promise<ArrayBuffer>;
  exportKey(format: 'jwk', key: object): Promise<{ x?: string; y?: string }>;
  sign(algorithm: typeof SIGN_ALGORITHM, key: object, data: Uint8Array<ArrayBuffer>): Promise<ArrayBuffer>;
  verify(
    algorithm: typeof SIGN_ALGORITHM,
    key: object,
    signature: Uint8Array<ArrayBuffer>,
    data: Uint8Array<ArrayBuffer>,
  ): Promise<boolean>;
  digest(algorithm: 'SHA-256' | 'SHA-384' | 'SHA-512' | 'SHA-1', data: ArrayBuffer): Promise<ArrayBuffer>;
};

export const KEY_ALGORITHM = { name: 'ECDSA', namedCurve: 'P-256' } as const;
const SIGN_ALGORITHM = { name: 'ECDSA', hash: 'SHA-256' } as const;

/** The private key need not be extractable; the public one is. */
export type KeyPair = { readonly privateKey: object; readonly publicKey: object };

export async function sign(
  subtle: Subtle,
  { privateKey, publicKey }: KeyPair,
  bytes: Uint8Array<ArrayBuffer>,
  signed: Signature['signed'] = 'manifest.json',
): Promise<Signature> {
  const { x = '', y = '' } = await subtle.exportKey('jwk', publicKey);
  return {
    format: SIGNATURE_FORMAT,
    version: SIGNATURE_VERSION,
    algorithm: 'ECDSA P-256 SHA-256',
    signed,
    publicKey: { kty: 'EC', crv: 'P-256', x, y },
    fingerprint: await keyFingerprint(subtle, publicKey),
    signature: hexFromBytes(new Uint8Array(await subtle.sign(SIGN_ALGORITHM, privateKey, bytes))),
  };
}

/** False also where the key is no point of the curve, is written in an odd way, or has another fingerprint than is said. */
export async function verify(
  subtle: Subtle,
  { publicKey: { kty, crv, x, y }, fingerprint, signature }: Signature,
  manifest: Uint8Array<ArrayBuffer>,
): Promise<boolean> {
  const key = await subtle
    .importKey('jwk', { kty, crv, x, y }, KEY_ALGORITHM, true, ['verify'])
    .catch(() => null);
  if (!key) return false;
  const again = await subtle.exportKey('jwk', key);
  if (again.x !== x || again.y !== y || (await keyFingerprint(subtle, key)) !== fingerprint) return false;
  return subtle.verify(SIGN_ALGORITHM, key, bytesFromHex(signature), manifest);
}

/** Short enough to be read out on the telephone: the first 64 bits of SHA-256 of the key's point. */
export async function keyFingerprint(subtle: Subtle, publicKey: object): Promise<string> {
  const point = await subtle.exportKey('raw', publicKey);
  const digits = hexFromBytes(new Uint8Array(await subtle.digest('SHA-256', point)));
  return (digits.slice(0, 16).match(/.{4}/g) ?? []).join(' ');
}
