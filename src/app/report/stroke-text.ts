import type { LengthUnit } from '../../basics/length-text.ts';
import type { PurposeResults } from '../../record/purpose-results.ts';
import { SUMMARY } from '../words/report.ts';
import { measuredLengthText } from '../words/values.ts';

/** The stroke that counts, with how it was got where that was not by pictures. */
export function strokeText({ strokeMm }: PurposeResults, unit: LengthUnit): string {
  if (!strokeMm) return SUMMARY.noStroke;
  const text = measuredLengthText(strokeMm, unit);
  return strokeMm.basis === 'hand' ? SUMMARY.byHand(text) : text;
}
