/**
 * The over-stroke mark beside the measured stroke: a second observation, which never decides and never changes the finding.
 *
 * Model    the mark may begin to show up to the rule set's play before the limit, or only that far after it; a gap between
 *          stroke and limit larger than play + U cannot be explained by the mark's play: take the pictures again.
 * Source   the rule set's overStrokeMark.
 */
import type { WithU } from '../measurement/measured.ts';
import type { Judgement } from './guard-band.ts';
import type { RuleSet } from './rule-set.ts';

export const SIGHTS = ['seen', 'not-seen', 'cannot-tell'] as const;
export type Sight = (typeof SIGHTS)[number];

/** Of the paint, as a person may name it. By the trade red or orange. */
export const BAND_COLOURS = ['red or orange', 'yellow', 'white', 'green', 'blue'] as const;
export type BandColour = (typeof BAND_COLOURS)[number];

/** Null where nobody looked. */
export type Sights = { readonly released: Sight | null; readonly applied: Sight | null };

export type OverStrokeMarkNote =
  | {
      readonly code: 'over-stroke-mark/seen-but-within' | 'over-stroke-mark/not-seen-but-over';
      /** From the stroke to the limit. */
      readonly gapMm: number;
      readonly playMm: number;
      /** The mark's play and the stroke's U cannot explain it: take the pictures again. */
      readonly beyondPlay: boolean;
    }
  /** The rod was already out too far on the released picture: was the spring brake released? */
  | { readonly code: 'over-stroke-mark/seen-released' };

export function overStrokeMarkNotes(
  sights: Sights,
  stroke: WithU,
  judgement: Judgement,
  ruleSet: RuleSet,
): OverStrokeMarkNote[] {
  const { earlyByUpToMm, lateByUpToMm } = ruleSet.overStrokeMark;
  const gapMm = Math.abs(judgement.limitMm - stroke.value);
  const notes: OverStrokeMarkNote[] = [];
  if (sights.released === 'seen') notes.push({ code: 'over-stroke-mark/seen-released' });
  if (sights.applied === 'seen' && judgement.outcome === 'within limit')
    notes.push({
      code: 'over-stroke-mark/seen-but-within',
      gapMm,
      playMm: earlyByUpToMm,
      beyondPlay: gapMm > earlyByUpToMm + stroke.U95,
    });
  if (sights.applied === 'not-seen' && judgement.outcome === 'over limit')
    notes.push({
      code: 'over-stroke-mark/not-seen-but-over',
      gapMm,
      playMm: lateByUpToMm,
      beyondPlay: gapMm > lateByUpToMm + stroke.U95,
    });
  return notes;
}
