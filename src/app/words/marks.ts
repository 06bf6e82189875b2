import type { LengthUnit } from '../../basics/length-text.ts';
import type { MarkKind } from '../../marks/mark.ts';
import type { BrakeState } from '../../marks/view.ts';
import type { Asking } from '../work/asking.ts';
import { lengthText } from './values.ts';

export const MARK_NAMES: Readonly<Record<MarkKind, string>> = {
  'chamber-face': 'Chamber face',
  'clevis-pin': 'Clevis pin',
  'camshaft-end': 'Camshaft end',
  'rod-line': 'Rod line',
  'tape-graduation': 'Tape graduation',
  'tape-edge': 'Edge of the tape',
  'clamp-band': 'Clamp band rim',
  'distance-end': 'End of the distance',
  'tie-point': 'Tie point',
  'target-corner': 'Corner of the printed target',
};

export const MARK_PHRASES: Readonly<Record<MarkKind, string>> = {
  'chamber-face': 'where the middle of the rod leaves the chamber face',
  'clevis-pin': 'the centre of the clevis pin',
  'camshaft-end': 'the centre of the camshaft’s end',
  'rod-line': 'a point on the middle line of the rod',
  'tape-graduation': 'the tape graduation',
  'tape-edge': 'a point on the tape’s straight edge, always the same one,',
  'clamp-band': 'a point on the clamp band’s rim, on the rod side',
  'distance-end': 'one end of the known distance',
  'tie-point': 'the same fixed point as on the other picture',
  'target-corner': 'a corner of the printed target',
};

export function askingSentence(asking: Asking, state: BrakeState, unit: LengthUnit): string {
  if (asking.kind === 'tie-point')
    return `Tie point ${asking.tie}: mark the same fixed thing on both pictures, as a bolt head of bracket, chamber or axle. Not the rod or the arm.`;
  if (asking.kind !== 'tape-graduation') return `Mark ${MARK_PHRASES[asking.kind]} on the ${state} picture.`;
  return asking.readingMm === null
    ? `Type a reading of the tape, then mark it on the ${state} picture.`
    : `Mark ${lengthText(asking.readingMm, unit)} on the tape of the ${state} picture.`;
}

/** What is asked for waits to be taken. */
export function foundAskingSentence(asking: Asking, unit: LengthUnit): string {
  return `Check what was found, then take it. ${orByHand(asking, unit)}`;
}

function orByHand(asking: Asking, unit: LengthUnit): string {
  const readingMm = asking.kind === 'tape-graduation' ? asking.readingMm : null;
  const asked =
    readingMm === null ? `the ${MARK_NAMES[asking.kind].toLowerCase()}` : lengthText(readingMm, unit);
  return `Or mark ${asked} by hand.`;
}

/** The tape is being looked for: who waits need not mark it. */
export const lookingSentence = (asking: Asking, unit: LengthUnit): string =>
  `The tape is being looked for. ${orByHand(asking, unit)}`;

/** The name of what a tap places now; null while a reading is still to be typed. */
export function askingText(asking: Asking, unit: LengthUnit): string | null {
  if (asking.kind === 'tie-point') return `${MARK_NAMES[asking.kind]} ${asking.tie}`;
  if (asking.kind !== 'tape-graduation') return MARK_NAMES[asking.kind];
  return asking.readingMm === null ? null : lengthText(asking.readingMm, unit);
}

const OPTIONAL_WHY: Readonly<Partial<Record<MarkKind, string>>> = {
  'camshaft-end': 'gives the arm angle',
  'rod-line': 'gives the rod’s own direction',
  'tape-edge': 'shows what a wide lens bends: touch it once, the rest is found',
  'tie-point': 'ties the two pictures together',
};

export const MARKS = {
  allThere: 'All marks are there. Move any that sits off.',
  noPicture: (state: BrakeState) => `There is no ${state} picture yet.`,
  toPictures: 'Go to the pictures',
  reading: 'Reading',
  readingOf: 'Reading of the selected graduation',
  passOver: 'Leave it out',
  onceMore: 'Set it once more: the settings count together',
  remove: 'Remove this mark',
  list: 'Marks of this picture',
  count: (have: number, need: number) => (have > need ? `${have}` : `${have} of ${need}`),
  optional: 'optional',
  optionalWhy: OPTIONAL_WHY,
  selected: (name: string, isOneOfMany: boolean) =>
    `${name} is selected. Drag it, or use the arrow keys; Delete removes it.${isOneOfMany ? ' Page keys go to the next.' : ''}`,
};

export const markName = (kind: MarkKind, number: number | null) =>
  number === null ? MARK_NAMES[kind] : `${MARK_NAMES[kind]} ${number}`;
