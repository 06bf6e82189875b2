import { cameraPrior } from '../../adjustment/camera-prior.ts';
import { assert, type Result } from '../../basics/result.ts';
import type { Capture } from '../../captures/capture.ts';
import { movingOutlines } from '../../marks/moving-outlines.ts';
import type { View } from '../../marks/view.ts';
import type { TieSide, TieSight } from '../../vision/tie-sight.ts';
import { pictureOf } from '../media/picture-of.ts';
import { vision } from '../media/vision.ts';
import type { Current } from '../work/current.ts';
import type { TieSearchFailure } from './ties-store.ts';

/** One of both pictures: its view, its capture, and the file of that. */
export type PairSide = { readonly view: View; readonly capture: Capture; readonly file: Blob };

/** Rejects with an AbortError where the signal ends it. */
export async function searchPair(
  current: Current,
  [first, second]: readonly [PairSide, PairSide],
  signal: AbortSignal,
): Promise<Result<TieSight, TieSearchFailure>> {
  const one = await pictureOf(first.capture, first.file, first.view.frame, signal);
  if (!one.ok) return one;
  let other: Awaited<ReturnType<typeof pictureOf>>;
  try {
    other = await pictureOf(second.capture, second.file, second.view.frame, signal);
  } catch (thrown) {
    one.value.close();
    throw thrown;
  }
  if (!other.ok) {
    one.value.close();
    return other;
  }
  const question = { first: sideOf(current, first), second: sideOf(current, second) };
  return await (await vision()).findTies(one.value, other.value, question, signal);
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
