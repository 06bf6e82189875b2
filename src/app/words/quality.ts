/** What would make a picture better, in one sentence each: what is the matter, what to do. */
import type { LengthUnit } from '../../basics/length-text.ts';
import { degFromRad } from '../../basics/units.ts';
import type { PictureFault } from '../../measurement/picture-faults.ts';
import { lengthText } from './values.ts';

export const QUALITY = { heading: 'About the pictures' };

const CM_PER_IN = 2.54;

export function pictureFaultText(fault: PictureFault, unit: LengthUnit): string {
  switch (fault.code) {
    case 'picture/far':
      return `Move closer: ${fault.known ? '' : 'about '}${perLength(fault.pxPerIn, unit)} along the rod; ${perLength(fault.enoughPxPerIn, unit)} or more give ${unit === 'mm' ? '0.8 mm' : '1/32 in'} with found marks.`;
    case 'picture/smeared':
      return `Soft ${wayText(fault.alongRad)}, edges ${fault.mostPx.toFixed(1)} px wide, as a moving phone makes them: hold it against something, or use more light.`;
    case 'picture/blurred':
      return `Blurred, edges ${fault.blurPx.toFixed(1)} px wide: tap on the brake to focus, wipe the lens, or step back a little and zoom less.`;
    case 'picture/dark':
      return `Dark: in ${percent(fault.share)} of it nothing can be told apart. Light the brake from the side, or tap on it to expose for it.`;
    case 'picture/burnt':
      return `Burnt out over ${percent(fault.share)} of it: tap on the brake to expose for it, or shade it.`;
    case 'picture/glare':
      return `Glare hides ${percent(fault.share)} of the tape: tilt the blade a little, or shade it.`;
    case 'picture/off-square':
      return `Taken ${degFromRad(fault.offSquareRad).toFixed(0)}° off square: stand so that you look straight at the rod’s side; up to 35° has been studied.`;
    case 'picture/reference-apart':
      return `The reference lies ${lengthText(fault.apartMm, unit)} before or behind the pin’s end, and that is ${percent(fault.share)} of the doubt: hold it against the end of the pin.`;
  }
}

function perLength(pxPerIn: number, unit: LengthUnit): string {
  return unit === 'mm'
    ? `${Math.round(pxPerIn / CM_PER_IN)} px per cm`
    : `${Math.round(pxPerIn)} px per inch`;
}

const percent = (share: number) => `${Math.round(100 * share)} %`;

function wayText(rad: number): string {
  const deg = degFromRad(rad);
  if (deg < 30 || deg > 150) return 'sideways';
  return deg > 60 && deg < 120 ? 'up and down' : 'aslant';
}
