/** What the demo's technician found at each wheel end of gravel trailer GT-21. Everything is invented; no result is in it. */

import { newMeasurement, newWheelEnd } from '../../src/app/work/new-record.ts';
import { U_ARM_STAMPED_MM, U_BAND_TABLE_MM, U_PIN_END_MM } from '../../src/app/work/usual-references.ts';
import { drawFrom } from '../../src/basics/random.ts';
import { mmFromInches } from '../../src/basics/units.ts';
import type { MeasurementInput, Purpose } from '../../src/record/measurement-input.ts';
import type { WheelEnd } from '../../src/record/wheel-end.ts';
import { NO_REFERENCES, type References } from '../../src/references/reference.ts';
import { demoMarks } from './demo-marks.ts';
import { type DemoTruth, truthOf } from './demo-truth.ts';

export const DEMO_TECHNICIAN = 'Invented technician';

const SIXTEENTH_MM = mmFromInches(1 / 16);

const CHAMBER: WheelEnd['chamber'] = {
  family: 'clamp',
  type: '30',
  strokeClass: 'standard',
  ratedStrokeMm: null,
  markedLimitMm: null,
};

/** No tape at hand: the published diameter of a type 30 clamp band is all there is. */
const BAND_ALONE: References = {
  ...NO_REFERENCES,
  clampBand: { diameterMm: mmFromInches(8 + 3 / 32), uDiameterMm: U_BAND_TABLE_MM },
};

/** A tape hooked on the chamber face, the arm length stamped on the arm, the pin's end measured with a rule. */
const ALL_AT_HAND: References = {
  ...BAND_ALONE,
  tape: { zeroAtFace: true, unmoved: false, touchesPin: false },
  armLength: { lengthMm: mmFromInches(5.5), uLengthMm: U_ARM_STAMPED_MM },
  pinEnd: { outMm: mmFromInches(1), uOutMm: U_PIN_END_MM },
};

/** The wrench was watched by eye. */
const NO_TURNS = { backedOff: null, cameraStill: false, turns: [] } as const;

export type MeasuredSet = {
  /** Folder below the sample media. */
  readonly set: string;
  /** Also the beginning of its captures' ids. */
  readonly id: string;
  readonly purpose: Purpose;
  readonly references: References;
  readonly seed: number;
};

const SETS = {
  axle1Left: { set: 'pair-tape', id: '1-left-found', purpose: 'as-found', references: ALL_AT_HAND, seed: 11 },
  axle1Right: {
    set: 'inspection/axle-1-right',
    id: '1-right-found',
    purpose: 'as-found',
    references: BAND_ALONE,
    seed: 12,
  },
  axle2Left: {
    set: 'inspection/axle-2-left-found',
    id: '2-left-found',
    purpose: 'as-found',
    references: ALL_AT_HAND,
    seed: 21,
  },
  axle2LeftRepaired: {
    set: 'inspection/axle-2-left-repaired',
    id: '2-left-repaired',
    purpose: 'after-repair',
    references: ALL_AT_HAND,
    seed: 22,
  },
  axle2Right: {
    set: 'inspection/axle-2-right',
    id: '2-right-found',
    purpose: 'as-found',
    references: ALL_AT_HAND,
    seed: 23,
  },
} as const satisfies Readonly<Record<string, MeasuredSet>>;

export const MEASURED_SETS: readonly MeasuredSet[] = Object.values(SETS);

export function demoWheelEnds(): readonly WheelEnd[] {
  return [
    axle1Left(),
    axle1Right(),
    axle2Left(),
    axle2Right(),
    axle3Left(),
    newWheelEnd('3-right', { axle: 3, side: 'right' }),
  ];
}

export function captureIdOf({ id }: MeasuredSet, state: string): string {
  return `${id}-${state}`;
}

function axle1Left(): WheelEnd {
  return {
    ...identified('1-left', { axle: 1, side: 'left' }, captureIdOf(SETS.axle1Left, 'released')),
    measurements: [measured(SETS.axle1Left, 'not-seen')],
    notes: 'Dust seal dry, no oil. Paint on the rod starts behind the face.',
  };
}

/** The stroke lies near the limit and the reference is weak: a reading by tape measure would decide, and nobody took one. */
function axle1Right(): WheelEnd {
  const wheelEnd = identified(
    '1-right',
    { axle: 1, side: 'right' },
    captureIdOf(SETS.axle1Right, 'released'),
  );
  return {
    ...wheelEnd,
    identification: { ...wheelEnd.identification, tag: 'cannot-tell' },
    measurements: [measured(SETS.axle1Right, 'not-seen')],
    notes:
      'Tape was on the other side of the trailer, pictures taken without it. Bolts of the clamp too rusty to read a tag.',
  };
}

