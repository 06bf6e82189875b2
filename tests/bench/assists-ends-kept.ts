/**
 * Ends of pin and camshaft in a released and an applied picture, with truth: ray-traced ones by assists-ends-render.mjs (Debian packages povray,
 * imagemagick), flat ones by assists_ends_flat.py (python3-opencv); made once, kept in node_modules/.cache/assists-marks.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import type { Gray } from '../../src/vision/gray.ts';
import { grayOfFile } from './assists-marks-picture.ts';

const FOLDER = fileURLToPath(new URL('../../node_modules/.cache/assists-marks', import.meta.url));

const px = z.tuple([z.number(), z.number()]);
const shotSchema = z.object({
  state: z.enum(['released', 'applied']),
  kind: z.enum(['clevis-pin', 'camshaft-end']),
  file: z.string(),
  placePx: px,
  lengthPx: z.number(),
  marksPx: z.object({ face: px, pin: px, camshaft: px }),
  inwardsPx: px,
  radiusMm: z.number(),
  pxPerMm: z.number(),
});
const truthSchema = z.object({ number: z.int(), shots: z.array(shotSchema).length(4) });

export type Shot = z.infer<typeof shotSchema>;
export type EndKind = Shot['kind'];
export type EndPair = {
  readonly number: number;
  readonly kind: EndKind;
  readonly shots: readonly [Shot, Shot];
};
export type Range = { readonly first: number; readonly count: number };

export const grayOfShot = ({ file }: Shot): Gray => grayOfFile(`${FOLDER}/${file}`);

export const endPairs = {
  /** ONLY_KEPT: those that are there. */
  rayTraced: (range: Range) =>
    pairs('ends', range, (number) => ['node', 'assists-ends-render.mjs', [String(number), FOLDER]]),
  flat: (range: Range) =>
    pairs('flat-ends', range, (number) => [
      '/usr/bin/python3',
      'assists_ends_flat.py',
      [FOLDER, String(number), '1'],
    ]),
};

type Command = readonly [program: string, script: string, args: readonly string[]];

function pairs(
  name: string,
  { first, count }: Range,
  maker: (number: number) => Command,
): readonly EndPair[] {
  mkdirSync(FOLDER, { recursive: true });
  return Array.from({ length: count }, (_, i) => first + i).flatMap((number) => {
    const truth = `${FOLDER}/${name}-${number}.json`;
    if (!existsSync(truth) && !process.env.ONLY_KEPT) {
      const [program, script, args] = maker(number);
      execFileSync(program, [fileURLToPath(new URL(script, import.meta.url)), ...args], { stdio: 'inherit' });
    }
    if (!existsSync(truth)) return [];
    const { shots } = truthSchema.parse(JSON.parse(readFileSync(truth, 'utf8')));
    return (['clevis-pin', 'camshaft-end'] as const).flatMap((kind): EndPair[] => {
      const [released, applied] = (['released', 'applied'] as const).map((state) =>
        shots.find((shot) => shot.kind === kind && shot.state === state),
      );
      return released && applied ? [{ number, kind, shots: [released, applied] }] : [];
    });
  });
}
