import { findRuleSet } from '../../finding/rule-sets.ts';
import type { RuleId } from '../../finding/rule-text.ts';
import type { InspectionResults } from '../../record/inspection-results.ts';
import type { InspectionRecord } from '../../record/record.ts';
import type { RoadsideShare } from '../../record/roadside-share.ts';
import { SheetPart } from '../parts/SheetPart.tsx';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { INSPECTION } from '../words/inspection.ts';
import {
  axleNoteText,
  ROADSIDE,
  roadsideShareText,
  ruleText,
  unknownBrakesText,
} from '../words/inspection-rules.ts';
import { measuredLengthText } from '../words/values.ts';
import { PURPOSE_NAMES } from '../words/wheel-end.ts';

type Props = { readonly record: InspectionRecord; readonly results: InspectionResults };

const COUNTED_BY: RuleId = 'roadside-share';

/** What the rules say of axles and of the vehicle as a whole, each with where it stands. */
export function RulesSaid({ record, results }: Props) {
  const unit = useLengthUnit();
  const found = findRuleSet(record.ruleSetId);
  const ruleSet = found.ok ? found.value : null;
  const { axles, roadside } = results;
  const notes = axles.flatMap(({ axle, notes: said }) => said.map((note) => ({ axle, note })));
  const rules = [
    ...new Set([...notes.flatMap(({ note }) => ('rule' in note ? [note.rule] : [])), COUNTED_BY]),
  ];
  return (
    <SheetPart
      title={INSPECTION.rules}
      said={notes.length > 0 ? INSPECTION.toLookAt(notes.length) : undefined}
    >
      {notes.map(({ axle, note }) => (
        <p key={`${axle} ${note.code}`} className="note">
          {`${INSPECTION.axle(axle)}: ${axleNoteText(note, unit)}`}
        </p>
      ))}
      {axles.map(({ axle, leftMinusRightMm }) =>
        leftMinusRightMm ? (
          <p key={axle}>{INSPECTION.leftRight(axle, measuredLengthText(leftMinusRightMm, unit))}</p>
        ) : null,
      )}
      {roadside ? (
        <div className="said-lines">
          <h3>{ROADSIDE.heading}</h3>
          <Share name={PURPOSE_NAMES['as-found']} share={roadside.asFound} />
          <Share name={INSPECTION.now} share={roadside.afterRepair} />
          <p className="quiet">{ROADSIDE.onlyThis}</p>
        </div>
      ) : null}
      {ruleSet
        ? rules.map((rule) => (
            <p key={rule} className="quiet">
              {ruleText(rule, ruleSet)}
            </p>
          ))
        : null}
    </SheetPart>
  );
}

function Share({ name, share }: { readonly name: string; readonly share: RoadsideShare }) {
  const unknown = unknownBrakesText(share);
  return (
    <p>
      {`${name}: ${roadsideShareText(share)}`} {unknown ? <span className="quiet">{unknown}</span> : null}
    </p>
  );
}
