import { useState } from 'react';
import type { Chamber, ChamberFamily } from '../../finding/chamber.ts';
import { findRuleSet } from '../../finding/rule-sets.ts';
import { limitOf } from '../../record/results.ts';
import type { WheelEnd } from '../../record/wheel-end.ts';
import { useLengthUnit } from '../parts/use-length-unit.ts';
import { work } from '../stores.ts';
import { CHAMBER } from '../words/chambers.ts';
import { limitText } from '../words/findings.ts';
import { limitFailureText, limitNoteText } from '../words/limits.ts';
import { FamilyChoice } from './FamilyChoice.tsx';
import { MarkedOnChamber } from './MarkedOnChamber.tsx';
import { StrokeClassChoice } from './StrokeClassChoice.tsx';
import { TypeChoice } from './TypeChoice.tsx';

/** Standard stroke until the person says otherwise, with proof. */
const chamberOf = (family: ChamberFamily, type: string): Chamber | null =>
  type.trim() === ''
    ? null
    : { family, type, strokeClass: 'standard', ratedStrokeMm: null, markedLimitMm: null };

type Props = { readonly ruleSetId: string; readonly wheelEnd: WheelEnd };

export function ChamberChoice({ ruleSetId, wheelEnd }: Props) {
  const { chamber } = wheelEnd;
  const unit = useLengthUnit();
  // A family alone is no chamber yet: nothing is entered before the type is chosen.
  const [begun, setBegun] = useState<ChamberFamily | null>(null);
  const family = chamber?.family ?? begun;
  const ruleSet = findRuleSet(ruleSetId);
  const set = (changed: Chamber | null) => work.act({ type: 'set-chamber', chamber: changed });
  const limit = chamber && ruleSet.ok ? limitOf(wheelEnd, ruleSet.value) : null;
  return (
    <>
      <FamilyChoice
        family={family}
        onChange={(chosen) => {
          setBegun(chosen);
          if (chamber) work.act({ type: 'set-chamber', chamber: null });
        }}
      />
      {family && ruleSet.ok ? (
        <TypeChoice
          key={family}
          family={family}
          type={chamber?.type ?? ''}
          ruleSet={ruleSet.value}
          onChange={(type) => set(chamberOf(family, type))}
        />
      ) : null}
      {chamber && ruleSet.ok ? (
        <StrokeClassChoice chamber={chamber} ruleSet={ruleSet.value} onChange={set} />
      ) : null}
      {chamber ? <MarkedOnChamber chamber={chamber} onChange={set} /> : null}
      {limit?.ok ? (
        <div className="limit-found">
          <p>
            {CHAMBER.limit} <strong>{limitText(limit.value.values, unit)}</strong>
          </p>
          {limit.value.notes.map((note) => (
            <p key={note.code} className="quiet">
              {limitNoteText(note, unit)}
            </p>
          ))}
        </div>
      ) : null}
      {limit && !limit.ok ? <p className="look">{limitFailureText(limit.failure)}</p> : null}
    </>
  );
}
