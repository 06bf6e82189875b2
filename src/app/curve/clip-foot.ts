/** The strip under the picture of an annotated clip: it hides nothing of the picture, and says what the lines are. */
import type { FrameSize } from '../viewer/view-transform.ts';
import { type Context, drawingScale, FACE } from './paint-follow.ts';

const PAPER = '#fbfaf6';
const GRAPHITE = '#1f2326';
const GRAPHITE_2 = '#4d5359';
const PAD_CSS = 12;
const VALUE_CSS = 24;
const NOTE_CSS = 14;
const NOTE_LINE_CSS = 18;

export type Foot = {
  readonly scale: number;
  readonly topPx: number;
  /** Of the whole picture, strip included; even, as H.264 wants it. */
  readonly size: FrameSize;
  readonly note: readonly string[];
};

export function footFor(context: Context, frame: FrameSize, note: string): Foot {
  const scale = drawingScale(frame);
  context.font = `400 ${NOTE_CSS}px ${FACE}`;
  const lines = broken(note, frame.widthPx / scale - 2 * PAD_CSS, (text) => context.measureText(text).width);
  const heightCss = PAD_CSS + VALUE_CSS + 8 + NOTE_LINE_CSS * lines.length + PAD_CSS / 2;
  return {
    scale,
    topPx: frame.heightPx,
    size: {
      widthPx: even(frame.widthPx),
      heightPx: even(frame.heightPx + Math.round(heightCss * scale)),
    },
    note: lines,
  };
}

export function paintFoot(
  context: Context,
  { scale, topPx, size, note }: Foot,
  words: { readonly left: string; readonly right: string },
): void {
  context.save();
  context.fillStyle = PAPER;
  context.fillRect(0, topPx, size.widthPx, size.heightPx - topPx);
  context.translate(0, topPx);
  context.scale(scale, scale);
  const widthCss = size.widthPx / scale;
  context.fillStyle = GRAPHITE;
  context.fillRect(0, 0, widthCss, 1.5);
  context.font = `600 ${VALUE_CSS}px ${FACE}`;
  const baseCss = PAD_CSS + VALUE_CSS - 4;
  context.fillText(words.left, PAD_CSS, baseCss);
  context.textAlign = 'right';
  context.fillText(words.right, widthCss - PAD_CSS, baseCss);
  context.textAlign = 'left';
  context.font = `400 ${NOTE_CSS}px ${FACE}`;
  context.fillStyle = GRAPHITE_2;
  note.forEach((line, index) => {
    context.fillText(line, PAD_CSS, baseCss + 8 + NOTE_LINE_CSS * (index + 1) - 4);
  });
  context.restore();
}

/** Into lines no wider than that, at spaces. */
export function broken(text: string, mostCss: number, widthOf: (text: string) => number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const longer = lines.length > 0 ? `${lines.at(-1)} ${word}` : word;
    if (lines.length > 0 && widthOf(longer) <= mostCss) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

function even(px: number): number {
  return px + (px % 2);
}
