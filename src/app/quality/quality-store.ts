/** What each picture is like, as it was looked at. Kept while the page is open. */
import { createStore } from 'zustand/vanilla';
import type { View } from '../../marks/view.ts';
import type { PictureQuality, QualityQuestion } from '../../vision/picture-quality.ts';
import { pictureKey } from '../target/target-store.ts';

export type QualityLook =
  | { readonly is: 'under-way' }
  | { readonly is: 'done'; readonly quality: PictureQuality }
  /** The picture cannot be shown or read: that is said where it is shown. */
  | { readonly is: 'failed' };

export const qualityKey = (view: View, question: QualityQuestion) =>
  `${pictureKey(view)} ${JSON.stringify(question)}`;

/** Pictures of a measurement, each looked at once more as marks come. */
const MOST_KEPT = 24;

function createQualityStore() {
  const store = createStore<{ readonly looks: Readonly<Record<string, QualityLook>> }>(() => ({ looks: {} }));
  return {
    ...store,
    set: (key: string, look: QualityLook) =>
      store.setState(({ looks: { [key]: _, ...others } }) => ({
        looks: Object.fromEntries([...Object.entries(others).slice(1 - MOST_KEPT), [key, look]]),
      })),
    forget: (key: string) => store.setState(({ looks: { [key]: _, ...others } }) => ({ looks: others })),
  };
}

export const qualityLooks = createQualityStore();
