/**
 * npm run bench:assists: how well the tool sees by itself, on scenes with truth. Each study writes its own section of docs/assists.md,
 * between its marks; what is written by hand stays. --only NAME runs one of them; --clips FOLDER has what tracking_clips.py made.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { endsStudy } from './assists-ends.ts';
import { endsStrokeStudy } from './assists-ends-stroke.ts';
import { faceStudy } from './assists-face.ts';
import { faceStrokeStudy } from './assists-face-stroke.ts';
import { guessStudy } from './assists-guess.ts';
import { marksStudy } from './assists-marks.ts';
import { numeralsStudy } from './assists-numerals.ts';
import { outlinesStudy } from './assists-outlines.ts';
import { paintStudy } from './assists-paint.ts';
import { photosStudy } from './assists-photos.ts';
import { qualityStudy } from './assists-quality.ts';
import { ratesStudy } from './assists-rates.ts';
import { rodStudy } from './assists-rod.ts';
import { rodStrokeStudy } from './assists-rod-stroke.ts';
import { roughStudy } from './assists-rough.ts';
import { tapeStudy } from './assists-tape.ts';
import { turnStudy } from './assists-turn.ts';

/** Gives the tables of its section. */
export type AssistStudy = {
  readonly name: string;
  readonly run: (clips: string | null) => string | Promise<string>;
};

const PLACE = 'docs/assists.md';
const STUDIES: readonly AssistStudy[] = [
  marksStudy,
  tapeStudy,
  numeralsStudy,
  outlinesStudy,
  rodStudy,
  rodStrokeStudy,
  faceStudy,
  faceStrokeStudy,
  endsStudy,
  endsStrokeStudy,
  roughStudy,
  guessStudy,
  qualityStudy,
  paintStudy,
  turnStudy,
  ratesStudy,
  photosStudy,
];

const { values: asked } = parseArgs({ options: { only: { type: 'string' }, clips: { type: 'string' } } });
for (const { name, run } of STUDIES.filter((study) => !asked.only || study.name === asked.only)) {
  const [begin, end] = [`<!-- ${name}: tables -->`, `<!-- ${name}: end -->`];
  const tables = await run(asked.clips ?? null);
  const page = readFileSync(PLACE, 'utf8');
  const [before, after] = [page.indexOf(begin), page.indexOf(end)];
  if (before < 0 || after < before) throw new Error(`${PLACE} has no place for ${name}`);
  writeFileSync(PLACE, `${page.slice(0, before)}${begin}\n\n${tables}\n\n${page.slice(after)}`);
}
