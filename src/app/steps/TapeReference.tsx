import type { References } from '../../references/reference.ts';
import { Choice } from '../parts/Choice.tsx';
import { REFERENCE } from '../words/steps.ts';

type TapeReferenceProps = {
  readonly tape: References['tape'];
  readonly set: (changed: Pick<References, 'tape'>) => void;
};

export function TapeReference({ tape, set }: TapeReferenceProps) {
  return (
    <div className="ticked">
      <Choice
        label={REFERENCE.tape}
        hint={REFERENCE.tapeHint}
        checked={tape !== null}
        onChange={(on) => set({ tape: on ? { zeroAtFace: false, unmoved: false, touchesPin: false } : null })}
      />
      {tape ? (
        <>
          <Choice
            label={REFERENCE.zeroAtFace}
            checked={tape.zeroAtFace}
            onChange={(zeroAtFace) => set({ tape: { ...tape, zeroAtFace } })}
          />
          <Choice
            label={REFERENCE.unmoved}
            hint={REFERENCE.unmovedHint}
            checked={tape.unmoved}
            onChange={(unmoved) => set({ tape: { ...tape, unmoved } })}
          />
          <Choice
            label={REFERENCE.touchesPin}
            hint={REFERENCE.touchesPinHint}
            checked={tape.touchesPin}
            onChange={(touchesPin) => set({ tape: { ...tape, touchesPin } })}
          />
        </>
      ) : null}
    </div>
  );
}
