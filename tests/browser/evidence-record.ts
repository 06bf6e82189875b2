/** A record of the sample pair with a tape, marked at the points of its truth: what a careful technician would have saved. */
import { createHash, randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { Mark } from '../../src/marks/mark.ts';
import type { InspectionRecord } from '../../src/record/record.ts';
import { demoCapture } from '../bench/demo-capture.ts';
import { exampleRecord } from '../record/example-record.ts';
import { type TruthView, truthOf } from './main-job-truth.ts';

const SET = 'pair-tape';
export const PICTURES = ['released.jpg', 'applied.jpg'].map((name) => `sample-media/${SET}/${name}`);

const MM_PER_INCH = 25.4;

/** The picture's bytes; with more behind its end, which no decoder reads, where a test needs a heavy one. */
export function pictureBytes(path: string, paddingBytes = 0): Buffer {
  return Buffer.concat([readFileSync(path), randomBytes(paddingBytes)]);
}

export function pairRecord(pictures = PICTURES.map((path) => pictureBytes(path))): InspectionRecord {
  const record = exampleRecord();
  const truth = truthOf(SET);
  const [wheelEnd] = record.wheelEnds;
  const [measurement] = wheelEnd?.measurements ?? [];
  const [sample] = record.captures;
  if (!wheelEnd || !measurement || !sample) throw new Error('the example has no measurement');
  const captures = truth.views.map(({ state, widthPx, heightPx }) => {
    const bytes = pictures[PICTURES.findIndex((path) => path.endsWith(`${state}.jpg`))] ?? Buffer.of();
    const sha256 = createHash('sha256').update(bytes).digest('hex');
    const { takenAt, focal35Mm } = demoCapture(state, `${SET}/${state}.jpg`);
    return {
      ...sample,
      id: state,
      fileName: `${state}.jpg`,
      sizeBytes: bytes.length,
      sha256,
      widthPx,
      heightPx,
      takenAt,
      fileWrittenAt: null,
      addedAt: null,
      focal35Mm,
    };
  });
  const views = truth.views.map((view) => ({
    state: view.state,
    captureId: view.state,
    frame: null,
    marks: marksOf(view),
  }));
  const overStrokeMark = { released: null, applied: null, bandColour: null };
  return {
    ...record,
    id: 'evidence-pair',
    vehicle: { ...record.vehicle, unit: 'Gravel trailer GT-14' },
    inspector: { name: 'R. Ames', qualification: '' },
    conditions: { ...record.conditions, gaugeCaptureId: null },
    captures,
    cameraProfiles: [],
    wheelEnds: [
      {
        ...wheelEnd,
        identification: { ...wheelEnd.identification, captureId: null },
        adjusterCheck: null,
        photos: [],
        measurements: [{ ...measurement, id: 'pair-found', views, overStrokeMark, followed: null }],
      },
    ],
    history: record.history.slice(0, 1),
  };
}

function marksOf({ state, points }: TruthView): Mark[] {
  const { chamberFace, clevisPin, camshaftEnd, tapeGraduations = [] } = points;
  const placed = (name: string, [xPx, yPx]: readonly [number, number]) => ({
    id: `${state}-${name}`,
    xPx,
    yPx,
    sigmaPx: 1,
    placedBy: 'hand' as const,
  });
  return [
    { kind: 'chamber-face', ...placed('face', chamberFace.px) },
    { kind: 'clevis-pin', ...placed('pin', clevisPin.px) },
    { kind: 'camshaft-end', ...placed('camshaft', camshaftEnd.px) },
    ...tapeGraduations.map(
      ({ px, inches }): Mark => ({
        kind: 'tape-graduation',
        readingMm: inches * MM_PER_INCH,
        ...placed(`tape-${inches}`, px),
      }),
    ),
  ];
}
