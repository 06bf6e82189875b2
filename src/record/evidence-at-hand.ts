/** What speaks for one cause or another at a wheel end: from its strokes, readings, adjuster check and the other end of its axle. */

import type { Evidence } from '../finding/cause-rules.ts';
import { freeStrokeRange } from '../finding/free-stroke.ts';
import type { RuleSet } from '../finding/rule-set.ts';
import { pastSquare } from './arm-square.ts';
import type { AxleNote } from './axle-notes.ts';
import { isReadingOver } from './other-readings.ts';
import type { PurposeResults } from './purpose-results.ts';
import type { OtherReading, WheelEnd } from './wheel-end.ts';

const READING_EVIDENCE: Readonly<Record<OtherReading['what'], Evidence | null>> = {
  'camshaft-play': 'camshaft-play-over',
  'adjuster-end-play': 'adjuster-play-over',
  'lining-thickness': 'lining-under',
  'drum-diameter': 'drum-over',
  other: null,
};

export function evidenceAtHand(
  { adjusterCheck, otherReadings, repairs }: WheelEnd,
  held: PurposeResults,
  axle: readonly AxleNote[],
  ruleSet: RuleSet | null,
): Evidence[] {
  const { finding, freeStrokeMm, purpose } = held;
  const range = freeStrokeMm && ruleSet ? freeStrokeRange(freeStrokeMm, ruleSet) : 'not decided';
  const has = (...codes: readonly AxleNote['code'][]) => axle.some(({ code }) => codes.includes(code));
  const answer = adjusterCheck?.answer;
  const readings = otherReadings
    .filter((reading) => reading.purpose === purpose && isReadingOver(reading))
    .map(({ what }) => READING_EVIDENCE[what]);
  const all: readonly (Evidence | null | false | undefined)[] = [
    finding?.outcome === 'over limit' && 'stroke-over',
    range === 'long' && 'free-stroke-long',
    range === 'short' && 'free-stroke-short',
    range === 'in range' && 'free-stroke-in-range',
    answer === 'takes-up' && 'adjuster-takes-up',
    answer === 'does-not-take-up' && 'adjuster-does-not-take-up',
    ...readings,
    has('axle/chamber-size-differs', 'axle/chamber-kind-differs', 'axle/stroke-class-differs') &&
      'chamber-mismatch',
    has('axle/arm-length-differs') && 'arm-mismatch',
    pastSquare(held)?.isFar && 'arm-past-square',
    repairs.some(({ adjustedByHand }) => adjustedByHand) && 'adjusted-by-hand',
  ];
  return [...new Set(all.filter((one) => one !== null && one !== undefined && one !== false))];
}
