/**
 * npm run bench:ties: tie points found by search on ray-traced pairs with known truth, and what they do for the stroke. Writes
 * docs/ties.md. Needs what bench:renders needs, and its pictures; --pairs N of them (default 12), --draws N of the marks' scatter
 * for each (default 4).
 */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import type { Mark } from '../../src/marks/mark.ts';
import { tiePlaces } from '../../src/marks/tie-marks.ts';
import { findTies } from '../../src/vision/find-ties.ts';
import type { FoundTie, TieCounts } from '../../src/vision/tie-sight.ts';
import { nodeOpencv } from '../vision/node-opencv.ts';
import { type Case, caseOf, type Sample } from './accuracy-case.ts';
import { sampleOf } from './accuracy-render-sample.ts';
import { type RenderedPair, renderedPairSchema } from './accuracy-render-truth.ts';
import { quantile } from './accuracy-summary.ts';
import {
  grayPicture,
  renderedTiesPair,
  sampleTiesPair,
  type TiesPair,
  type TieTruth,
  truthOf,
} from './ties-pairs.ts';

const FOLDER = fileURLToPath(new URL('../../node_modules/.cache/accuracy-renders', import.meta.url));
const PLACE = 'docs/ties.md';
const BEGIN = '<!-- tables: npm run bench:ties -->';
/** What was seen in one picture and stands off it in the other by more has moved, or is hidden there. */
const STILL_MM = 0.6;

const { values: asked } = parseArgs({
  options: { pairs: { type: 'string', default: '12' }, draws: { type: 'string', default: '4' } },
});
mkdirSync(FOLDER, { recursive: true });
const cv = await nodeOpencv();

type Searched = {
  readonly counts: TieCounts;
  readonly ties: readonly FoundTie[];
  readonly truth: readonly TieTruth[];
  readonly ms: number;
};

const renders = Array.from({ length: Number(asked.pairs) }, (_, number) => {
  const pair = renderedPair(number);
  return { pair, searched: searched(renderedTiesPair(pair, FOLDER)) };
});
const samples = ['pair-band', 'pair-tape'].map((name) => ({
  name,
  searched: searched(sampleTiesPair(name)),
}));
const lines = [
  ...renders.map(({ pair, searched }) => foundLine(`${pair.number}: ${pair.held}`, searched)),
  ...samples.map(({ name, searched }) => foundLine(name, searched)),
  foundLine('all', together([...renders, ...samples].map(({ searched }) => searched))),
];
const strokes = strokeLines();
const kept = readFileSync(PLACE, 'utf8').split(BEGIN)[0] ?? '';
writeFileSync(
  PLACE,
  `${kept}${BEGIN}

| pair | places looked at | alike | agreeing | ties | moved or hidden | error, px | off the line, px | stated, px | error / stated | line / stated | worst | s |
| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |
${lines.join('\n')}

| references | tie points | error: median, 95 %, largest, mm | U: median, mm | within U |
| --- | --- | --- | --- | --- |
${strokes.join('\n')}
`,
);

function renderedPair(number: number): RenderedPair {
  const file = `${FOLDER}/pair-${number}.json`;
  if (!existsSync(file)) {
    const script = fileURLToPath(new URL('./accuracy-render.mjs', import.meta.url));
    execFileSync('node', [script, String(number), FOLDER], { stdio: 'inherit' });
  }
  return renderedPairSchema.parse(JSON.parse(readFileSync(file, 'utf8')));
}

function searched({ name, files, question }: TiesPair): Searched {
  const [first, second] = [grayPicture(files[0]), grayPicture(files[1])];
  const begun = performance.now();
  const found = findTies(cv, first, second, question);
  const ms = performance.now() - begun;
  if (!found.ok) {
    if (found.failure.code !== 'ties/few') throw new Error(found.failure.code);
    return { counts: found.failure.counts, ties: [], truth: [], ms };
  }
  const { ties, counts } = found.value;
  const result = { counts, ties, truth: truthOf(name, FOLDER, ties), ms };
  console.log(foundLine(name, result));
  return result;
}

function together(all: readonly Searched[]): Searched {
  const sum = (of: (counts: TieCounts) => number) => all.reduce((total, { counts }) => total + of(counts), 0);
  return {
    counts: {
      features: [sum(({ features }) => features[0]), sum(({ features }) => features[1])],
      alike: sum(({ alike }) => alike),
      agreeing: sum(({ agreeing }) => agreeing),
      fitted: sum(({ fitted }) => fitted),
    },
    ties: all.flatMap(({ ties }) => ties),
    truth: all.flatMap(({ truth }) => truth),
    ms: all.reduce((total, { ms }) => total + ms, 0),
  };
}

