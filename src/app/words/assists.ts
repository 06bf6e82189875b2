/** What assists found near marks of the hand, and why they found nothing. */
import { formatLength, type LengthUnit } from '../../basics/length-text.ts';
import type { Mark, MarkKind } from '../../marks/mark.ts';
import type { AssistFailure, AssistQuestion, FoundMark } from '../../vision/assist-sight.ts';
import { isWholeInch } from '../../vision/name-strokes.ts';
import type { GuessedEnd } from '../assists/assist-asked.ts';
import type { AssistSearchFailure, Doubt } from '../assists/assists-store.ts';
import { pictureFailureText } from './failures-pictures.ts';
import { MARK_NAMES } from './marks.ts';
import { lengthText } from './values.ts';

type Sought = AssistQuestion['of'];

const SOUGHT: Readonly<Record<Sought, string>> = {
  tape: 'Graduations of the tape',
  'tape-strokes': 'Strokes of the tape',
  'tape-edge': 'Edge of the tape',
  'clevis-pin': 'End of the clevis pin',
  'camshaft-end': 'End of the camshaft',
  'clamp-band': 'Rim of the clamp band',
  'rod-line': 'Middle line of the rod',
  'chamber-face': 'Edges across the rod',
  'arm-turn': 'End of the camshaft',
};

export const ASSISTS = {
  heading: 'Found in this picture',
  underWay: (of: Sought) => `${SOUGHT[of]}: looking …`,
  take: (count: number) => (count === 1 ? 'Take what was found' : 'Take all that was found'),
  takeAndGoOn: (next: string) => `Take all. ${next}`,
  offered: (name: string) => `${name}, found`,
  seen: 'Tape seen, a dot on each inch; its numerals cannot be read here. Mark one of them with its reading: the others follow.',
  doubted: ({ typedMm, readMm }: Doubt, unit: LengthUnit) =>
    `You typed ${lengthText(typedMm, unit)}, but by the tape’s numerals that stroke reads ${lengthText(readMm, unit)}. Look at the tape and say what it reads: all its graduations are taken so.`,
  readsSo: (readingMm: number, unit: LengthUnit) => `It reads ${lengthText(readingMm, unit)}`,
  onlyTyped: 'The strokes found do not fit your reading. If it holds, mark a second graduation.',
  edges: (count: number) =>
    `${count === 1 ? 'An edge across the rod is' : `${count} edges across the rod are`} seen near your chamber face.`,
  lookAtEdges: (count: number) => (count === 1 ? 'Look at the edge' : 'Look at the edges'),
  edgesClose: (count: number) =>
    `Is ${count === 1 ? 'the broken line' : 'one of the broken lines'} the edge you marked? It must be the chamber’s own, the same one in both pictures. Paint and rust go along with the rod.`,
  takeEdge: (number: number, count: number) => (count === 1 ? 'Take this edge' : `Take edge ${number}`),
  leaveFace: 'Leave my mark',
  guessing: 'The points of the released picture: looking …',
  notGuessed: (kinds: readonly MarkKind[]) =>
    `${kinds.map((kind) => MARK_NAMES[kind]).join(', ')}: not found again by itself. Mark by hand.`,
};

type Found = { readonly marks: readonly FoundMark[]; readonly isRead?: boolean };

export function foundText(
  question: AssistQuestion | GuessedEnd,
  { marks: found, isRead = false }: Found,
  instead: readonly Mark[],
  unit: LengthUnit,
): string {
  const { of } = question;
  if (of === 'tape-strokes' && isRead) return readText(found, instead, unit);
  if (of === 'tape-strokes')
    return `${graduationsText(found, instead, unit)} See that the far one reads the same on the tape.`;
  if (of === 'tape') return graduationsText(found, instead, unit);
  if (of === 'clamp-band') {
    const place = instead.length > 0 ? `, in place of your ${instead.length}` : '';
    return `${SOUGHT[of]} found${place}. Is it on the rod’s side?`;
  }
  if (of === 'tape-edge')
    return `${SOUGHT[of]} found, in place of your ${instead.length}. See that it lies on the edge that you marked.`;
  if (of === 'arm-turn')
    return `${SOUGHT[of]} found by how the arm turns. Take it and follow the clip anew: that gives the arm’s angle, and mostly a smaller U.`;
  if (of === 'rod-line') return `${SOUGHT[of]} found by its edges. Check it.`;
  if ('guessed' in question) return `${SOUGHT[of]} found again. Check its place.`;
  const [place, mark] = [found[0], instead[0]];
  const offPx = place && mark ? Math.hypot(place.placePx[0] - mark.xPx, place.placePx[1] - mark.yPx) : 0;
  if ('same' in question && question.same)
    return `${SOUGHT[of]}: found as in the released picture, ${offPx.toFixed(1)} px from your mark.`;
  return `${SOUGHT[of]} found, ${offPx.toFixed(1)} px from your mark.`;
}

/** The whole inches have numerals, which the person can hold against it. */
function readText(found: readonly FoundMark[], instead: readonly Mark[], unit: LengthUnit): string {
  const place = instead.length > 0 ? `, in place of your ${instead.length}` : '';
  return `Tape read by its numerals, ${spanText(found.filter(isWholeInch), unit)}: ${found.length} graduations${place}. Right? See that the named strokes read so on the tape.`;
}

function graduationsText(found: readonly FoundMark[], instead: readonly Mark[], unit: LengthUnit): string {
  return `${found.length} graduations found, ${spanText(found, unit)}, in place of your ${instead.length}.`;
}

