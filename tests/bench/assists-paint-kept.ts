/** Painted scenes are dear (a second each) and the same each time: their pictures are kept in node_modules/.cache. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import type { SceneDraw } from './assists-paint-draws.ts';
import { type PaintPicture, paintPicture } from './assists-paint-picture.ts';

const FOLDER = fileURLToPath(new URL('../../node_modules/.cache/assists-paint', import.meta.url));

const point = z.tuple([z.number(), z.number()]);
const keptSchema = z.object({
  box: z.object({ xPx: z.number(), yPx: z.number(), widthPx: z.number(), heightPx: z.number() }),
  rod: z.object({ facePx: point, way: point, pxPerMm: z.number(), halfWidthPx: z.number() }),
  paintMm: z.number(),
});

function nameOf({ kind, seed }: SceneDraw): string {
  const text = 'what' in kind ? `${kind.is} ${kind.what}` : kind.is;
  return `${FOLDER}/${seed}-${text.replaceAll(' ', '-')}`;
}

export const isKept = (scene: SceneDraw) => existsSync(`${nameOf(scene)}.json`);

export function keptPicture(scene: SceneDraw, again: boolean): PaintPicture {
  const name = nameOf(scene);
  if (!again && existsSync(`${name}.json`)) {
    const { box, rod, paintMm } = keptSchema.parse(JSON.parse(readFileSync(`${name}.json`, 'utf8')));
    return { region: { ...box, rgba: new Uint8ClampedArray(readFileSync(`${name}.rgba`)) }, rod, paintMm };
  }
  const made = paintPicture(scene);
  const { rgba, ...box } = made.region;
  mkdirSync(FOLDER, { recursive: true });
  writeFileSync(`${name}.rgba`, rgba);
  writeFileSync(`${name}.json`, JSON.stringify({ box, rod: made.rod, paintMm: made.paintMm }));
  return made;
}
