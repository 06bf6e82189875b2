/** What the marks of a picture let an assist look for, and the marks that would come of what it found. */
import type { Frame } from '../../frames/frame.ts';
import type { Mark } from '../../marks/mark.ts';
import type { View } from '../../marks/view.ts';
import type { AssistQuestion, EndMarks, EndQuestion, FoundMark } from '../../vision/assist-sight.ts';
import { apart, type Point } from '../../vision/point.ts';

/**
 * instead: marks of the hand in whose place those found would come; again: the mark of another picture whose point is sought again; other: a
 * frame of the same clip that the question is about as well.
 */
export type Asked = {
  readonly question: AssistQuestion;
  readonly instead: readonly Mark[];
  readonly again: Mark | null;
  readonly other?: Frame;
};

/** An end that was found again in a picture in which nobody had marked it. */
export type GuessedEnd = { readonly of: EndQuestion['of']; readonly guessed: true };

/** What is offered in the same way, by whichever search. */
export type Offered = Omit<Asked, 'question'> & { readonly question: AssistQuestion | GuessedEnd };

type Graduation = Extract<Mark, { readonly kind: 'tape-graduation' }>;

const ENDS = ['clevis-pin', 'camshaft-end'] as const;
const COARSE_PX = 16;
/** Of graduations, from which on they say which way the tape lies. */
const LEAST_LENGTH_MM = 50;

/** released: that picture, where this is another one: its marks of pin and camshaft are kept, and the same points of the metal sought here. */
export function assistAsked(
  { marks }: Pick<View, 'marks'>,
  released: Pick<View, 'marks'> | null = null,
): readonly Asked[] {
  const byHand = marks.filter(({ placedBy }) => placedBy === 'hand');
  return [
    ...endsAsked(marks, byHand, released),
    ...bandAsked(marks, byHand),
    ...tapeAsked(marks, byHand),
    ...edgeAsked(marks, byHand),
  ];
}

const placeOf = ({ xPx, yPx }: Mark) => [xPx, yPx] as const;

/** A kind that was set several times keeps its settings: they count together. */
export function onlyOf(marks: readonly Mark[], kind: Mark['kind']): Mark | null {
  const alike = marks.filter((mark) => mark.kind === kind);
  return alike.length === 1 ? (alike[0] ?? null) : null;
}

function sameAsked(
  marks: readonly Mark[],
  knownMarks: readonly Mark[],
  again: Mark | null,
): EndQuestion['same'] {
  const [here, known] = [endMarks(marks), endMarks(knownMarks)];
  return here && known && again ? { here, known, knownSigmaPx: again.sigmaPx } : null;
}

export function endMarks(marks: readonly Mark[]): EndMarks | null {
  const [face, pin, camshaft] = (['chamber-face', ...ENDS] as const).map((kind) =>
    marks.find((mark) => mark.kind === kind),
  );
  return face && pin
    ? { facePx: placeOf(face), pinPx: placeOf(pin), camshaftPx: camshaft ? placeOf(camshaft) : null }
    : null;
}

function endsAsked(
  marks: readonly Mark[],
  byHand: readonly Mark[],
  released: Pick<View, 'marks'> | null,
): readonly Asked[] {
  const face = marks.find(({ kind }) => kind === 'chamber-face');
  return ENDS.flatMap((of) => {
    const end = onlyOf(byHand, of);
    if (!face || !end) return [];
    const pin = byHand.find(({ kind }) => kind === 'clevis-pin') ?? end;
    const lengthPx = Math.max(1, Math.hypot(pin.xPx - face.xPx, pin.yPx - face.yPx));
    const knownMarks = released?.marks ?? [];
    const again = onlyOf(knownMarks, of);
    const same = sameAsked(marks, knownMarks, again);
    const question = { of, placePx: placeOf(end), sigmaPx: end.sigmaPx, lengthPx, same };
    return [{ question, instead: [end], again: same && again }];
  });
}

/**
 * One touch near the band is enough, where face and pin are there; found once, it is not sought again. With a tape or a target no touch is
 * needed: the rim then shows from where the brake is seen, whatever its diameter.
 */
