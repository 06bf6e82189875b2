/**
 * How often an assist is wrong and confident, on more pictures than the other studies look at: under 1 % is shown by about 300 without a wrong
 * one. Flat scenes only, numbers nobody looked at; one set of stills for band and tape (assists_outlines_flat.py), one of ends.
 */

import { pairDrawn } from './assists-ends.ts';
import { endPairs, grayOfShot } from './assists-ends-kept.ts';
import { tapesOf } from './assists-marks.ts';
import { grayOfFile } from './assists-marks-picture.ts';
import { at, isWrong } from './assists-marks-tables.ts';
import { bandOf, outlinesTruthSchema } from './assists-outlines.ts';
import { isOtherEdge, isWrongBand } from './assists-outlines-tables.ts';
import { picturesOf } from './assists-pictures.ts';
import { askTape, tapeTruthSchema } from './assists-tape.ts';
import { isWrongTape } from './assists-tape-tables.ts';
import { atMostText } from './at-most.ts';

export const ratesStudy = { name: 'rates', run: study };

const STILLS = { first: 10_000, count: 519 };
const ENDS = { first: 1000, count: 180 };
const HANDS = [1, 3];

/** off: px, or of the axis ratio; null: not offered. wrong: and confident. */
type Rated = { readonly what: string; readonly off: number | null; readonly wrong: boolean };

function study(): string {
  return rateTable([...ofStills(), ...ofEnds()]);
}

function ofStills(): readonly Rated[] {
  const truthSchema = outlinesTruthSchema.extend(tapeTruthSchema.shape);
  const stills = picturesOf('assists-outlines', 'assists_outlines_flat.py', truthSchema).flats(STILLS);
  return stills.flatMap(({ picture, truth }) => {
    const gray = grayOfFile(picture);
    const { found } = bandOf(gray, truth, 'flat');
    const { seen } = askTape('flat', gray, truth);
    const marks = seen?.named ?? null;
    return [
      {
        what: 'clamp band (axis ratio)',
        off: found && Math.abs(found.ratioOff),
        wrong: found !== null && (isWrongBand(found) || isOtherEdge(found)),
      },
      { what: 'tape, strokes shown', off: seen && 0, wrong: seen !== null && !seen.inPlace },
      {
        what: 'tape, one named of those',
        off: marks && worst(marks),
        wrong: marks !== null && isWrongTape(marks),
      },
      ...HANDS.flatMap((handPx) =>
        tapesOf(gray, truth, handPx, 100 * truth.number + 10 * handPx).map(({ way, marks: named }) => ({
          what: `tape, ${way}, hand ${handPx} px`,
          off: named && worst(named),
          wrong: named !== null && (isWrongTape(named) || way.startsWith('a reading wrong')),
        })),
      ),
    ];
  });
}

const worst = (marks: readonly { readonly offPx: number }[]) =>
  marks.reduce((most, { offPx }) => Math.max(most, Math.abs(offPx)), 0);

function ofEnds(): readonly Rated[] {
  return endPairs.flat(ENDS).flatMap((pair) => {
    const [one, other] = pair.shots.map(grayOfShot);
    if (!one || !other) return [];
    return HANDS.map((handPx) => {
      const { kind, errors, sigmaPx } = pairDrawn(pair, [one, other], handPx);
      const off = errors && Math.hypot(...errors);
      const what = `${kind === 'clevis-pin' ? 'pin' : 'camshaft'} found again, hand ${handPx} px`;
      return { what, off, wrong: off !== null && isWrong(off, sigmaPx) };
    });
  });
}

function rateTable(rated: readonly Rated[]): string {
  const rows = [...new Set(rated.map(({ what }) => what))].map((what) => {
    const all = rated.filter((each) => each.what === what);
    const offs = all.flatMap(({ off }) => off ?? []);
    const wrong = all.filter((each) => each.wrong).length;
    const share = `${offs.length} (${((100 * offs.length) / all.length).toFixed(0)} %)`;
    const off = [0.5, 0.9, 1].map((part) => at(offs, part).toFixed(3)).join(', ');
    return `| ${[what, all.length, share, off, wrong, atMostText(wrong, all.length)].join(' | ')} |`;
  });
  return [
    '| assist | asked | offered | off: median, 90 %, largest | wrong and confident | true share at most (95 %) |',
    '| --- | --- | --- | --- | --- | --- |',
    ...rows,
  ].join('\n');
}
