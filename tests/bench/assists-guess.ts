/**
 * What is proposed on pictures on which nothing is marked: found, right and wrong by kind, whether the stated confidence holds, and the time
 * it takes. Ray-traced looks and flat scenes as of the study of marks (assists-marks.ts), none of them seen while this was made.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { z } from 'zod';
import { guesses, LEAST_CONFIDENCE } from '../../src/vision/guess.ts';
import { GUESSED_KINDS, type GuessedKind, type Proposal } from '../../src/vision/guess-sight.ts';
import type { Point } from '../../src/vision/point.ts';
import { FOLDER } from './assists-looks.ts';
import { grayOfFile } from './assists-marks-picture.ts';

export const guessStudy = { name: 'guess', run: study };

/** Looks 0 to 15 and flat scenes 0 to 9 were looked at while the guesses were made. */
const FIRST = { look: 100, flat: 10 } as const;
const MOST = 18;
const INCH = 25.4;
/** A reading is right where its mark lies so near to the true stroke of that reading, inches. */
const NEAR_IN = 0.08;
const NEAR_PX = 3;
const BINS = [0, 0.5, 0.8, 0.9, 0.97, 1] as const;

const px = z.tuple([z.number(), z.number()]);
const truthSchema = z.object({
  number: z.int(),
  chamberFace: px,
  clevisPin: px,
  camshaftEnd: px,
  tapeGraduations: z.array(z.object({ inches: z.number(), px, strokePx: z.array(px) })),
});
type Truth = z.infer<typeof truthSchema>;
type Told = {
  readonly kind: GuessedKind;
  readonly there: boolean;
  /** Null: nothing proposed, however unsure. */
  readonly proposal: { readonly confidence: number; readonly right: boolean; readonly offPx: number } | null;
};

function study(): string {
  return (['look', 'flat'] as const)
    .map((family) => {
      const told: Told[] = [];
      const times: number[] = [];
      let count = 0;
      for (const { picture, truth } of known(family)) {
        const gray = grayOfFile(picture);
        const began = process.cpuUsage();
        const all = guesses(gray, { tape: [], other: null });
        times.push(process.cpuUsage(began).user / 1000);
        count++;
        told.push(...GUESSED_KINDS.map((kind) => toldOf(kind, truth, all)));
      }
      const name = family === 'look' ? 'ray-traced looks' : 'flat scenes';
      return `**${name}**, ${count} pictures; median ${median(times).toFixed(0)} ms of one core in Node\n\n${kindTable(told)}\n\n${confidenceTable(told)}`;
    })
    .join('\n\n');
}

function known(family: keyof typeof FIRST) {
  const ending = family === 'look' ? 'jpg' : 'pgm';
  return readdirSync(FOLDER)
    .flatMap((name) => new RegExp(`^${family}-(\\d+)\\.json$`).exec(name)?.[1] ?? [])
    .map(Number)
    .filter((number) => number >= FIRST[family])
    .sort((a, b) => a - b)
    .slice(0, MOST)
    .map((number) => `${FOLDER}/${family}-${number}`)
    .filter((name) => existsSync(`${name}.${ending}`))
    .map((name) => ({
      picture: `${name}.${ending}`,
      truth: truthSchema.parse(JSON.parse(readFileSync(`${name}.json`, 'utf8'))),
    }));
}

function toldOf(kind: GuessedKind, truth: Truth, all: readonly Proposal[]): Told {
  const proposal = all.find((each) => each.kind === kind);
  const there = kind !== 'tape-graduation' || truth.tapeGraduations.length > 8;
  if (!proposal) return { kind, there, proposal: null };
  const { confidence } = proposal;
  if (kind === 'tape-graduation') {
    const offs = proposal.marks.flatMap((mark) => strokeOff(mark, truth) ?? []);
    const right = offs.length > 4 && offs.every(({ offPx, nearPx }) => offPx < nearPx);
    return { kind, there, proposal: { confidence, right, offPx: median(offs.map(({ offPx }) => offPx)) } };
  }
  const [mark] = proposal.marks as readonly [Proposal['marks'][0]];
  const at = kind === 'clevis-pin' ? truth.clevisPin : truth.camshaftEnd;
  const offPx = Math.hypot(mark.placePx[0] - at[0], mark.placePx[1] - at[1]);
  return { kind, there, proposal: { confidence, right: offPx < Math.max(NEAR_PX, 4 * mark.sigmaPx), offPx } };
}

/** Across the line of the true stroke. */
function strokeOff({ placePx, readingMm }: Proposal['marks'][0], { tapeGraduations: all }: Truth) {
  const truth = all.find(({ inches }) => Math.abs(inches * INCH - (readingMm ?? 0)) < 0.01);
  const [from, to] = [truth?.strokePx[0], truth?.strokePx.at(-1)] as const;
  const [low, high] = [all[0], all.at(-1)];
  if (!from || !to || !low || !high) return null;
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const offPx = Math.abs((placePx[0] - from[0]) * dy - (placePx[1] - from[1]) * dx) / Math.hypot(dx, dy);
  const pxPerIn = apart(low.px, high.px) / Math.abs(high.inches - low.inches);
  return { offPx, nearPx: Math.max(NEAR_PX, NEAR_IN * pxPerIn) };
}

const apart = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1]);

function kindTable(told: readonly Told[]): string {
  const rows = GUESSED_KINDS.map((kind) => {
    const all = told.filter((each) => each.kind === kind);
    const offered = all.flatMap(({ proposal }) =>
      proposal && proposal.confidence >= LEAST_CONFIDENCE ? [proposal] : [],
    );
    const right = offered.filter((each) => each.right);
    const there = all.filter((each) => each.there).length;
    return `| ${kind} | ${all.length} | ${there} | ${offered.length} | ${right.length} | ${offered.length - right.length} | ${median(right.map(({ offPx }) => offPx)).toFixed(2)} |`;
  });
  return `| kind | pictures | there | offered | right | wrong | off, median px |\n| --- | --- | --- | --- | --- | --- | --- |\n${rows.join('\n')}`;
}

function confidenceTable(told: readonly Told[]): string {
  const all = told.flatMap(({ proposal }) => proposal ?? []);
  const rows = BINS.slice(1).map((to, i) => {
    const from = BINS[i] as number;
    const those = all.filter(({ confidence }) => confidence >= from && (confidence < to || to === 1));
    const mean = those.reduce((sum, { confidence }) => sum + confidence, 0) / those.length;
    return `| ${from} to ${to} | ${those.length} | ${those.length === 0 ? '-' : mean.toFixed(2)} | ${those.filter(({ right }) => right).length} |`;
  });
  return `| confidence | proposals, offered or not | mean of it | right |\n| --- | --- | --- | --- |\n${rows.join('\n')}`;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}
