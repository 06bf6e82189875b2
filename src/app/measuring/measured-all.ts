/** Measures a whole inspection in workers, each one measurement after the other; what was measured stays until its marks change. */
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

/** The page draws meanwhile; more would only take turns on the smallest machine, which has two cores. */
const MOST_WORKERS = 2;

export function createMeasuredAll(startWorker: () => Worker, mostWorkers = MOST_WORKERS) {
  const store = createStore<{ readonly known: MeasuredAll }>(() => ({ known: new Map() }));
  let waiting: readonly Asked[] = [];
  let idle: readonly Worker[] = [];
  const running = new Map<Worker, Asked>();

  function next() {
    for (let [first, ...others] = waiting; first; [first, ...others] = waiting) {
      const worker = idle[0] ?? (running.size < mostWorkers ? started() : null);
      if (!worker) return;
      idle = idle.filter((one) => one !== worker);
      waiting = others;
      running.set(worker, first);
      worker.postMessage(inputOf(first));
    }
  }

  function started(): Worker {
    const fresh = startWorker();
    fresh.addEventListener('message', ({ data }: MessageEvent<Measured>) => {
      const answered = running.get(fresh);
      running.delete(fresh);
      idle = [...idle, fresh];
      // The next is measured while the screen draws this one.
      next();
      if (answered) keep(answered, data);
    });
    // A mistake of ours inside it: that measurement stays without an answer, the others go on in a new worker.
    fresh.addEventListener('error', (event) => {
      fresh.terminate();
      running.delete(fresh);
      idle = idle.filter((one) => one !== fresh);
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
    /** Has its workers ready before there is anything to measure. */
    warm() {
      while (idle.length + running.size < mostWorkers) idle = [...idle, started()];
    },
    /** Measures what of the record is not known yet, and forgets what is of no measurement of it. */
    want(record: InspectionRecord) {
      const measurements = record.wheelEnds.flatMap((wheelEnd) => wheelEnd.measurements);
      const { known } = store.getState();
      const kept = [...known].filter(([measurement]) => measurements.includes(measurement));
      if (kept.length < known.size) store.setState({ known: new Map(kept) });
      const asked = new Set([...running.values()].map(({ measurement }) => measurement));
      waiting = measurements
        .filter((measurement) => !asked.has(measurement))
        .filter((measurement) => measuredOf(store.getState().known, measurement, record) === null)
        .map((measurement) => ({ measurement, record }));
      next();
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
