import { BAND_COLOURS, type BandColour } from '../../finding/over-stroke-mark.ts';
import { Choice } from '../parts/Choice.tsx';
import { work } from '../stores.ts';
import { ANY_BAND, BAND_CHOICES, PAINT } from '../words/paint.ts';

const OFFERED: readonly (BandColour | null)[] = [null, ...BAND_COLOURS];

export function BandColourChoice({ chosen }: { readonly chosen: BandColour | null }) {
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
            onChange={() => work.act({ type: 'set-band-colour', bandColour: colour })}
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
