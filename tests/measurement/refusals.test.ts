import { expect, test } from 'vitest';
import type { Mark, MarkKind } from '../../src/marks/mark.ts';
import type { View } from '../../src/marks/view.ts';
import { measure } from '../../src/measurement/measure.ts';
import type { MeasureInput, MeasurementFailure } from '../../src/measurement/measurement.ts';
import { NO_REFERENCES, type References } from '../../src/references/reference.ts';
import { type ReferenceKind, simulate } from '../simulation/scene.ts';

function sceneOf(reference: ReferenceKind): MeasureInput {
  return simulate({ seed: 2, reference, sigmaPx: 1, rodMarks: true }).input;
}

const TAPE = sceneOf('tape');
const BAND = sceneOf('clamp-band');
const ARM = sceneOf('arm-length');
const DISTANCE = sceneOf('distance');

function refusal(input: MeasureInput): MeasurementFailure | 'measured' {
  const result = measure(input);
  return result.ok ? 'measured' : result.failure;
}

function withMarks(
  input: MeasureInput,
  change: (marks: readonly Mark[], view: View) => readonly Mark[],
): MeasureInput {
  return { ...input, views: input.views.map((view) => ({ ...view, marks: change(view.marks, view) })) };
}

function without(input: MeasureInput, kind: MarkKind, state?: View['state']): MeasureInput {
  return withMarks(input, (marks, view) =>
    state === undefined || view.state === state ? marks.filter((m) => m.kind !== kind) : marks,
  );
}

function withReferences(input: MeasureInput, references: Partial<References>): MeasureInput {
  return { ...input, references: { ...NO_REFERENCES, ...references } };
}

/** Keeps so many marks of a kind in each view. */
function keeping(input: MeasureInput, kind: MarkKind, count: number): MeasureInput {
  return withMarks(input, (marks) => {
    const kept = marks.filter((m) => m.kind === kind).slice(0, count);
    return marks.filter((m) => m.kind !== kind || kept.includes(m));
  });
}

test('the scenes as they are can be measured', () => {
  for (const input of [TAPE, BAND, ARM, DISTANCE]) expect(refusal(input)).toBe('measured');
});

test.each(['released', 'applied'] as const)('no %s view', (state) => {
  const views = TAPE.views.filter((view) => view.state !== state);
  expect(refusal({ ...TAPE, views })).toEqual({ code: 'measurement/view-missing', state });
});

test('no view at all', () => {
  expect(refusal({ ...TAPE, views: [] })).toEqual({ code: 'measurement/view-missing', state: 'released' });
});

test('one photo for both states, or one frame of a clip', () => {
  const [released, applied] = TAPE.views as [View, View];
  const same = { code: 'measurement/same-picture', states: ['released', 'applied'] };
  expect(refusal({ ...TAPE, views: [released, { ...applied, captureId: released.captureId }] })).toEqual(
    same,
  );
  const at = (view: View, timeTicks: number): View => ({
    ...view,
    captureId: 'c0',
    frame: { index: timeTicks, timeTicks },
  });
  expect(refusal({ ...TAPE, views: [at(released, 7), at(applied, 7)] })).toEqual(same);
  expect(refusal({ ...TAPE, views: [at(released, 7), at(applied, 90)] })).toBe('measured');
});

test.each(
  (['released', 'applied'] as const).flatMap((state) =>
    (['chamber-face', 'clevis-pin'] as const).map((kind) => ({ state, kind })),
  ),
)('no $kind in the $state view', ({ state, kind }) => {
  expect(refusal(without(TAPE, kind, state))).toEqual({ code: 'measurement/mark-missing', state, kind });
});

test('nothing of known size', () => {
  const noScale = { code: 'measurement/no-scale' };
  expect(refusal(withReferences(TAPE, {}))).toEqual(noScale);
  // Marks of a tape, a rim or an arm are no scale while nobody states what they are.
  for (const input of [BAND, ARM, DISTANCE]) expect(refusal(withReferences(input, {}))).toEqual(noScale);
});

test.each([
  { what: 'graduations', input: TAPE, kind: 'tape-graduation', have: 1, need: 2 },
  { what: 'graduations', input: TAPE, kind: 'tape-graduation', have: 0, need: 2 },
  { what: 'rim points', input: BAND, kind: 'clamp-band', have: 4, need: 5 },
  { what: 'ends of the distance', input: DISTANCE, kind: 'distance-end', have: 1, need: 2 },
] as const)('$have $what of $need', ({ input, kind, have, need }) => {
  expect(refusal(keeping(input, kind, have))).toEqual({
    code: 'measurement/too-few-points',
    kind,
    have,
    need,
  });
  expect(refusal(keeping(input, kind, need))).toBe('measured');
});

