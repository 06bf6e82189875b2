import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Capture } from '../../src/captures/capture.ts';
import { type Mark, markSchema, POINT_KINDS } from '../../src/marks/mark.ts';
import { BRAKE_STATES, type View, viewSchema } from '../../src/marks/view.ts';
import { measure } from '../../src/measurement/measure.ts';
import type { MeasureInput } from '../../src/measurement/measurement.ts';
import { referencesSchema } from '../../src/references/reference.ts';
import { type ReferenceKind, simulate } from '../simulation/scene.ts';
import { notFinite } from './not-finite.ts';

/** Whatever the schemas let pass: an answer in finite numbers or a code, nothing thrown. */
function answers(input: MeasureInput): void {
  for (const view of input.views) expect(viewSchema.safeParse(view).success).toBe(true);
  expect(referencesSchema.safeParse(input.references).success).toBe(true);
  const result = measure(input);
  if (!result.ok) {
    expect(result.failure.code).toMatch(/^measurement\//);
    expect(notFinite(result.failure)).toEqual([]);
    return;
  }
  expect(notFinite(result.value)).toEqual([]);
  expect(result.value.strokeMm.u).toBeGreaterThan(0);
}

/** A counterexample is told as it is found: making it smaller takes the solver many minutes. */
const ONCE = { numRuns: 25, endOnFailure: true };

/** Evenly between the two: fast-check's doubles crowd about zero. */
const number = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1e6 }).map((n) => min + ((max - min) * n) / 1e6);

const positionPx = fc.oneof(
  { weight: 12, arbitrary: number(0, 2000) },
  { weight: 1, arbitrary: number(-1e5, 1e5) },
  { weight: 1, arbitrary: fc.constantFrom(0, 960, 540, -1e5, 1e5) },
);
const sigmaPx = fc.oneof(
  { weight: 12, arbitrary: number(0.3, 5) },
  { weight: 1, arbitrary: fc.constantFrom(0.01, 500) },
);
const readingMm = fc.oneof(number(0, 300), number(-100, 1e4), fc.constantFrom(0, -100, 1e4, 25.4));

const placed = { xPx: positionPx, yPx: positionPx, sigmaPx };
const mark = fc.oneof(
  fc.record({
    kind: fc.constantFrom(...POINT_KINDS, 'distance-end' as const, 'tape-edge' as const),
    ...placed,
  }),
  fc.record({ kind: fc.constant('tape-graduation' as const), readingMm, ...placed }),
  fc.record({ kind: fc.constant('tie-point' as const), tie: fc.constantFrom('1', '2', '3'), ...placed }),
  fc.record({
    kind: fc.constant('target-corner' as const),
    marker: fc.integer({ min: 0, max: 7 }),
    corner: fc.integer({ min: 0, max: 3 }),
    ...placed,
  }),
);

/** A face, a pin and a camshaft end first, so that most views come past the first refusals; then anything. */
const marks = fc
  .tuple(
    fc.tuple(positionPx, positionPx, positionPx, positionPx, positionPx, positionPx, sigmaPx),
    fc.array(mark, { maxLength: 14 }),
  )
  .map(([[fx, fy, px, py, cx, cy, sigma], others]) => [
    { kind: 'chamber-face' as const, xPx: fx, yPx: fy, sigmaPx: sigma },
    { kind: 'clevis-pin' as const, xPx: px, yPx: py, sigmaPx: sigma },
    { kind: 'camshaft-end' as const, xPx: cx, yPx: cy, sigmaPx: sigma },
    ...others,
  ]);

const length = fc.oneof(number(20, 300), number(0.001, 5000), fc.constantFrom(1e-300, 5000));
const uLength = fc.oneof(number(0.1, 5), fc.constantFrom(1e-300, 1e-6, 100));

const references = fc.record({
  tape: fc.option(fc.record({ zeroAtFace: fc.boolean(), unmoved: fc.boolean(), touchesPin: fc.boolean() })),
  target: fc.option(
    fc.record({
      checkMm: number(20, 500),
      uCheckMm: uLength,
      unmoved: fc.boolean(),
      touchesPin: fc.boolean(),
    }),
  ),
  pinEnd: fc.option(fc.record({ outMm: number(0, 200), uOutMm: uLength })),
  clampBand: fc.option(fc.record({ diameterMm: length, uDiameterMm: uLength })),
  armLength: fc.option(fc.record({ lengthMm: length, uLengthMm: uLength })),
  distance: fc.option(fc.record({ distanceMm: length, uDistanceMm: uLength })),
});

const capture = fc.record({
  kind: fc.constantFrom('photo' as const, 'clip' as const),
  widthPx: fc.oneof(fc.constantFrom(1920, 1080), fc.integer({ min: 1, max: 100_000 })),
  heightPx: fc.oneof(fc.constantFrom(1080, 1920), fc.integer({ min: 1, max: 100_000 })),
  focal35Mm: fc.oneof(fc.constantFrom(null, 26), number(1, 5000), fc.constant(1e-300)),
});

