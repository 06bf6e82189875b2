import type { InspectionRecord } from '../../record/record.ts';
import type { Identification, WheelEnd } from '../../record/wheel-end.ts';
import { takePictures } from '../media/take-pictures.ts';
import { FilePicker } from '../parts/FilePicker.tsx';
import { Segments } from '../parts/Segments.tsx';
import { TextField } from '../parts/TextField.tsx';
import { CapturePhoto } from '../pictures/CapturePhoto.tsx';
import { PortDrawing } from '../sheet/PortDrawing.tsx';
import { SpringDrawing } from '../sheet/SpringDrawing.tsx';
import { TagDrawing } from '../sheet/TagDrawing.tsx';
import { work } from '../stores.ts';
import { BRAKE_NAMES, LOOKS, PORT_BOSS_NAMES, TAG_NAMES } from '../words/wheel-end.ts';

type Props = { readonly record: InspectionRecord; readonly wheelEnd: WheelEnd };

const PORT_BOSSES = ['round', 'square', 'cannot-tell'] as const;
const TAGS = ['none', 'trapezoid', 'cannot-tell'] as const;
const BRAKES = ['service', 'spring', 'cannot-tell'] as const;

export function LooksOfChamber({ record, wheelEnd }: Props) {
  const { identification } = wheelEnd;
  const set = (changed: Partial<Identification>) =>
    work.act({ type: 'set-identification', identification: changed });
  const capture = record.captures.find(({ id }) => id === identification.captureId);
  return (
    <div className="form">
      <h3>{LOOKS.heading}</h3>
      <Segments
        legend={LOOKS.portBoss}
        values={PORT_BOSSES}
        drawings={{ round: <PortDrawing square={false} />, square: <PortDrawing square /> }}
        names={PORT_BOSS_NAMES}
        value={identification.portBoss}
        onChange={(portBoss) => set({ portBoss })}
      />
      <Segments
        legend={LOOKS.tag}
        values={TAGS}
        drawings={{ none: <TagDrawing tag={false} />, trapezoid: <TagDrawing tag /> }}
        names={TAG_NAMES}
        value={identification.tag}
        onChange={(tag) => set({ tag })}
      />
      <Segments
        legend={LOOKS.brake}
        values={BRAKES}
        drawings={{ service: <SpringDrawing spring={false} />, spring: <SpringDrawing spring /> }}
        names={BRAKE_NAMES}
        value={identification.brake}
        onChange={(brake) => set({ brake })}
      />
      <TextField
        label={LOOKS.marking}
        value={identification.marking}
        onChange={(marking) => set({ marking })}
      />
      {capture ? (
        <figure className="kept-photo">
          <CapturePhoto capture={capture} label={LOOKS.photo} />
          <figcaption>
            {LOOKS.photo}
            <button type="button" className="button plain" onClick={() => set({ captureId: null })}>
              {LOOKS.photoDrop}
            </button>
          </figcaption>
        </figure>
      ) : (
        <FilePicker
          label={LOOKS.photoAdd}
          accept="image/*,.heic,.heif"
          onFiles={(files) =>
            void takePictures(files, (captureId, kind) => kind === 'photo' && set({ captureId }))
          }
        />
      )}
    </div>
  );
}