function bandAsked(marks: readonly Mark[], byHand: readonly Mark[]): readonly Asked[] {
  const isRim = ({ kind }: Mark) => kind === 'clamp-band';
  if (marks.some((mark) => isRim(mark) && mark.placedBy === 'assist')) return [];
  const ends = endMarks(marks);
  const instead = byHand.filter(isRim);
  const near = instead[0] ?? null;
  if (!ends || !(near || isScaled(marks))) return [];
  return [{ question: rimQuestion(ends, near), instead, again: null }];
}

const isScaled = (marks: readonly Mark[]) =>
  marks.some(({ kind }) => kind === 'tape-graduation' || kind === 'target-corner');

const rimQuestion = ({ facePx, pinPx }: EndMarks, near: Mark | null) =>
  ({ of: 'clamp-band', facePx, pinPx, nearPx: near && placeOf(near) }) as const;

/** Beside a tape whose graduations were found with their readings and wait to be taken, where nothing of a band is marked. */
export function rimAsked(marks: readonly Mark[], found: readonly FoundMark[] | null): readonly Asked[] {
  const ends = endMarks(marks);
  const isRead = found?.some(({ readingMm }) => readingMm !== null) ?? false;
  if (!ends || isScaled(marks) || !isRead || marks.some(({ kind }) => kind === 'clamp-band')) return [];
  return [{ question: rimQuestion(ends, null), instead: [], again: null }];
}

/** Between the two that lie farthest apart; found once, they are not sought again. */
function tapeAsked(marks: readonly Mark[], byHand: readonly Mark[]): readonly Asked[] {
  if (marks.some(({ kind, placedBy }) => kind === 'tape-graduation' && placedBy === 'assist')) return [];
  const named = graduationsOf(byHand);
  const [low, high] = [named[0], named.at(-1)];
  if (!low || !high || low === high) return [];
  const question = { of: 'tape', named: [asNamed(low), asNamed(high)] } as const;
  return [{ question, instead: named, again: null }];
}

/**
 * Until two are named or any were found. Face and pin to the nearest step: the tape is not sought anew for what a mark of theirs is moved by a
 * little.
 */
export function strokesAsked(marks: readonly Mark[]): readonly Asked[] {
  const ends = endMarks(marks);
  const graduations = graduationsOf(marks);
  if (!ends || graduations.length > 1 || graduations.some(({ placedBy }) => placedBy !== 'hand')) return [];
  const [facePx, pinPx] = [ends.facePx, ends.pinPx].map(
    ([x, y]) => [COARSE_PX * Math.round(x / COARSE_PX), COARSE_PX * Math.round(y / COARSE_PX)] as const,
  ) as [Point, Point];
  return [{ question: { of: 'tape-strokes', facePx, pinPx }, instead: graduations, again: null }];
}

/** One touch on the edge is enough, where two graduations say which way the tape lies; found once, it is not sought again. */
function edgeAsked(marks: readonly Mark[], byHand: readonly Mark[]): readonly Asked[] {
  const isOnEdge = ({ kind }: Mark) => kind === 'tape-edge';
  const instead = byHand.filter(isOnEdge);
  const near = instead[0];
  const named = graduationsOf(marks);
  const [low, high] = [named[0], named.at(-1)];
  if (!near || !low || !high || apartMm(low, high) < LEAST_LENGTH_MM) return [];
  if (marks.some((mark) => isOnEdge(mark) && mark.placedBy === 'assist')) return [];
  const ends = { fromPx: placeOf(low), toPx: placeOf(high), lengthMm: apartMm(low, high) };
  return [{ question: { of: 'tape-edge', ...ends, nearPx: placeOf(near) }, instead, again: null }];
}

/** So many and so far apart tell how slanted the tape is, and with it how wide the rod must be. */
const LEAST_GRADUATIONS = 4;
const LEAST_TAPE_MM = 75;

/**
 * The rod's middle line, of which nothing is marked: where face and pin are, and the tape says how wide it is. found: graduations that wait to
 * be taken in place of the hand's.
 */
