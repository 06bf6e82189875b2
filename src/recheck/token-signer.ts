/**
 * What a time stamp's signature says of its signer, and what the signer's certificate says of itself.
 * Source: RFC 2634 5.4 (SigningCertificate), RFC 5035 (its second version), RFC 5280 4.2.1.12, RFC 3161 2.3 (clauses from memory).
 */
import { type BaseBlock, ObjectIdentifier, OctetString, Sequence } from 'asn1js';
import { AlgorithmIdentifier, type Attribute, type Certificate, ExtKeyUsage, type SignerInfo } from 'pkijs';
import { hexFromBytes } from '../basics/hex.ts';
import type { Subtle } from '../evidence/signature.ts';
import { SHA256_OID } from '../evidence/time-stamp-request.ts';

type HashName = Parameters<Subtle['digest']>[0];

const CONTENT_TYPE = '1.2.840.113549.1.9.3';
const SIGNING_CERTIFICATE = '1.2.840.113549.1.9.16.2.12';
const SIGNING_CERTIFICATE_V2 = '1.2.840.113549.1.9.16.2.47';
const EXTENDED_KEY_USAGE = '2.5.29.37';
const TIME_STAMPING = '1.3.6.1.5.5.7.3.8';
const COMMON_NAME = '2.5.4.3';
const ORGANISATION = '2.5.4.10';
const NAME_LIMIT_CHARACTERS = 200;

/** By their identifiers; any other is too weak or not known. */
export const HASHES: Readonly<Record<string, HashName>> = {
  [SHA256_OID]: 'SHA-256',
  '2.16.840.1.101.3.4.2.2': 'SHA-384',
  '2.16.840.1.101.3.4.2.3': 'SHA-512',
};

/** Under the signature, unlike the content type that stands beside it. */
export function contentTypeOf(signer: SignerInfo): string | null {
  const [value] = attributeOf(signer, CONTENT_TYPE)?.values ?? [];
  return value instanceof ObjectIdentifier ? value.getValue() : null;
}

/** False also where the signer names no certificate: then another one with the same key could be put in its place. */
export async function isNamedBySigner(
  signer: SignerInfo,
  certificate: Certificate,
  subtle: Subtle,
): Promise<boolean> {
  const second = attributeOf(signer, SIGNING_CERTIFICATE_V2);
  const [value] = (second ?? attributeOf(signer, SIGNING_CERTIFICATE))?.values ?? [];
  const named = memberOf(memberOf(value, 0), 0);
  const first = memberOf(named, 0);
  const isSaid = first instanceof Sequence;
  const hash = isSaid ? memberOf(named, 1) : first;
  const oid = isSaid ? new AlgorithmIdentifier({ schema: first }).algorithmId : SHA256_OID;
  const name = second ? HASHES[oid] : 'SHA-1';
  if (!(hash instanceof OctetString) || !name) return false;
  return hexFromBytes(hash.valueBlock.valueHexView) === (await certificateHash(subtle, name, certificate));
}

export function isForTimeStamping({ extensions = [] }: Certificate): boolean {
  const usages = extensions.filter(({ extnID }) => extnID === EXTENDED_KEY_USAGE);
  return (
    usages.length === 1 &&
    usages.every(
      ({ critical, parsedValue }) =>
        critical &&
        parsedValue instanceof ExtKeyUsage &&
        parsedValue.keyPurposes.every((purpose) => purpose === TIME_STAMPING) &&
        parsedValue.keyPurposes.length === 1,
    )
  );
}

export function nameOf({ subject }: Certificate): string {
  const texts = [COMMON_NAME, ORGANISATION].flatMap((type) =>
    subject.typesAndValues
      .filter((one) => one.type === type)
      .map(({ value }) => String((value.valueBlock as { readonly value?: unknown }).value ?? '')),
  );
  return texts.filter(Boolean).join(', ').slice(0, NAME_LIMIT_CHARACTERS);
}

export async function certificateHash(
  subtle: Subtle,
  name: HashName,
  certificate: Certificate,
): Promise<string> {
  return hexFromBytes(new Uint8Array(await subtle.digest(name, certificate.toSchema().toBER())));
}

function attributeOf(signer: SignerInfo, type: string): Attribute | undefined {
  return signer.signedAttrs?.attributes.find((attribute) => attribute.type === type);
}

function memberOf(block: BaseBlock | undefined, index: number): BaseBlock | undefined {
  return block instanceof Sequence ? block.valueBlock.value[index] : undefined;
}
