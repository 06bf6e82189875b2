/** Points of the curve that have a name: 90 % of the stroke, and the arm square to the rod. */
import type { Application, ClipMeasurement, CurvePoint } from '../../measurement/clip-measurement.ts';
import type { ScreenPoint } from '../viewer/view-transform.ts';
import type { CurveScale } from './curve-scale.ts';
import { levelMm, phaseOf, xOfFrame } from './phase-place.ts';

export type PointNote = {
  readonly kind: 'ninety' | 'square';
  readonly xCss: number;
  readonly yCss: number;
  /** Middle of its word, left of the curve; null where there is no room. */
  readonly wordCss: number | null;
};

const WORD_CSS = { ninety: 40, square: 52 };
const LINE_CSS = 17;
const LIMIT_WORD_CSS = 110;

export function pointNotes({ curve, applications, square }: ClipMeasurement, scale: CurveScale): PointNote[] {
  let freeFromCss = scale.leftCss;
  const notes = applications.flatMap((application): PointNote[] => {
    const leftEdgeCss = freeFromCss;
    freeFromCss = xOfFrame(curve, scale, lastMoving(application));
    const at = ninetyPoint(curve, application, scale);
    if (!at) return [];
    const wordCss = at.xCss - WORD_CSS.ninety > leftEdgeCss ? at.yCss : null;
    return [{ kind: 'ninety', ...at, wordCss }];
  });
  const [xCss, yCss] = square ? [scale.xAt(square.timeS), scale.yAt(square.strokeMm.value)] : [0, 0];
  const squareNote = {
    kind: 'square',
    xCss,
    yCss,
    wordCss: xCss - WORD_CSS.square > scale.leftCss ? yCss : null,
  } as const;
  return apart(square ? [...notes, squareNote] : notes, scale);
}

/** From the top: each word off the limit's line and number, and below the word above it at the same flank. */
function apart(notes: readonly PointNote[], scale: CurveScale): PointNote[] {
  const placed: PointNote[] = [];
  for (const note of notes.toSorted((a, b) => a.yCss - b.yCss)) {
    const above = placed.findLast(
      ({ xCss, wordCss }) => wordCss !== null && Math.abs(xCss - note.xCss) < WORD_CSS.square,
    );
    placed.push({ ...note, wordCss: note.wordCss === null ? null : lowered(note, above, scale) });
  }
  return placed;
}

function lowered(
  { xCss, yCss }: PointNote,
  above: PointNote | undefined,
  { limitCss, leftCss }: CurveScale,
): number {
  const freeCss = Math.max(yCss, (above?.wordCss ?? Number.NEGATIVE_INFINITY) + LINE_CSS);
  if (limitCss === null) return freeCss;
  // The limit's number stands on its line, at the left.
  const overCss = xCss - WORD_CSS.square < leftCss + LIMIT_WORD_CSS ? 2 * LINE_CSS : LINE_CSS / 2 + 2;
  const onLimit = freeCss > limitCss - overCss && freeCss < limitCss + LINE_CSS / 2 + 2;
  return onLimit ? limitCss + LINE_CSS / 2 + 4 : freeCss;
}

const NINETY = 0.9;

/** Where the drawn line passes 90 % of the stroke. */
function ninetyPoint(
  curve: readonly CurvePoint[],
  application: Application,
  scale: CurveScale,
): ScreenPoint | null {
  const [released, held] = [phaseOf(application, 'released'), phaseOf(application, 'held')];
  if (!released || !held) return null;
  const mm = levelMm(curve, released) + NINETY * application.strokeMm.value;
  const seen = curve
    .slice(released.to, held.to + 1)
    .flatMap(({ timeS, stroke }) => (stroke ? [{ timeS, mm: stroke.value }] : []));
  const next = seen.findIndex((point, i) => point.mm >= mm && (seen[i - 1]?.mm ?? mm) < mm);
  const [before, after] = [seen[next - 1], seen[next]];
  if (!before || !after) return null;
  const share = (mm - before.mm) / (after.mm - before.mm);
  return { xCss: scale.xAt(before.timeS + share * (after.timeS - before.timeS)), yCss: scale.yAt(mm) };
}

function lastMoving({ phases }: Application): number {
  return phases.findLast(({ kind }) => kind !== 'released')?.to ?? 0;
}
