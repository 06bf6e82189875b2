import { PROCEDURES } from '../../finding/procedure.ts';
import type { Conditions } from '../../record/conditions.ts';
import type { InspectionRecord } from '../../record/record.ts';
import { AnswerChoice } from '../parts/AnswerChoice.tsx';
import { Choice } from '../parts/Choice.tsx';
import { KeptPhoto } from '../pictures/KeptPhoto.tsx';
import { work } from '../stores.ts';
import { CONDITIONS } from '../words/inspection.ts';
import { PressureField } from './PressureField.tsx';

export const ASKED = [
  'wheelsChocked',
  'engineOff',
  'springBrakesReleased',
  'fullApplication',
  'drumsCold',
] as const satisfies readonly (keyof Conditions)[];

export function ConditionsForm({ record }: { readonly record: InspectionRecord }) {
  const { conditions } = record;
  const set = (changed: Partial<Conditions>) => work.act({ type: 'set-conditions', conditions: changed });
  return (
    <div className="form">
      {ASKED.map((question) => (
        <AnswerChoice
          key={question}
          question={CONDITIONS[question]}
          answer={conditions[question]}
          onAnswer={(answer) => set({ [question]: answer })}
        />
      ))}
      <fieldset>
        <legend className="quiet">{CONDITIONS.procedure}</legend>
        {PROCEDURES.map((procedure) => (
          <Choice
            key={procedure}
            group="procedure"
            label={CONDITIONS[procedure]}
            checked={conditions.procedure === procedure}
            onChange={() => set({ procedure })}
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