export function rodAsked(marks: readonly Mark[], found: readonly FoundMark[] | null): readonly Asked[] {
  const ends = endMarks(marks);
  const face = marks.find(({ kind }) => kind === 'chamber-face');
  if (!ends || !face || marks.some(({ kind }) => kind === 'rod-line')) return [];
  const tape = tellingTape(marks, found);
  if (!tape) return [];
  const { facePx, pinPx } = ends;
  const question = { of: 'rod-line', facePx, faceSigmaPx: face.sigmaPx, pinPx, tape } as const;
  return [{ question, instead: [], again: null }];
}

/** Graduations that tell how slanted the tape is. */
function tellingTape(marks: readonly Mark[], found: readonly FoundMark[] | null) {
  const tape = found
    ? found.map(({ placePx, sigmaPx, readingMm }) => ({ placePx, sigmaPx, readingMm: readingMm ?? 0 }))
    : graduationsOf(marks).map(asNamed);
  const readings = tape.map(({ readingMm }) => readingMm);
  const isLong = Math.max(...readings) - Math.min(...readings) >= LEAST_TAPE_MM;
  return tape.length >= LEAST_GRADUATIONS && isLong ? tape : null;
}

/** Edges across the rod near the hand's mark of the face, where the rod's middle line was found: taken, or it waits to be. A hand's is no surer than its mark of the face. */
export function faceAsked(
  marks: readonly Mark[],
  found: readonly FoundMark[] | null,
  foundRod: readonly FoundMark[] | null,
): readonly Asked[] {
  const face = onlyOf(marks, 'chamber-face');
  const tape = tellingTape(marks, found);
  if (face?.placedBy !== 'hand' || !tape) return [];
  const facePx = placeOf(face);
  const taken = marks.filter(({ kind, placedBy }) => kind === 'rod-line' && placedBy === 'assist');
  const line = foundRod ?? taken.map((mark) => ({ placePx: placeOf(mark), sigmaPx: mark.sigmaPx }));
  const [near, far] = line
    .map(({ placePx, sigmaPx }) => ({ placePx, sigmaPx }))
    .sort((a, b) => apart(a.placePx, facePx) - apart(b.placePx, facePx));
  if (!near || !far) return [];
  const question = { of: 'chamber-face', facePx, sigmaPx: face.sigmaPx, rod: [near, far], tape } as const;
  return [{ question, instead: [face], again: null }];
}

export const graduationsOf = (marks: readonly Mark[]): readonly Graduation[] =>
  marks
    .flatMap((mark) => (mark.kind === 'tape-graduation' ? [mark] : []))
    .sort((a, b) => a.readingMm - b.readingMm);

export const asNamed = (mark: Graduation) => ({
  placePx: placeOf(mark),
  sigmaPx: mark.sigmaPx,
  readingMm: mark.readingMm,
});

const apartMm = (a: Graduation, b: Graduation) => Math.abs(a.readingMm - b.readingMm);

/** Whether what is found are many marks of one kind. */
export const isMany = (of: AssistQuestion['of']) =>
  isTape(of) || of === 'tape-edge' || of === 'clamp-band' || of === 'rod-line';

export const isTape = (of: AssistQuestion['of']) => of === 'tape' || of === 'tape-strokes';

/** Of the marks that come of it. */
export function kindOf(of: AssistQuestion['of']) {
  if (isTape(of)) return 'tape-graduation';
  return of === 'arm-turn' ? 'camshaft-end' : of;
}

/** A single mark keeps its id: what hangs on it, hangs on it still. */
export function marksFound(
  { question, instead, again }: Offered,
  found: readonly FoundMark[],
  newId: () => string,
): readonly Mark[] {
  const kept = isMany(question.of) ? null : instead[0];
  return found.map(({ placePx: [xPx, yPx], sigmaPx, readingMm }): Mark => {
    const placed = { id: kept?.id ?? newId(), xPx, yPx, sigmaPx, placedBy: 'assist' } as const;
    const kind = kindOf(question.of);
    if (kind === 'tape-graduation') return { kind, readingMm: readingMm ?? 0, ...placed };
    return { kind, ...placed, ...(again ? { followedFrom: again.id } : {}) };
  });
}