function axle2Left(): WheelEnd {
  return {
    ...identified('2-left', { axle: 2, side: 'left' }, captureIdOf(SETS.axle2Left, 'released')),
    adjusterCheck: { ...NO_TURNS, answer: 'does-not-take-up', applications: 8 },
    measurements: [measured(SETS.axle2Left, 'seen'), measured(SETS.axle2LeftRepaired, 'not-seen')],
    handReadings: [
      {
        id: '2-left-hand-found',
        purpose: 'as-found',
        quantity: 'stroke',
        releasedMm: mmFromInches(5 + 1 / 8),
        appliedMm: mmFromInches(7 + 7 / 16),
        graduationMm: SIXTEENTH_MM,
      },
      {
        id: '2-left-hand-repaired',
        purpose: 'after-repair',
        quantity: 'stroke',
        releasedMm: mmFromInches(5 + 1 / 8),
        appliedMm: mmFromInches(6 + 3 / 4),
        graduationMm: SIXTEENTH_MM,
      },
    ],
    otherReadings: [
      {
        id: '2-left-camshaft-play',
        purpose: 'as-found',
        what: 'camshaft-play',
        name: '',
        valueMm: 0.2,
        limitMm: 0.5,
        limitIs: 'greatest',
        limitSource: 'Shop rule of the department (invented)',
      },
    ],
    causeAnswers: [
      { check: 'adjuster-turns', answer: 'no' },
      { check: 'adjuster-holds', answer: 'cannot-tell' },
      { check: 'adjuster-mounting-tight', answer: 'yes' },
      { check: 'clevis-free-of-play', answer: 'yes' },
      { check: 'push-rod-straight', answer: 'yes' },
      { check: 'chamber-mounting-tight', answer: 'yes' },
      { check: 'chamber-as-other-side', answer: 'yes' },
      { check: 'arm-as-other-side', answer: 'yes' },
      { check: 'camshaft-free-of-play', answer: 'yes' },
      { check: 'camshaft-turns-freely', answer: 'yes' },
      { check: 'linings-thick-enough', answer: 'yes' },
      { check: 'drum-within-size', answer: 'cannot-tell' },
    ],
    repairs: [
      {
        id: '2-left-repair',
        at: '2026-05-12T18:55:00.000Z',
        by: DEMO_TECHNICIAN,
        cause: 'adjuster-worn',
        work: 'Hexagon backed off half a turn, eight full applications: it did not move. Replaced the adjuster, greased the splines, clevis pin without wear and used again. Anchor bracket tight. Set the free stroke as the maker of the adjuster says, then twelve applications.',
        parts: ['Automatic slack adjuster, arm 5 1/2 in'],
        newAdjuster: 'automatic',
        adjustedByHand: false,
        setFreeStrokeMm: mmFromInches(1 / 2),
      },
    ],
    notes: 'Over-stroke paint shows when applied.',
    photos: [{ captureId: captureIdOf(SETS.axle2LeftRepaired, 'applied'), caption: 'New adjuster, applied' }],
  };
}

function axle2Right(): WheelEnd {
  return {
    ...identified('2-right', { axle: 2, side: 'right' }, captureIdOf(SETS.axle2Right, 'released')),
    adjusterCheck: { ...NO_TURNS, answer: 'takes-up', applications: 6 },
    measurements: [measured(SETS.axle2Right, 'not-seen')],
    handReadings: [
      {
        id: '2-right-hand-free',
        purpose: 'as-found',
        quantity: 'free-stroke',
        releasedMm: null,
        appliedMm: mmFromInches(9 / 16),
        graduationMm: SIXTEENTH_MM,
      },
    ],
    notes: 'Pulled with a bar until the lining touched.',
  };
}

/** Read by tape measure alone, no pictures. */
function axle3Left(): WheelEnd {
  const wheelEnd = identified('3-left', { axle: 3, side: 'left' }, null);
  return {
    ...wheelEnd,
    identification: { ...wheelEnd.identification, brake: 'spring' },
    handReadings: [
      {
        id: '3-left-hand-found',
        purpose: 'as-found',
        quantity: 'stroke',
        releasedMm: mmFromInches(5),
        appliedMm: mmFromInches(6 + 3 / 4),
        graduationMm: SIXTEENTH_MM,
      },
    ],
    notes: 'No room for a picture between the axle and the tank bracket.',
  };
}

function identified(id: string, position: WheelEnd['position'], captureId: string | null): WheelEnd {
  return {
    ...newWheelEnd(id, position),
    chamber: CHAMBER,
    identification: { portBoss: 'round', tag: 'none', marking: '30', brake: 'service', captureId },
    adjuster: 'automatic',
  };
}

function measured(set: MeasuredSet, appliedSight: 'seen' | 'not-seen'): MeasurementInput {
  const { views } = truthOf(set.set);
  const draw = drawFrom(set.seed);
  return {
    ...newMeasurement(set.id, set.purpose),
    references: set.references,
    views: views.map((view) => ({
      state: view.state,
      captureId: captureIdOf(set, view.state),
      frame: null,
      marks: demoMarks(view, set.references, draw, set.id),
    })),
    overStrokeMark: {
      released: { sight: 'not-seen', crop: null, proposal: null },
      applied: { sight: appliedSight, crop: cropOfRod(views), proposal: null },
      bandColour: null,
    },
  };
}

/** The part of the applied picture where the rod leaves the face. */
function cropOfRod(views: DemoTruth['views']) {
  const applied = views.find(({ state }) => state === 'applied');
  if (!applied) return null;
  const [xPx, yPx] = applied.points.chamberFace.px;
  return { xPx: Math.round(xPx) - 120, yPx: Math.round(yPx) - 90, widthPx: 240, heightPx: 180 };
}
