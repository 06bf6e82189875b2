import type { References } from '../../references/reference.ts';
import { Choice } from '../parts/Choice.tsx';
import { work } from '../session.ts';
import { REFERENCE } from '../words/steps.ts';
import type { Current } from '../work/current.ts';
import { ArmReference } from './ArmReference.tsx';
import { BandReference } from './BandReference.tsx';
import { DistanceReference } from './DistanceReference.tsx';

export function ReferenceStep({ current }: { readonly current: Current }) {
  const { wheelEnd, measurement } = current;
  const { references } = measurement;
  const set = (changed: Partial<References>) => work.act({ type: 'set-references', references: changed });
  return (
    <>
      <p>{REFERENCE.sentence}</p>
      <div className="ruled">
        <div className="ticked">
          <Choice
            label={REFERENCE.tape}
            hint={REFERENCE.tapeHint}
            checked={references.tape !== null}
            onChange={(on) => set({ tape: on ? { zeroAtFace: false } : null })}
          />
          {references.tape ? (
            <Choice
              label={REFERENCE.zeroAtFace}
              checked={references.tape.zeroAtFace}
              onChange={(zeroAtFace) => set({ tape: { zeroAtFace } })}
            />
          ) : null}
        </div>
        <BandReference band={references.clampBand} chamber={wheelEnd.chamber} set={set} />
        <ArmReference arm={references.armLength} set={set} />
        <DistanceReference distance={references.distance} set={set} />
      </div>
    </>
  );
}
