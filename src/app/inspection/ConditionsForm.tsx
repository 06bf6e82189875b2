import { findRuleSet } from '../../finding/rule-sets.ts';
import { ASKED_CONDITIONS } from '../../record/condition-notes.ts';
import type { Conditions } from '../../record/conditions.ts';
import type { InspectionRecord } from '../../record/record.ts';
import { AnswerChoice } from '../parts/AnswerChoice.tsx';
import { Choice } from '../parts/Choice.tsx';
import { KeptPhoto } from '../pictures/KeptPhoto.tsx';
import { work } from '../stores.ts';
import { CONDITION_NAMES, procedureText } from '../words/conditions.ts';
import { CONDITIONS } from '../words/inspection.ts';
import { PressureField } from './PressureField.tsx';

export function ConditionsForm({ record }: { readonly record: InspectionRecord }) {
  const { conditions, ruleSetId } = record;
  const ruleSet = findRuleSet(ruleSetId);
  const set = (changed: Partial<Conditions>) => work.act({ type: 'set-conditions', conditions: changed });
  return (
    <div className="form">
      {ASKED_CONDITIONS.map((question) => (
        <AnswerChoice
          key={question}
          question={CONDITION_NAMES[question]}
          answer={conditions[question]}
          onAnswer={(answer) => set({ [question]: answer })}
        />
      ))}
      <fieldset>
        <legend className="quiet">{CONDITIONS.procedure}</legend>
        {(ruleSet.ok ? ruleSet.value.pressure.ranges : []).map((range) => (
          <Choice
            key={range.procedure}
            group="procedure"
            label={procedureText(range)}
            checked={conditions.procedure === range.procedure}
            onChange={() => set({ procedure: range.procedure })}
          />
        ))}
      </fieldset>
      <div className="pair">
        <PressureField
          label={CONDITIONS.pressureBefore}
          valueKpa={conditions.pressureBeforeKpa}
          onChange={(pressureBeforeKpa) => set({ pressureBeforeKpa })}
        />
        <PressureField
          label={CONDITIONS.pressureHeld}
          valueKpa={conditions.pressureHeldKpa}
          onChange={(pressureHeldKpa) => set({ pressureHeldKpa })}
        />
      </div>
      <KeptPhoto
        captures={record.captures}
        captureId={conditions.gaugeCaptureId}
        words={{ photo: CONDITIONS.gauge, add: CONDITIONS.gaugeAdd, drop: CONDITIONS.gaugeDrop }}
        onChange={(gaugeCaptureId) => set({ gaugeCaptureId })}
      />
    </div>
  );
}
