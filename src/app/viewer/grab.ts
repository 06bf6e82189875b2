/** Which mark a hand takes hold of: the nearest within reach. */
import { distanceCss, type ScreenPoint, screenFromFrame, type View } from './view-transform.ts';
import type { ViewerMark } from './viewer-mark.ts';

/** Half of the 44 CSS pixels a fingertip needs; a mouse points finer. */
const REACH_CSS = { finger: 22, mouse: 12 } as const;

export function grabbed(
  view: View,
  marks: readonly ViewerMark[],
  at: ScreenPoint,
  by: { readonly hand: 'finger' | 'mouse'; readonly placing: boolean },
): ViewerMark | null {
  // While a mark is asked for, the hand more often means a new one near to one that is there.
  const reachCss = REACH_CSS[by.hand] * (by.placing ? 0.5 : 1);
  // Found corners of the printed target lie close together: a tap among them means the new mark.
  const held = by.placing ? marks.filter(({ automatic, minor }) => !(automatic && minor)) : marks;
  const distances = held.map((mark) => ({ mark, css: distanceCss(screenFromFrame(view, mark), at) }));
  const inReach = distances.filter(({ css }) => css <= reachCss).sort((a, b) => a.css - b.css);
  return inReach[0]?.mark ?? null;
}
