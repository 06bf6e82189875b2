/** Which pictures a report shows, each under its key, and which part of them. */
import type { Capture } from '../../captures/capture.ts';
import type { Frame } from '../../frames/frame.ts';
import type { Mark } from '../../marks/mark.ts';
import type { View } from '../../marks/view.ts';
import type { Measurement } from '../../measurement/measurement.ts';
import type { InspectionResults } from '../../record/inspection-results.ts';
import type { MeasurementInput, Purpose } from '../../record/measurement-input.ts';
import type { PurposeResults } from '../../record/purpose-results.ts';
import type { InspectionRecord } from '../../record/record.ts';
import type { WheelEnd } from '../../record/wheel-end.ts';
import type { CropRect } from '../viewer/crop-rect.ts';
import type { FramePoint } from '../viewer/view-transform.ts';
import { viewOf } from '../work/current.ts';
import { cropAround } from './picture-crop.ts';

export type WantedPicture = {
  readonly key: string;
  readonly capture: Capture;
  readonly frame: Frame | null;
  /** Null: the whole picture, small. */
  readonly crop: CropRect | null;
};

export const PURPOSES_SHOWN = ['as-found', 'after-repair'] as const;

/** By the place in the record: names that people gave never become part of a key. */
export const viewKey = (end: number, purpose: Purpose, state: View['state']) => `w${end}-${purpose}-${state}`;
export const overStrokeKey = (end: number, purpose: Purpose, state: View['state']) =>
  `${viewKey(end, purpose, state)}-over-stroke`;
export const chartKey = (end: number, purpose: Purpose) => `w${end}-${purpose}-chart`;
export const barKey = (end: number) => `w${end}-bar`;
export const chamberKey = (end: number) => `w${end}-chamber`;
export const turnKey = (end: number, turn: number) => `w${end}-turn-${turn}`;
export const photoKey = (end: number, photo: number) => `w${end}-photo-${photo}`;
export const GAUGE_KEY = 'gauge';
export const PLAN_KEY = 'plan';

export function wantedPictures(record: InspectionRecord, results: InspectionResults): WantedPicture[] {
  const captureOf = (id: string | null) => record.captures.find((capture) => capture.id === id) ?? null;
  const whole = (key: string, captureId: string | null, frame: Frame | null = null): WantedPicture[] => {
    const capture = captureOf(captureId);
    return capture ? [{ key, capture, frame, crop: null }] : [];
  };
  const ends = record.wheelEnds.flatMap((wheelEnd, i) => [
    ...PURPOSES_SHOWN.flatMap((purpose) => {
      const shown = shownMeasurement(wheelEnd, results, i, purpose);
      return shown ? ofMeasurement(shown, captureOf, { end: i, purpose }) : [];
    }),
    ...whole(chamberKey(i), wheelEnd.identification.captureId),
    ...(wheelEnd.adjusterCheck?.turns ?? []).flatMap(({ captureId, frame }, turn) =>
      whole(turnKey(i, turn), captureId, frame),
    ),
    ...wheelEnd.photos.flatMap(({ captureId }, photo) => whole(photoKey(i, photo), captureId)),
  ]);
  return [...whole(GAUGE_KEY, record.conditions.gaugeCaptureId), ...ends];
}

export type ShownMeasurement = {
  readonly input: MeasurementInput;
  readonly measured: Measurement | null;
  readonly of: PurposeResults;
};

/** The one that the state rests on. */
export function shownMeasurement(
  { measurements }: WheelEnd,
  results: InspectionResults,
  end: number,
  purpose: Purpose,
): ShownMeasurement | null {
  const ofEnd = results.wheelEnds[end];
  const of = purpose === 'as-found' ? ofEnd?.asFound : ofEnd?.afterRepair;
  const input = measurements.find(({ id }) => id === of?.measurement?.id);
  if (!of || !input) return null;
  const assessed = of.measurement?.assessment?.measurement;
  return { input, measured: assessed?.ok ? assessed.value : null, of };
}

function ofMeasurement(
  shown: ShownMeasurement,
  captureOf: (id: string) => Capture | null,
  { end, purpose }: { readonly end: number; readonly purpose: Purpose },
): WantedPicture[] {
  const { input } = shown;
  const views = input.views.flatMap(({ captureId, frame, state }) => {
    const capture = captureOf(captureId);
    const crop = capture && viewCrop(shown, state, captureOf);
    return capture ? [{ key: viewKey(end, purpose, state), capture, frame, crop }] : [];
  });
  const sights = (['released', 'applied'] as const).flatMap((state) => {
    const crop = input.overStrokeMark[state]?.crop ?? null;
    const view = viewOf(input, state);
    const capture = view ? captureOf(view.captureId) : null;
    return crop && view && capture
      ? [{ key: overStrokeKey(end, purpose, state), capture, frame: view.frame, crop }]
      : [];
  });
  return [...views, ...sights];
}

/** One and the same part in all pictures of one size, so that the eye can compare them. */
export function viewCrop(
  { input, measured }: ShownMeasurement,
  state: View['state'],
  captureOf: (id: string) => Capture | null,
): CropRect | null {
  const sizeOf = ({ captureId }: View) => captureOf(captureId);
  const view = viewOf(input, state);
  const size = view && sizeOf(view);
  if (!size) return null;
  const alike = input.views.filter((each) => {
    const other = sizeOf(each);
    return other?.widthPx === size.widthPx && other.heightPx === size.heightPx;
  });
  const points = alike.flatMap((each) => [
    ...each.marks.filter(isOfTheBrake),
    ...(measured?.drawings ?? [])
      .filter((drawing) => drawing.state === each.state)
      .flatMap(({ axis, extensions, dimension }) => [...axis, ...extensions.flat(), ...dimension])
      .map(([xPx, yPx]) => ({ xPx, yPx })),
  ]);
  return cropAround(points.filter(isWithin(size)), size);
}

/** Tie points lie all over the picture. */
function isOfTheBrake({ kind }: Mark): boolean {
  return kind !== 'tie-point';
}

function isWithin({ widthPx, heightPx }: { readonly widthPx: number; readonly heightPx: number }) {
  return ({ xPx, yPx }: FramePoint) => xPx >= 0 && yPx >= 0 && xPx <= widthPx && yPx <= heightPx;
}
