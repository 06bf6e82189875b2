/** What assists found near marks of the hand, by picture and question. Nothing of it is in the record before the person takes it. */
import type { View } from '../../marks/view.ts';
import type { AssistFailure, AssistQuestion, FoundMark } from '../../vision/assist-sight.ts';
import { pictureKey } from '../media/asked-picture.ts';
import type { PictureFailure } from '../media/picture-of.ts';
import { createSearches, type UnderWay } from '../media/searches.ts';

export type AssistSearchFailure = AssistFailure | PictureFailure;

/** A graduation was typed to read otherwise than the numerals say; by each what the strokes read, by what was typed only where it fits them. */
export type Doubt = {
  readonly typedMm: number;
  readonly readMm: number;
  readonly byTyped: readonly FoundMark[] | null;
  readonly byRead: readonly FoundMark[];
};

/** isRead: by the tape's numerals. several: one of them is meant, or none, which the person says. seen: shown, but not to be taken before a person has named one of them. */
type Ended =
  | { readonly is: 'seen'; readonly marks: readonly FoundMark[] }
  | { readonly is: 'found'; readonly marks: readonly FoundMark[]; readonly isRead?: boolean }
  | { readonly is: 'several'; readonly marks: readonly FoundMark[] }
  | { readonly is: 'doubted'; readonly doubt: Doubt }
  | { readonly is: 'failed'; readonly failure: AssistSearchFailure };
export type AssistSearch = UnderWay | Ended;

export const assistKey = (view: View, question: AssistQuestion) =>
  `${pictureKey(view)} ${JSON.stringify(question)}`;

/** Far more than a picture has. */
const MOST_KEPT = 40;

export const assistSearches = createSearches<Ended>(MOST_KEPT);
