import type { References } from '../../references/reference.ts';
import { work } from '../stores.ts';
import { REFERENCE } from '../words/steps.ts';
import type { Current } from '../work/current.ts';
import { ArmReference } from './ArmReference.tsx';
import { BandReference } from './BandReference.tsx';
import { CameraChoice } from './CameraChoice.tsx';
import { DistanceReference } from './DistanceReference.tsx';
import { PinEndReference } from './PinEndReference.tsx';
import { TapeReference } from './TapeReference.tsx';
import { TargetReference } from './TargetReference.tsx';

export function ReferenceStep({ current }: { readonly current: Current }) {
  const { wheelEnd, measurement } = current;
  const { references } = measurement;
  const set = (changed: Partial<References>) => work.act({ type: 'set-references', references: changed });
  return (
    <>
      <p>{REFERENCE.sentence}</p>
      <div className="ruled">
        <TapeReference tape={references.tape} set={set} />
        <TargetReference current={current} set={set} />
        <BandReference band={references.clampBand} chamber={wheelEnd.chamber} set={set} />
        <ArmReference arm={references.armLength} set={set} />
        <DistanceReference distance={references.distance} set={set} />
        <PinEndReference pinEnd={references.pinEnd} set={set} />
        <CameraChoice current={current} />
      </div>
    </>
  );
}
