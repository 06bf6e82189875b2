/**
 * A recheck as a document of its own, signed by who made it. It names the package by the hash of its manifest, which names every
 * byte: whoever has both can see that they belong together, and do the recheck again.
 */

import { z } from 'zod';
import { byName } from '../basics/by-name.ts';
import { canonicalJson } from '../basics/canonical-json.ts';
import { utf8FromText } from '../basics/utf8.ts';
import { signatureSchema } from '../evidence/signature.ts';
import type { InspectionRecord } from '../record/record.ts';
import { CHECKS, type Recheck } from './recheck.ts';
import { type Comparison, comparisonSchema } from './second-reading.ts';

export const RECHECK_FORMAT = 'strokewitness-recheck';
export const RECHECK_VERSION = 1;
const LIMIT_DIFFERENCES = 1000;
const LIMIT_DETAILS_CHARACTERS = 2000;

const sha256 = z.string().regex(/^[0-9a-f]{64}$/);
const answer = z.enum(['yes', 'no', 'not checked', 'none']);

/** A difference's own numbers as canonical JSON: what can differ grows with the program, and a document stays readable. */
const differenceSchema = z
  .strictObject({
    check: z.enum(CHECKS),
    code: z.string().max(100),
    details: z.string().max(LIMIT_DETAILS_CHARACTERS),
  })
  .readonly();

const documentSchema = z
  .strictObject({
    format: z.literal(RECHECK_FORMAT),
    version: z.literal(RECHECK_VERSION),
    package: z.strictObject({ manifestSha256: sha256, signedBy: z.string().max(19) }).readonly(),
    madeAt: z.iso.datetime(),
    /** Version of the program that rechecked. */
    engine: z.string().min(1).max(40),
    holds: z.boolean(),
    answers: z.record(z.enum(CHECKS), answer).readonly(),
    differences: z.array(differenceSchema).max(LIMIT_DIFFERENCES).readonly(),
    secondReading: z
      .strictObject({
        /** With the second reader's marks: the comparison can be done again. It has a format of its own. */
        record: z.looseObject({}),
        comparisons: z.array(comparisonSchema).max(20_000).readonly(),
      })
      .readonly()
      .nullable(),
  })
  .readonly();

export const recheckFileSchema = z
  .strictObject({ document: documentSchema, signature: signatureSchema })
  .readonly();

export type RecheckDocument = z.infer<typeof documentSchema>;

export type SecondReading = {
  readonly record: InspectionRecord;
  readonly comparisons: readonly Comparison[];
};

type Made = { readonly madeAt: string; readonly engine: string };

export function recheckDocument(
  recheck: Recheck & { readonly manifestSha256: string },
  secondReading: SecondReading | null,
  { madeAt, engine }: Made,
): RecheckDocument {
  const { manifestSha256, signature, checks, holds } = recheck;
  const differences = CHECKS.flatMap((check) =>
    checks[check].differences.map(({ code, ...details }) => ({
      check,
      code,
      details: canonicalJson(details).slice(0, LIMIT_DETAILS_CHARACTERS),
    })),
  );
  return {
    format: RECHECK_FORMAT,
    version: RECHECK_VERSION,
    package: { manifestSha256, signedBy: signature.fingerprint ?? '' },
    madeAt,
    engine,
    holds,
    answers: byName(CHECKS, (name) => checks[name].answer),
    differences: differences.slice(0, LIMIT_DIFFERENCES),
    secondReading,
  };
}

/** What is signed. */
export function bytesOfDocument(document: object): Uint8Array<ArrayBuffer> {
  return utf8FromText(canonicalJson(document));
}
