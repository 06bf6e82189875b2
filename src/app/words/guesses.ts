/** What was proposed on a picture before it was marked, and how sure that is. */
import { formatLength, type LengthUnit } from '../../basics/length-text.ts';
import type { Proposal } from '../../vision/guess-sight.ts';
import { MARK_NAMES } from './marks.ts';

export const GUESSES = {
  heading: 'Found without a mark',
  underWay: 'Looking for tape, pin and camshaft. You can mark at once.',
  none: 'Tape, pin and camshaft were not found surely enough. Mark them.',
  failed: 'The search for tape, pin and camshaft did not end. Mark them.',
  offered: (name: string) => `${name}, found`,
  take: 'Take',
  takeThis: (proposal: Proposal) => `Take ${nameOf(proposal).toLowerCase()}`,
};

export function proposalText(proposal: Proposal, unit: LengthUnit): string {
  const sure = `${Math.round(100 * proposal.confidence)} % sure`;
  if (proposal.kind !== 'tape-graduation') return `${nameOf(proposal)}, ${sure}.`;
  const readings = proposal.marks.map(({ readingMm }) => readingMm ?? 0);
  const [low, high] = [Math.min(...readings), Math.max(...readings)];
  return `${proposal.marks.length} graduations, ${formatLength(low, unit)} to ${formatLength(high, unit)}, by their numerals, ${sure}. Check the two ends.`;
}

const nameOf = ({ kind }: Proposal) => (kind === 'tape-graduation' ? 'Graduations' : MARK_NAMES[kind]);
