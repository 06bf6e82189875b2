import type { InspectionRecord } from '../../record/record.ts';
import type { Identification, WheelEnd } from '../../record/wheel-end.ts';
import { Segments } from '../parts/Segments.tsx';
import { TextField } from '../parts/TextField.tsx';
import { KeptPhoto } from '../pictures/KeptPhoto.tsx';
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
      <KeptPhoto
        captures={record.captures}
        captureId={identification.captureId}
        words={{ photo: LOOKS.photo, add: LOOKS.photoAdd, drop: LOOKS.photoDrop }}
        onChange={(captureId) => set({ captureId })}
      />
    </div>
  );
}
