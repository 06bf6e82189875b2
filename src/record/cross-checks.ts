/** What the parts of a record say about each other: the first contradiction, or null. */
import type { Capture } from '../captures/capture.ts';
import type { Track } from '../marks/track.ts';
import type { View } from '../marks/view.ts';
import type { MeasurementInput } from './measurement-input.ts';
import type { InspectionRecord } from './record.ts';
import type { RecordFailure } from './record-failure.ts';
import type { WheelEnd } from './wheel-end.ts';

type Named = { readonly path: string; readonly id: string };

export function crossFault(record: InspectionRecord): RecordFailure | null {
  const { captures, cameraProfiles, wheelEnds, vehicle } = record;
  const captureIds = captures.map(({ id }, i) => ({ path: `captures[${i}].id`, id }));
  const wheelEndIds = wheelEnds.map(({ id }, i) => ({ path: `wheelEnds[${i}].id`, id }));
  const positions = wheelEnds.map(({ position }, i) => ({
    path: `wheelEnds[${i}].position`,
    id: `${position.axle} ${position.side}`,
  }));
  const measurements = wheelEnds.flatMap((wheelEnd, i) =>
    wheelEnd.measurements.map((measurement, j) => ({
      path: `wheelEnds[${i}].measurements[${j}]`,
      measurement,
    })),
  );
  const profileIds = cameraProfiles.map(({ id }, i) => ({ path: `cameraProfiles[${i}].id`, id }));
  const measurementIds = measurements.map(({ path, measurement }) => ({
    path: `${path}.id`,
    id: measurement.id,
  }));
  const position = repeated(positions);
  return (
    duplicate(captureIds) ??
    firstOf(captures, clockFault) ??
    duplicate(profileIds) ??
    duplicate(wheelEndIds) ??
    (position && { code: 'record/position-twice', path: position.path }) ??
    firstOf(wheelEnds, ({ position: { axle } }, i) =>
      axle <= vehicle.axles.length
        ? null
        : { code: 'record/axle-missing', path: `wheelEnds[${i}].position.axle`, axle },
    ) ??
    duplicate(measurementIds) ??
    duplicate(wheelEnds.flatMap(linesOf)) ??
    firstOf(shownCaptures(record), ({ path, id }) =>
      captures.some((capture) => capture.id === id)
        ? null
        : { code: 'record/capture-missing', path, captureId: id },
    ) ??
    firstOf(measurements, ({ path, measurement }) => profileFault(measurement, path, profileIds)) ??
    firstOf(measurements, ({ path, measurement }) => measurementFault(measurement, path, captures))
  );
}

/** Everything of a wheel end that is named by an id of its own. */
function linesOf({ handReadings, otherReadings, repairs }: WheelEnd, i: number): readonly Named[] {
  return Object.entries({ handReadings, otherReadings, repairs }).flatMap(([kind, lines]) =>
    lines.map(({ id }, j) => ({ path: `wheelEnds[${i}].${kind}[${j}].id`, id })),
  );
}

/** Captures that are shown and not measured on. */
function shownCaptures({ conditions, wheelEnds }: InspectionRecord): readonly Named[] {
  const shown = [
    { path: 'conditions.gaugeCaptureId', id: conditions.gaugeCaptureId },
    ...wheelEnds.flatMap(({ identification, photos, adjusterCheck }, i) => [
      { path: `wheelEnds[${i}].identification.captureId`, id: identification.captureId },
      ...photos.map(({ captureId: id }, j) => ({ path: `wheelEnds[${i}].photos[${j}].captureId`, id })),
      ...(adjusterCheck?.turns ?? []).map(({ captureId: id }, j) => ({
        path: `wheelEnds[${i}].adjusterCheck.turns[${j}].captureId`,
        id,
      })),
    ]),
  ];
  return shown.flatMap(({ path, id }) => (id === null ? [] : [{ path, id }]));
}

function clockFault({ kind, clip }: Capture, index: number): RecordFailure | null {
  const path = `captures[${index}].clip`;
  if (kind === 'clip' && clip === null) return { code: 'record/clip-without-clock', path };
  if (kind === 'photo' && clip !== null) return { code: 'record/photo-with-clock', path };
  return null;
}

function profileFault(
  { cameraProfileId }: MeasurementInput,
  path: string,
  profiles: readonly Named[],
): RecordFailure | null {
  if (cameraProfileId === null || profiles.some(({ id }) => id === cameraProfileId)) return null;
  return { code: 'record/profile-missing', path: `${path}.cameraProfileId`, cameraProfileId };
}

