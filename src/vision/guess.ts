/**
 * A first guess of what there is to mark: tape, clevis pin's end, camshaft's end, each with a confidence; what is not sure enough is left out.
 *
 * Model    tape: guess-tape.ts, read by its numerals; on its plane the ends: guess-ends.ts, on both sides of it; each end is measured as near
 *          a hand's mark (assist-end.ts), else its outline's middle is proposed. Confidence: logistic in the lead over the next best
 * Assumes  a tape of inches along the rod. Without one, nothing is proposed
 * Fails    no proposals
 */
import { findEnd } from './assist-end.ts';
import type { FoundMark } from './assist-sight.ts';
import type { Gray } from './gray.ts';
import { type GuessedEnds, guessEnds, type RoundThing, type Usual } from './guess-ends.ts';
import { longEdges } from './guess-lines.ts';
import { type TapePlane, tapePlane } from './guess-plane.ts';
import { shrunk } from './guess-shrunk.ts';
import type { GuessQuestion, GuessSight, Proposal } from './guess-sight.ts';
import { guessTape } from './guess-tape.ts';
import type { Point } from './point.ts';

const MOST_PX = 2100;
const SMALL_PX = 1000;
const LEAST_EDGE_PX = 60;
/** What is offered: below it a proposal costs more looks than it saves taps. */
export const LEAST_CONFIDENCE = 0.9;
const LEAST_SCORE = 1.2;
/** Intercept and slope of the logistic curve, by lead; from looks 0 to 15 and flat scenes 0 to 9 (docs/assists.md). */
const CURVES = { tape: [-1.5, 40], pin: [-2.2, 30], camshaft: [-3, 16] } as const;
const MOST_CONFIDENCE = 0.99;
/** Of an outline's middle, over its radius, as a standard deviation: light shifts it by up to a fifth (assist-end.ts). */
const SHIFT = 0.1;
/** As if a hand had marked there. */
const ROUGH_PX = 2.5;

export function guess(gray: Gray, question: GuessQuestion): GuessSight {
  return { proposals: guesses(gray, question).filter(({ confidence }) => confidence >= LEAST_CONFIDENCE) };
}

/** All, however unsure. In a picture made smaller where it is large: what is found there is still finer than a hand's mark. */
export function guesses(gray: Gray, { tape, other }: GuessQuestion): readonly Proposal[] {
  const small = shrunk(gray, MOST_PX);
  const by = <T extends { readonly placePx: Point }>(factor: number, marks: readonly T[]) =>
    marks.map((mark) => ({ ...mark, placePx: scaled(mark.placePx, factor) }));
  return guessesIn(small.gray, by(1 / small.by, tape), other).map((proposal) => ({
    ...proposal,
    marks: by(small.by, proposal.marks).map((mark) => ({ ...mark, sigmaPx: small.by * mark.sigmaPx })),
  }));
}

const scaled = ([x, y]: Point, factor: number): Point => [x * factor, y * factor];

function guessesIn(
  gray: Gray,
  tape: GuessQuestion['tape'],
  other: GuessQuestion['other'],
): readonly Proposal[] {
  const found = tape.length > 3 ? null : tapeIn(gray);
  const marks = found?.marks ?? tape.map((each) => ({ ...each, sigmaPx: 1 }));
  if (marks.length < 4) return [];
  const sides = ([1, -1] as const)
    .flatMap((side) => {
      const plane = tapePlane(marks, side);
      const ends = guessEnds(gray, plane, usualBy(other, side));
      return ends ? [{ plane, ends }] : [];
    })
    .sort((a, b) => b.ends.score - a.ends.score);
  const [best, next] = sides;
  return [
    ...(found ? [found] : []),
    ...(best ? endsOf(gray, best.plane, best.ends, best.ends.score - (next?.ends.score ?? 0)) : []),
  ];
}

const logistic = ([at0, perLead]: readonly [number, number], lead: number) =>
  Math.min(MOST_CONFIDENCE, 1 / (1 + Math.exp(-at0 - perLead * lead)));

function tapeIn(gray: Gray): Proposal | null {
  const small = shrunk(gray, SMALL_PX);
  const edges = longEdges(small.gray, LEAST_EDGE_PX).map(({ from, to, inward }) => ({
    from: scaled(from, small.by),
    to: scaled(to, small.by),
    inward,
  }));
  const tape = guessTape(gray, edges);
  if (!tape.ok || !tape.value.numerals) return null;
  const confidence = logistic(CURVES.tape, tape.value.numerals.lead);
  return { kind: 'tape-graduation', marks: tape.value.marks, confidence };
}

/** Where both ends lie by the other picture's tape: the camshaft stays, the pin comes out or goes in. */
function usualBy(other: GuessQuestion['other'], side: 1 | -1): Usual | null {
  if (!other || other.tape.length < 4 || !other.pinPx) return null;
  const plane = tapePlane(
    other.tape.map((each) => ({ ...each, sigmaPx: 1 })),
    side,
  );
  return {
    pinMm: plane.mmFromPx(other.pinPx),
    camshaftMm: other.camshaftPx && plane.mmFromPx(other.camshaftPx),
  };
}

function endsOf(gray: Gray, plane: TapePlane, ends: GuessedEnds, sideLead: number): readonly Proposal[] {
  if (ends.score < LEAST_SCORE) return [];
  const lengthPx = Math.max(60, ends.pin.mm[0]) * plane.pxPerMm;
  return [
    {
      kind: 'clevis-pin' as const,
      marks: [measured(gray, 'clevis-pin', ends.pin, lengthPx)],
      confidence: logistic(CURVES.pin, Math.min(ends.pinLead, sideLead)),
    },
    {
      kind: 'camshaft-end' as const,
      marks: [measured(gray, 'camshaft-end', ends.camshaft, lengthPx)],
      confidence: logistic(CURVES.camshaft, Math.min(ends.camshaftLead, sideLead)),
    },
  ];
}

function measured(
  gray: Gray,
  of: 'clevis-pin' | 'camshaft-end',
  { edge }: RoundThing,
  lengthPx: number,
): FoundMark {
  const found = findEnd(gray, { of, placePx: edge.centre, sigmaPx: ROUGH_PX, lengthPx });
  const mark = found.ok ? found.value.marks[0] : undefined;
  return (
    mark ?? {
      placePx: edge.centre,
      sigmaPx: Math.hypot(SHIFT * edge.longPx, edge.uCentrePx, 0.5),
      readingMm: null,
    }
  );
}
