/** A recheck's signed document held against a recheck of the package that was made here. */
import { parseBoundedJson } from '../basics/bounded-json.ts';
import { fail, ok, type Result } from '../basics/result.ts';
import { resultsOf } from '../evidence/results.ts';
import { type Subtle, verify } from '../evidence/signature.ts';
import { openRecord } from '../record/open-record.ts';
import { CHECKS, type CheckName, type Recheck } from './recheck.ts';
import { bytesOfDocument, type RecheckDocument, recheckFileSchema } from './recheck-document.ts';
import { type Comparison, comparisonsOf } from './second-reading.ts';

export type DocumentAnswer = {
  /** Whose key signed the document: compare it with one that came by another way. */
  readonly signedBy: string;
  readonly madeAt: string;
  readonly engine: string;
  readonly holds: boolean;
  /** Questions that were answered otherwise than here. */
  readonly otherAnswers: readonly CheckName[];
  readonly secondReading: {
    readonly agree: number;
    readonly doNotAgree: number;
    /** Comparisons that come out otherwise when they are done again from the second reader's marks. */
    readonly notReproduced: number;
  } | null;
};

export type DocumentFailure =
  | { readonly code: 'document/not-readable' }
  | { readonly code: 'document/does-not-fit' }
  | { readonly code: 'document/other-package'; readonly asked: string | null; readonly found: string };

/** A record of all its size, and the comparisons beside it. */
const LIMITS = { characters: 40e6, depth: 40 };
/** In millimetres or radians, as the quantity is: far above what two engines differ by. */
const TOLERANCE = 0.001;

export async function checkDocument(
  text: string,
  recheck: Recheck,
  subtle: Subtle,
): Promise<Result<DocumentAnswer, DocumentFailure>> {
  const data = parseBoundedJson(text, LIMITS);
  const parsed = data.ok ? recheckFileSchema.safeParse(data.value) : null;
  if (!parsed?.success) return fail({ code: 'document/not-readable' });
  const { document, signature } = parsed.data;
  const isOfDocument = signature.signed === 'recheck';
  if (!isOfDocument || !(await verify(subtle, signature, bytesOfDocument(document))))
    return fail({ code: 'document/does-not-fit' });
  const found = document.package.manifestSha256;
  if (found !== recheck.manifestSha256)
    return fail({ code: 'document/other-package', asked: recheck.manifestSha256, found });
  const { madeAt, engine, holds, answers } = document;
  return ok({
    signedBy: signature.fingerprint,
    madeAt,
    engine,
    holds,
    otherAnswers: CHECKS.filter((name) => answers[name] !== recheck.checks[name].answer),
    secondReading: secondReadingOf(document, recheck),
  });
}

function secondReadingOf({ secondReading, engine }: RecheckDocument, { recorded }: Recheck) {
  if (!secondReading) return null;
  const { record, comparisons } = secondReading;
  const opened = openRecord(JSON.stringify(record));
  const again = opened.ok && recorded ? comparisonsOf(recorded, resultsOf(opened.value, engine)) : [];
  const agree = comparisons.filter(({ agrees }) => agrees).length;
  return {
    agree,
    doNotAgree: comparisons.length - agree,
    notReproduced: comparisons.filter((one) => !again.some((other) => isSame(one, other))).length,
  };
}

function isSame(a: Comparison, b: Comparison): boolean {
  const isOfSame = a.measurement === b.measurement && a.wheelEnd === b.wheelEnd && a.quantity === b.quantity;
  const numbers = ['first', 'second', 'difference', 'U95'] as const;
  return (
    isOfSame && a.agrees === b.agrees && numbers.every((name) => Math.abs(a[name] - b[name]) <= TOLERANCE)
  );
}
