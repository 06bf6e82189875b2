/**
 * What the rod's middle line brings for the arm angle: simulated wheel ends through the engine, no rod marked, two points of it by a hand, or found.
 * No pictures: the scatter of what is found is about that which the study of pictures measured.
 */
import { drawFrom } from '../../src/basics/random.ts';
import type { Mark } from '../../src/marks/mark.ts';
import { measure } from '../../src/measurement/measure.ts';
import type { MeasureInput } from '../../src/measurement/measurement.ts';
import { simulate } from '../simulation/scene.ts';
import { type Cell, sceneOptions } from './accuracy-cells.ts';
import { at, px, rms, table } from './assists-marks-tables.ts';

const SEEDS = { first: 4_300_000, count: 60 };
const HAND_PX = 1;
/** Of a found mark across the rod: measured, and as it states. */
const [FOUND_PX, STATED_PX] = [0.4, 0.55];

const SCENES: readonly { readonly name: string; readonly cell: Cell }[] = [
  { name: 'tape, by hand', cell: { reference: 'tape', way: 'plain', sigmaPx: 1, cameraStill: false } },
  { name: 'tape, with care', cell: { reference: 'tape', way: 'careful', sigmaPx: 0.25, cameraStill: false } },
];

const WAYS = [
  { name: 'no rod marked', scatterPx: null, sigmaPx: 0 },
  { name: 'two points of it by hand', scatterPx: HAND_PX, sigmaPx: HAND_PX },
  { name: 'found', scatterPx: FOUND_PX, sigmaPx: STATED_PX },
] as const;
type Way = (typeof WAYS)[number];

type Outcome = {
  readonly strokeMm: number;
  readonly strokeU: number;
  readonly angles: readonly { readonly offDeg: number; readonly UDeg: number }[];
};

export const rodStrokeStudy = { name: 'rod-stroke', run: strokeTable };

function strokeTable(): string {
  const rows = SCENES.flatMap(({ name, cell }) =>
    WAYS.map((way) => rowOf(`${name}; ${way.name}`, drawn(cell, way))),
  );
  return table(
    [
      'rod',
      'scenes',
      'arm angle error rms, degrees',
      '95 %',
      'mean U',
      'within U',
      'stroke error rms mm',
      'mean U mm',
    ],
    rows,
  );
}

function drawn(cell: Cell, way: Way): readonly Outcome[] {
  return Array.from({ length: SEEDS.count }, (_, i) => SEEDS.first + i).flatMap((seed): Outcome[] => {
    const options = { ...sceneOptions(cell, seed), rodMarks: true };
    const { input, truth } = simulate(options);
    const exact = simulate({ ...options, sigmaPx: 1e-4 }).input;
    const result = measure(withRod(input, exact, way, seed));
    if (!result.ok) return [];
    const { strokeMm, armAngleAppliedRad, armAngleReleasedRad } = result.value;
    const angles = [
      { angle: armAngleAppliedRad, trueRad: truth.armAngleAppliedRad },
      { angle: armAngleReleasedRad, trueRad: truth.armAngleReleasedRad },
    ].flatMap(({ angle, trueRad }) =>
      angle ? [{ offDeg: degrees(angle.value - trueRad), UDeg: degrees(angle.U95) }] : [],
    );
    return [{ strokeMm: strokeMm.value - truth.strokeMm, strokeU: strokeMm.U95, angles }];
  });
}

const degrees = (rad: number) => (180 / Math.PI) * rad;

function withRod(
  input: MeasureInput,
  exact: MeasureInput,
  { scatterPx, sigmaPx }: Way,
  seed: number,
): MeasureInput {
  const draw = drawFrom(seed + 53);
  const views = input.views.map((view, i) => ({
    ...view,
    marks: view.marks.flatMap((mark, k): Mark[] => {
      if (mark.kind !== 'rod-line') return [mark];
      const truth = exact.views[i]?.marks[k];
      if (scatterPx === null || !truth) return [];
      const [xPx, yPx] = [truth.xPx + draw.normal(0, scatterPx), truth.yPx + draw.normal(0, scatterPx)];
      return [{ ...mark, xPx, yPx, sigmaPx }];
    }),
  }));
  return { ...input, views };
}

function rowOf(name: string, all: readonly Outcome[]): string {
  const angles = all.flatMap((each) => each.angles);
  const offs = angles.map(({ offDeg }) => Math.abs(offDeg));
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const within = angles.filter(({ offDeg, UDeg }) => Math.abs(offDeg) <= UDeg).length;
  const cells = [
    px(rms(offs)),
    px(at(offs, 0.95)),
    px(mean(angles.map(({ UDeg }) => UDeg))),
    `${((100 * within) / angles.length).toFixed(1)} %`,
    px(rms(all.map(({ strokeMm }) => strokeMm))),
    px(mean(all.map(({ strokeU }) => strokeU))),
  ];
  return `| ${name} | ${all.length} | ${cells.join(' | ')} |`;
}
