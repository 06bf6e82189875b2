/** A trailer of three axles whose pictures are our sample media, marked where their truth says: all that a report can hold. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { mmFromInches } from '../../src/basics/units.ts';
import type { Capture } from '../../src/captures/capture.ts';
import type { Mark } from '../../src/marks/mark.ts';
import type { View } from '../../src/marks/view.ts';
import type { MeasurementInput, Purpose } from '../../src/record/measurement-input.ts';
import type { InspectionRecord } from '../../src/record/record.ts';
import type { WheelEnd } from '../../src/record/wheel-end.ts';
import { NO_REFERENCES } from '../../src/references/reference.ts';
import { exampleRecord } from '../record/example-record.ts';
import { type Px, type TruthView, truthOf, viewOf } from './main-job-truth.ts';

export const REPORT_FILES = [
  'pair-tape/released.jpg',
  'pair-tape/applied.jpg',
  'pair-band/released.jpg',
  'pair-band/applied.jpg',
  'clip-tape/application.mp4',
].map((name) => `sample-media/${name}`);

/** To a record that was opened without them. */
export async function bringPictures(page: Page): Promise<void> {
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: 'Choose the files' }).click(),
  ]);
  await chooser.setFiles(REPORT_FILES);
  await expect(page.getByRole('button', { name: 'Choose the files' })).toBeHidden({ timeout: 20_000 });
}

export function reportRecord(): InspectionRecord {
  const example = exampleRecord();
  const [, worn] = example.wheelEnds;
  if (!worn) throw new Error('the example has a repaired wheel end');
  const bare: WheelEnd = {
    ...worn,
    identification: { portBoss: null, tag: 'cannot-tell', marking: '', brake: 'spring', captureId: null },
    adjusterCheck: null,
    handReadings: [],
    otherReadings: [],
    causeAnswers: [],
    repairs: [],
    photos: [],
    notes: '',
  };
  const identification = { ...worn.identification, captureId: 'tape-released' };
  const chamber = {
    family: 'clamp',
    type: '30',
    strokeClass: 'standard',
    ratedStrokeMm: null,
    markedLimitMm: null,
  } as const;
  return {
    ...example,
    id: 'report-sample',
    vehicle: {
      ...example.vehicle,
      unit: 'Gravel trailer GT-14 (invented)',
      axles: [{ kind: 'lift' }, { kind: 'trailer' }, { kind: 'trailer' }],
    },
    conditions: { ...example.conditions, gaugeCaptureId: 'band-released' },
    captures: captures(),
    wheelEnds: [
      {
        ...bare,
        id: 'e1',
        position: { axle: 1, side: 'right' },
        chamber: { ...chamber, type: '20' },
        measurements: [bandPair()],
      },
      {
        ...bare,
        id: 'e2',
        position: { axle: 2, side: 'left' },
        chamber,
        measurements: [tapePair('as-found')],
      },
      {
        ...worn,
        id: 'e3',
        position: { axle: 3, side: 'right' },
        chamber,
        identification,
        adjusterCheck: worn.adjusterCheck && {
          ...worn.adjusterCheck,
          turns: worn.adjusterCheck.turns.map((turn, i) => ({
            ...turn,
            captureId: i === 0 ? 'band-released' : 'band-applied',
          })),
        },
        photos: [{ captureId: 'tape-applied', caption: 'Old adjuster on the bench' }],
        measurements: [clipFrames(), tapePair('after-repair')],
      },
    ],
  };
}

function captures(): Capture[] {
  const photo = (id: string, path: string, set: string): Capture => {
    const { widthPx, heightPx, focalPx } = viewOf(truthOf(set), 'released');
    const focal35Mm = (36 * focalPx) / widthPx;
    return {
      ...factsOf(id, path),
      kind: 'photo',
      mediaType: 'image/jpeg',
      widthPx,
      heightPx,
      focal35Mm,
      clip: null,
    };
  };
  return [
    photo('tape-released', 'pair-tape/released.jpg', 'pair-tape'),
    photo('tape-applied', 'pair-tape/applied.jpg', 'pair-tape'),
    photo('band-released', 'pair-band/released.jpg', 'pair-band'),
    photo('band-applied', 'pair-band/applied.jpg', 'pair-band'),
    {
      ...factsOf('clip', 'clip-tape/application.mp4'),
      kind: 'clip',
      mediaType: 'video/mp4',
      widthPx: 1920,
      heightPx: 1080,
      focal35Mm: null,
      clip: {
        ticksPerSecond: TICKS_PER_SECOND,
        frameCount: 135,
        durationS: 4.5,
        codec: 'avc1.640028',
        headerTime: null,
        framesBy: 'decoder',
      },
    },
  ];
}

