/**
 * Pairs of pictures with known marks in both, for the study of the first guess: ray-traced ones by accuracy-render.mjs (Debian packages
 * povray, imagemagick), made once and kept in node_modules/.cache/guess-renders; the released and the held frame of clips made by
 * tracking_clips.py (ffmpeg); the sample media.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import type { Gray } from '../../src/vision/gray.ts';
import type { Point } from '../../src/vision/point.ts';
import { renderedPairSchema } from './accuracy-render-truth.ts';
import { grayPicture } from './ties-pairs.ts';

const FOLDER = fileURLToPath(new URL('../../node_modules/.cache/guess-renders', import.meta.url));
const SAMPLES = fileURLToPath(new URL('../../sample-media', import.meta.url));

export type TrueMarks = { readonly face: Point; readonly pin: Point; readonly camshaft: Point };
export type GuessShot = { readonly marks: TrueMarks; readonly gray: () => Gray };
export type GuessPair = { readonly name: string; readonly shots: readonly [GuessShot, GuessShot] };

/** held: a tape along the rod, which every fourth number has, from 1 on, or the printed target. ONLY_KEPT: those that are there. */
export function renderedPairs(held: 'bare' | 'held', numbers: readonly number[]): readonly GuessPair[] {
  const folder = `${FOLDER}/${held}`;
  mkdirSync(folder, { recursive: true });
  return numbers.flatMap((number) => {
    const truth = `${folder}/pair-${number}.json`;
    if (!existsSync(truth)) {
      if (process.env.ONLY_KEPT) return [];
      const script = fileURLToPath(new URL('./accuracy-render.mjs', import.meta.url));
      try {
        execFileSync('node', [script, String(number), folder, held], { stdio: 'inherit' });
      } catch {
        // From no place all marks are seen: this number has no pair.
        return [];
      }
    }
    const { views } = renderedPairSchema.parse(JSON.parse(readFileSync(truth, 'utf8')));
    const shots = views.map(({ state, chamberFace, clevisPin, camshaftEnd }) => ({
      marks: { face: chamberFace, pin: clevisPin, camshaft: camshaftEnd },
      gray: () => grayPicture(`${folder}/pair-${number}-${state}.jpg`),
    }));
    return [pairOf(`${held} ${number}`, shots)];
  });
}

const px = z.object({ px: z.tuple([z.number(), z.number()]) });
const viewsSchema = z.object({
  views: z.array(
    z.object({
      file: z.string(),
      frameIndex: z.int().optional(),
      widthPx: z.int(),
      heightPx: z.int(),
      points: z.object({ chamberFace: px, clevisPin: px, camshaftEnd: px }),
    }),
  ),
});

export const samplePairs = (): readonly GuessPair[] =>
  ['pair-band', 'pair-tape'].map((name) => pairIn(`${SAMPLES}/${name}`, name));

export const clipPairs = (folder: string): readonly GuessPair[] =>
  readdirSync(folder)
    .sort()
    .map((name) => pairIn(`${folder}/${name}`, name));

function pairIn(folder: string, name: string): GuessPair {
  const { views } = viewsSchema.parse(JSON.parse(readFileSync(`${folder}/truth.json`, 'utf8')));
  const shots = views.map(({ file, frameIndex, widthPx, heightPx, points }) => ({
    marks: { face: points.chamberFace.px, pin: points.clevisPin.px, camshaft: points.camshaftEnd.px },
    gray: () =>
      frameIndex === undefined
        ? grayPicture(`${folder}/${file}`)
        : frameOf(`${folder}/${file}`, frameIndex, widthPx, heightPx),
  }));
  return pairOf(name, shots);
}

function pairOf(name: string, [one, other]: readonly GuessShot[]): GuessPair {
  if (!one || !other) throw new Error(`${name}: a pair has two pictures`);
  return { name, shots: [one, other] };
}

/** Its luma. */
function frameOf(file: string, index: number, widthPx: number, heightPx: number): Gray {
  const only = ['-vf', `select=eq(n\\,${index})`, '-vsync', '0', '-frames:v', '1'];
  const plain = ['-f', 'rawvideo', '-pix_fmt', 'yuv420p', '-'];
  const frame = execFileSync('ffmpeg', ['-v', 'error', '-i', file, ...only, ...plain], {
    maxBuffer: 1 << 26,
  });
  return { widthPx, heightPx, values: Uint8Array.from(frame.subarray(0, widthPx * heightPx)) };
}

/** Gravel, drawn: every pixel a stone's level, stones of several sizes. */
export function gravel(widthPx: number, heightPx: number, uniform: () => number): Gray {
  const levels = new Float32Array(widthPx * heightPx);
  for (const sizePx of [3, 7, 17]) {
    const columns = Math.ceil(widthPx / sizePx);
    const stones = Float32Array.from(
      { length: columns * Math.ceil(heightPx / sizePx) },
      () => uniform() - 0.5,
    );
    for (let i = 0; i < levels.length; i++) {
      const [x, y] = [i % widthPx, Math.floor(i / widthPx)];
      const stone = Math.floor(y / sizePx) * columns + Math.floor(x / sizePx);
      levels[i] = (levels[i] as number) + 60 * (stones[stone] as number);
    }
  }
  return {
    widthPx,
    heightPx,
    values: Uint8Array.from(levels, (level) => Math.max(0, Math.min(255, 110 + level))),
  };
}
