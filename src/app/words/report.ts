/** The words of the report: labels and the sentences that only it says. */
import { formatLength, formatLengthWithU, type LengthUnit } from '../../basics/length-text.ts';
import { inchesFromMm } from '../../basics/units.ts';
import type { Capture } from '../../captures/capture.ts';
import type { Sight } from '../../finding/over-stroke-mark.ts';
import type { BrakeState } from '../../marks/view.ts';
import type { WithU } from '../../measurement/measured.ts';
import type { HandFailure } from '../../record/hand-results.ts';
import type { HistoryAct } from '../../record/history-entry.ts';
import type { Purpose } from '../../record/measurement-input.ts';
import type { WheelEndState } from '../../record/purpose-results.ts';
import type { AdjusterCheck, HandReading, OtherReading } from '../../record/wheel-end.ts';
import { diameterText } from './values.ts';
import { OTHER_NAMES, PURPOSE_NAMES } from './wheel-end.ts';

export const REPORT = {
  title: 'Brake stroke report',
  notSaid: 'not said',
  none: 'none',
  notHere: 'The picture is not on this device: its marks alone.',
  page: { before: 'Page ', between: ' of ' },
  head: (unit: string, id: string) => `Brake stroke report, ${unit}, record ${id}`,
  foot: 'An aid to the eye, no certified inspection. Measured with Strokewitness.',
} as const;

export const REPORT_SCREEN = {
  heading: 'Report',
  back: 'Back to the inspection',
  print: 'Print, or keep as PDF',
  save: 'Save as a file',
  paper: 'Paper',
  papers: { a4: 'A4', letter: 'Letter' },
  opening: 'Opening the report …',
  working: (done: number, of: number) => `Measuring ${done} of ${of} …`,
  pictures: 'Cutting out the pictures …',
  title: (unit: string) => `Brake stroke report, ${unit}`,
} as const;

export const FRONT = {
  unit: 'Unit',
  kind: 'Kind',
  axles: 'Axles',
  serialNumber: 'Serial number',
  owner: 'Owner',
  inspector: 'Inspected by',
  inspected: 'Inspection begun',
  qualification: 'Qualification as stated',
  ruleSet: 'Limits by',
  result: 'Wheel ends, as things are now',
  without: (count: number) => `${count} without a stroke`,
} as const;

export const SUMMARY = {
  planLabel: 'The vehicle from above with the state of each wheel end',
  key: 'Blank tyre: within limit. Filled and crossed: over limit. Hatched: not decided. Dashed: no stroke. Value: stroke ± U at 95 %.',
  ends: 'Wheel ends',
  endColumns: ['Wheel end', 'Chamber', 'Limit', 'Stroke as found', 'Finding', 'After repair', 'Finding'],
  afterState: (now: string, before: string) => `${now} after repair; was ${before}`,
  noStroke: 'no stroke',
  byHand: (text: string) => `${text}, by hand`,
  allMet: 'All conditions were answered and met.',
  roadside: 'Roadside count',
  between: (axle: number, difference: string) => `Axle ${axle}: stroke left less right ${difference}.`,
  axleNote: (axle: number, note: string) => `Axle ${axle}: ${note}`,
} as const;

export const STATE_TEXTS: Readonly<Record<WheelEndState, string>> = {
  'not-started': 'No stroke',
  begun: 'No stroke yet',
  'within limit': 'Within limit',
  'over limit': 'Over limit',
  'not decided': 'Not decided',
};

/** Within a sentence. */
export const purposeText = (purpose: Purpose) => PURPOSE_NAMES[purpose].toLowerCase();

