import { work } from '../stores.ts';
import { CHAMBER } from '../words/chambers.ts';

/** Common practice, no source: what most drum-braked axles carry. */
const USUAL_TYPES = ['20', '24', '30'] as const;

/** One tap for a usual chamber of standard stroke; what proves another class is asked below, as ever. */
export function UsualChambers() {
  return (
    <fieldset className="usual-chambers">
      <legend>{CHAMBER.usual}</legend>
      {USUAL_TYPES.map((type) => (
        <button
          key={type}
          type="button"
          className="button"
          onClick={() =>
            work.act({
              type: 'set-chamber',
              chamber: {
                family: 'clamp',
                type,
                strokeClass: 'standard',
                ratedStrokeMm: null,
                markedLimitMm: null,
              },
            })
          }
        >
          {CHAMBER.usualType(type)}
        </button>
      ))}
    </fieldset>
  );
}
