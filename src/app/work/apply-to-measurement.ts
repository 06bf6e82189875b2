import { BRAKE_STATES, type BrakeState, type View } from '../../marks/view.ts';
import type { MeasurementInput } from '../../record/measurement-input.ts';
import type { MarkAction, MeasurementAction } from './actions.ts';
import { applyToMarks } from './apply-to-marks.ts';
import { viewOf } from './current.ts';
import { afterChange } from './followed-from.ts';
import { foundAlone } from './found-again.ts';
import { placeTies } from './place-ties.ts';
import { BAND_UNKNOWN } from './usual-references.ts';

export function applyToMeasurement(
  measurement: MeasurementInput,
  action: MeasurementAction,
): MeasurementInput {
  if (action.type === 'take-followed')
    return foundAlone(measurement, { ...withViews(measurement, action.views), followed: action.followed });
  return afterChange(measurement, foundAlone(measurement, changed(measurement, action)));
}

function changed(
  measurement: MeasurementInput,
  action: Exclude<MeasurementAction, { readonly type: 'take-followed' }>,
): MeasurementInput {
  switch (action.type) {
    case 'take-view':
      return takeView(measurement, { ...action, marks: [] });
    case 'drop-view':
      return withViews(
        measurement,
        measurement.views.filter(({ state }) => state !== action.state),
      );
    case 'swap-views':
      return swapViews(measurement);
    case 'set-references':
      return { ...measurement, references: { ...measurement.references, ...action.references } };
    case 'set-camera-still':
      return { ...measurement, cameraStill: action.cameraStill };
    case 'set-over-stroke':
      return {
        ...measurement,
        overStrokeMark: { ...measurement.overStrokeMark, [action.state]: action.sight },
      };
    case 'set-band-colour':
      return {
        ...measurement,
        overStrokeMark: { ...measurement.overStrokeMark, bandColour: action.bandColour },
      };
    case 'place-ties':
      return withViews(measurement, placeTies(measurement.views, action));
    case 'take-found':
      return takeFound(measurement, action);
    default:
      return withMarks(measurement, action);
  }
}

/** A rim that was found without its diameter asked for is no scale, and counts all the same. */
function takeFound(
  measurement: MeasurementInput,
  action: Extract<MarkAction, { readonly type: 'take-found' }>,
): MeasurementInput {
  const taken = withMarks(measurement, action);
  const { references } = measurement;
  if (references.clampBand || !action.marks.some(({ kind }) => kind === 'clamp-band')) return taken;
  return { ...taken, references: { ...references, clampBand: BAND_UNKNOWN } };
}

function withMarks(measurement: MeasurementInput, action: MarkAction): MeasurementInput {
  return withViews(
    measurement,
    measurement.views.map((view) =>
      view.state === action.state ? { ...view, marks: applyToMarks(view.marks, action) } : view,
    ),
  );
}

/** Marks and the sight of the over-stroke mark belong to the picture they were made on: another picture begins without. */
function takeView(measurement: MeasurementInput, { state, captureId, frame, marks }: View): MeasurementInput {
  const before = viewOf(measurement, state);
  if (before?.captureId === captureId && before.frame?.timeTicks === frame?.timeTicks) return measurement;
  const others = measurement.views.filter((view) => view.state !== state);
  const taken = withViews(measurement, [...others, { state, captureId, frame, marks }]);
  if (state === 'pulled') return taken;
  return { ...taken, overStrokeMark: { ...measurement.overStrokeMark, [state]: null } };
}

function swapViews(measurement: MeasurementInput): MeasurementInput {
  const other: Record<BrakeState, BrakeState> = {
    released: 'applied',
    applied: 'released',
    pulled: 'pulled',
  };
  const { released, applied, ...mark } = measurement.overStrokeMark;
  const swapped = measurement.views.map((view) => ({ ...view, state: other[view.state] }));
  const overStrokeMark = { ...mark, released: applied, applied: released };
  return { ...withViews(measurement, swapped), overStrokeMark };
}

function withViews(measurement: MeasurementInput, views: readonly View[]): MeasurementInput {
  const inOrder = BRAKE_STATES.flatMap((state) => views.filter((view) => view.state === state));
  return { ...measurement, views: inOrder };
}
