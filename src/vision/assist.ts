/** Which assist answers which question. */
import { ok, type Result } from '../basics/result.ts';
import { findBand } from './assist-band.ts';
import { findEnd } from './assist-end.ts';
import { findLattice } from './assist-lattice.ts';
import type { AssistFailure, AssistQuestion, AssistSight, EndQuestion } from './assist-sight.ts';
import { findEdgePoints } from './edge-points.ts';
import type { Gray } from './gray.ts';
import { findLatticeAgain } from './lattice-again.ts';
import { sameEnd } from './same-end.ts';

/** second: the other picture, where the question is about both. */
export function assist(
  gray: Gray,
  question: AssistQuestion,
  second: Gray | null,
): Result<AssistSight, AssistFailure> {
  switch (question.of) {
    case 'tape':
      return findLattice(gray, question.named);
    case 'tape-again':
      return findLatticeAgain(gray, question);
    case 'tape-edge':
      return findEdgePoints(gray, question);
    case 'clevis-pin':
    case 'camshaft-end':
      return second && question.same
        ? endAgain(gray, question, second, question.same)
        : findEnd(gray, question);
    case 'clamp-band': {
      const band = findBand(gray, question);
      return band.ok ? ok({ marks: band.value.marks }) : band;
    }
  }
}

/** As a centre it is no surer than the mark that was kept. */
function endAgain(
  gray: Gray,
  { of, sigmaPx }: EndQuestion,
  second: Gray,
  { here, known, knownSigmaPx }: NonNullable<EndQuestion['same']>,
): Result<AssistSight, AssistFailure> {
  const again = sameEnd(second, gray, { of, known, rough: here, roughSigmaPx: sigmaPx });
  if (!again.ok) return again;
  const { placePx } = again.value;
  return ok({
    marks: [{ placePx, sigmaPx: Math.hypot(again.value.sigmaPx, knownSigmaPx), readingMm: null }],
  });
}
