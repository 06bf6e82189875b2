import { useStore } from 'zustand';
import type { View } from '../../marks/view.ts';
import type { PictureQuality, QualityQuestion } from '../../vision/picture-quality.ts';
import { type AskedPicture, askedPicture, pictureKey } from '../media/asked-picture.ts';
import { pictureOf } from '../media/picture-of.ts';
import type { UnderWay } from '../media/searches.ts';
import { useSearch } from '../media/use-search.ts';
import { sights } from '../media/vision.ts';
import { media } from '../stores.ts';
import type { Current } from '../work/current.ts';
import { useMoving } from '../work/use-work.ts';
import { qualityAsked } from './quality-asked.ts';
import { type QualityLook, qualityKey, qualityLooks } from './quality-store.ts';

type Asked = { readonly view: View; readonly key: string; readonly question: QualityQuestion };

/** Looks at each picture as it is taken, and again about the rod once that is marked; one after the other. */
export function usePictureQuality({ record, measurement }: Current): void {
  const files = useStore(media, (state) => state.files);
  const looks = useStore(qualityLooks, (state) => state.searches);
  const moving = useMoving();
  const next = moving ? undefined : measurement.views.map(askedOf).find(({ key }) => isOpen(looks[key]));
  const picture = askedPicture(record, files, next?.view);
  useSearch(
    qualityLooks,
    next && picture && { key: next.key, seek: (signal) => look(picture, next.question, signal) },
  );
}

async function look(
  asked: AskedPicture,
  question: QualityQuestion,
  signal: AbortSignal,
): Promise<Exclude<QualityLook, UnderWay>> {
  const picture = await pictureOf(asked, signal);
  if (!picture.ok) return { is: 'failed' };
  const quality = await (await sights()).quality(picture.value, question, signal);
  return quality.ok ? { is: 'done', quality: quality.value } : { is: 'failed' };
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
