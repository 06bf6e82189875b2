/** Which assist answers which question. */
import { fail, type Result } from '../basics/result.ts';
import { findEnd } from './assist-end.ts';
import { findLattice } from './assist-lattice.ts';
import type { AssistFailure, AssistQuestion, AssistSight } from './assist-sight.ts';
import type { Gray } from './gray.ts';

export function assist(gray: Gray, question: AssistQuestion): Result<AssistSight, AssistFailure> {
  switch (question.of) {
    case 'tape':
      return findLattice(gray, question.named);
    case 'clevis-pin':
    case 'camshaft-end':
      return findEnd(gray, question);
    case 'clamp-band':
      return fail({ code: 'band/no-rim', share: 0 });
  }
}
