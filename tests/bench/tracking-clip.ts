/** A clip with known truth, and the marks that a hand sets in its seed frame: truth with a pixel of scatter, seeded. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import { drawFrom } from '../../src/basics/random.ts';
import type { Mark } from '../../src/marks/mark.ts';
import type { View } from '../../src/marks/view.ts';
import { NO_REFERENCES, type References } from '../../src/references/reference.ts';
import { counter, type What } from '../simulation/marker.ts';

const px = z.tuple([z.number(), z.number()]);
const vec3 = z.tuple([z.number(), z.number(), z.number()]);
const pose = z.tuple([
  z.tuple([z.number(), z.number(), z.number(), z.number()]),
  z.tuple([z.number(), z.number(), z.number(), z.number()]),
  z.tuple([z.number(), z.number(), z.number(), z.number()]),
]);
const truthSchema = z.object({
  strokeMm: z.number(),
  framesPerSecond: z.number(),
  slowMotion: z.number().default(1),
  spec: z
    .object({ readout_s: z.number(), exposure_s: z.number(), steadied: z.boolean() })
    .default({ readout_s: 0, exposure_s: 0, steadied: false }),
  applications: z.array(z.object({ strokeMm: z.number() })).optional(),
  views: z.array(
    z.object({
      state: z.enum(['released', 'applied']),
      file: z.string(),
      frameIndex: z.number(),
      widthPx: z.number(),
      heightPx: z.number(),
      focalPx: z.number(),
      principalPx: px,
      cameraFromChamber: pose,
      points: z.object({
        chamberFace: z.object({ px, mm: vec3 }),
        clevisPin: z.object({ px }),
        camshaftEnd: z.object({ px }),
        tapeGraduations: z.array(z.object({ inches: z.number(), px, mm: vec3 })),
      }),
    }),
  ),
  frames: z.array(
    z.object({
      index: z.number(),
      timeS: z.number(),
      strokeMm: z.number(),
      armAngleDeg: z.number().optional(),
      pinVisible: z.number().default(1),
      pinBlurPx: z.number().default(0),
      cameraFromChamber: pose,
      points: z.object({ chamberFace: px, clevisPin: px, camshaftEnd: px }),
    }),
  ),
  patches: z
    .array(z.object({ name: z.string(), still: z.boolean(), originMm: vec3, alongMm: vec3, acrossMm: vec3 }))
    .default([]),
});

export type ClipTruth = z.infer<typeof truthSchema>;
export type Px = z.infer<typeof px>;
export type TruthPose = z.infer<typeof pose>;

export type StudyClip = {
  readonly name: string;
  readonly file: string;
  readonly folder: string;
  readonly truth: ClipTruth;
  readonly seedIndex: number;
  readonly marks: readonly Mark[];
};

const HAND_SIGMA_PX = 1;
const SAMPLE = fileURLToPath(new URL('../../sample-media/clip-tape', import.meta.url));
const GRADUATIONS = 8;

/** That of sample-media first, then those in the folder. */
export function studyClips(folder: string, only: readonly string[]): readonly StudyClip[] {
  const made = readdirSync(folder).filter((name) => existsSync(`${folder}/${name}/clip.mp4`));
  const all = [
    { name: 'clip-tape', folder: SAMPLE },
    ...made.map((name) => ({ name, folder: `${folder}/${name}` })),
  ];
  return all
    .filter(({ name }) => only.length === 0 || only.includes(name))
    .map((clip) => studyClip(clip.name, clip.folder));
}

function studyClip(name: string, folder: string): StudyClip {
  const truth = truthSchema.parse(JSON.parse(readFileSync(`${folder}/truth.json`, 'utf8')));
  const seed = truth.views[0];
  if (!seed) throw new Error(`${name}: no view`);
  const file = `${folder}/${seed.file}`;
  return { name, file, folder, truth, seedIndex: seed.frameIndex, marks: handMarks(name, seed.points) };
}

type Points = ClipTruth['views'][number]['points'];

function handMarks(name: string, points: Points): readonly Mark[] {
  const draw = drawFrom([...name].reduce((sum, letter) => 31 * sum + letter.charCodeAt(0), 7) % 1_000_003);
  const nextId = counter();
  const marks: Mark[] = [];
  const put = ([x, y]: Px, what: What) => {
    const [xPx, yPx] = [x + draw.normal(0, HAND_SIGMA_PX), y + draw.normal(0, HAND_SIGMA_PX)];
    marks.push({ ...what, id: nextId(), xPx, yPx, sigmaPx: HAND_SIGMA_PX, placedBy: 'hand' });
  };
  put(points.chamberFace.px, { kind: 'chamber-face' });
  put(points.clevisPin.px, { kind: 'clevis-pin' });
  put(points.camshaftEnd.px, { kind: 'camshaft-end' });
  for (const { inches, px: at } of spread(points.tapeGraduations))
    put(at, { kind: 'tape-graduation', readingMm: 25.4 * inches });
  return marks;
}

/** As somebody would take them: whole inches first, from end to end of what is seen up to 9 in. */
function spread(all: Points['tapeGraduations']): Points['tapeGraduations'] {
  const near = all.filter(({ inches }) => inches <= 9);
  const whole = near.filter(({ inches }) => Number.isInteger(inches));
  const from = whole.length >= GRADUATIONS ? whole : near;
  return Array.from(
    { length: GRADUATIONS },
    (_, i) => from[Math.round((i * (from.length - 1)) / (GRADUATIONS - 1))],
  ).filter((each, i, list) => each !== undefined && list.indexOf(each) === i) as Points['tapeGraduations'];
}

export function seedView(clip: StudyClip, timeTicks: number): View {
  return {
    state: 'released',
    captureId: 'c1',
    frame: { index: clip.seedIndex, timeTicks },
    marks: clip.marks,
  };
}

/** In a clip the tape stays where it is. */
export const TAPE_UNMOVED: References = {
  ...NO_REFERENCES,
  tape: { zeroAtFace: false, unmoved: true, touchesPin: false },
};