export const END = {
  stroke: 'Stroke',
  limit: 'Adjustment limit',
  chamber: 'Chamber',
  asFound: 'As found',
  afterRepair: 'After repair',
  noRepair: 'no repair',
  notMeasured: 'not measured',
  freeByHand: (text: string) => `${text}, with the free stroke by hand`,
  both: (asFound: string, after: string) => `${asFound} as found; ${after} after repair`,
  picturesOf: (purpose: Purpose) => `Pictures, ${purposeText(purpose)}`,
  chartOf: (purpose: Purpose) => `Clip, ${purposeText(purpose)}`,
  numbersOf: (purpose: Purpose) => `Numbers, ${purposeText(purpose)}`,
  earlier: (count: number, purpose: Purpose) =>
    `${count} more ${count === 1 ? 'measurement' : 'measurements'} ${purposeText(purpose)} ${count === 1 ? 'is' : 'are'} in the record; the last one counts.`,
  freeStroke: 'Free stroke',
  straight: 'Straight line, face to pin',
  angleReleased: 'Arm angle, released',
  angleApplied: 'Arm angle, applied',
  reference: 'Of known size',
  arm: 'Arm length',
  camera: 'Camera',
  cameraStill: 'stood still between the pictures',
  cameraHeld: 'held by hand, a place for each picture',
  cameraCalibrated: (name: string) => `calibrated: ${name}`,
  cameraUsual: 'usual lens assumed',
  cameraFocal: (mm: number) => `focal length from the picture (${mm.toFixed(1)} mm on 36 × 24 mm)`,
  marks: 'Marks',
  marksCount: (all: number, byHand: number) =>
    byHand === all ? `${all}, all by hand` : `${all}, of these ${all - byHand} set by the program`,
  chiSquare: 'Chi-square; degrees of freedom; chance',
  worst: 'Largest misfit',
  budgetColumns: ['Where U comes from', 'Share', 'u'],
  handReadings: 'By tape, by hand',
  handColumns: ['', 'Reading', 'Stroke ± U', 'Finding', 'Pictures less hand'],
  otherReadings: 'Other readings',
  otherColumns: ['What', 'When', 'Value', 'Limit', 'Whose limit'],
  identification: 'Chamber as identified',
  markedLimit: 'Limit marked by the maker',
  ratedStroke: 'Rated stroke marked',
  chamberPhoto: 'What proves the chamber',
  couldNotTell: (what: string) => `Could not be told: ${what}. The lower limit is used.`,
  overStroke: 'Over-stroke mark',
  bandColour: (purpose: string) => `Colour of the band as named, ${purpose}`,
  overStrokeCrop: (state: string) => `Judged from this part of the ${state} picture`,
  adjuster: 'Slack adjuster',
  adjusterKind: 'Kind',
  adjusterCheck: 'Adjuster check',
  applications: 'Applications made',
  turned: (applications: number) => `Wrench turned in ${applications} applications, clockwise as seen`,
  byPictures: 'By the pictures of the wrench',
  turn: (applications: number) =>
    `After ${applications} ${applications === 1 ? 'application' : 'applications'}`,
  cause: 'Cause',
  causeChecks: 'Checked',
  causeColumns: ['Question', 'Answer'],
  repair: 'Repair',
  repairAt: 'When',
  repairBy: 'By',
  parts: 'Parts',
  newAdjuster: 'Adjuster put on',
  asItWas: 'left as it was',
  adjustedByHand: 'Turned in by hand',
  setFreeStroke: 'Free stroke set to',
  recheck: 'Recheck',
  recheckColumns: ['', 'As found', 'After repair', 'Change'],
  notes: 'Notes',
  photos: 'Photos',
  photo: (number: number) => `Photo ${number}`,
  source: (fileName: string, frame: string) => (frame ? `${fileName}, ${frame}` : fileName),
  missing: (fileName: string, sha256: string) =>
    `The picture is not on this device: ${fileName}, SHA-256 ${sha256.slice(0, 12)}…`,
} as const;

