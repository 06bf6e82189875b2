/**
 * What the chamber shows of its stroke class, and what that leaves open.
 *
 * Rule     a square port boss, a trapezoid tag or an L on the housing is a sign of long stroke. A round boss, no tag or no letter
 *          proves nothing by itself: tags fall off and paint hides marks. Without a sign the standard limit holds, the lower one;
 *          long stroke chosen against the looks leaves both limits possible.
 * Source   SAE J1817 (square boss, tag) and J2899 (letters), excerpts; that no proof is standard stroke: our own reading.
 */
import type { Chamber } from '../finding/chamber.ts';
import type { Identification } from './wheel-end.ts';

const LONG_SIGNS = ['square-boss', 'trapezoid-tag', 'letter-l'] as const;
export type LongSign = (typeof LONG_SIGNS)[number];

export function longSigns({ portBoss, tag, marking }: Identification): LongSign[] {
  const signs: LongSign[] = [];
  if (portBoss === 'square') signs.push('square-boss');
  if (tag === 'trapezoid') signs.push('trapezoid-tag');
  if (LETTER_L.test(marking)) signs.push('letter-l');
  return signs;
}

/** Long stroke was chosen, somebody looked at boss and tag and saw no sign of it, and none is written down. */
export function isLongAgainstLooks(chamber: Chamber | null, identification: Identification): boolean {
  const { portBoss, tag } = identification;
  const looked = portBoss !== null && tag !== null;
  return chamber?.strokeClass === 'long' && looked && longSigns(identification).length === 0;
}

/** Size and letter, as in '24L', '30 LS', or the letter by itself. */
const LETTER_L = /(?:^|[^a-z])(?:L|LS)(?:$|[^a-z])|\blong\b/i;

/** A letter A to H that stands by itself; on a bolt-type chamber such a letter is the type. */
export function strokeLetter(chamber: Chamber, { marking }: Identification): string | null {
  if (chamber.family === 'bolt') return null;
  return /(?:^|[^a-z0-9])([A-H])(?:$|[^a-z0-9])/i.exec(marking)?.[1]?.toUpperCase() ?? null;
}
