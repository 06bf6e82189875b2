import { type Chamber, MOST_STROKE_MM } from '../../finding/chamber.ts';
import { LengthField } from '../parts/LengthField.tsx';
import { CHAMBER } from '../words/chambers.ts';

type Props = { readonly chamber: Chamber; readonly onChange: (chamber: Chamber) => void };

export function MarkedOnChamber({ chamber, onChange }: Props) {
  return (
    <div className="two-fields">
      <LengthField
        label={CHAMBER.rated}
        mostMm={MOST_STROKE_MM}
        valueMm={chamber.ratedStrokeMm}
        onChange={(ratedStrokeMm) => onChange({ ...chamber, ratedStrokeMm })}
      />
      {chamber.family === 'unlisted' ? (
        <LengthField
          label={CHAMBER.marked}
          mostMm={MOST_STROKE_MM}
          valueMm={chamber.markedLimitMm}
          onChange={(markedLimitMm) => onChange({ ...chamber, markedLimitMm })}
        />
      ) : null}
      <p className="quiet">{CHAMBER.ratedWhy}</p>
    </div>
  );
}
