/** Stroke over time, its applications, and what is written of them. */
import { formatLength, type LengthUnit } from '../../basics/length-text.ts';
import { degFromRad, inchesFromMm } from '../../basics/units.ts';
import type { FollowedKind } from '../../marks/track.ts';
import type { ClipWarning, Phase, Uncertain } from '../../measurement/clip-measurement.ts';
import type { AnnotateFailure } from '../curve/annotate-failure.ts';
import { pictureFailureText } from './failures-pictures.ts';
import { lengthText, uText } from './values.ts';

export const CURVE = {
  name: 'Stroke over time',
  stroke: 'Stroke',
  angle: 'Arm angle',
  time: 'Time in the clip',
  key: 'Boxed: the stroke ± U at 95 %. Hatched along the curve: u of a frame alone, where it is wider than the line. Triangles under the time axis: frames marked by hand.',
  ninety: '90 %',
  square: 'square',
  frame: (frame: number, frames: number) => `frame ${frame + 1} of ${frames}`,
};

const PHASE_NAMES: Readonly<Record<Phase['kind'], string>> = {
  released: 'released',
  applying: 'applying',
  held: 'held',
  releasing: 'releasing',
};

export const phaseText = (kind: Phase['kind']) => PHASE_NAMES[kind];

const FOLLOWED_NAMES: Readonly<Record<FollowedKind, string>> = {
  'chamber-face': 'face',
  'clevis-pin': 'pin',
  'camshaft-end': 'camshaft',
  'tape-graduation': 'tape',
  still: 'still point',
};

export const notSeenText = (kind: FollowedKind) => `${FOLLOWED_NAMES[kind]} not seen`;

/** Why a curve is open; null: the frame gave no measurement though the part was seen. */
export const openText = (unseen: FollowedKind | null) =>
  unseen === null ? 'not measured' : notSeenText(unseen);

/** Standard uncertainty, rounded up; in the unit the stroke is shown in. */
export function uLengthText(uMm: number, unit: LengthUnit): string {
  if (unit === 'mm') return `u ${uText(uMm)}`;
  return `u ${(Math.ceil(inchesFromMm(uMm) * 1000 - 1e-9) / 1000).toFixed(3)} in`;
}

export const uAngleText = (uRad: number) => `u ${(Math.ceil(degFromRad(uRad) * 10 - 1e-9) / 10).toFixed(1)}°`;

export const angleText = (rad: number) => `${degFromRad(rad).toFixed(1)}°`;

export const secondsText = (s: number) => `${s.toFixed(3)} s`;

/** A tick's number: no more places than its step has. */
export const tickSecondsText = (s: number) => String(Number(s.toFixed(2)));

export const strokeAndUText = ({ value, u }: Uncertain, unit: LengthUnit) =>
  `${lengthText(value, unit)}, ${uLengthText(u, unit)}`;

/** A tick's number without its unit, and without places that say nothing. */
export function tickLengthText(mm: number, unit: LengthUnit): string {
  if (unit === 'fraction') return formatLength(mm, unit).replace(/ in$/, '');
  return String(Number((unit === 'mm' ? mm : inchesFromMm(mm)).toFixed(2)));
}

export const APPLICATIONS = {
  heading: 'Applications',
  number: (number: number) => `Application ${number}`,
  stroke: 'Stroke, mean while held',
  ninety: 'To 90 %',
  full: 'To full',
  release: 'Release',
  creep: 'Creep while held',
  notShown: 'not in the clip',
  spread: 'Largest less smallest stroke',
  pictured: (number: number) =>
    `Stroke and finding are of application ${number}: the applied picture is a frame of it.`,
  longer: (number: number) =>
    `Application ${number} is longer. Mark a frame of it, or a released one, and have the clip followed again: the longest counts.`,
};

/** A time with its standard uncertainty, rounded up to the millisecond. */
export const timeAndUText = ({ value, u }: Uncertain) =>
  [secondsText(value), `u ${secondsText(ceiled(u, 1000))}`] as const;

export const creepAndUText = ({ value, u }: Uncertain, unit: LengthUnit) =>
  unit === 'mm'
    ? ([`${value.toFixed(2)} mm/s`, `u ${ceiled(u, 100).toFixed(2)} mm/s`] as const)
    : ([
        `${inchesFromMm(value).toFixed(3)} in/s`,
        `u ${ceiled(inchesFromMm(u), 1000).toFixed(3)} in/s`,
      ] as const);

function ceiled(value: number, steps: number): number {
  return Math.ceil(value * steps - 1e-9) / steps;
}

export function clipWarningText(warning: ClipWarning, unit: LengthUnit): string {
  switch (warning.code) {
    case 'clip/little-sway':
      return `The phone moved only ${lengthText(warning.swayMm, unit)} aside while it filmed: how near the tape is to the camera stays open, and U is wide for that. Film again and move the phone slowly a hand’s width to and fro, brake released and brake applied.`;
    case 'clip/picture-warps':
      return `The picture warps: what stands still moves ${warning.stillScatter.toFixed(1)} times as much as it should. The phone steadies its picture, or it shook too fast. Switch the steadying off, rest the phone on something, and film again.`;
    case 'clip/clock-doubtful':
      return `The clip counts ${Math.round(warning.framesPerSecond)} frames a second: slow motion, perhaps. Its clock may run slow, then the times and the creep are not those at the brake. The stroke does not depend on it.`;
    case 'clip/applications-differ':
      return `The applications differ by ${lengthText(warning.spreadMm, unit)}, more than their uncertainty explains. Was the pressure the same each time? The largest counts.`;
  }
}

export const SAVE_TABLE = 'Save the curve as a table (CSV)';

export const ANNOTATED = {
  save: 'Save the clip with its lines',
  hint: 'A new clip for people to look at, without sound. The original stays the evidence.',
  writing: (written: number, frames: number) => `Writing frame ${written} of ${frames}`,
  cancel: 'Stop writing',
  stroke: (stroke: string) => `Stroke ${stroke}`,
  notSeen: 'Pin not seen',
  notFollowed: 'Not followed here',
  time: (time: string, index: number) => `${time}, frame ${index + 1}`,
  note: (fileName: string, sha256: string) =>
    `Lines drawn by Strokewitness over ${fileName}, SHA-256 ${sha256.slice(0, 12)}… The original has no lines.`,
  fileName: (original: string, ending: string) => `${original.replace(/\.[^.]*$/, '')}-with-lines.${ending}`,
};

export function annotateFailureText(failure: AnnotateFailure): string {
  switch (failure.code) {
    case 'annotated-clip/cannot-encode':
      return `This browser cannot write a clip of ${failure.widthPx} × ${failure.heightPx} pixels. Try another browser, or a computer.`;
    case 'annotated-clip/encoder-stopped':
      return `This browser stopped writing after ${failure.written} of ${failure.frames} frames. Close other programs and try again, or use a computer.`;
    case 'annotated-clip/frames-missing':
      return `Only ${failure.written} of ${failure.frames} frames of the clip could be shown, so no clip was written.`;
    default:
      return pictureFailureText(failure);
  }
}
