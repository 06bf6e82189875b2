/** What each picture is like, as it was looked at. Kept while the page is open. */
import type { View } from '../../marks/view.ts';
import type { PictureQuality, QualityQuestion } from '../../vision/picture-quality.ts';
import { pictureKey } from '../media/asked-picture.ts';
import { createSearches, type UnderWay } from '../media/searches.ts';

type Ended =
  | { readonly is: 'done'; readonly quality: PictureQuality }
  /** The picture cannot be shown or read: that is said where it is shown. */
  | { readonly is: 'failed' };
export type QualityLook = UnderWay | Ended;

export const qualityKey = (view: View, question: QualityQuestion) =>
  `${pictureKey(view)} ${JSON.stringify(question)}`;

/** Pictures of a measurement, each looked at once more as marks come. */
const MOST_KEPT = 24;

export const qualityLooks = createSearches<Ended>(MOST_KEPT);
