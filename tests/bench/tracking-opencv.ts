/** The plain way of tracking_opencv.py on the same clip with the same marks. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import type { Mark } from '../../src/marks/mark.ts';
import type { StudyClip } from './tracking-clip.ts';

const answerSchema = z.object({
  frames: z.number(),
  decodeS: z.number(),
  wholeS: z.number(),
  strokeMm: z.number(),
  curveMm: z.array(z.number().nullable()),
  pin: z.array(z.tuple([z.number(), z.number()]).nullable()),
});

export type PlainAnswer = z.infer<typeof answerSchema> & {
  /** As for a track: the seed mark's own offset is taken off. */
  readonly pinErrorPx: readonly (number | null)[];
};

const SCRIPT = fileURLToPath(new URL('./tracking_opencv.py', import.meta.url));
/** Debian's, which has OpenCV. */
const PYTHON = '/usr/bin/python3';

export function plainOpencv(clip: StudyClip): PlainAnswer {
  const folder = mkdtempSync(`${tmpdir()}/tracking-`);
  try {
    writeFileSync(`${folder}/marks.json`, JSON.stringify(marksFor(clip)));
    execFileSync('nice', [
      ...['-n', '15', PYTHON, '-B', SCRIPT],
      ...[clip.file, `${folder}/marks.json`, `${folder}/answer.json`],
    ]);
    const answer = answerSchema.parse(JSON.parse(readFileSync(`${folder}/answer.json`, 'utf8')));
    return { ...answer, pinErrorPx: pinErrors(clip, answer.pin) };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function marksFor({ marks, seedIndex }: StudyClip) {
  const at = ({ xPx, yPx }: Mark) => [xPx, yPx] as const;
  const first = (kind: Mark['kind']) => marks.filter((mark) => mark.kind === kind).map(at)[0];
  return {
    seedIndex,
    face: first('chamber-face'),
    pin: first('clevis-pin'),
    camshaft: first('camshaft-end'),
    tape: marks.flatMap((mark) =>
      mark.kind === 'tape-graduation' ? [{ mm: mark.readingMm, px: at(mark) }] : [],
    ),
  };
}

function pinErrors({ truth, seedIndex }: StudyClip, pin: PlainAnswer['pin']): (number | null)[] {
  const [seed, seedTruth] = [pin[seedIndex], truth.frames[seedIndex]?.points.clevisPin];
  if (!seed || !seedTruth) return [];
  const [ox, oy] = [seed[0] - seedTruth[0], seed[1] - seedTruth[1]];
  return truth.frames.map(
    (
      {
        points: {
          clevisPin: [x, y],
        },
      },
      i,
    ) => {
      const place = pin[i];
      return place && i !== seedIndex ? Math.hypot(place[0] - x - ox, place[1] - y - oy) : null;
    },
  );
}
