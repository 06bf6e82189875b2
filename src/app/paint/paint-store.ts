/** What the tool saw of the over-stroke mark in each picture. Kept while the page is open; the record has what a person made of it. */
import type { BandColour } from '../../finding/over-stroke-mark.ts';
import type { View } from '../../marks/view.ts';
import type { RodInPicture } from '../../measurement/rod-in-picture.ts';
import type { PaintJudgement } from '../../vision/paint-judge.ts';
import { pictureKey } from '../media/asked-picture.ts';
import { createSearches, type UnderWay } from '../media/searches.ts';
import type { PaintFramesFailure } from './paint-frames.ts';

type Ended =
  /** shown: the part of the picture that it was judged from. bandColour: what was looked for; null: any strong colour. */
  | {
      readonly is: 'done';
      readonly judged: PaintJudgement;
      readonly bandColour: BandColour | null;
      readonly shown: ImageBitmap;
    }
  | { readonly is: 'failed'; readonly failure: PaintFramesFailure };
export type PaintLook = UnderWay | Ended;

/** Names the picture and where the rod lies on it; a hair's breadth of another adjustment is no other place. */
export function lookKey(
  view: View,
  { facePx, way, pxPerMm, halfWidthPx }: RodInPicture,
  bandColour: BandColour | null,
): string {
  const place = [facePx[0] / 2, facePx[1] / 2, 100 * way[0], 100 * way[1]];
  const size = [50 * Math.log(pxPerMm), 50 * Math.log(halfWidthPx)];
  return [pictureKey(view), bandColour, ...[...place, ...size].map(Math.round)].join(' ');
}

export const paintLooks = createSearches<Ended>();
