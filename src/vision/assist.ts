/** Which assist answers which question. */
import type { Result } from '../basics/result.ts';
import { findEnd } from './assist-end.ts';
import { findLattice } from './assist-lattice.ts';
import type { AssistFailure, AssistQuestion, AssistSight } from './assist-sight.ts';
import type { Gray } from './gray.ts';
import { findLatticeAgain } from './lattice-again.ts';

export function assist(gray: Gray, question: AssistQuestion): Result<AssistSight, AssistFailure> {
  switch (question.of) {
    case 'tape':
      return findLattice(gray, question.named);
    case 'tape-again':
      return findLatticeAgain(gray, question);
    case 'clevis-pin':
    case 'camshaft-end':
      return findEnd(gray, question);
  }
}