function foundLine(name: string, { counts, ties, truth, ms }: Searched): string {
  const each = ties.flatMap((tie, i) => {
    const known = truth[i];
    if (!known) return [];
    const statedPx = Math.SQRT2 * tie.sigmaPx;
    const [dx, dy] = [tie.secondPx[0] - known.truePx[0], tie.secondPx[1] - known.truePx[1]];
    return [
      {
        statedPx,
        errorPx: Math.hypot(dx, dy) / Math.SQRT2,
        linePx: Math.abs(known.linePx),
        offMm: known.offMm,
      },
    ];
  });
  const still = each.filter(({ offMm }) => Math.abs(offMm) < STILL_MM);
  const rms = (of: (one: (typeof each)[number]) => number) =>
    Math.sqrt(still.reduce((sum, one) => sum + of(one) ** 2, 0) / still.length);
  const text = (value: number) => (Number.isNaN(value) ? '-' : value.toFixed(2));
  const cells = [
    name,
    counts.features.join(', '),
    counts.alike,
    counts.agreeing,
    ties.length,
    each.length - still.length,
    text(rms(({ errorPx }) => errorPx)),
    text(rms(({ linePx }) => linePx)),
    text(rms(({ statedPx }) => statedPx)),
    text(rms(({ errorPx, statedPx }) => errorPx / statedPx)),
    text(rms(({ linePx, statedPx }) => linePx / statedPx)),
    Math.max(0, ...still.map(({ linePx, statedPx }) => linePx / statedPx)).toFixed(1),
    (ms / 1000).toFixed(1),
  ];
  return `| ${cells.join(' | ')} |`;
}

function strokeLines(): string[] {
  const ways = [
    { name: 'clamp band', used: { band: true, held: false }, held: null },
    { name: 'tape held anew', used: { band: false, held: true }, held: 'tape' },
    { name: 'target held anew', used: { band: false, held: true }, held: 'target anew' },
    { name: 'target on the pin + band', used: { band: true, held: true }, held: 'target on the pin' },
  ] as const;
  return ways.flatMap(({ name, used, held }) =>
    (['none', 'found', 'by hand'] as const).map((tied) => {
      const cases = renders
        .filter(({ pair }) => held === null || pair.held === held)
        .flatMap(({ pair, searched: { ties } }) =>
          Array.from({ length: Number(asked.draws) }, (_, i) => {
            const corners = pair.views.map((view) =>
              view.targetCorners.map(({ marker, corner, px: [xPx, yPx] }) => ({
                marker,
                corner,
                xPx,
                yPx,
                sigmaPx: 0.1,
              })),
            );
            const sample = sampleOf(pair, corners, used, 1, 4_000_037 + 1000 * pair.number + i);
            return caseOf(tied === 'by hand' ? sample : retied(sample, pair, tied === 'found' ? ties : []));
          }),
        );
      return strokeLine(name, tied, cases);
    }),
  );
}

/** The same marks, with these tie points in place of those made by hand. */
function retied(sample: Sample, pair: RenderedPair, ties: readonly FoundTie[]): Sample {
  const placed = tiePlaces(ties, pair, pair);
  const views = sample.input.views.map((view, i) => {
    const marks = placed.map(
      (tie, index): Mark => ({
        kind: 'tie-point',
        tie: `a${index + 1}`,
        id: `a${index + 1}-${i}`,
        ...(i === 0 ? tie.first : tie.second),
        placedBy: 'assist',
      }),
    );
    return { ...view, marks: [...view.marks.filter(({ kind }) => kind !== 'tie-point'), ...marks] };
  });
  return { ...sample, input: { ...sample.input, views } };
}

function strokeLine(name: string, tied: string, cases: readonly Case[]): string {
  const measured = cases.flatMap(({ measured }) => ('refused' in measured ? [] : [measured]));
  const errors = measured.map(({ errorMm }) => Math.abs(errorMm)).sort((a, b) => a - b);
  const Us = measured.map(({ UMm }) => UMm).sort((a, b) => a - b);
  const held = measured.filter(({ errorMm, UMm }) => Math.abs(errorMm) <= UMm).length;
  const errorText = [quantile(errors, 0.5), quantile(errors, 0.95), errors.at(-1) ?? Number.NaN];
  const line = `| ${name} | ${tied} | ${errorText.map((value) => value.toFixed(2)).join(', ')} | ${quantile(Us, 0.5).toFixed(2)} | ${held} of ${cases.length} |`;
  console.log(line);
  return line;
}
