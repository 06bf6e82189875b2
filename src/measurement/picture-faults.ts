/**
 * What of a picture makes the stroke less sure than it could be, worst for the stroke first: advice before time is spent on marks.
 *
 * Model    each property against a limit of its own; the limits come from simulated wheel ends and degraded pictures, docs/assists.md
 *          ('What a picture is like'). Nothing here forbids anything: the stated uncertainty of the stroke counts all of it that it can know
 * Assumes  what is not known (null) is not judged
 */
import { MM_PER_INCH, radFromDeg } from '../basics/units.ts';
import type { PictureSight } from './measurement.ts';

export type PictureSeen = {
  /** Standard deviation of the blur the ways it is least and most, px; alongRad: which way it is most. */
  readonly blur: {
    readonly leastPx: number;
    readonly mostPx: number;
    readonly alongRad: number | null;
  } | null;
  readonly light: { readonly burntShare: number; readonly darkShare: number } | null;
  /** Of the tape between its marks, the share lost in glare. */
  readonly glareShare: number | null;
  /** Along the rod; known: from a measured geometry or from graduations, else from how long rods usually are. */
  readonly scale: { readonly pxPerMm: number; readonly known: boolean } | null;
  readonly sight: Pick<PictureSight, 'offSquareRad' | 'reference'> | null;
};

export type PictureFault =
  | {
      readonly code: 'picture/far';
      readonly pxPerIn: number;
      readonly enoughPxPerIn: number;
      readonly known: boolean;
    }
  | { readonly code: 'picture/smeared'; readonly mostPx: number; readonly alongRad: number }
  | { readonly code: 'picture/blurred'; readonly blurPx: number }
  | { readonly code: 'picture/dark'; readonly share: number }
  | { readonly code: 'picture/burnt'; readonly share: number }
  | { readonly code: 'picture/glare'; readonly share: number }
  | { readonly code: 'picture/off-square'; readonly offSquareRad: number }
  | { readonly code: 'picture/reference-apart'; readonly apartMm: number; readonly share: number };

/** Simulated, tape and care: the median U95 is 1/32 in from here up with found marks, 1/16 in with marks of 1 px. */
export const ENOUGH_PX_PER_IN = 40;
/** From how long rods usually are, the scale is known to a fifth: a picture near the limit is not called far for that. */
const UNKNOWN_SCALE = 1.2;
/** Of degraded renders the graduations are found up to here. */
export const MOST_BLUR_PX = 2.5;
/** So much more one way than the other is a hand that moved. */
const SMEARED = 1.5;
export const MOST_DARK = 0.6;
export const MOST_BURNT = 0.35;
/** Graduations are found where seven of ten are seen. */
export const MOST_GLARE = 0.3;
/** The studies reach so far. */
const MOST_OFF_SQUARE_RAD = radFromDeg(35);
const MOST_APART_MM = 25;
const MOST_REFERENCE_SHARE = 0.5;

export function pictureFaults({
  blur,
  light,
  glareShare,
  scale,
  sight,
}: PictureSeen): readonly PictureFault[] {
  const faults: PictureFault[] = [];
  const pxPerIn = scale && scale.pxPerMm * MM_PER_INCH;
  if (scale && pxPerIn !== null && pxPerIn * (scale.known ? 1 : UNKNOWN_SCALE) < ENOUGH_PX_PER_IN)
    faults.push({ code: 'picture/far', pxPerIn, enoughPxPerIn: ENOUGH_PX_PER_IN, known: scale.known });
  if (blur && blur.mostPx > MOST_BLUR_PX)
    faults.push(
      blur.alongRad !== null && blur.mostPx > SMEARED * blur.leastPx
        ? { code: 'picture/smeared', mostPx: blur.mostPx, alongRad: blur.alongRad }
        : { code: 'picture/blurred', blurPx: blur.mostPx },
    );
  if (light && light.darkShare > MOST_DARK) faults.push({ code: 'picture/dark', share: light.darkShare });
  if (light && light.burntShare > MOST_BURNT) faults.push({ code: 'picture/burnt', share: light.burntShare });
  if (glareShare !== null && glareShare > MOST_GLARE)
    faults.push({ code: 'picture/glare', share: glareShare });
  if (sight && sight.offSquareRad > MOST_OFF_SQUARE_RAD)
    faults.push({ code: 'picture/off-square', offSquareRad: sight.offSquareRad });
  const reference = sight?.reference;
  if (reference && reference.apartMm > MOST_APART_MM && reference.share > MOST_REFERENCE_SHARE)
    faults.push({ code: 'picture/reference-apart', ...reference });
  return faults;
}
