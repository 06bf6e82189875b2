/**
 * In which pieces a clip is decoded backwards: each forwards from where a decoder can begin, then handed on in turn.
 *
 * Model    a piece ends where the one before began; it begins at the last key frame before that, or, where that lies too far back to
 *          keep all frames since, later, so that the decoder passes some by and comes there again
 */
export type Piece = { readonly from: number; readonly to: number };

/** Frames `from` to before `to`, latest piece first. keys: frames that decode without another, ascending. */
export function backwardPieces(
  from: number,
  to: number,
  keys: readonly number[],
  mostKept: number,
): readonly Piece[] {
  const pieces: Piece[] = [];
  for (let end = to; end > from; ) {
    const key = keys.findLast((index) => index < end) ?? 0;
    const begin = Math.max(from, key, end - Math.max(1, mostKept));
    pieces.push({ from: begin, to: end });
    end = begin;
  }
  return pieces;
}
