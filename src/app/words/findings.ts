import { formatLengthDown, formatLengthUp, type LengthUnit } from '../../basics/length-text.ts';
import type { Finding, FindingNote, UndecidedReason } from '../../finding/decision.ts';
import type { DecidingBound } from '../../finding/guard-band.ts';
import type { LimitValue } from '../../finding/limit.ts';
import type { RuleSet } from '../../finding/rule-set.ts';
import type { Advice } from '../../measurement/advice.ts';
import { measurementFailureText } from './failures-measurement.ts';
import { limitFailureText } from './limits.ts';
import { lengthText } from './values.ts';

export const OUTCOMES: Readonly<Record<Finding['outcome'], string>> = {
  'within limit': 'Within limit',
  'over limit': 'Over limit',
  'not decided': 'Not decided: measure by hand',
};

export const FINDING = {
  bar: 'Stroke against the limit',
  limit: 'limit',
  or: 'or',
  why: 'Why it is not decided',
  source: 'Source of the limit',
  confidence: '± is U at 95 % (k = 1.96)',
  barRead: 'In the bar: hatched what the finding counts (95 % to one side), the thin line ± U.',
  underWay: 'Measuring …',
  overStrokeSeen: (state: string) => `Over-stroke mark seen, ${state}`,
  noStroke: 'No stroke yet',
  notHeld:
    'The marks do not hold the stroke yet: its uncertainty is larger than the limit itself. Add marks or references.',
  wouldHelp: 'What would help most',
};

const PROPOSALS: Readonly<Record<Advice['proposal'], string>> = {
  'clamp-band': 'Take the clamp band as a reference too and mark ten points of its rim',
  tape: 'Hold a tape along the rod in both pictures and mark its graduations',
  target: 'Lay the printed target along the rod in both pictures',
  'tie-points': 'Mark five fixed things, near and far, that both pictures show',
  'pin-end': 'Measure how far the pin’s end stands out from the rod’s middle line and type it',
  'more-rim-points': 'Mark ten more points of the clamp band’s rim',
  'rod-line': 'Mark two points of the rod’s middle line',
  'camshaft-end': 'Mark the camshaft end in every picture',
  'arm-length': 'Read the arm length stamped on the arm and take it as a reference',
  'camera-profile': 'Calibrate the camera with the printed board and choose it for these pictures',
  'once-more': 'Set face, pin and camshaft end twice more each: select a mark, then set it once more',
  'finer-marks': 'Zoom in and set the marks again, twice as close',
};

export function adviceText({ proposal, U95Mm }: Advice, unit: LengthUnit): string {
  return `${PROPOSALS[proposal]}: the stroke would be known to about ± ${formatLengthUp(U95Mm, unit)}.`;
}

export function undecidedText(reason: UndecidedReason, unit: LengthUnit): string {
  switch (reason.code) {
    case 'finding/near-limit':
      return `The stroke is closer to the limit of ${lengthText(reason.limitMm, unit)} than its uncertainty. Measure by hand, or add marks and references.`;
    case 'finding/editions-differ':
      return 'Editions of the rule give this chamber different limits, and the stroke lies between them.';
    case 'finding/chamber-ambiguous':
      return 'What is marked on the chamber fits two types with different limits, and the stroke lies between them.';
    case 'finding/limit-unknown':
      return limitUnknownText(reason.failure);
    case 'finding/model-does-not-hold':
      return 'The marks contradict each other too strongly. Look for one on the wrong place or a wrong reading.';
    case 'finding/distance-alone':
      return 'One known distance is too little for two hand-held pictures. Add the clamp band, a tape or the arm length, or set the camera still.';
    case 'finding/views-apart':
      return 'The two pictures were taken from directions too far apart. Take both from one place, or mark tie points or the clamp band’s rim.';
    case 'finding/mark-contradicts':
      return 'One mark contradicts the others. Look at it below: it may sit on the wrong place and pull the stroke with it.';
    case 'finding/two-solutions':
      return `The marks also fit a stroke of ${lengthText(reason.otherStrokeMm, unit)}, which would be found otherwise.`;
    case 'finding/hand-contradicts':
      return `The hand reading of ${lengthText(reason.handStrokeMm, unit)} contradicts the pictures. Measure again, both ways.`;
    case 'finding/not-measured':
      return measurementFailureText(reason.failure, unit);
  }
}

type LimitUnknown = Extract<UndecidedReason, { code: 'finding/limit-unknown' }>['failure'];

function limitUnknownText(failure: LimitUnknown): string {
  switch (failure.code) {
    case 'rule-set/unknown':
      return `The record names the rule set “${failure.ruleSetId}”, which this program does not have.`;
    case 'rule-set/invalid':
      return `The rule set does not hold at “${failure.path}”.`;
    default:
      return limitFailureText(failure);
  }
}

export function findingNoteText(note: FindingNote, unit: LengthUnit): string {
  switch (note.code) {
    case 'over-stroke-mark/seen-but-within':
      return note.beyondPlay
        ? 'The over-stroke mark is seen, yet the stroke is well within the limit. Take the pictures again.'
        : `The over-stroke mark is seen. It may show up to ${lengthText(note.playMm, unit)} before the limit.`;
    case 'over-stroke-mark/not-seen-but-over':
      return note.beyondPlay
        ? 'The over-stroke mark is not seen, yet the stroke is well over the limit. Take the pictures again.'
        : `The over-stroke mark is not seen. On older chambers it may show up to ${lengthText(note.playMm, unit)} after the limit.`;
    case 'over-stroke-mark/seen-released':
      return 'The over-stroke mark is seen with the brake released. Was the spring brake released?';
    case 'roadside-count/counts':
      return roadsideText(note, unit);
  }
}

function roadsideText(
  { excessMm, wholeBrakeFromMm, defectiveBrakes }: Extract<FindingNote, { code: 'roadside-count/counts' }>,
  unit: LengthUnit,
): string {
  const excess = lengthText(excessMm, unit);
  const step = lengthText(wholeBrakeFromMm, unit);
  const rule = `the criteria count ${step} or more over as one defective brake, less as a half (second-hand; the current edition decides)`;
  if (defectiveBrakes === null)
    return `At the roadside: about ${excess} over, too near ${step} to tell one defective brake from a half; ${rule}.`;
  return `At the roadside: about ${excess} over counts as ${defectiveBrakes === 1 ? 'one defective brake' : 'half a defective brake'}; ${rule}.`;
}

/** What the finding rests on, rounded to the safe side. */
export function boundText({ is, mm }: DecidingBound, unit: LengthUnit): string {
  return `${is} ${is === 'at most' ? formatLengthUp(mm, unit) : formatLengthDown(mm, unit)}, 95 % sure`;
}

/** Several where it is open which of them holds. */
export const limitText = (values: readonly LimitValue[], unit: LengthUnit) =>
  values.map(({ limitMm }) => lengthText(limitMm, unit)).join(` ${FINDING.or} `);

/** Each limit with the texts that give it. */
export function limitSourceText(
  { limitMm, sources }: LimitValue,
  ruleSet: RuleSet,
  unit: LengthUnit,
): string {
  const cited = ruleSet.sources.filter(({ id }) => sources.includes(id));
  const texts = cited.map(({ citation, edition }) => `${citation}; ${edition}`);
  return `${lengthText(limitMm, unit)}: ${texts.join(' / ')}`;
}
