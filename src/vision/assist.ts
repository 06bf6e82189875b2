/** Which assist answers which question. */
import { assert, ok, type Result } from '../basics/result.ts';
import { armTurn } from './arm-turn.ts';
import { findBand } from './assist-band.ts';
import { findEnd } from './assist-end.ts';
import { findFace } from './assist-face.ts';
import { findLattice } from './assist-lattice.ts';
import { findRod } from './assist-rod.ts';
import type { AssistFailure, AssistQuestion, AssistSight, EndQuestion } from './assist-sight.ts';
import { findEdgePoints } from './edge-points.ts';
import { findTape } from './find-tape.ts';
import type { Gray } from './gray.ts';
import { sameEnd, UNFORESEEN_TURN_RAD } from './same-end.ts';

/** second: the other picture, where the question is about both. */
export function assist(
  gray: Gray,
  question: AssistQuestion,
  second: Gray | null,
): Result<AssistSight, AssistFailure> {
  switch (question.of) {
    case 'tape':
      return findLattice(gray, question.named);
    case 'tape-strokes':
      return findTape(gray, question);
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
    case 'rod-line':
      return findRod(gray, question);
    case 'chamber-face':
      return findFace(gray, question);
    case 'arm-turn':
      assert(second, 'a turn is seen in two pictures');
      return armTurn(gray, second, question);
  }
}

/** How sure it is of the same point; what the mark that was kept is off by, it is off by as well, but for a turn that nobody foresaw. */
function endAgain(
  gray: Gray,
  { of, sigmaPx: roughSigmaPx }: EndQuestion,
  second: Gray,
  { here, known, knownSigmaPx }: NonNullable<EndQuestion['same']>,
): Result<AssistSight, AssistFailure> {
  const again = sameEnd(second, gray, { of, known, rough: here, roughSigmaPx });
  if (!again.ok) return again;
  const sigmaPx = Math.hypot(again.value.sigmaPx, UNFORESEEN_TURN_RAD[of] * knownSigmaPx);
  return ok({ marks: [{ placePx: again.value.placePx, sigmaPx, readingMm: null }] });
}
