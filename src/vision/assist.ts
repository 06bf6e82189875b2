/** Which assist answers which question. */
import { ok, type Result } from '../basics/result.ts';
import { findBand } from './assist-band.ts';
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
    case 'clamp-band': {
      const band = findBand(gray, question);
      return band.ok ? ok({ marks: band.value.marks }) : band;
    }
  }
}
