/**
 * How often an assist is wrong and confident, on more pictures than the other studies look at: under 1 % is shown by about 300 without a wrong
 * one. Flat scenes only, numbers nobody looked at; one set of stills for band and tape (assists_outlines_flat.py), one of ends, one of
 * round rods.
 */

import type { z } from 'zod';
import type { Gray } from '../../src/vision/gray.ts';
import { pairDrawn } from './assists-ends.ts';
import { type EndPair, endPairs, grayOfShot } from './assists-ends-kept.ts';
import { tapesOf } from './assists-marks.ts';
import { grayOfFile } from './assists-marks-picture.ts';
import { at, isWrong, type TapeDrawn } from './assists-marks-tables.ts';
import { bandOf, outlinesTruthSchema } from './assists-outlines.ts';
import { isOtherEdge, isWrongBand } from './assists-outlines-tables.ts';
import { type Known, picturesOf } from './assists-pictures.ts';
import { askBoth, rodPictures } from './assists-rod.ts';
import { askElsewhere, askTape, type TapeTruth, tapeTruthSchema } from './assists-tape.ts';
import { isWrongTape } from './assists-tape-tables.ts';
import { atMostText } from './at-most.ts';

export const ratesStudy = { name: 'rates', run: study };

const STILLS = { first: 11_000, count: 530 };
const ENDS = { first: 1000, count: 154 };
const RODS = { first: 2000, count: 300 };
/** Of the tape's named marks, and of the ends'. */
const TAPE_HAND_PX = 3;
const END_HANDS_PX = [1, 3];

/** off: px, or of the axis ratio; null: not offered. wrong: and confident. */
export type Rated = { readonly what: string; readonly off: number | null; readonly wrong: boolean };

function study(): string {
  return rateTable([
    ...rateStills().flatMap((still, i, all) => ratedOfStill(still, (all[i - 1] ?? still).truth)),
    ...endPairs.flat(ENDS).flatMap(ratedOfEnd),
    ...rodPictures().flats(RODS).flatMap(ratedOfRod),
  ]);
}

const truthSchema = outlinesTruthSchema.extend(tapeTruthSchema.shape);

export const rateStills = () =>
  picturesOf('assists-outlines', 'assists_outlines_flat.py', truthSchema).flats(STILLS);

/** other: another scene, whose tape is taken for the same one. */
function ratedOfStill({ picture, truth }: Known<z.infer<typeof truthSchema>>, other: TapeTruth) {
  const gray = grayOfFile(picture);
  const { found } = bandOf(gray, truth, 'flat');
  const band: Rated = {
    what: 'clamp band (off: axis ratio)',
    off: found && Math.abs(found.ratioOff),
    wrong: found !== null && (isWrongBand(found) || isOtherEdge(found)),
  };
  return [band, ...ratedOfTape(gray, truth, other)];
}

export function ratedOfTape(gray: Gray, truth: TapeTruth, other: TapeTruth): readonly Rated[] {
  const { seen } = askTape('flat', gray, truth);
  const named = (what: string, marks: TapeMarks | null) => ({
    what: `tape, ${what}`,
    off: marks && worst(marks),
    wrong: marks !== null && isWrongTape(marks),
  });
  const elsewhere = (misreadInches: number) => seen && askElsewhere(seen.marks, truth, other, misreadInches);
  return [
    { what: 'tape, strokes shown', off: seen && 0, wrong: seen !== null && !seen.inPlace },
    named('one named of those', seen?.named ?? null),
    named('not begun at the face, one named, another picture known', elsewhere(0)),
    named('the same, a reading wrong by 1/4 in', elsewhere(1 / 4)),
    ...tapesOf(gray, truth, TAPE_HAND_PX, 100 * truth.number).map(({ way, marks }) => {
      const rated = named(way, marks);
      return way.startsWith('a reading wrong') ? { ...rated, wrong: marks !== null } : rated;
    }),
  ];
}

type TapeMarks = NonNullable<TapeDrawn['marks']>;

const worst = (marks: TapeMarks) => marks.reduce((most, { offPx }) => Math.max(most, Math.abs(offPx)), 0);

export function ratedOfEnd(pair: EndPair): readonly Rated[] {
  const [one, other] = pair.shots.map(grayOfShot) as [Gray, Gray];
  return END_HANDS_PX.map((handPx) => {
    const { errors, sigmaPx } = pairDrawn(pair, [one, other], handPx);
    const off = errors && Math.hypot(...errors);
    const what = `end found again, hand ${handPx} px`;
    return { what, off, wrong: off !== null && isWrong(off, sigmaPx) };
  });
}

export function ratedOfRod(known: Parameters<typeof askBoth>[1]): readonly Rated[] {
  const { rod, none } = askBoth('', known);
  return [
    { what: 'rod’s middle line', asked: rod },
    { what: 'rod’s middle line, asked across', asked: none },
  ].map(({ what, asked: { found } }) => ({
    what,
    off: found && Math.max(0, ...found.offsPx.map(Math.abs)),
    wrong: found?.wrong ?? false,
  }));
}

export function rateTable(rated: readonly Rated[]): string {
  const rows = [...new Set(rated.map(({ what }) => what))].map((what) => {
    const all = rated.filter((each) => each.what === what);
    const offs = all.flatMap(({ off }) => off ?? []);
    const wrong = all.filter((each) => each.wrong).length;
    const share = `${offs.length} (${((100 * offs.length) / all.length).toFixed(0)} %)`;
    const off = offs.length > 0 ? [0.5, 0.9, 1].map((part) => at(offs, part).toFixed(3)).join(', ') : '-';
    return `| ${[what, all.length, share, off, wrong, atMostText(wrong, all.length)].join(' | ')} |`;
  });
  return [
    '| assist | asked | offered | off: median, 90 %, largest | wrong and confident | true share at most (95 %) |',
    '| --- | --- | --- | --- | --- | --- |',
    ...rows,
  ].join('\n');
}
