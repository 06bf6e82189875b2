/** Measures a whole inspection in a worker, one measurement after the other; what was measured stays until its marks change. */
import { createStore } from 'zustand/vanilla';
import type { CameraProfile } from '../../captures/camera-profile.ts';
import type { Capture } from '../../captures/capture.ts';
import type { MeasureInput } from '../../measurement/measurement.ts';
import type { MeasurementInput } from '../../record/measurement-input.ts';
import type { InspectionRecord } from '../../record/record.ts';
import { measureInput } from '../../record/results.ts';
import type { Measured } from './measure-client.ts';

type Known = {
  readonly captures: readonly Capture[];
  readonly profile: CameraProfile | null;
  readonly measured: Measured;
};

type Asked = { readonly measurement: MeasurementInput; readonly record: InspectionRecord };

export type MeasuredAll = ReadonlyMap<MeasurementInput, Known>;

export function createMeasuredAll(startWorker: () => Worker) {
  const store = createStore<{ readonly known: MeasuredAll }>(() => ({ known: new Map() }));
  let worker: Worker | null = null;
  let waiting: readonly Asked[] = [];
  let running: Asked | null = null;

  function next() {
    const [first, ...others] = waiting;
    running = first ?? null;
    waiting = others;
    if (!running) return;
    worker ??= started();
    worker.postMessage(inputOf(running));
  }

  function started(): Worker {
    const fresh = startWorker();
    fresh.addEventListener('message', ({ data }: MessageEvent<Measured>) => {
      const answered = running;
      // The next is measured while the screen draws this one.
      next();
      if (answered) keep(answered, data);
    });
    // A mistake of ours inside it: that measurement stays without an answer, the others go on in a new worker.
    fresh.addEventListener('error', (event) => {
      fresh.terminate();
      worker = null;
      reportError(new Error(event.message));
      next();
    });
    return fresh;
  }

  function keep({ measurement, record }: Asked, measured: Measured) {
    const known = { ...dependsOn(measurement, record), measured };
    store.setState((state) => ({ known: new Map(state.known).set(measurement, known) }));
  }

  return {
    ...store,
    /** Has a worker ready before there is anything to measure. */
    warm() {
      worker ??= started();
    },
    /** Measures what of the record is not known yet, and forgets what is of no measurement of it. */
    want(record: InspectionRecord) {
      const measurements = record.wheelEnds.flatMap((wheelEnd) => wheelEnd.measurements);
      const { known } = store.getState();
      const kept = [...known].filter(([measurement]) => measurements.includes(measurement));
      if (kept.length < known.size) store.setState({ known: new Map(kept) });
      waiting = measurements
        .filter((measurement) => measurement !== running?.measurement)
        .filter((measurement) => measuredOf(store.getState().known, measurement, record) === null)
        .map((measurement) => ({ measurement, record }));
      if (!running) next();
    },
  };
}

/** Null while it is not measured. */
export function measuredOf(
  known: MeasuredAll,
  measurement: MeasurementInput,
  record: InspectionRecord,
): Measured | null {
  const kept = known.get(measurement);
  if (!kept) return null;
  const now = dependsOn(measurement, record);
  const same =
    kept.profile === now.profile &&
    kept.captures.length === now.captures.length &&
    kept.captures.every((capture, i) => capture === now.captures[i]);
  return same ? kept.measured : null;
}

/** Only its own captures: a photo more on another wheel end changes no stroke. */
function inputOf({ measurement, record }: Asked): MeasureInput {
  return { ...measureInput(record, measurement), captures: dependsOn(measurement, record).captures };
}

function dependsOn({ views, cameraProfileId, followed }: MeasurementInput, record: InspectionRecord) {
  const ids = new Set([...views, ...(followed?.sideViews ?? [])].map(({ captureId }) => captureId));
  return {
    captures: record.captures.filter(({ id }) => ids.has(id)),
    profile: record.cameraProfiles.find(({ id }) => id === cameraProfileId) ?? null,
  };
}