export const CLOSING = {
  cautions: 'Cautions',
  limits: 'What is not proven',
  notProven: [
    'The times are this device’s and the camera’s own clocks; nobody attested them, unless a time stamp was put into the package: its recheck tells.',
    'Names and qualifications are as stated; the tool checks neither and makes nobody qualified.',
    'That the pedal was fully down, the pressure as noted and the spring brakes released is the word of who was there.',
    'That the pictures show this vehicle and this wheel end is the word of who took them. The hashes prove only that a file is the one that was measured.',
    'What U covers is stated under each number. A part of the brake that moves otherwise than the drawing of the brake assumes is found only where the marks then disagree.',
  ],
  how: 'How to read it',
  rules: 'Rules named here',
  reading: [
    '± is the expanded uncertainty U at 95 % (k = 1.96). Lengths are rounded to the last place shown, U always up.',
    'Within limit: stroke and its one-sided 95 % guard lie at or below the limit. Over limit: both lie above. Else it is not decided: measure by hand. The bar’s hatching is that guard, its thin line U.',
    'The current edition of the rule decides, and who applies it.',
  ],
  review: 'Review',
  notReviewed: 'No second person has noted a review.',
  signatures: ['Inspected by: signature, date', 'Reviewed by: signature, date'],
  identity: 'Record',
  recordId: 'Record',
  format: 'Format',
  engine: 'Engine',
  signedBy: 'Key that signs the package',
  engineVersion: (version: string) => `Strokewitness ${version}`,
  formatVersion: (version: number) => `version ${version}`,
  made: 'Report made',
  byDeviceClock: (time: string) => `${time}, by this device’s clock`,
  captures: 'Pictures and clips',
  captureColumns: ['File', 'Kind and size', 'Taken, by its own clock', 'SHA-256'],
  photo: (width: number, height: number) => `photo, ${width} × ${height}`,
  clip: (width: number, height: number, { durationS, framesBy }: NonNullable<Capture['clip']>) =>
    `clip, ${width} × ${height}, ${durationS.toFixed(1)} s; ${framesBy ? `frames by the ${framesBy}` : 'by what its frames were taken is not known'}`,
  history: 'History',
  historyColumns: ['When', 'Who', 'What', 'Where', 'Seal'],
  historyLeft: (count: number) => `${count} lines before these are in the record.`,
  reviewed: (by: string, time: string) => `${by || 'Somebody'}, ${time}`,
  noTime: 'not in the file',
  fileWritten: (time: string) => `file written ${time}`,
  takenIn: (time: string) => `here ${time}`,
} as const;

export const HISTORY_ACT_NAMES: Readonly<Record<HistoryAct, string>> = {
  started: 'started',
  changed: 'changed',
  undone: 'taken back',
  redone: 'brought back',
  packaged: 'sealed for handing over',
};

export const ADJUSTER_ANSWERS: Readonly<Record<NonNullable<AdjusterCheck['answer']>, string>> = {
  'takes-up': 'takes up',
  'does-not-take-up': 'does not take up',
  'cannot-tell': 'cannot tell',
};

export const SIGHT_NAMES: Readonly<Record<Sight, string>> = {
  seen: 'seen',
  'not-seen': 'not seen',
  'cannot-tell': 'cannot tell',
};

export const QUANTITIES: Readonly<Record<HandReading['quantity'], string>> = {
  stroke: 'Stroke',
  'free-stroke': 'Free stroke',
};

export const readingName = ({ what, name }: OtherReading) => name.trim() || OTHER_NAMES[what];

/** Both readings of the tape, or the difference alone: as fine as a tape is divided. */
export function handReadingText(
  { releasedMm, appliedMm, graduationMm }: HandReading,
  unit: LengthUnit,
): string {
  const read = (mm: number) => diameterText(inchesFromMm(mm), unit);
  const step = `read to ${graduationText(graduationMm)}`;
  return releasedMm === null
    ? `difference ${read(appliedMm)}, ${step}`
    : `${read(releasedMm)} to ${read(appliedMm)}, ${step}`;
}

/** A tape is divided in halves of a millimetre or in parts of an inch, whatever the report is in. */
function graduationText(mm: number): string {
  const halves = mm * 2;
  return Math.abs(halves - Math.round(halves)) < 1e-6
    ? `${mm} mm`
    : `1/${Math.round(1 / inchesFromMm(mm))} in`;
}

export function handFailureText({ releasedMm, appliedMm }: HandFailure, unit: LengthUnit): string {
  return `${formatLength(appliedMm, unit)} applied is less than ${formatLength(releasedMm, unit)} released: one was misread`;
}

export const limitOfReadingText = ({ limitMm, limitIs }: OtherReading, unit: LengthUnit) =>
  `${limitIs === 'greatest' ? 'at most' : 'at least'} ${dialText(limitMm ?? 0, unit)}`;

/** A dial reads finer than a tape. */
export function dialText(mm: number, unit: LengthUnit): string {
  return unit === 'mm' ? `${mm.toFixed(2)} mm` : `${inchesFromMm(mm).toFixed(3)} in`;
}

/** A difference with its U; the sign is said both ways. */
export const differenceText = ({ value, U95 }: WithU, unit: LengthUnit) =>
  `${value > 0 ? '+' : ''}${formatLengthWithU(value, U95, unit)}`;

/** The same on every machine: it stands on paper, where nobody can ask which clock. */
export const timeText = (iso: string) => `${iso.slice(0, 10)} ${iso.slice(11, 16)} UTC`;

export const pictureCaption = (state: BrakeState) =>
  ({ released: 'Released', applied: 'Applied', pulled: 'Pulled to lining contact' })[state];