const profile = fc.record({
  id: fc.constant('p'),
  name: fc.constant('a camera'),
  madeAt: fc.constant('2026-05-12T13:30:00Z'),
  widthPx: fc.constantFrom(1920, 1080),
  heightPx: fc.constantFrom(1080, 1920),
  focalPx: fc.oneof(number(500, 5000), fc.constantFrom(1e-3, 1e6)),
  uLnFocal: number(0.001, 1),
  cxPx: number(-1e5, 2e5),
  cyPx: number(-1e5, 2e5),
  uCxPx: number(0.1, 1e4),
  uCyPx: number(0.1, 1e4),
  k1: number(-2, 2),
  uK1: number(0.001, 2),
  k2: number(-5, 5),
  uK2: number(0.001, 5),
  rmsPx: fc.constant(0.3),
  photoCount: fc.constant(10),
  cornerCount: fc.constant(500),
});

const anyInput = fc
  .record({
    views: fc.tuple(marks, marks, fc.option(marks)),
    captures: fc.tuple(capture, capture, capture),
    references,
    cameraStill: fc.boolean(),
    cameraProfile: fc.option(profile),
  })
  .map(({ views, captures, ...rest }): MeasureInput => {
    let nextId = 0;
    const marked = views.flatMap((of, i): View[] => {
      if (!of) return [];
      const withIds = of.map((m): Mark => ({ ...m, id: `m${nextId++}`, placedBy: 'hand' }));
      return [{ state: BRAKE_STATES[i] as View['state'], captureId: `c${i}`, frame: null, marks: withIds }];
    });
    return { ...rest, views: marked, sideViews: [], captures: captures.map((c, i) => captureOf(`c${i}`, c)) };
  });

type CameraFacts = Pick<Capture, 'kind' | 'widthPx' | 'heightPx' | 'focal35Mm'>;

function captureOf(id: string, facts: CameraFacts): Capture {
  return {
    id,
    ...facts,
    fileName: id,
    mediaType: 'image/jpeg',
    sizeBytes: 1,
    sha256: '0'.repeat(64),
    rotationDeg: 0,
    takenAt: null,
    fileWrittenAt: null,
    addedAt: null,
    clip: null,
  };
}

test('any marks, references and pictures that the schemas let pass', () => {
  fc.assert(fc.property(anyInput, answers), { ...ONCE, seed: 20 });
});

const KINDS: readonly ReferenceKind[] = [
  'tape',
  'clamp-band',
  'tape+arm',
  'tape+band',
  'arm-length',
  'distance',
];

const good = fc.record({
  seed: fc.integer({ min: 1, max: 500 }),
  reference: fc.constantFrom(...KINDS),
  cameraStill: fc.boolean(),
  rodMarks: fc.boolean(),
  anyRoll: fc.constant(true),
  sigmaPx: fc.constant(1),
});

type Damage = (marks: readonly Mark[]) => readonly Mark[];

/** What a slip of the hand or a broken file makes of a good set of marks. */
const damage: fc.Arbitrary<Damage> = fc.oneof(
  fc.nat(40).map(
    (i): Damage =>
      (of) =>
        of.filter((_m, k) => k !== i),
  ),
  fc.tuple(fc.nat(40), positionPx, positionPx).map(
    ([i, xPx, yPx]): Damage =>
      (of) =>
        of.map((m, k) => (k === i % of.length ? { ...m, xPx, yPx } : m)),
  ),
  fc.tuple(fc.nat(40), fc.constantFrom(0.01, 500)).map(
    ([i, sigma]): Damage =>
      (of) =>
        of.map((m, k) => (k === i % of.length ? { ...m, sigmaPx: sigma } : m)),
  ),
  fc.constantFrom(0.01, 15).map(
    (sigma): Damage =>
      (of) =>
        of.map((m) => ({ ...m, sigmaPx: sigma })),
  ),
  fc.nat(40).map(
    (i): Damage =>
      (of) => [...of, { ...(of[i % of.length] as Mark), id: `twice-${of.length}` }],
  ),
  fc.constantFrom<Mark['kind']>('tape-graduation', 'clamp-band').map(
    (kind): Damage =>
      (of) => {
        const first = of.find((m) => m.kind === kind);
        return of.map((m, k) =>
          first && m.kind === kind ? { ...m, xPx: first.xPx + k, yPx: first.yPx + k } : m,
        );
      },
  ),
  fc.tuple(number(-1, 1), number(0.01, 3)).map(
    ([shear, stretch]): Damage =>
      (of) =>
        of.map((m) => ({ ...m, xPx: m.xPx * stretch + m.yPx * shear })),
  ),
);

test('good marks, then damaged: lost, moved, doubled, heaped, sheared, of tiny or huge uncertainty', () => {
  fc.assert(
    fc.property(good, fc.array(damage, { minLength: 1, maxLength: 4 }), (options, damages) => {
      const { input } = simulate(options);
      const views = input.views.map((view) => ({
        ...view,
        marks: damages.reduce<readonly Mark[]>((of, change) => (of.length > 0 ? change(of) : of), view.marks),
      }));
      const valid = views.every((view) => view.marks.every((m) => markSchema.safeParse(m).success));
      fc.pre(valid);
      answers({ ...input, views });
    }),
    { ...ONCE, seed: 21 },
  );
});
