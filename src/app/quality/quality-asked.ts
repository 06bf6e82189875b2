/** Where on a picture its quality counts, by the marks it has. */
import type { Mark } from '../../marks/mark.ts';
import type { View } from '../../marks/view.ts';
import type { QualityQuestion } from '../../vision/picture-quality.ts';

/** About rod and pin, over the length between face and pin. */
const ABOUT = 0.4;
/** A mark moved by less is no reason to look again. */
const GRAIN_PX = 32;

export function qualityAsked({ marks }: Pick<View, 'marks'>): QualityQuestion {
  return { aboutPx: aboutRod(marks), tape: outermost(marks) };
}

function aboutRod(marks: readonly Mark[]): QualityQuestion['aboutPx'] {
  const face = marks.find(({ kind }) => kind === 'chamber-face');
  const pin = marks.find(({ kind }) => kind === 'clevis-pin');
  if (!face || !pin) return null;
  const margin = ABOUT * Math.hypot(pin.xPx - face.xPx, pin.yPx - face.yPx);
  const [left, right] = rounded(Math.min(face.xPx, pin.xPx) - margin, Math.max(face.xPx, pin.xPx) + margin);
  const [top, low] = rounded(Math.min(face.yPx, pin.yPx) - margin, Math.max(face.yPx, pin.yPx) + margin);
  return { xPx: left, yPx: top, widthPx: right - left, heightPx: low - top };
}

const rounded = (low: number, high: number) =>
  [GRAIN_PX * Math.floor(low / GRAIN_PX), GRAIN_PX * Math.ceil(high / GRAIN_PX)] as const;

function outermost(marks: readonly Mark[]): QualityQuestion['tape'] {
  const tape = marks
    .flatMap((mark) => (mark.kind === 'tape-graduation' ? [mark] : []))
    .sort((a, b) => a.readingMm - b.readingMm);
  const [low, high] = [tape[0], tape.at(-1)];
  if (!low || !high || low === high) return [];
  return [low, high].map(({ xPx, yPx, readingMm }) => ({
    placePx: [xPx, yPx].map((v) => 4 * Math.round(v / 4)) as [number, number],
    readingMm,
  }));
}
