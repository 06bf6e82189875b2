import type { InspectionResults } from '../../record/inspection-results.ts';
import type { WheelEndResults } from '../../record/wheel-end-results.ts';
import { ConditionsSaid } from '../parts/ConditionsSaid.tsx';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { axleNoteText, HAND_NOTE, wheelEndNoteText } from '../words/inspection-rules.ts';

type Props = { readonly inspection: InspectionResults; readonly results: WheelEndResults };

/** What is to be said beside the finding; nothing of it changes a number. */
export function WheelEndNotes({ inspection, results }: Props) {
  const unit = useLengthUnit();
  const { conditions, axles } = inspection;
  const { notes, position, basis } = results;
  const axle = axles.find((each) => each.axle === position.axle);
  return (
    <div className="notes form">
      {notes
        .map((note) => wheelEndNoteText(note, unit))
        .map((text) => (
          <p key={text} className="note">
            {text}
          </p>
        ))}
      {(axle?.notes ?? []).map((note) => (
        <p key={note.code} className="note">
          {axleNoteText(note, unit)}
        </p>
      ))}
      {basis === 'hand' ? <p className="quiet">{HAND_NOTE}</p> : null}
      {basis === null ? null : <ConditionsSaid notes={conditions} />}
    </div>
  );
}
