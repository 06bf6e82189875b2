import { PROCEDURES } from '../../finding/procedure.ts';
import type { Conditions } from '../../record/conditions.ts';
import type { InspectionRecord } from '../../record/record.ts';
import { takePictures } from '../media/take-pictures.ts';
import { AnswerChoice } from '../parts/AnswerChoice.tsx';
import { Choice } from '../parts/Choice.tsx';
import { FilePicker } from '../parts/FilePicker.tsx';
import { CapturePhoto } from '../pictures/CapturePhoto.tsx';
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
      <GaugePhoto record={record} />
    </div>
  );
}

function GaugePhoto({ record }: { readonly record: InspectionRecord }) {
  const capture = record.captures.find(({ id }) => id === record.conditions.gaugeCaptureId);
  const set = (gaugeCaptureId: string | null) =>
    work.act({ type: 'set-conditions', conditions: { gaugeCaptureId } });
  if (!capture)
    return (
      <FilePicker
        label={CONDITIONS.gaugeAdd}
        accept="image/*,.heic,.heif"
        onFiles={(files) => void takePictures(files, (id, kind) => kind === 'photo' && set(id))}
      />
    );
  return (
    <figure className="kept-photo">
      <CapturePhoto capture={capture} label={CONDITIONS.gauge} />
      <figcaption>
        {CONDITIONS.gauge}
        <button type="button" className="button plain" onClick={() => set(null)}>
          {CONDITIONS.gaugeDrop}
        </button>
      </figcaption>
    </figure>
  );
}
