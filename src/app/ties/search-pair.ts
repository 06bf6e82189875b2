import { cameraPrior } from '../../adjustment/camera-prior.ts';
import { assert, type Result } from '../../basics/result.ts';
import { movingOutlines } from '../../marks/moving-outlines.ts';
import type { View } from '../../marks/view.ts';
import type { TieSide, TieSight } from '../../vision/tie-sight.ts';
import type { AskedPicture } from '../media/asked-picture.ts';
import { bothPictures } from '../media/picture-of.ts';
import { vision } from '../media/vision.ts';
import type { Current } from '../work/current.ts';
import type { TieSearchFailure } from './ties-store.ts';

/** One of both pictures, and the view made of it. */
export type PairSide = AskedPicture & { readonly view: View };

/** Rejects with an AbortError where the signal ends it. */
export async function searchPair(
  current: Current,
  [first, second]: readonly [PairSide, PairSide],
  signal: AbortSignal,
): Promise<Result<TieSight, TieSearchFailure>> {
  const pictures = await bothPictures(first, second, signal);
  if (!pictures.ok) return pictures;
  const question = { first: sideOf(current, first), second: sideOf(current, second) };
  return await (await vision()).findTies(...pictures.value, question, signal);
}

function sideOf({ record, measurement }: Current, { view, capture }: PairSide): TieSide {
  const profile = record.cameraProfiles.find(({ id }) => id === measurement.cameraProfileId) ?? null;
  const face = view.marks.find(({ kind }) => kind === 'chamber-face');
  assert(face, 'tie points are sought once the chamber face is marked');
  return {
    focalPx: cameraPrior(capture, profile).focalPx,
    aboutPx: [face.xPx, face.yPx],
    leaveOut: movingOutlines(view),
  };
}
