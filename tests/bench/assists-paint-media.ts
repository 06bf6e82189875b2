/** The sample media and the ray-traced pairs of bench:renders as the judge gets them: marks from the truth, without and with an adjustment. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import type { Mark } from '../../src/marks/mark.ts';
import { rodInPicture } from '../../src/measurement/rod-in-picture.ts';
import { judgePaint, type PaintJudgement, type PaintSight } from '../../src/vision/paint-judge.ts';
import { paintBox } from '../../src/vision/paint-region.ts';
import { type RenderedPair, renderedPairSchema } from './accuracy-render-truth.ts';

export type MediaCase = {
  readonly name: string;
  readonly truth: PaintSight;
  readonly judged: PaintJudgement;
};

const px = z.tuple([z.number(), z.number()]);
const pointSchema = z.object({ px });
const setSchema = z.object({
  overStrokeMark: z.object({ released: z.enum(['seen', 'not seen']), applied: z.enum(['seen', 'not seen']) }),
  views: z.array(
    z.object({
      state: z.enum(['released', 'applied']),
      file: z.string(),
      frameIndex: z.number().optional(),
      widthPx: z.number(),
      heightPx: z.number(),
      points: z.object({
        chamberFace: pointSchema,
        clevisPin: pointSchema,
        rodLine: z.array(pointSchema),
      }),
    }),
  ),
});

type Px = readonly [number, number];
type Looked = {
  readonly state: 'released' | 'applied';
  readonly file: string;
  readonly frame: number | null;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly face: Px;
  readonly pin: Px;
  readonly onRod: readonly Px[];
};

/** Every picture twice: with face and pin alone, and with marks on the rod's middle line. */
export function sampleCases(): readonly MediaCase[] {
  return ['pair-tape', 'pair-band', 'clip-tape'].flatMap((set) => {
    const folder = fileURLToPath(new URL(`../../sample-media/${set}`, import.meta.url));
    const { views, overStrokeMark } = setSchema.parse(
      JSON.parse(readFileSync(`${folder}/truth.json`, 'utf8')),
    );
    return views.flatMap(({ state, file, frameIndex, widthPx, heightPx, points }) => {
      const looked: Looked = {
        state,
        file: `${folder}/${file}`,
        frame: frameIndex ?? null,
        widthPx,
        heightPx,
        face: points.chamberFace.px,
        pin: points.clevisPin.px,
        onRod: points.rodLine.map((point) => point.px),
      };
      const truth = overStrokeMark[state] === 'seen' ? 'seen' : 'not-seen';
      return casesOf(`${set} ${state}`, looked, truth);
    });
  });
}

/** The pairs that bench:renders has left in node_modules/.cache; none are made here. */
export function renderedCases(): readonly MediaCase[] {
  const folder = fileURLToPath(new URL('../../node_modules/.cache/accuracy-renders', import.meta.url));
  return Array.from({ length: 16 }, (_, number) => number)
    .filter((number) => existsSync(`${folder}/pair-${number}.json`))
    .flatMap((number) => {
      const pair = renderedPairSchema.parse(
        JSON.parse(readFileSync(`${folder}/pair-${number}.json`, 'utf8')),
      );
      return renderedPairCases(pair, folder);
    });
}

/** The mark shows from 49 mm of stroke; within a millimetre and a half of that nobody need tell. */
const SHOWN_FROM_MM = 49;

function renderedPairCases(pair: RenderedPair, folder: string): readonly MediaCase[] {
  return pair.views.flatMap(({ state, chamberFace, clevisPin, rodLine }) => {
    const outMm = (state === 'applied' ? pair.strokeMm : 0) - SHOWN_FROM_MM;
    if (Math.abs(outMm) < 1.5) return [];
    const looked: Looked = {
      state,
      file: `${folder}/pair-${pair.number}-${state}.jpg`,
      frame: null,
      widthPx: pair.widthPx,
      heightPx: pair.heightPx,
      face: chamberFace,
      pin: clevisPin,
      onRod: rodLine,
    };
    return existsSync(looked.file)
      ? casesOf(`render ${pair.number} ${state}`, looked, outMm > 0 ? 'seen' : 'not-seen')
      : [];
  });
}

function casesOf(name: string, looked: Looked, truth: PaintSight): readonly MediaCase[] {
  return [[], looked.onRod].map((onRod) => ({
    name: `${name}, ${onRod.length === 0 ? 'face and pin' : 'rod line too'}`,
    truth,
    judged: judgeFile({ ...looked, onRod }),
  }));
}

function judgeFile({ state, file, frame, widthPx, heightPx, face, pin, onRod }: Looked): PaintJudgement {
  const mark = (kind: 'chamber-face' | 'clevis-pin' | 'rod-line', [xPx, yPx]: Px, i = 0): Mark => ({
    kind,
    id: `${kind} ${i}`,
    xPx,
    yPx,
    sigmaPx: 1,
    placedBy: 'hand',
  });
  const marks = [
    mark('chamber-face', face),
    mark('clevis-pin', pin),
    ...onRod.map((at, i) => mark('rod-line', at, i)),
  ];
  const rod = rodInPicture({ state, marks }, null);
  if (!rod.ok) throw new Error(rod.failure.code);
  const box = paintBox(rod.value, { widthPx, heightPx });
  const crop = `${box.widthPx}x${box.heightPx}+${box.xPx}+${box.yPx}`;
  const scratch = mkdtempSync(`${tmpdir()}/paint-`);
  try {
    const still = frame === null ? file : stillOf(file, frame, scratch);
    const rgba = execFileSync('convert', [still, '-crop', crop, '+repage', '-depth', '8', 'rgba:-'], {
      maxBuffer: 1 << 28,
    });
    return judgePaint({ ...box, rgba: new Uint8ClampedArray(rgba) }, rod.value);
  } finally {
    rmSync(scratch, { recursive: true });
  }
}

function stillOf(file: string, frame: number, folder: string): string {
  const still = `${folder}/still.png`;
  execFileSync('ffmpeg', ['-v', 'error', '-i', file, '-vf', `select=eq(n\\,${frame})`, '-vsync', '0', still]);
  return still;
}
