import type { PlacedPoint } from '../../marks/placement.ts';
import type { BrakeState } from '../../marks/view.ts';
import { work } from '../stores.ts';
import type { FrameViewerProps } from '../viewer/viewer-props.ts';
import { askedMarks } from '../work/asked-marks.ts';
import { type Asking, markPlaced } from '../work/asking.ts';
import { type Current, viewOf } from '../work/current.ts';

type Handlers = Pick<
  FrameViewerProps,
  'onPlace' | 'onMoveBegin' | 'onMove' | 'onMoveEnd' | 'onMoveCancel' | 'onSelect' | 'onDelete'
>;

/** What the hand does on the picture, as actions of the work. */
export function markHandlers(current: Current, state: BrakeState, asking: Asking | null): Handlers {
  return {
    onPlace: (point) => place(current, state, asking, point),
    onMoveBegin: (id) => {
      work.beginDrag();
      work.select(id);
    },
    onMove: (markId, point) => work.act({ type: 'move-mark', state, markId, point }),
    onMoveEnd: () => work.endDrag(),
    onMoveCancel: () => work.cancelDrag(),
    onSelect: (id) => work.select(id),
    onDelete: (markId) => work.act({ type: 'delete-mark', state, markId }),
  };
}

function place(current: Current, state: BrakeState, asking: Asking | null, point: PlacedPoint): void {
  const view = viewOf(current.measurement, state);
  const mark = asking && markPlaced(current, state, asking, point, crypto.randomUUID());
  if (!view || !mark) return;
  const asked = askedMarks(view, current.measurement).find(({ kind }) => kind === mark.kind);
  work.placeMark(state, mark, asked !== undefined && asked.have + 1 === asked.need);
}
