/**
 * Pictures or hand reading: which of the two decides a wheel end.
 *
 * Rule     the pictures decide; where they do not, the hand reading does. Where the two say the opposite, or differ by more than their
 *          joint U95 without saying the same, one of them is wrong: nothing is decided. Pictures that cannot be judged at all (marks
 *          that contradict each other, a weak geometry) do not stand against a hand reading.
 */
import type { Finding } from '../finding/decision.ts';
import type { Based, PurposeResults } from './purpose-results.ts';
import type { Assessment } from './results.ts';

export type HandStroke = { readonly length: Based; readonly finding: Finding | null };

export type Deciding = Pick<PurposeResults, 'basis' | 'finding' | 'contradicted'>;

export function decidingOf(
  assessment: Assessment | null,
  hand: HandStroke | null,
  differSignificantly: boolean,
): Deciding {
  const pictures = assessment && !isUnfinished(assessment) ? assessment.finding : null;
  const byHand = hand?.finding ?? null;
  if (pictures && hand && byHand && contradict(pictures, byHand, differSignificantly)) {
    const reason = { code: 'finding/hand-contradicts', handStrokeMm: hand.length.value } as const;
    const finding: Finding = { ...pictures, outcome: 'not decided', reasons: [reason], notes: [] };
    return { basis: 'pictures', finding, contradicted: true };
  }
  const hasStroke = assessment?.measurement.ok === true;
  const handGoesFirst = byHand !== null && !isDecided(pictures) && (isDecided(byHand) || !hasStroke);
  if (handGoesFirst) return { basis: 'hand', finding: byHand, contradicted: false };
  return { basis: pictures && hasStroke ? 'pictures' : null, finding: pictures, contradicted: false };
}

function contradict(pictures: Finding, byHand: Finding, differSignificantly: boolean): boolean {
  if (pictures.outcome === byHand.outcome || !isJudged(pictures)) return false;
  return differSignificantly || (isDecided(pictures) && isDecided(byHand));
}

function isDecided(finding: Finding | null): boolean {
  return finding !== null && finding.outcome !== 'not decided';
}

/** Decided, or not decided for nothing but the nearness of a limit. */
export function isJudged({ judgements, reasons }: Finding): boolean {
  return (
    judgements.length > 0 &&
    reasons.every(
      ({ code }) =>
        code === 'finding/near-limit' ||
        code === 'finding/editions-differ' ||
        code === 'finding/chamber-ambiguous',
    )
  );
}

/** A picture or a mark is still to come: that is work under way and not a measurement that failed. */
function isUnfinished({ measurement }: Assessment): boolean {
  if (measurement.ok) return false;
  const { code } = measurement.failure;
  return code === 'measurement/view-missing' || code === 'measurement/mark-missing';
}
