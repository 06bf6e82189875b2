import { useEffect } from 'react';
import { useStore } from 'zustand';
import type { View } from '../../marks/view.ts';
import type { PictureQuality, QualityQuestion } from '../../vision/picture-quality.ts';
import { pictureOf } from '../media/picture-of.ts';
import { sights } from '../media/vision.ts';
import { media } from '../stores.ts';
import { pictureKey } from '../target/target-store.ts';
import type { Current } from '../work/current.ts';
import { useOpenWork } from '../work/use-work.ts';
import { qualityAsked } from './quality-asked.ts';
import { type QualityLook, qualityKey, qualityLooks } from './quality-store.ts';

type Asked = { readonly view: View; readonly key: string; readonly question: QualityQuestion };

/** Looks at each picture as it is taken, and again about the rod once that is marked; one after the other. */
export function usePictureQuality({ record, measurement }: Current): void {
  const files = useStore(media, (state) => state.files);
  const looks = useStore(qualityLooks, (state) => state.searches);
  const moving = useOpenWork()?.history.held != null;
  const next = moving ? undefined : measurement.views.map(askedOf).find(({ key }) => isOpen(looks[key]));
  const key = next?.key ?? null;
  const capture = record.captures.find(({ id }) => id === next?.view.captureId) ?? null;
  const file = (capture && files[capture.sha256]) ?? null;

  // biome-ignore lint/correctness/useExhaustiveDependencies: the key names picture and question; other properties of theirs are no reason to begin anew.
  useEffect(() => {
    if (!next || !key || !capture || !file) return;
    return qualityLooks.begin(key, async (signal) => {
      const picture = await pictureOf(capture, file, next.view.frame, signal);
      if (!picture.ok) return { is: 'failed' };
      const quality = await (await sights()).quality(picture.value, next.question, signal);
      return quality.ok ? { is: 'done', quality: quality.value } : { is: 'failed' };
    });
  }, [key, capture, file]);
}

const askedOf = (view: View): Asked => {
  const question = qualityAsked(view);
  return { view, question, key: qualityKey(view, question) };
};

const isOpen = (look: QualityLook | undefined) => look === undefined || look.is === 'under-way';

/** Of the marks as they are now; while it is looked at anew, of those before. */
export function qualityOf(view: View, looks: Readonly<Record<string, QualityLook>>): PictureQuality | null {
  const now = looks[askedOf(view).key];
  if (now?.is === 'done') return now.quality;
  const before = Object.entries(looks).filter(([key]) => key.startsWith(`${pictureKey(view)} `));
  return before.flatMap(([, look]) => (look.is === 'done' ? [look.quality] : [])).at(-1) ?? null;
}