function measurementFault(
  { views, followed }: MeasurementInput,
  path: string,
  captures: readonly Capture[],
): RecordFailure | null {
  const states = views.map(({ state }, i) => ({ path: `${path}.views[${i}].state`, id: state }));
  const twice = repeated(states);
  if (twice) return { code: 'record/state-twice', path: twice.path, state: twice.id };
  // A doubtful mark is named by its id alone: it is one mark of the measurement, not of one view.
  const marked = [
    ...views.map((view, i) => ({ path: `${path}.views[${i}]`, view })),
    ...(followed?.sideViews ?? []).map((view, i) => ({ path: `${path}.followed.sideViews[${i}]`, view })),
  ];
  const marks = marked.flatMap(({ path: at, view }) =>
    view.marks.map((mark, j) => ({ path: `${at}.marks[${j}]`, mark })),
  );
  const corrections = followed?.track.corrections ?? [];
  const seeds = new Set(
    [...views, ...corrections].flatMap(({ marks: ofFrame }) => ofFrame.map(({ id }) => id)),
  );
  return (
    firstOf(marked, ({ path: at, view }) => frameFault(view, at, captures)) ??
    duplicate(marks.map(({ path: at, mark }) => ({ path: `${at}.id`, id: mark.id }))) ??
    firstOf(marks, ({ path: at, mark: { followedFrom, carriedFrom } }) => {
      const id = [followedFrom, carriedFrom].find((each) => each !== undefined && !seeds.has(each));
      return id === undefined ? null : { code: 'record/seed-missing', path: at, id };
    }) ??
    (followed && trackFault(followed.track, `${path}.followed.track`, captures))
  );
}

function trackFault(track: Track, path: string, captures: readonly Capture[]): RecordFailure | null {
  const { captureId, seed, timeTicks, points, corrections } = track;
  const frames = timeTicks.length;
  const uneven = points.findIndex(
    ({ xCentiPx, yCentiPx, sigmaMilliPx }) =>
      [xCentiPx, yCentiPx, sigmaMilliPx].some((column) => column.length !== frames) ||
      xCentiPx.some(
        (x, i) => (x === null) !== (yCentiPx[i] === null) || (x === null) !== (sigmaMilliPx[i] === null),
      ),
  );
  if (uneven >= 0) return { code: 'record/track-uneven', path: `${path}.points[${uneven}]` };
  const last = { index: track.firstIndex + frames - 1, timeTicks: timeTicks.at(-1) ?? 0 };
  const twice = repeated(
    corrections.map(({ frame }, i) => ({ path: `${path}.corrections[${i}].frame`, id: String(frame.index) })),
  );
  if (twice) return { code: 'record/duplicate-id', path: twice.path, id: twice.id };
  const shown = corrections.map(({ frame }) => frame);
  return firstOf([seed, last, ...shown], (frame) => frameFault({ captureId, frame }, path, captures));
}

function frameFault(
  { captureId, frame }: Pick<View, 'captureId' | 'frame'>,
  path: string,
  captures: readonly Capture[],
): RecordFailure | null {
  const capture = captures.find(({ id }) => id === captureId);
  if (!capture) return { code: 'record/capture-missing', path: `${path}.captureId`, captureId };
  if (capture.kind === 'clip' && frame === null)
    return { code: 'record/clip-without-frame', path: `${path}.frame` };
  if (capture.kind === 'photo' && frame !== null)
    return { code: 'record/photo-with-frame', path: `${path}.frame` };
  if (capture.clip && frame && frame.index >= capture.clip.frameCount)
    return {
      code: 'record/frame-outside-clip',
      path: `${path}.frame.index`,
      index: frame.index,
      frameCount: capture.clip.frameCount,
    };
  return null;
}

function duplicate(named: readonly Named[]): RecordFailure | null {
  const twice = repeated(named);
  return twice && { code: 'record/duplicate-id', path: twice.path, id: twice.id };
}

function repeated<T extends Named>(named: readonly T[]): T | null {
  const met = new Set<string>();
  for (const one of named) {
    if (met.has(one.id)) return one;
    met.add(one.id);
  }
  return null;
}

function firstOf<T>(
  list: readonly T[],
  faultOf: (item: T, index: number) => RecordFailure | null,
): RecordFailure | null {
  for (const [index, item] of list.entries()) {
    const fault = faultOf(item, index);
    if (fault) return fault;
  }
  return null;
}