test('two graduations of one reading are one', () => {
  const twice = withMarks(TAPE, (marks) =>
    marks.map((m) => (m.kind === 'tape-graduation' ? { ...m, readingMm: 50.8 } : m)),
  );
  const failure = { code: 'measurement/too-few-points', kind: 'tape-graduation', have: 1, need: 2 };
  expect(refusal(twice)).toEqual(failure);
});

test('an arm length without the camshaft end marked', () => {
  const failure = { code: 'measurement/mark-missing', state: 'released', kind: 'camshaft-end' };
  expect(refusal(without(ARM, 'camshaft-end'))).toEqual(failure);
});

test('one usable reference is enough, whatever else is stated', () => {
  const { tape } = TAPE.references;
  const band = { diameterMm: 183.36, uDiameterMm: 1 };
  expect(refusal(withReferences(TAPE, { tape, clampBand: band }))).toBe('measured');
  expect(
    refusal(
      withReferences(BAND, {
        tape: { zeroAtFace: true, unmoved: false, touchesPin: false },
        clampBand: band,
      }),
    ),
  ).toBe('measured');
});

test.each([
  ['chamber-face', 'clevis-pin'],
  ['chamber-face', 'camshaft-end'],
  ['clevis-pin', 'camshaft-end'],
] as const)('%s and %s on one point', (kind, other) => {
  const onto = (offPx: number) =>
    withMarks(TAPE, (marks, view) => {
      const target = marks.find((m) => m.kind === kind);
      if (!target || view.state !== 'applied') return marks;
      return marks.map((m) => (m.kind === other ? { ...m, xPx: target.xPx + offPx, yPx: target.yPx } : m));
    });
  const failure = { code: 'measurement/points-coincide', state: 'applied', kinds: [kind, other] };
  expect(refusal(onto(0))).toEqual(failure);
  // Within five joint standard uncertainties of sqrt(2) px.
  expect(refusal(onto(7))).toEqual(failure);
  expect(refusal(onto(7.2))).not.toEqual(failure);
});

test.each([
  { input: TAPE, kind: 'tape-graduation' },
  { input: BAND, kind: 'clamp-band' },
  { input: DISTANCE, kind: 'distance-end' },
] as const)('every $kind on one spot', ({ input, kind }) => {
  const heaped = withMarks(input, (marks) =>
    marks.map((m) => (m.kind === kind ? { ...m, xPx: 800, yPx: 400 } : m)),
  );
  const failure = { code: 'measurement/points-coincide', state: 'released', kinds: [kind, kind] };
  expect(refusal(heaped)).toEqual(failure);
});

test.each(['tape', 'clamp-band', 'tape+arm', 'tape+band'] as const)(
  'the two pictures exchanged, %s',
  (reference) => {
    for (const cameraStill of [true, false]) {
      const { input, truth } = simulate({ seed: 6, reference, sigmaPx: 1, cameraStill, strokeMm: 50 });
      const exchanged = input.views.map((view) => ({
        ...view,
        state: view.state === 'released' ? ('applied' as const) : ('released' as const),
      }));
      const failure = refusal({ ...input, views: exchanged });
      if (failure === 'measured' || failure.code !== 'measurement/views-swapped')
        throw new Error(`not told: ${JSON.stringify(failure)}`);
      expect(Math.abs(failure.strokeMm + truth.strokeMm)).toBeLessThan(10);
    }
  },
);

test('a view of a capture that is not there', () => {
  const captures = TAPE.captures.filter(({ id }) => id !== 'c1');
  expect(refusal({ ...TAPE, captures })).toEqual({ code: 'measurement/capture-missing', captureId: 'c1' });
});

test('a band of unknown diameter is no scale, and helps one that is', () => {
  const clampBand = { diameterMm: 185, uDiameterMm: 30 };
  expect(refusal(withReferences(BAND, { clampBand }))).toEqual({ code: 'measurement/no-scale' });
  const { input } = simulate({ seed: 3, reference: 'tape+band', sigmaPx: 0.5, rodMarks: true });
  const u95 = (references: MeasureInput['references']): number => {
    const result = measure({ ...input, references });
    return result.ok ? result.value.strokeMm.U95 : Number.NaN;
  };
  expect(u95({ ...input.references, clampBand })).toBeLessThan(
    0.8 * u95({ ...input.references, clampBand: null }),
  );
});