function spanText(found: readonly FoundMark[], unit: LengthUnit): string {
  const readings = found.map(({ readingMm }) => readingMm ?? 0);
  return `${formatLength(Math.min(...readings), unit)} to ${formatLength(Math.max(...readings), unit)}`;
}

export function assistFailureText(of: Sought, failure: AssistSearchFailure, unit: LengthUnit): string {
  return isAssistFailure(failure) ? failureText(of, failure, unit) : pictureFailureText(failure);
}

const isAssistFailure = (failure: AssistSearchFailure): failure is AssistFailure =>
  /^(vision|tape|disc|same|band|rod|face|arm)\//.test(failure.code);

function failureText(of: Sought, failure: AssistFailure, unit: LengthUnit): string {
  switch (failure.code) {
    case 'tape/not-seen':
      return 'Strokes of the tape: not found by themselves. Mark two: those between follow.';
    case 'tape/odd-readings':
      return 'Graduations between yours are found for quarters of an inch and half centimetres. Mark further ones by hand.';
    case 'tape/named-near':
      return `Mark graduations at least ${lengthText(failure.leastMm, unit)} apart: then those between are found.`;
    case 'tape/strokes-small':
      return `The tape’s strokes are too close together to be found, ${failure.spacingPx.toFixed(0)} pixels. Mark further ones by hand, or take the picture from nearer.`;
    case 'tape/no-edge':
      if (of === 'tape-edge')
        return `${SOUGHT[of]}: no straight edge is seen near your mark. Points along it can be marked by hand.`;
      return 'Graduations between yours were not found: no straight edge of the blade is seen along them. Look whether both sit on the tape, or mark further ones by hand.';
    case 'tape/no-lattice':
      return 'Graduations between yours were not found: no strokes fit both readings. Look whether both read what you typed, or mark further ones by hand.';
    case 'tape/two-ways':
      return 'Graduations between yours were not found surely: the strokes fit in more than one way. Set your marks closer on their strokes, or mark further ones by hand.';
    case 'tape/few-strokes':
      return `Graduations between yours were not found: only ${failure.found} of ${failure.sought} strokes are seen clearly. Glare, dirt or blur may hide them; mark further ones by hand.`;
    case 'disc/not-round':
      return `${SOUGHT[of]}: no clear round edge near your mark. Your mark stays as it is.`;
    case 'disc/no-centre-mark':
      return `${SOUGHT[of]}: no centre mark is seen clearly in it, and its outline alone does not tell its centre. Your mark stays as it is.`;
    case 'disc/loose-centre-mark':
      return `${SOUGHT[of]}: the rim of its centre mark is not seen sharply enough to tell its centre. Your mark stays as it is.`;
    case 'disc/two-ways':
      return `${SOUGHT[of]}: several centre marks, ${failure.apartPx.toFixed(1)} pixels apart. Your mark stays as it is.`;
    case 'disc/no-surer':
      return `${SOUGHT[of]}: not seen more surely than you marked it. Your mark stays as it is.`;
    case 'disc/out-of-picture':
      return `${SOUGHT[of]}: too near to the picture’s border. Your mark stays as it is.`;
    case 'same/unlike':
      return `${SOUGHT[of]}: does not look as in the released picture. Your mark stays as it is.`;
    case 'same/two-ways':
      return `${SOUGHT[of]}: not found surely again as in the released picture. Your mark stays as it is.`;
    case 'band/none':
      return `${SOUGHT[of]}: no edge is seen clearly round the chamber. Points of the rim can be marked by hand.`;
    case 'band/one-rim':
      return `${SOUGHT[of]}: not told apart from the chamber’s other edges. Points of the rim can be marked by hand.`;
    case 'band/two-ways':
      return `${SOUGHT[of]}: two edges could be it. Points of the rim can be marked by hand.`;
    case 'band/elsewhere':
      return `${SOUGHT[of]}: what looks like it is ${failure.offPx.toFixed(0)} pixels from your mark. Set your mark on the band, or mark points of the rim by hand.`;
    case 'band/loose':
      return `${SOUGHT[of]}: too little of it is seen to tell its shape. Points of the rim can be marked by hand.`;
    case 'rod/loose-scale':
      return `${SOUGHT[of]}: the tape’s graduations do not tell how wide the rod is. Two points of it can be marked by hand.`;
    case 'rod/no-edges':
    case 'rod/one-edge':
      return `${SOUGHT[of]}: its two edges are not both seen clearly. Two points of it can be marked by hand.`;
    case 'rod/two-ways':
      return `${SOUGHT[of]}: more lines than its two edges could be it. Two points of it can be marked by hand.`;
    case 'face/loose-scale':
    case 'face/no-edge':
    case 'face/no-surer':
      return `${SOUGHT[of]}: none is seen clearly near your chamber face. Your mark stays as it is.`;
    case 'arm/unseen':
    case 'arm/two-ways':
    case 'arm/no-turn':
      return `${SOUGHT[of]}: the clip does not show surely where the arm turns. It can be marked by hand; the clip is then followed anew.`;
    case 'vision/stalled':
      return `${SOUGHT[of]}: the search did not end within ${failure.limitS} seconds. Your marks stay as they are.`;
    case 'vision/forbidden':
    case 'vision/not-loaded':
    case 'vision/not-started':
    case 'vision/parts-missing':
    case 'vision/opencv-failed':
      return `${SOUGHT[of]}: the search did not start. Your marks stay as they are.`;
  }
}
