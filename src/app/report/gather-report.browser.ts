/**
 * Everything that a report needs beyond the record: every measurement done anew in a worker, every followed clip read, the pictures
 * cut out of their files. The order of the work: first the numbers, then the pictures, for these are cut by what was measured.
 * Rejects with the signal's reason when aborted.
 */
import type { ClipMeasurement } from '../../measurement/clip-measurement.ts';
import type { MeasureInput } from '../../measurement/measurement.ts';
import { type InspectionResults, inspectionResults } from '../../record/inspection-results.ts';
import type { MeasurementInput } from '../../record/measurement-input.ts';
import type { InspectionRecord } from '../../record/record.ts';
import { findingFor, measureInput } from '../../record/results.ts';
import type { ClipAnswer, ClipQuestion } from '../following/clip-curve-client.ts';
import { askApart } from '../measuring/ask-apart.browser.ts';
import type { Measured } from '../measuring/measure-client.ts';
import { measuredOf } from '../measuring/measured-all.ts';
import { measuredAll } from '../stores.ts';
import { dataUri } from './data-uri.browser.ts';
import type { ReportPictures } from './report-drawings.ts';
import { wantedPictures } from './report-pictures.ts';
import { takePictures } from './take-pictures.browser.ts';

export type GatheredReport = {
  readonly results: InspectionResults;
  readonly clips: ReadonlyMap<string, ClipMeasurement>;
  readonly pictures: ReportPictures;
};

export type GatherOptions = {
  readonly fileOf: (sha256: string) => Blob | null;
  readonly signal: AbortSignal;
  /** Measurements done, of how many. */
  readonly onProgress?: (done: number, of: number) => void;
};

export async function gatherReport(
  record: InspectionRecord,
  { fileOf, signal, onProgress = () => {} }: GatherOptions,
): Promise<GatheredReport> {
  const results = await resultsApart(record, signal, onProgress);
  const clips = await clipsApart(record, signal);
  const taken = await takePictures(wantedPictures(record, results), fileOf, signal);
  const pictures = new Map<string, string>();
  for (const [key, blob] of taken) pictures.set(key, await dataUri(blob));
  return { results, clips, pictures };
}

/** What the page has measured already is taken as it is; the rest is done here. */
async function resultsApart(
  record: InspectionRecord,
  signal: AbortSignal,
  onProgress: (done: number, of: number) => void,
): Promise<InspectionResults> {
  const all = record.wheelEnds.flatMap(({ measurements }) => measurements);
  const { known } = measuredAll.getState();
  const measured = new Map<MeasurementInput, Measured | null>(
    all.map((measurement) => [measurement, measuredOf(known, measurement, record)]),
  );
  const open = all.filter((measurement) => measured.get(measurement) === null);
  const worker = () =>
    new Worker(new URL('../measuring/measure.worker.ts', import.meta.url), { type: 'module' });
  const inputs = open.map((measurement) => measureInput(record, measurement));
  const answers = await askApart<MeasureInput, Measured>(worker, inputs, { signal, onProgress });
  for (const [i, answer] of answers.entries()) {
    const measurement = open[i];
    if (measurement) measured.set(measurement, answer);
  }
  return inspectionResults(record, (wheelEnd, measurement) => {
    const answer = measured.get(measurement);
    if (!answer) return null;
    return { measurement: answer, finding: findingFor(record, wheelEnd, measurement, answer) };
  });
}

async function clipsApart(
  record: InspectionRecord,
  signal: AbortSignal,
): Promise<ReadonlyMap<string, ClipMeasurement>> {
  const followed = record.wheelEnds.flatMap(({ measurements }) =>
    measurements.flatMap((measurement) =>
      measurement.followed ? [{ measurement, track: measurement.followed.track }] : [],
    ),
  );
  const questions = followed.map(({ measurement, track }) => ({
    input: measureInput(record, measurement),
    track,
  }));
  const worker = () =>
    new Worker(new URL('../following/clip-curve.worker.ts', import.meta.url), { type: 'module' });
  const answers = await askApart<ClipQuestion, ClipAnswer>(worker, questions, { signal });
  return new Map(
    followed.flatMap(({ measurement }, i) => {
      const answer = answers[i];
      return answer?.ok ? [[measurement.id, answer.value] as const] : [];
    }),
  );
}
