import { useStore } from 'zustand';
import { BAND_COLOURS, type BandColour } from '../../vision/paint-hues.ts';
import { paintLooks } from '../paint/paint-store.ts';
import { Choice } from '../parts/Choice.tsx';
import { ANY_BAND, BAND_CHOICES, PAINT } from '../words/paint.ts';

const OFFERED: readonly (BandColour | null)[] = [null, ...BAND_COLOURS];

export function BandColourChoice({ wheelEndId }: { readonly wheelEndId: string }) {
  const chosen = useStore(paintLooks, (state) => state.bandColours[wheelEndId] ?? null);
  return (
    <fieldset className="ruled-group">
      <legend>{PAINT.colour}</legend>
      <div className="band-colours">
        {OFFERED.map((colour) => (
          <Choice
            key={colour ?? 'any'}
            group="band-colour"
            label={<BandLabel colour={colour} />}
            checked={chosen === colour}
            onChange={() => paintLooks.chooseColour(wheelEndId, colour)}
          />
        ))}
      </div>
      <p className="quiet">{PAINT.colourNote}</p>
    </fieldset>
  );
}

function BandLabel({ colour }: { readonly colour: BandColour | null }) {
  return (
    <span className="band-label">
      <span className={`band-swatch band-${colour?.replaceAll(' ', '-') ?? 'any'}`} aria-hidden="true" />
      {colour ? BAND_CHOICES[colour] : ANY_BAND}
    </span>
  );
}
