/** Ray-traced pairs as the search for tie points gets them, and the truth about what it found. */
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import type { Mark } from '../../src/marks/mark.ts';
import { movingOutlines } from '../../src/marks/moving-outlines.ts';
import { type Gray, grayOf } from '../../src/vision/gray.ts';
import type { FoundTie, TieQuestion, TieSide } from '../../src/vision/tie-sight.ts';
import { counter, type What } from '../simulation/marker.ts';
import type { RenderedPair, RenderedView } from './accuracy-render-truth.ts';

type Px = readonly [number, number];

export type TiesPair = {
  readonly name: string;
  readonly files: readonly [string, string];
  readonly question: TieQuestion;
};

const truthSchema = z.object({
  views: z.array(
    z.object({
      state: z.string(),
      file: z.string(),
      widthPx: z.number(),
      heightPx: z.number(),
      points: z.record(z.string(), z.unknown()),
    }),
  ),
});
const pointSchema = z.object({ px: z.tuple([z.number(), z.number()]) });
const graduationsSchema = z.array(pointSchema.extend({ inches: z.number() })).default([]);

/** 26 mm of the 35 mm equivalent, as where the file says nothing: 2 to 15 % off. */
const focalPxOf = ({ widthPx, heightPx }: { readonly widthPx: number; readonly heightPx: number }) =>
  (26 / Math.hypot(36, 24)) * Math.hypot(widthPx, heightPx);

export function renderedTiesPair(pair: RenderedPair, folder: string): TiesPair {
  const file = (state: string) => `${folder}/pair-${pair.number}-${state}.jpg`;
  const sides = pair.views.map((view) => sideOf(focalPxOf(pair), marksOf(view)));
  return pairOf(`${pair.number}`, [file('released'), file('applied')], sides);
}

export function sampleTiesPair(name: string): TiesPair {
  const folder = fileURLToPath(new URL(`../../sample-media/${name}`, import.meta.url));
  const { views } = truthSchema.parse(JSON.parse(readFileSync(`${folder}/truth.json`, 'utf8')));
  const sides = views.map((view) => {
    const at = (key: string) => pointSchema.parse(view.points[key]).px;
    const { put, marks } = marker();
    put(at('chamberFace'), { kind: 'chamber-face' });
    put(at('clevisPin'), { kind: 'clevis-pin' });
    put(at('camshaftEnd'), { kind: 'camshaft-end' });
    for (const { px, inches } of graduationsSchema.parse(view.points.tapeGraduations))
      put(px, { kind: 'tape-graduation', readingMm: 25.4 * inches });
    return sideOf(focalPxOf(view), marks);
  });
  const [one, other] = views.map(({ file }) => `${folder}/${file}`);
  return pairOf(name, [one ?? '', other ?? ''], sides);
}

function pairOf(name: string, files: TiesPair['files'], [first, second]: readonly TieSide[]): TiesPair {
  if (!first || !second) throw new Error(`${name}: a pair has two pictures`);
  return { name, files, question: { first, second } };
}

function marker() {
  const marks: Mark[] = [];
  const nextId = counter();
  const put = ([xPx, yPx]: Px, what: What) =>
    marks.push({ ...what, id: nextId(), xPx, yPx, sigmaPx: 1, placedBy: 'hand' });
  return { marks, put };
}

function marksOf(view: RenderedView): readonly Mark[] {
  const { put, marks } = marker();
  put(view.chamberFace, { kind: 'chamber-face' });
  put(view.clevisPin, { kind: 'clevis-pin' });
  put(view.camshaftEnd, { kind: 'camshaft-end' });
  for (const { inches, px } of view.tapeGraduations)
    put(px, { kind: 'tape-graduation', readingMm: 25.4 * inches });
  for (const { px, ...corner } of view.targetCorners) put(px, { kind: 'target-corner', ...corner });
  return marks;
}

function sideOf(focalPx: number, marks: readonly Mark[]): TieSide {
  const face = marks.find(({ kind }) => kind === 'chamber-face');
  return { focalPx, aboutPx: [face?.xPx ?? 0, face?.yPx ?? 0], leaveOut: movingOutlines({ marks }) };
}

const trueSchema = z.object({
  places: z.array(
    z.object({ truePx: z.tuple([z.number(), z.number()]), offMm: z.number(), linePx: z.number() }),
  ),
});

export type TieTruth = z.infer<typeof trueSchema>['places'][number];

/** By ray tracing: ties-truth.mjs. */
export function truthOf(name: string, folder: string, ties: readonly FoundTie[]): readonly TieTruth[] {
  const script = fileURLToPath(new URL('./ties-truth.mjs', import.meta.url));
  const asked = JSON.stringify(ties.map(({ firstPx, secondPx }) => [firstPx, secondPx]));
  const said = execFileSync('node', [script, name, folder], { input: asked });
  return trueSchema.parse(JSON.parse(said.toString())).places;
}

/** As the page sees it: luma of the decoded JPEG. */
export function grayPicture(file: string): Gray {
  const ppm = execFileSync('convert', [file, '-depth', '8', 'ppm:-'], { maxBuffer: 1 << 27 });
  const head = /^P6\s+(\d+)\s+(\d+)\s+255\s/.exec(ppm.subarray(0, 64).toString('latin1'));
  if (!head) throw new Error(`${file} is not as expected`);
  const [widthPx, heightPx] = [Number(head[1]), Number(head[2])];
  const rgb = ppm.subarray(head[0].length);
  const rgba = new Uint8ClampedArray(4 * widthPx * heightPx);
  for (let i = 0; i < widthPx * heightPx; i++)
    for (let c = 0; c < 3; c++) rgba[4 * i + c] = rgb[3 * i + c] ?? 0;
  return grayOf(rgba, widthPx, heightPx);
}
