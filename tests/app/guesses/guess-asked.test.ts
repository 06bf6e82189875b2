import { expect, test } from 'vitest';
import { guessAsked, marksProposed, openProposals } from '../../../src/app/guesses/guess-asked.ts';
import { applyToMarks } from '../../../src/app/work/apply-to-marks.ts';
import type { Mark } from '../../../src/marks/mark.ts';
import type { View } from '../../../src/marks/view.ts';
import type { MeasurementInput } from '../../../src/record/measurement-input.ts';
import { NO_REFERENCES } from '../../../src/references/reference.ts';
import type { Proposal } from '../../../src/vision/guess-sight.ts';

const TAPE = { zeroAtFace: true, unmoved: false, touchesPin: false };
const at = (id: string, xPx: number) => ({ id, xPx, yPx: 10, sigmaPx: 1, placedBy: 'hand' }) as const;
const pin: Mark = { kind: 'clevis-pin', ...at('pin', 200) };
const graduations = [1, 2, 3, 4].map(
  (k): Mark => ({ kind: 'tape-graduation', readingMm: 25.4 * k, ...at(`g${k}`, 50 * k) }),
);
const view = (state: View['state'], marks: readonly Mark[]): View => ({
  state,
  captureId: state,
  frame: null,
  marks,
});
const measurement = (views: readonly View[], tape: typeof TAPE | null = TAPE) =>
  ({ views, references: { ...NO_REFERENCES, tape }, cameraStill: false }) as unknown as MeasurementInput;
const mark = (readingMm: number | null = null) => ({ placePx: [5, 6] as const, sigmaPx: 0.3, readingMm });
const proposals: readonly Proposal[] = [
  { kind: 'tape-graduation', marks: [mark(25.4), mark(50.8)], confidence: 0.99 },
  { kind: 'clevis-pin', marks: [mark()], confidence: 0.95 },
];
const kinds = (marks: readonly Mark[], tape: typeof TAPE | null = TAPE) => {
  const seen = view('released', marks);
  return openProposals(seen, measurement([seen], tape), proposals).map(({ kind }) => kind);
};

test('what a hand has marked, or nobody asks for, is not proposed', () => {
  expect(kinds([])).toEqual(['tape-graduation', 'clevis-pin']);
  expect(kinds([pin])).toEqual(['tape-graduation']);
  expect(kinds(graduations.slice(0, 1))).toEqual(['clevis-pin']);
  expect(kinds([], null)).toEqual(['clevis-pin']);
});

test('the second picture is guessed at by the marks of the first, the first by itself', () => {
  const views = [view('released', [pin, ...graduations]), view('applied', [pin])];
  expect(guessAsked(measurement(views), 'released').other).toBeNull();
  expect(guessAsked(measurement(views), 'applied').other).toMatchObject({
    pinPx: [200, 10],
    camshaftPx: null,
    tape: graduations.map(({ xPx }) => ({ placePx: [xPx, 10] })),
  });
  const few = [view('released', [pin, ...graduations.slice(0, 3)]), view('applied', [])];
  expect(guessAsked(measurement(few), 'applied').other).toBeNull();
});

test('taken, they are marks of an assist beside those of the hand', () => {
  let count = 0;
  const marks = proposals.flatMap((each) => marksProposed(each, () => `new ${count++}`));
  const face: Mark = { kind: 'chamber-face', ...at('face', 0) };
  const after = applyToMarks([face], { type: 'take-found', state: 'released', marks, instead: [] });
  expect(after[0]).toBe(face);
  expect(after.slice(1).map(({ kind, placedBy }) => `${kind} ${placedBy}`)).toEqual([
    'tape-graduation assist',
    'tape-graduation assist',
    'clevis-pin assist',
  ]);
});
