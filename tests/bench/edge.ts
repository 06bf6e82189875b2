/**
 * What the edge of the tape gives, as a plumb line: stroke, U and the lens's k1 with and without it, on simulated pictures.
 * npm run bench:edge [-- scenes]; writes the table of docs/tape-edge.md.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { adjust } from '../../src/adjustment/adjust.ts';
import { derivedVariance } from '../../src/adjustment/derived.ts';
import { measurementOf } from '../../src/measurement/measure.ts';
import { problemFromViews } from '../../src/measurement/problem-from-views.ts';
import { simulate } from '../simulation/scene.ts';
import type { SceneOptions } from '../simulation/scene-options.ts';

const PLACE = 'docs/tape-edge.md';
const BEGIN = '<!-- table: npm run bench:edge -->';
const SCENES = Number(process.argv[2] ?? 100);
/** Others than the tests', and than those the widths were chosen with. */
const FIRST_SEED = 50_001;

const WIDE = { focalOverWidth: [0.35, 0.5], distanceMm: [300, 600] } as const;
const ASIDE = { aside: [0.3, 0.3] } as const;
const LENSES: readonly (readonly [string, Partial<SceneOptions>])[] = [
  ['usual lens, in the middle', {}],
  ['wide lens, in a corner', { ...WIDE, ...ASIDE }],
  ['wide lens that bends much, in a corner', { ...WIDE, ...ASIDE, k1Scatter: 0.06 }],
];
const HOLDS: readonly (readonly [string, Partial<SceneOptions>])[] = [
  ['held anew', {}],
  ['unmoved, on the pin', { tapeUnmoved: true, touchesPin: true }],
];
/** Marks to 0.25 px, as found; points on the edge to 0.15 px as found, or to 1 px as a hand sets them. */
const EDGES = [
  ['none', 0, 1],
  ['6 by hand', 6, 1],
  ['12 found', 12, 0.15],
] as const;

const quantile = (values: readonly number[], share: number) =>
  [...values].sort((a, b) => a - b)[Math.floor(share * (values.length - 1))] ?? Number.NaN;

function row(lens: Partial<SceneOptions>, edgePoints: number, edgeSigmaPx: number): string {
  const [errors, us, lensErrors, lensUs]: [number[], number[], number[], number[]] = [[], [], [], []];
  let [held, lensHeld, refused] = [0, 0, 0];
  for (let seed = FIRST_SEED; seed < FIRST_SEED + SCENES; seed++) {
    const scene = simulate({
      ...{ seed, reference: 'tape+band', sigmaPx: 0.25, edgePoints, edgeSigmaPx },
      ...lens,
    });
    const problem = problemFromViews(scene.input);
    const adjusted = problem.ok ? adjust(problem.value) : problem;
    const measured = adjusted.ok ? measurementOf(scene.input, adjusted.value) : adjusted;
    if (!adjusted.ok || !measured.ok) {
      refused++;
      continue;
    }
    const { strokeMm, fit } = measured.value;
    const error = Math.abs(strokeMm.value - scene.truth.strokeMm);
    errors.push(error);
    us.push(strokeMm.U95);
    if (error <= strokeMm.U95) held++;
    const at = (adjusted.value.layout.cameras[0] as number) + 3;
    const u = fit.inflation * Math.sqrt(derivedVariance(adjusted.value, [{ index: at, d: 1 }]).variance);
    const lensError = Math.abs((adjusted.value.best.x[at] as number) - scene.k1);
    lensErrors.push(lensError);
    lensUs.push(u);
    if (lensError <= 1.96 * u) lensHeld++;
  }
  const share = (count: number) => `${((100 * count) / errors.length).toFixed(1)} %`;
  return [
    [0.5, 0.95].map((at) => quantile(errors, at).toFixed(2)).join(', '),
    quantile(us, 0.5).toFixed(2),
    share(held),
    [0.5, 0.95].map((at) => quantile(lensErrors, at).toFixed(4)).join(', '),
    quantile(lensUs, 0.5).toFixed(4),
    share(lensHeld),
    `${refused}`,
  ].join(' | ');
}

const lines: string[] = [
  `${SCENES} scenes a row, the same in each group of three. Stroke in mm; U is U95, medians; k1 beside its true value, u its median standard uncertainty:`,
  '',
  '| pictures | tape | points on its edge | stroke: error median, 95 % | U | within U | k1: error median, 95 % | u | within 1.96 u | refused |',
  '| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |',
];
for (const [lensName, lens] of LENSES)
  for (const [holdName, hold] of HOLDS)
    for (const [edgeName, points, sigmaPx] of EDGES) {
      lines.push(
        `| ${lensName} | ${holdName} | ${edgeName} | ${row({ ...lens, ...hold }, points, sigmaPx)} |`,
      );
      process.stdout.write(`${lines.at(-1)}\n`);
    }
const [words] = readFileSync(PLACE, 'utf8').split(BEGIN);
writeFileSync(PLACE, `${words}${BEGIN}\n\n${lines.join('\n')}\n`);
