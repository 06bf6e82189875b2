/** When a guess of where things are is of use, and how the viewer draws it. */
import type { MarkKind } from '../../marks/mark.ts';
import type { View } from '../../marks/view.ts';
import { apart, type Point } from '../../vision/point.ts';
import type { RoughGuess } from '../../vision/rough-sight.ts';
import type { LineSort } from '../viewer/found-line.ts';
import type { OfferedMark } from '../viewer/offered-mark.ts';
import type { FramePoint } from '../viewer/view-transform.ts';
import { ROUGH } from '../words/rough.ts';

const LINES = ['tape', 'band', 'axis'] as const;
const ENDS = ['pin', 'camshaft'] as const;
export const ROUGH_THINGS = [...LINES, ...ENDS] as const;
export type RoughThing = (typeof ROUGH_THINGS)[number];

/** The chamber's axis is a straight line, as a tape's edge is. */
const LINE_OF: Readonly<Record<(typeof LINES)[number], LineSort>> = {
  tape: 'row',
  band: 'rim',
  axis: 'edge',
};
const KIND_OF = { pin: 'clevis-pin', camshaft: 'camshaft-end' } as const;
const OTHER_ENDS: readonly MarkKind[] = Object.values(KIND_OF);

/** Until the chamber face is marked, or anything on tape or band: what is found about marks is shown from then on. */
export function isRoughWanted({ marks }: Pick<View, 'marks'>): boolean {
  return marks.every(({ kind }) => OTHER_ENDS.includes(kind));
}

/**
 * Tape and band are named, each at one of its places: the tape where it is farthest from the chamber, so that what is marked stays clear.
 * The axis runs over rod and pin and has no name there: it is named beside the picture.
 */
export function roughMarks(guess: RoughGuess): readonly OfferedMark[] {
  return [...lines(guess), ...ENDS.flatMap(ringOf(guess))];
}

/** An end that is marked, or found more closely, is guessed at no more. */
export function withoutEnds(guess: RoughGuess, kinds: readonly MarkKind[]): RoughGuess {
  const keeps = (of: (typeof ENDS)[number]) => (kinds.includes(KIND_OF[of]) ? null : guess[of]);
  return { ...guess, pin: keeps('pin'), camshaft: keeps('camshaft') };
}

const ringOf =
  (guess: RoughGuess) =>
  (of: (typeof ENDS)[number]): readonly OfferedMark[] => {
    const end = guess[of];
    if (!end) return [];
    const [xPx, yPx] = end.placePx;
    return [
      { id: `rough ${of}`, xPx, yPx, line: null, ringPx: end.radiusPx, name: ROUGH.drawn(of, end.likely) },
    ];
  };

function lines(guess: RoughGuess): readonly OfferedMark[] {
  const from = guess.axis?.placesPx[0];
  return LINES.flatMap((thing) => {
    const { placesPx, likely } = guess[thing] ?? { placesPx: [], likely: false };
    const named = thing === 'axis' ? -1 : thing === 'tape' && from ? farthest(placesPx, from) : 0;
    return placesPx.map(([xPx, yPx], i) => ({
      id: `rough ${thing} ${i}`,
      xPx,
      yPx,
      line: LINE_OF[thing],
      name: i === named ? ROUGH.drawn(thing, likely) : null,
    }));
  });
}

function farthest(places: readonly Point[], from: Point): number {
  const far = places.map((place) => apart(place, from));
  return far.indexOf(Math.max(...far));
}

/** What has to be seen close to mark it. */
export const closeTo = ({ tape, band, pin, camshaft }: RoughGuess): readonly FramePoint[] =>
  [tape?.placesPx ?? [], band?.placesPx ?? [], pin ? [pin.placePx] : [], camshaft ? [camshaft.placePx] : []]
    .flat()
    .map(([xPx, yPx]) => ({ xPx, yPx }));
