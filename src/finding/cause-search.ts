/**
 * The cause search: what to check next and why, and what the answers so far point to. It proposes; the technician finds.
 *
 * Rule     a check comes next where it was not answered yes or no. Checks that more of the evidence sends one to come first, then in
 *          the order of the table; four at a time. A bad answer, and evidence that speaks by itself, name causes; a good answer to
 *          all checks of a cause takes away what evidence had named.
 * Source   cause-rules.ts.
 */
import { CAUSES_BY_EVIDENCE, CHECK_RULES, type Evidence } from './cause-rules.ts';
import type { Cause, CauseCheck } from './causes.ts';

export type CheckAnswer = 'yes' | 'no' | 'cannot-tell';

export type NextCheck = {
  readonly check: CauseCheck;
  /** What sends one there; empty where it is only next in the usual order. */
  readonly because: readonly Evidence[];
};

export type PointedCause = {
  readonly cause: Cause;
  readonly answers: readonly CauseCheck[];
  readonly evidence: readonly Evidence[];
};

export type CauseSearch = {
  readonly evidence: readonly Evidence[];
  readonly next: readonly NextCheck[];
  /** Best supported first. */
  readonly causes: readonly PointedCause[];
};

const AT_A_TIME = 4;

export function causeSearch(
  evidence: readonly Evidence[],
  answers: readonly { readonly check: CauseCheck; readonly answer: CheckAnswer }[],
): CauseSearch {
  const answerOf = new Map(answers.map(({ check, answer }) => [check, answer]));
  const next = CHECK_RULES.filter(({ check }) => !DONE.includes(answerOf.get(check) ?? 'cannot-tell'))
    .map(({ check, after }) => ({ check, because: evidence.filter((one) => after.includes(one)) }))
    // Sorting keeps the table's order among equals.
    .sort((a, b) => b.because.length - a.because.length)
    .slice(0, AT_A_TIME);
  return { evidence, next, causes: pointedCauses(evidence, answerOf) };
}

const DONE: readonly CheckAnswer[] = ['yes', 'no'];

function pointedCauses(
  evidence: readonly Evidence[],
  answerOf: ReadonlyMap<CauseCheck, CheckAnswer>,
): PointedCause[] {
  const bad = CHECK_RULES.filter(({ check }) => answerOf.get(check) === 'no');
  const speaking = evidence.filter((one) => CAUSES_BY_EVIDENCE[one]);
  const named = new Set([
    ...bad.flatMap(({ pointsTo }) => pointsTo),
    ...speaking.flatMap((one) => CAUSES_BY_EVIDENCE[one] ?? []),
  ]);
  return [...named]
    .map((cause) => ({
      cause,
      answers: bad.filter(({ pointsTo }) => pointsTo.includes(cause)).map(({ check }) => check),
      evidence: speaking.filter((one) => CAUSES_BY_EVIDENCE[one]?.includes(cause)),
    }))
    .filter(({ cause, answers }) => answers.length > 0 || !isCleared(cause, answerOf))
    .sort((a, b) => support(b) - support(a));
}

function isCleared(cause: Cause, answerOf: ReadonlyMap<CauseCheck, CheckAnswer>): boolean {
  const asked = CHECK_RULES.filter(({ pointsTo }) => pointsTo.includes(cause));
  return asked.length > 0 && asked.every(({ check }) => answerOf.get(check) === 'yes');
}

/** Among equals those that an answer names stay first: somebody looked at the part. */
function support({ answers, evidence }: PointedCause): number {
  return answers.length + evidence.length;
}
