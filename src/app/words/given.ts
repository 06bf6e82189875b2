/** What the person has given, in the few words of a title block's cell. */
import type { LengthUnit } from '../../basics/length-text.ts';
import type { Chamber, StrokeClass } from '../../finding/chamber.ts';
import type { References } from '../../references/reference.ts';
import { BAND_UNKNOWN } from '../work/usual-references.ts';
import { TITLE_BLOCK } from './en.ts';
import { FAMILY_NAMES } from './limits.ts';
import { lengthText } from './values.ts';

const STROKE_CLASS_NAMES: Readonly<Record<StrokeClass, string>> = {
  standard: 'standard stroke',
  long: 'long stroke',
};

export function chamberText({ family, type, strokeClass }: Chamber): string {
  if (family === 'unlisted') return FAMILY_NAMES.unlisted;
  const kind = family === 'clamp' ? '' : `${FAMILY_NAMES[family]}, `;
  return `${kind}type ${type}, ${STROKE_CLASS_NAMES[strokeClass]}`;
}

/** A given length stands with its standard uncertainty: it is no result yet. */
const givenText = (mm: number, uMm: number, unit: LengthUnit) =>
  `${lengthText(mm, unit)} (u ${uMm.toFixed(1)} mm)`;

export function armText({ armLength }: References, unit: LengthUnit): string {
  return armLength ? givenText(armLength.lengthMm, armLength.uLengthMm, unit) : TITLE_BLOCK.none;
}

/** A rim that only shows from where the brake is seen has no diameter that anybody gave. */
function bandText(band: NonNullable<References['clampBand']>, unit: LengthUnit): string {
  if (band.uDiameterMm === BAND_UNKNOWN.uDiameterMm) return ', diameter not known';
  return ` ${givenText(band.diameterMm, band.uDiameterMm, unit)}`;
}

export function referenceText(
  { tape, target, clampBand, distance, armLength }: References,
  unit: LengthUnit,
): string {
  const parts = [
    tape ? 'tape' : null,
    target ? 'printed target' : null,
    clampBand ? `clamp band${bandText(clampBand, unit)}` : null,
    armLength ? 'arm length' : null,
    distance ? `distance ${givenText(distance.distanceMm, distance.uDistanceMm, unit)}` : null,
  ].filter((part) => part !== null);
  return parts.length === 0 ? TITLE_BLOCK.none : parts.join(', ');
}
