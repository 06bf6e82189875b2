import { useStore } from 'zustand';
import type { BandColour } from '../../finding/over-stroke-mark.ts';
import { rodInPicture } from '../../measurement/rod-in-picture.ts';
import type { ShownAssessment } from '../measuring/use-assessment.ts';
import { askedPicture } from '../media/asked-picture.ts';
import type { MediaState } from '../media/media-store.ts';
import type { UnderWay } from '../media/searches.ts';
import { useSearch } from '../media/use-search.ts';
import { media } from '../stores.ts';
import { type Current, viewOf } from '../work/current.ts';
import { judgeApart } from './paint-client.ts';
import { type PaintFrame, type PaintQuestion, paintFrames } from './paint-frames.ts';
import { lookKey, type PaintLook, paintLooks } from './paint-store.ts';

export type OverStrokeState = 'released' | 'applied';
type Asked = { readonly key: string; readonly question: PaintQuestion };

/** By itself, one picture after the other. Null: the picture, its file or a mark that it needs is not there. */
export function usePaintLooks(
  current: Current,
  assessment: ShownAssessment,
): Readonly<Record<OverStrokeState, PaintLook | null>> {
  const files = useStore(media, (state) => state.files);
  const looks = useStore(paintLooks, (state) => state.searches);
  const { bandColour } = current.measurement.overStrokeMark;
  const asked = {
    released: askedOf(current, assessment, 'released', files, bandColour),
    applied: askedOf(current, assessment, 'applied', files, bandColour),
  };
  const next = [asked.released, asked.applied].find((each) => {
    const look = each && looks[each.key];
    return each && (look === undefined || look?.is === 'under-way');
  });
  useSearch(
    paintLooks,
    next && !assessment.underWay ? { key: next.key, seek: (signal) => look(next.question, signal) } : null,
  );
  const lookOf = (each: Asked | null) => (each ? (looks[each.key] ?? { is: 'under-way' as const }) : null);
  return { released: lookOf(asked.released), applied: lookOf(asked.applied) };
}

function askedOf(
  { record, measurement }: Current,
  assessment: ShownAssessment,
  state: OverStrokeState,
  files: MediaState['files'],
  bandColour: BandColour | null,
): Asked | null {
  const view = viewOf(measurement, state);
  const picture = askedPicture(record, files, view);
  if (!view || !picture) return null;
  const measured = assessment.measurement.ok ? assessment.measurement.value.rods : [];
  const rod = rodInPicture(view, measured.find((each) => each.state === state) ?? null);
  if (!rod.ok) return null;
  const track = measurement.followed?.track ?? null;
  const question = {
    picture,
    rod: rod.value,
    track: track?.captureId === view.captureId ? track : null,
    bandColour,
  };
  return { key: lookKey(view, rod.value, bandColour), question };
}

async function look(question: PaintQuestion, signal: AbortSignal): Promise<Exclude<PaintLook, UnderWay>> {
  const frames = await paintFrames(question, signal);
  if (!frames.ok) return { is: 'failed', failure: frames.failure };
  const [taken] = frames.value as readonly [PaintFrame, ...PaintFrame[]];
  const whole = await createImageBitmap(taken.picture);
  try {
    const judged = await judgeApart({ frames: frames.value, bandColour: question.bandColour }, signal);
    const { crop } = judged;
    const [x, y] = [crop.xPx - taken.box.xPx, crop.yPx - taken.box.yPx];
    return {
      is: 'done',
      judged,
      bandColour: question.bandColour,
      shown: await createImageBitmap(whole, x, y, crop.widthPx, crop.heightPx),
    };
  } finally {
    whole.close();
  }
}
