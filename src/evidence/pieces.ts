/**
 * A package in pieces that a mail takes: plain slices of the file, told apart by their names, 'NAME.zip.2-of-3'. Nothing in a piece says
 * that it is genuine: only the whole does, when it is rechecked.
 */
import { assert, fail, ok, type Result } from '../basics/result.ts';

export type Piece = { readonly name: string; readonly from: number; readonly to: number };

export function piecesOf(name: string, sizeBytes: number, limitBytes: number): readonly Piece[] {
  assert(limitBytes > 0, 'a piece holds something');
  const count = Math.max(1, Math.ceil(sizeBytes / limitBytes));
  return Array.from({ length: count }, (_, i) => ({
    name: `${name}.${i + 1}-of-${count}`,
    from: i * limitBytes,
    to: Math.min((i + 1) * limitBytes, sizeBytes),
  }));
}

export type PiecesFailure = {
  readonly code: 'pieces/missing';
  /** Of the package, without a piece's number. */
  readonly name: string;
  readonly missing: readonly number[];
  readonly count: number;
};

export type Whole<T> = { readonly name: string; readonly pieces: readonly T[] };

const NUMBERED = /^(?<name>.+\.zip)\.(?<number>\d{1,4})-of-(?<count>\d{1,4})$/i;

export function isPieceName(name: string): boolean {
  return NUMBERED.test(name);
}

/** Puts what came in pieces in order; anything else is a whole of one. The first of two pieces with one number counts. */
export function wholesOf<T>(
  given: readonly T[],
  nameOf: (one: T) => string,
): readonly Result<Whole<T>, PiecesFailure>[] {
  const groups = new Map<string, { name: string; count: number; pieces: Map<number, T> }>();
  for (const [i, one] of given.entries()) {
    const numbered = NUMBERED.exec(nameOf(one))?.groups;
    const { name = nameOf(one), number = '1', count = '1' } = numbered ?? {};
    const key = numbered ? `${name} ${count}` : `whole ${i}`;
    const group = groups.get(key) ?? { name, count: Number(count), pieces: new Map<number, T>() };
    if (!group.pieces.has(Number(number))) group.pieces.set(Number(number), one);
    groups.set(key, group);
  }
  return [...groups.values()].map(({ name, count, pieces }) => {
    const numbers = Array.from({ length: count }, (_, i) => i + 1);
    const missing = numbers.filter((number) => !pieces.has(number));
    if (missing.length > 0 || count === 0) return fail({ code: 'pieces/missing', name, missing, count });
    return ok({ name, pieces: numbers.flatMap((number) => pieces.get(number) ?? []) });
  });
}
