/** What a tap on the picture places now, and the mark that it becomes. */
import type { Mark } from '../../marks/mark.ts';
import type { PlacedPoint } from '../../marks/placement.ts';
import type { BrakeState } from '../../marks/view.ts';
import { askedMarks, type HandKind, isSingle, nextAsked } from './asked-marks.ts';
import { type Current, viewOf } from './current.ts';
import { nextReadingMm } from './next-reading.ts';
import { nextTie } from './next-tie.ts';
import { markedState } from './steps.ts';

export type Asking =
  | { readonly kind: Exclude<HandKind, 'tape-graduation' | 'tie-point'> }
  /** tie: name of the fixed thing. */
  | { readonly kind: 'tie-point'; readonly tie: string }
  /** Null: a reading has to be typed first. */
  | { readonly kind: 'tape-graduation'; readonly readingMm: number | null };

export function askingFor(current: Current, state: BrakeState, graduationStepMm: number): Asking | null {
  const { measurement, place } = current;
  const view = viewOf(measurement, state);
  if (!view || markedState(place.step) !== state) return null;
  const kind = place.pickedKind ?? nextAsked(askedMarks(view, measurement), place.passedOver);
  if (kind === null) return null;
  const others = measurement.views.filter((other) => other !== view);
  if (kind === 'tie-point') return { kind, tie: nextTie(view, others) };
  if (kind !== 'tape-graduation') return { kind };
  const readingMm = place.typedReadingMm ?? nextReadingMm(view, others, graduationStepMm);
  return { kind, readingMm };
}

/** Null where the reading is still to be typed. */
export function markPlaced(
  current: Current,
  state: BrakeState,
  asking: Asking,
  { xPx, yPx, sigmaPx }: PlacedPoint,
  newId: string,
): Mark | null {
  const before = viewOf(current.measurement, state)?.marks.find(({ kind }) => kind === asking.kind);
  const replaces = isSingle(asking.kind) && !current.place.onceMore;
  const id = before && replaces ? before.id : newId;
  const point = { id, xPx, yPx, sigmaPx, placedBy: 'hand' } as const;
  if (asking.kind === 'tie-point') return { kind: asking.kind, tie: asking.tie, ...point };
  if (asking.kind !== 'tape-graduation') return { kind: asking.kind, ...point };
  return asking.readingMm === null ? null : { kind: asking.kind, readingMm: asking.readingMm, ...point };
}
