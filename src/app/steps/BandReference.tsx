import { useState } from 'react';
import type { Chamber } from '../../finding/chamber.ts';
import { MOST_REFERENCE_MM, type References } from '../../references/reference.ts';
import { Choice } from '../parts/Choice.tsx';
import { LengthField } from '../parts/LengthField.tsx';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { REFERENCE } from '../words/steps.ts';
import { lengthText } from '../words/values.ts';
import { bandDiameterMm } from '../work/band-diameter.ts';
import { BAND_UNKNOWN, U_BAND_CALIPER_MM, U_BAND_TABLE_MM } from '../work/usual-references.ts';

type Props = {
  readonly band: References['clampBand'];
  readonly chamber: Chamber | null;
  readonly set: (changed: Partial<References>) => void;
};

/** Diameter from the published table by the chamber's type, or from a caliper. */
export function BandReference({ band, chamber, set }: Props) {
  const unit = useLengthUnit();
  const [wanted, setWanted] = useState(false);
  const tableMm = bandDiameterMm(chamber);
  const byTable = () => tableMm && set({ clampBand: { diameterMm: tableMm, uDiameterMm: U_BAND_TABLE_MM } });
  const byCaliper = (diameterMm: number | null) =>
    diameterMm && set({ clampBand: { diameterMm, uDiameterMm: U_BAND_CALIPER_MM } });
  const fromTable = band !== null && band.uDiameterMm === U_BAND_TABLE_MM && band.diameterMm === tableMm;
  const unknown = band?.uDiameterMm === BAND_UNKNOWN.uDiameterMm;
  return (
    <div className="ticked">
      <Choice
        label={REFERENCE.clampBand}
        hint={REFERENCE.clampBandHint}
        checked={band !== null || wanted}
        onChange={(on) => {
          setWanted(on);
          if (on) byTable();
          else set({ clampBand: null });
        }}
      />
      {band !== null || wanted ? (
        <>
          {tableMm ? (
            <Choice
              group="band-by"
              label={`${lengthText(tableMm, unit)}, ${REFERENCE.bandByTable}`}
              checked={fromTable}
              onChange={byTable}
            />
          ) : (
            <p className="quiet">{REFERENCE.bandNeedsType}</p>
          )}
          <LengthField
            label={REFERENCE.bandByCaliper}
            mostMm={MOST_REFERENCE_MM}
            valueMm={fromTable || unknown ? null : (band?.diameterMm ?? null)}
            onChange={byCaliper}
          />
          <Choice
            group="band-by"
            label={REFERENCE.bandUnknown}
            checked={unknown}
            onChange={() => set({ clampBand: BAND_UNKNOWN })}
          />
        </>
      ) : null}
    </div>
  );
}