function factsOf(id: string, path: string) {
  const bytes = readFileSync(`sample-media/${path}`);
  return {
    id,
    fileName: path.replace('/', '-'),
    sizeBytes: bytes.length,
    sha256: createHash('sha256').update(bytes).digest('hex'),
    rotationDeg: 0,
    takenAt: null,
    fileWrittenAt: null,
    addedAt: null,
  } as const;
}

const TICKS_PER_SECOND = 15360;
const FRAME_TICKS = 512;

function tapePair(purpose: Purpose): MeasurementInput {
  return tapeMeasurement(`tape-${purpose}`, purpose, [
    viewFrom('pair-tape', 'released', 'tape-released', tapeMarks),
    viewFrom('pair-tape', 'applied', 'tape-applied', tapeMarks),
  ]);
}

function clipFrames(): MeasurementInput {
  return tapeMeasurement('clip-as-found', 'as-found', [
    viewFrom('clip-tape', 'released', 'clip', tapeMarks),
    viewFrom('clip-tape', 'applied', 'clip', tapeMarks),
  ]);
}

function bandPair(): MeasurementInput {
  const pair = tapeMeasurement('band-as-found', 'as-found', [
    viewFrom('pair-band', 'released', 'band-released', bandMarks),
    viewFrom('pair-band', 'applied', 'band-applied', bandMarks),
  ]);
  return { ...pair, references: { ...pair.references, tape: null } };
}

function tapeMeasurement(id: string, purpose: Purpose, views: readonly View[]): MeasurementInput {
  return {
    id,
    purpose,
    cameraStill: false,
    cameraProfileId: null,
    views,
    references: {
      ...NO_REFERENCES,
      tape: { zeroAtFace: true, unmoved: false, touchesPin: false },
      clampBand: { diameterMm: mmFromInches(8.09375), uDiameterMm: 1 },
      armLength: { lengthMm: 139.7, uLengthMm: 0.8 },
    },
    followed: null,
    overStrokeMark: {
      released: { sight: 'not-seen', crop: null, proposal: null },
      applied: {
        sight: purpose === 'as-found' ? 'seen' : 'not-seen',
        crop: cropAtFace(views[1]),
        proposal: null,
      },
      bandColour: 'red or orange',
    },
  };
}

function cropAtFace(view: View | undefined) {
  const face = view?.marks.find(({ kind }) => kind === 'chamber-face');
  return face ? { xPx: face.xPx - 120, yPx: face.yPx - 90, widthPx: 240, heightPx: 180 } : null;
}

function viewFrom(
  set: string,
  state: 'released' | 'applied',
  captureId: string,
  marksOf: (view: TruthView) => Mark[],
): View {
  const truth = viewOf(truthOf(set), state);
  const { frameIndex: index } = truth;
  const frame = index === undefined ? null : { index, timeTicks: index * FRAME_TICKS };
  const marks = [...pointMarks(truth), ...marksOf(truth)].map((mark) => ({
    ...mark,
    id: `${captureId}-${state}-${mark.id}`,
  }));
  return { state, captureId, frame, marks };
}

function pointMarks({ points }: TruthView): Mark[] {
  return [
    { kind: 'chamber-face', ...placed('face', points.chamberFace.px) },
    { kind: 'clevis-pin', ...placed('pin', points.clevisPin.px) },
    { kind: 'camshaft-end', ...placed('camshaft', points.camshaftEnd.px) },
  ];
}

const TAPE_INCHES = [1, 4, 7, 10];

function tapeMarks({ points }: Pick<TruthView, 'points'>): Mark[] {
  const graduations: Mark[] = (points.tapeGraduations ?? [])
    .filter(({ inches }) => TAPE_INCHES.includes(inches))
    .map(({ inches, px }) => ({
      kind: 'tape-graduation',
      readingMm: mmFromInches(inches),
      ...placed(`tape-${inches}`, px),
    }));
  return [...graduations, ...bandMarks({ points })];
}

function bandMarks({ points }: Pick<TruthView, 'points'>): Mark[] {
  return points.clampBand
    .filter(({ visible }) => visible)
    .map(({ angleDeg, px }) => ({ kind: 'clamp-band', ...placed(`band-${angleDeg}`, px) }));
}

function placed(id: string, [xPx, yPx]: Px) {
  return { id, xPx, yPx, sigmaPx: 1, placedBy: 'hand' } as const;
}
