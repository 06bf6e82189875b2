/**
 * A sample pair as a saved record: marked at the points of its truth, what a careful technician would have saved. Opened in the
 * app, it is where a test begins whose point is not the placing of marks.
 */
import { createHash, randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { mmFromInches } from '../../src/basics/units.ts';
import type { Mark } from '../../src/marks/mark.ts';
import type { InspectionRecord } from '../../src/record/record.ts';
import { recordText } from '../../src/record/save-record.ts';
import { NO_REFERENCES, type References } from '../../src/references/reference.ts';
import { demoCapture } from '../bench/demo-capture.ts';
import { exampleRecord } from '../record/example-record.ts';
import { type Px, type TruthView, truthOf } from './main-job-truth.ts';
import { choose, type FileToChoose } from './shell-start.ts';

export type PairSet = 'pair-tape' | 'pair-band';

const STATES = ['released', 'applied'] as const;

/** The pictures; with more behind their end, which no decoder reads, where a test needs heavy ones. */
export function pairPictures(set: PairSet, paddingBytes = 0): readonly FileToChoose[] {
  return STATES.map((state) => ({
    name: `${state}.jpg`,
    mimeType: 'image/jpeg',
    buffer: Buffer.concat([readFileSync(`sample-media/${set}/${state}.jpg`), randomBytes(paddingBytes)]),
  }));
}

export type PairRecord = {
  readonly set: PairSet;
  readonly pictures: readonly FileToChoose[];
  readonly references: References;
  readonly marksOf: (view: TruthView) => readonly Mark[];
};

/** Chamber type 30, standard stroke. */
export function pairRecord({ set, pictures, references, marksOf }: PairRecord): InspectionRecord {
  const record = exampleRecord();
  const truth = truthOf(set);
  const [wheelEnd] = record.wheelEnds;
  const [measurement] = wheelEnd?.measurements ?? [];
  if (!wheelEnd || !measurement) throw new Error('the example has no measurement');
  const captures = pictures.map(({ name, buffer }, i) => ({
    ...demoCapture(STATES[i] ?? '', `${set}/${name}`),
    sizeBytes: buffer.length,
    sha256: createHash('sha256').update(buffer).digest('hex'),
  }));
  const views = truth.views.map((view) => ({
    state: view.state,
    captureId: view.state,
    frame: null,
    marks: marksOf(view),
  }));
  const overStrokeMark = { released: null, applied: null, bandColour: null };
  return {
    ...record,
    id: 'prepared-pair',
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
        measurements: [
          { ...measurement, id: 'pair-found', views, references, overStrokeMark, followed: null },
        ],
      },
    ],
    history: record.history.slice(0, 1),
  };
}

/** From the first screen to the pair's pictures with their marks. */
export async function openPair(page: Page, pair: PairRecord): Promise<void> {
  await page.goto('/');
  const buffer = Buffer.from(recordText(pairRecord(pair)));
  await choose(page, 'Open a saved record', [{ name: 'gt-14.json', mimeType: 'application/json', buffer }]);
  await choose(page, 'Choose the files', pair.pictures);
  await expect(page.getByRole('button', { name: 'Choose the files' })).toBeHidden();
}

/** With tape and arm length, every graduation marked. */
export function tapePair(paddingBytes = 0): PairRecord {
  return {
    set: 'pair-tape',
    pictures: pairPictures('pair-tape', paddingBytes),
    references: {
      ...NO_REFERENCES,
      tape: { zeroAtFace: true, unmoved: false, touchesPin: false },
      armLength: { lengthMm: 139.7, uLengthMm: 1 },
    },
    marksOf: ({ state, points }) => [
      placed(state, 'chamber-face', points.chamberFace.px),
      placed(state, 'clevis-pin', points.clevisPin.px),
      placed(state, 'camshaft-end', points.camshaftEnd.px),
      ...(points.tapeGraduations ?? []).map(({ px, inches }) => graduation(state, inches, px)),
    ],
  };
}

type PointKind = 'chamber-face' | 'clevis-pin' | 'camshaft-end' | 'clamp-band';

export function placed(state: string, kind: PointKind, [xPx, yPx]: Px, sigmaPx = 1, number = 1): Mark {
  return { kind, id: `${state}-${kind}-${number}`, xPx, yPx, sigmaPx, placedBy: 'hand' };
}

export function graduation(state: string, inches: number, [xPx, yPx]: Px, sigmaPx = 1): Mark {
  const id = `${state}-tape-${inches}`;
  return {
    kind: 'tape-graduation',
    readingMm: mmFromInches(inches),
    id,
    xPx,
    yPx,
    sigmaPx,
    placedBy: 'hand',
  };
}
