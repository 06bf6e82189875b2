/** What the marks of a picture let an assist look for, and the marks that would come of what it found. */
import type { Mark } from '../../marks/mark.ts';
import type { View } from '../../marks/view.ts';
import type { AssistQuestion, FoundMark } from '../../vision/assist-sight.ts';

/** instead: marks of the hand in whose place those found would come. */
export type Asked = { readonly question: AssistQuestion; readonly instead: readonly Mark[] };

const ENDS = ['clevis-pin', 'camshaft-end'] as const;

export function assistAsked({ marks }: Pick<View, 'marks'>): readonly Asked[] {
  const byHand = marks.filter(({ placedBy }) => placedBy === 'hand');
  return [...endsAsked(byHand), ...tapeAsked(marks, byHand)];
}

const placeOf = ({ xPx, yPx }: Mark) => [xPx, yPx] as const;

/** A kind that was set several times keeps its settings: they count together. */
function onlyOf(marks: readonly Mark[], kind: Mark['kind']): Mark | null {
  const alike = marks.filter((mark) => mark.kind === kind);
  return alike.length === 1 ? (alike[0] ?? null) : null;
}

function endsAsked(byHand: readonly Mark[]): readonly Asked[] {
  const face = byHand.find(({ kind }) => kind === 'chamber-face');
  return ENDS.flatMap((of) => {
    const end = onlyOf(byHand, of);
    if (!face || !end) return [];
    const pin = byHand.find(({ kind }) => kind === 'clevis-pin') ?? end;
    const lengthPx = Math.max(1, Math.hypot(pin.xPx - face.xPx, pin.yPx - face.yPx));
    return [{ question: { of, placePx: placeOf(end), sigmaPx: end.sigmaPx, lengthPx }, instead: [end] }];
  });
}

/** Between the two that lie farthest apart; found once, they are not sought again. */
function tapeAsked(marks: readonly Mark[], byHand: readonly Mark[]): readonly Asked[] {
  if (marks.some(({ kind, placedBy }) => kind === 'tape-graduation' && placedBy === 'assist')) return [];
  const named = byHand
    .flatMap((mark) => (mark.kind === 'tape-graduation' ? [mark] : []))
    .sort((a, b) => a.readingMm - b.readingMm);
  const [low, high] = [named[0], named.at(-1)];
  if (!low || !high || low === high) return [];
  const asNamed = (mark: typeof low) => ({
    placePx: placeOf(mark),
    sigmaPx: mark.sigmaPx,
    readingMm: mark.readingMm,
  });
  return [{ question: { of: 'tape', named: [asNamed(low), asNamed(high)] }, instead: named }];
}

/** A single mark keeps its id: what hangs on it, hangs on it still. */
export function marksFound(
  { question, instead }: Asked,
  found: readonly FoundMark[],
  newId: () => string,
): readonly Mark[] {
  const kept = question.of === 'tape' || question.of === 'clamp-band' ? null : instead[0];
  return found.map(({ placePx: [xPx, yPx], sigmaPx, readingMm }): Mark => {
    const placed = { id: kept?.id ?? newId(), xPx, yPx, sigmaPx, placedBy: 'assist' } as const;
    if (question.of === 'tape') return { kind: 'tape-graduation', readingMm: readingMm ?? 0, ...placed };
    return { kind: question.of, ...placed };
  });
}
