import type { Chamber } from '../../finding/chamber.ts';
import type { References } from '../../references/reference.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { work } from '../stores.ts';
import { CHAMBER } from '../words/chambers.ts';
import { lengthText } from '../words/values.ts';
import { bandDiameterMm } from '../work/band-diameter.ts';
import { U_BAND_TABLE_MM } from '../work/usual-references.ts';

type Props = { readonly chamber: Chamber | null; readonly references: References };

/** Where the band is a reference by the table and the type is now another: offers the diameter of that type. */
export function BandDiameterFollows({ chamber, references }: Props) {
  const unit = useLengthUnit();
  const diameterMm = bandDiameterMm(chamber);
  const band = references.clampBand;
  if (!band || !diameterMm || band.uDiameterMm !== U_BAND_TABLE_MM || band.diameterMm === diameterMm)
    return null;
  return (
    <div className="limit-found">
      <p className="look">{CHAMBER.bandDiffers(lengthText(band.diameterMm, unit))}</p>
      <button
        type="button"
        className="button wide"
        onClick={() =>
          work.act({
            type: 'set-references',
            references: { clampBand: { diameterMm, uDiameterMm: U_BAND_TABLE_MM } },
          })
        }
      >
        {CHAMBER.bandTake(lengthText(diameterMm, unit))}
      </button>
    </div>
  );
}
