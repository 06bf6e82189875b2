/**
 * Which mark a hand takes hold of: the nearest within reach.
 *
 * Rule     While a mark is asked for, the hand more often means a new one near to one that is there: half the reach. A mark that is
 *          neither selected nor of the asked kind is out of reach too where it is farther than a hundredth of the picture's width:
 *          with the whole picture on a phone pin, face and blade lie closer together than a fingertip.
 */
import { distanceCss, type ScreenPoint, screenFromFrame, type View } from './view-transform.ts';
import type { ViewerMark } from './viewer-mark.ts';

/** Half of the 44 CSS pixels a fingertip needs; a mouse points finer. */
const REACH_CSS = { finger: 22, mouse: 12 } as const;
/** Of the picture's width. */
const OTHER_REACH = 0.01;

export function grabbed(
  view: View,
  marks: readonly ViewerMark[],
  at: ScreenPoint,
  by: { readonly hand: 'finger' | 'mouse'; readonly placing: boolean },
): ViewerMark | null {
  const widthCss = view.scale * view.frame.widthPx;
  const reachCss = (mark: ViewerMark) => {
    if (!by.placing) return REACH_CSS[by.hand];
    const nearCss = REACH_CSS[by.hand] / 2;
    return mark.selected || mark.asked ? nearCss : Math.min(nearCss, OTHER_REACH * widthCss);
  };
  // Found corners of the printed target lie close together: a tap among them means the new mark.
  const held = by.placing ? marks.filter(({ automatic, minor }) => !(automatic && minor)) : marks;
  const distances = held.map((mark) => ({ mark, css: distanceCss(screenFromFrame(view, mark), at) }));
  const inReach = distances.filter(({ mark, css }) => css <= reachCss(mark)).sort((a, b) => a.css - b.css);
  return inReach[0]?.mark ?? null;
}
