/**
 * npm run bench:renders: ray-traced wheel ends with known truth through target detection and engine; writes docs/accuracy.md.
 *
 * Needs the Debian packages povray, imagemagick and fonts-dejavu-core. Pictures are kept in node_modules/.cache and made once;
 * --pairs N (default 16), --draws N of the marks' scatter for each pair (default 10), --again makes the pictures anew.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { TARGET_MARKERS } from '../../src/references/target-markers.ts';
import { findTarget } from '../../src/vision/find-target.ts';
import { type Gray, grayOf } from '../../src/vision/gray.ts';
import { nodeOpencv } from '../vision/node-opencv.ts';
import { type Case, caseOf } from './accuracy-case.ts';
import { keptRenderPairs, keptRenders } from './accuracy-kept.ts';
import { writePage } from './accuracy-page.ts';
import { type FoundCorner, sampleOf, type With } from './accuracy-render-sample.ts';
import { renderPairOf, renderRowOf } from './accuracy-render-summary.ts';
import { type RenderedPair, renderedPairSchema } from './accuracy-render-truth.ts';

const FOLDER = fileURLToPath(new URL('../../node_modules/.cache/accuracy-renders', import.meta.url));

const { values: asked } = parseArgs({
  options: {
    pairs: { type: 'string', default: '16' },
    draws: { type: 'string', default: '10' },
    again: { type: 'boolean', default: false },
  },
});

for (const program of ['povray', 'convert'])
  if (spawnSync(program, ['--version']).error) {
    console.error(
      `${program} is missing: the ray-traced scenes need the Debian packages povray and imagemagick.`,
    );
    process.exit(2);
  }
mkdirSync(FOLDER, { recursive: true });

const cv = await nodeOpencv();
const pairs = Array.from({ length: Number(asked.pairs) }, (_v, i) => {
  const pair = renderedPair(i);
  const found = pair.views.map((view) => cornersIn(pair, view.state));
  const row = renderPairOf(pair, found);
  keptRenderPairs.put(row);
  console.log(
    `${i} ${pair.held}: ${row.cornersFound} of ${row.cornersThere} corners, rms ${row.cornerRmsPx.toFixed(3)} px`,
  );
  return { pair, found };
});

const WAYS: readonly {
  readonly held: RenderedPair['held'] | null;
  readonly used: With;
  readonly name: string;
}[] = [
  { held: 'target on the pin', used: { band: true, held: true }, name: 'target on the pin + band' },
  { held: 'target on the pin', used: { band: false, held: true }, name: 'target on the pin' },
  { held: 'target anew', used: { band: true, held: true }, name: 'target held anew + band' },
  { held: 'target anew', used: { band: false, held: true }, name: 'target held anew' },
  { held: 'tape', used: { band: true, held: true }, name: 'tape held anew + band' },
  { held: 'tape', used: { band: false, held: true }, name: 'tape held anew' },
  { held: null, used: { band: true, held: false }, name: 'clamp-band' },
];

for (const { held, used, name } of WAYS)
  for (const sigmaPx of [1, 0.25] as const) {
    const these = pairs.filter(({ pair }) => held === null || pair.held === held);
    const cases = these.flatMap(({ pair, found }): Case[] =>
      Array.from({ length: Number(asked.draws) }, (_v, i) =>
        caseOf(sampleOf(pair, found, used, sigmaPx, 3_000_017 + 1000 * pair.number + i)),
      ),
    );
    if (cases.length === 0) continue;
    const row = renderRowOf(name, sigmaPx, these.length, cases);
    keptRenders.put(row);
    console.log(
      `${row.name}: error ${row.errorMedianMm.toFixed(2)} / ${row.error95Mm.toFixed(2)} / ${row.errorMostMm.toFixed(2)}, U ${row.UMedianMm.toFixed(2)} holds ${(100 * row.held).toFixed(0)} %, two-point ${row.twoPoint95Mm.toFixed(2)}`,
    );
  }
writePage();

function renderedPair(number: number): RenderedPair {
  const file = `${FOLDER}/pair-${number}.json`;
  if (asked.again || !existsSync(file)) {
    const script = fileURLToPath(new URL('./accuracy-render.mjs', import.meta.url));
    execFileSync('node', [script, String(number), FOLDER], { stdio: 'inherit' });
  }
  return renderedPairSchema.parse(JSON.parse(readFileSync(file, 'utf8')));
}

function cornersIn(pair: RenderedPair, state: string): readonly FoundCorner[] {
  if (pair.held === 'tape') return [];
  const found = findTarget(cv, grayPicture(`${FOLDER}/pair-${pair.number}-${state}.jpg`), TARGET_MARKERS);
  if (!found.ok) throw new Error(found.failure.code);
  return found.value.corners;
}

/** As the page sees it: luma of the decoded JPEG. */
function grayPicture(file: string): Gray {
  const ppm = execFileSync('convert', [file, '-depth', '8', 'ppm:-'], { maxBuffer: 1 << 26 });
  const head = /^P6\s+(\d+)\s+(\d+)\s+255\s/.exec(ppm.subarray(0, 64).toString('latin1'));
  if (!head) throw new Error(`${file} is not as expected`);
  const [widthPx, heightPx] = [Number(head[1]), Number(head[2])];
  const rgb = ppm.subarray(head[0].length);
  const rgba = new Uint8ClampedArray(4 * widthPx * heightPx);
  for (let i = 0; i < widthPx * heightPx; i++)
    for (let c = 0; c < 3; c++) rgba[4 * i + c] = rgb[3 * i + c] ?? 0;
  return grayOf(rgba, widthPx, heightPx);
}
