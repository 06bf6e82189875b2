/**
 * What an edge at the chamber face, the same in both pictures, brings for the stroke: simulated wheel ends through the engine, the face marked by a
 * hand or taken. No pictures: the scatter of what is taken is about that which the study of pictures measured.
 */
import { drawFrom } from '../../src/basics/random.ts';
import { measure } from '../../src/measurement/measure.ts';
import type { MeasureInput } from '../../src/measurement/measurement.ts';
import { simulate } from '../simulation/scene.ts';
import { type Cell, sceneOptions } from './accuracy-cells.ts';
import { at, px, rms, table } from './assists-marks-tables.ts';

const SEEDS = { first: 4_500_000, count: 60 };
const FOUND = { sigmaPx: 0.25, cameraStill: false } as const;

const SCENES: readonly { readonly name: string; readonly cell: Cell }[] = [
  { name: 'tape', cell: { reference: 'tape', way: 'plain', ...FOUND } },
  { name: 'clamp band', cell: { reference: 'clamp-band', way: 'plain', ...FOUND } },
  { name: 'tape and band', cell: { reference: 'tape+band', way: 'plain', ...FOUND } },
  { name: 'tape and band, with care', cell: { reference: 'tape+band', way: 'careful', ...FOUND } },
];

/** Of the face's mark, each way: scatter, and as it states. */
const WAYS = [
  { name: 'by hand, 2.5 px', scatterPx: 2.5, sigmaPx: 2.5 },
  { name: 'by hand, 1 px', scatterPx: 1, sigmaPx: 1 },
  { name: 'edge taken', scatterPx: 0.3, sigmaPx: 0.5 },
] as const;
type Way = (typeof WAYS)[number];

export const faceStrokeStudy = { name: 'face-stroke', run: strokeTable };

function strokeTable(): string {
  const rows = SCENES.flatMap(({ name, cell }) =>
    WAYS.map((way) => rowOf(`${name}; ${way.name}`, cell, way)),
  );
  return table(
    ['other marks found; the face', 'scenes', 'stroke error rms mm', '95 %', 'mean U', 'within U'],
    rows,
  );
}

function rowOf(name: string, cell: Cell, way: Way): string {
  const all = Array.from({ length: SEEDS.count }, (_, i) => SEEDS.first + i).flatMap((seed) => {
    const options = sceneOptions(cell, seed);
    const { input, truth } = simulate(options);
    const exact = simulate({ ...options, sigmaPx: 1e-4 }).input;
    const result = measure(withFace(input, exact, way, seed));
    if (!result.ok) return [];
    const { value, U95 } = result.value.strokeMm;
    return [{ offMm: Math.abs(value - truth.strokeMm), U95 }];
  });
  const offs = all.map(({ offMm }) => offMm);
  const within = all.filter(({ offMm, U95 }) => offMm <= U95).length;
  const meanU = all.reduce((sum, { U95 }) => sum + U95, 0) / all.length;
  return `| ${[name, all.length, px(rms(offs)), px(at(offs, 0.95)), px(meanU), `${((100 * within) / all.length).toFixed(1)} %`].join(' | ')} |`;
}

function withFace(
  input: MeasureInput,
  exact: MeasureInput,
  { scatterPx, sigmaPx }: Way,
  seed: number,
): MeasureInput {
  const draw = drawFrom(seed + 59);
  const views = input.views.map((view, i) => ({
    ...view,
    marks: view.marks.map((mark, k) => {
      const truth = exact.views[i]?.marks[k];
      if (mark.kind !== 'chamber-face' || !truth) return mark;
      const [xPx, yPx] = [truth.xPx + draw.normal(0, scatterPx), truth.yPx + draw.normal(0, scatterPx)];
      return { ...mark, xPx, yPx, sigmaPx };
    }),
  }));
  return { ...input, views };
}
