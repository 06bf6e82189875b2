import type { BrakeState } from '../../marks/view.ts';
import type { FoundMark } from '../../vision/assist-sight.ts';
import { chosen, takeFound } from '../assists/take-found.ts';
import type { Assist } from '../assists/use-assists.ts';
import { work } from '../stores.ts';
import { ASSISTS } from '../words/assists.ts';

type Props = {
  readonly assist: Assist;
  readonly marks: readonly FoundMark[];
  readonly state: BrakeState;
  readonly onLeave: () => void;
};

/** Edges near the hand's mark, once they are seen close: the person says which is meant. */
export function EdgeChoice({ assist, marks, state, onLeave }: Props) {
  return (
    <div className="ruled-group">
      <p role="status">{ASSISTS.edgesClose(marks.length)}</p>
      <div className="row">
        {marks.map((mark, i) => (
          <button
            key={`${mark.placePx}`}
            type="button"
            className="button"
            onClick={() => work.act(takeFound(state, [chosen(assist, [mark])], () => crypto.randomUUID()))}
          >
            {ASSISTS.takeEdge(i + 1, marks.length)}
          </button>
        ))}
        <button type="button" className="button" onClick={onLeave}>
          {ASSISTS.leaveFace}
        </button>
      </div>
    </div>
  );
}
