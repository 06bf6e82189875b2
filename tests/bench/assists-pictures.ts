/**
 * Pictures with truth of a study of assists, rendered once and kept in node_modules/.cache/STUDY: ray-traced looks by
 * assists-marks-render.mjs (Debian packages povray, imagemagick, fonts-dejavu-core), flat scenes by a script of the study's own
 * (python3-opencv). ONLY_KEPT=1 renders no looks.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { z } from 'zod';

export type Known<Truth> = { readonly picture: string; readonly truth: Truth };
export type Numbers = { readonly first: number; readonly count: number };

export const numbersFrom = ({ first, count }: Numbers): readonly number[] =>
  Array.from({ length: count }, (_, i) => first + i);

/** Of one study; flatScript: beside this file. */
export function picturesOf<Truth>(study: string, flatScript: string, schema: z.ZodType<Truth>) {
  const beside = (path: string) => fileURLToPath(new URL(path, import.meta.url));
  const folder = beside(`../../node_modules/.cache/${study}`);
  mkdirSync(folder, { recursive: true });
  const known = (name: string, ending: string): readonly Known<Truth>[] => {
    const [picture, file] = [`${folder}/${name}.${ending}`, `${folder}/${name}.json`];
    return existsSync(picture) && existsSync(file)
      ? [{ picture, truth: schema.parse(JSON.parse(readFileSync(file, 'utf8'))) }]
      : [];
  };
  return {
    looks: (numbers: readonly number[]): readonly Known<Truth>[] =>
      numbers.flatMap((number) => {
        // A truth without a picture: passed over, since not all is seen.
        if (!existsSync(`${folder}/look-${number}.json`) && !process.env.ONLY_KEPT)
          execFileSync('node', [beside('./assists-marks-render.mjs'), String(number), folder], {
            stdio: 'inherit',
          });
        return known(`look-${number}`, 'jpg');
      }),
    flats: (numbers: Numbers): readonly Known<Truth>[] => {
      const kept = () => numbersFrom(numbers).flatMap((number) => known(`flat-${number}`, 'pgm'));
      const { first, count } = numbers;
      if (kept().length === 0)
        execFileSync('/usr/bin/python3', [beside(`./${flatScript}`), folder, String(first), String(count)], {
          stdio: 'inherit',
        });
      return kept();
    },
  };
}
