/**
 * What to follow from the marks of a view: which thing how, and where it may go.
 *
 * Model    sizes of the parts in mm, times the picture's scale at the brake: of the tape's graduations where there are some, else of the
 *          arm, else of the rod from face to pin
 * Assumes  places in pixels of the upright picture
 */
import type { Capture } from '../../captures/capture.ts';
import type { Mark } from '../../marks/mark.ts';
import { movingOutlines } from '../../marks/moving-outlines.ts';
import { type FollowedKind, MOST_FRAMES } from '../../marks/track.ts';
import type { View } from '../../marks/view.ts';
import type { FollowedThing, FollowQuestion } from '../../vision/follow-sight.ts';
import type { FollowerFailure } from './follow-task.ts';

export type FollowPlan = {
  readonly question: FollowQuestion;
  /** Of each thing, in the question's order. */
  readonly kinds: readonly Exclude<FollowedKind, 'still'>[];
  /** Marks of the question's graduations, in its order. */
  readonly tapeMarkIds: readonly Mark['id'][];
};

/** Common practice, no source: an arm is 127 to 165 mm long, a released pin stands 90 to 180 mm from the face. */
const USUAL_MM = { arm: 146, rod: 130 };
/** Surely on the part about its centre: the end of a 1/2 in clevis pin, the camshaft's end. */
const RADIUS_MM = { pin: 6.2, camshaft: 12 };
/** The longest stroke that a clamp chamber makes is 3 in; a released rod springs back hardly further. */
const REACH_MM = { out: 90, back: 12 };
/** Fewer pixels hold nothing to be found again, more only cost time. */
const RADIUS_PX = { least: 7, most: 60 };
/** More tell hardly more: what is off of the blade's edge is so of all of them. */
const MOST_GRADUATIONS = 12;

export function followPlan(view: View): FollowPlan | null {
  const first = (kind: Mark['kind']) => view.marks.find((mark) => mark.kind === kind);
  const [face, pin, camshaft] = [first('chamber-face'), first('clevis-pin'), first('camshaft-end')];
  if (!face || !pin) return null;
  const pxPerMm = scaleOf(view.marks, face, pin, camshaft);
  const radius = (mm: number) => Math.min(RADIUS_PX.most, Math.max(RADIUS_PX.least, mm * pxPerMm));
  const thing = (mark: Mark, how: 'moves' | 'turns' | 'carried', mm: number): FollowedThing => ({
    name: mark.id,
    placePx: [mark.xPx, mark.yPx],
    how,
    radiusPx: radius(mm),
  });
  const things = [
    { kind: 'clevis-pin' as const, thing: thing(pin, 'moves', RADIUS_MM.pin) },
    { kind: 'chamber-face' as const, thing: thing(face, 'carried', RADIUS_MM.pin) },
    ...(camshaft
      ? [{ kind: 'camshaft-end' as const, thing: thing(camshaft, 'turns', RADIUS_MM.camshaft) }]
      : []),
  ];
  const rodPx = Math.hypot(pin.xPx - face.xPx, pin.yPx - face.yPx);
  const along = (mm: number) =>
    [(mm * pxPerMm * (pin.xPx - face.xPx)) / rodPx, (mm * pxPerMm * (pin.yPx - face.yPx)) / rodPx] as const;
  const applied = view.state === 'applied';
  const tape = spreadGraduations(view.marks);
  return {
    question: {
      things: things.map((each) => each.thing),
      tape: tape.map(({ readingMm, xPx, yPx, sigmaPx }) => ({ readingMm, placePx: [xPx, yPx], sigmaPx })),
      aboutPx: [face.xPx, face.yPx],
      leaveOut: movingOutlines(view),
      reachPx: {
        out: along(applied ? REACH_MM.back : REACH_MM.out),
        back: along(applied ? -REACH_MM.out : -REACH_MM.back),
      },
    },
    kinds: things.map((each) => each.kind),
    tapeMarkIds: tape.map(({ id }) => id),
  };
}

/** A record with a longer track would not open again. */
export function tooLong({ clip }: Capture): FollowerFailure | null {
  const frameCount = clip?.frameCount ?? 0;
  return frameCount > MOST_FRAMES ? { code: 'follow/too-long', frameCount, most: MOST_FRAMES } : null;
}

/** Of a clip's frames, in one of so many the tape is looked for: often enough for every place of a hand that sways. */
const TAPE_LOOKS = 16;
const LEAST_TAPE_EVERY = 8;

export const tapeEvery = (frameCount: number): number =>
  Math.max(LEAST_TAPE_EVERY, Math.ceil(frameCount / TAPE_LOOKS));

function scaleOf(marks: readonly Mark[], face: Mark, pin: Mark, camshaft: Mark | undefined): number {
  const graduations = graduationsOf(marks);
  const [low, high] = [graduations[0], graduations.at(-1)];
  if (low && high && high.readingMm > low.readingMm)
    return apart(low, high) / (high.readingMm - low.readingMm);
  return camshaft ? apart(pin, camshaft) / USUAL_MM.arm : apart(face, pin) / USUAL_MM.rod;
}

/** By their readings; of one reading the first. */
function graduationsOf(marks: readonly Mark[]): readonly Graduation[] {
  const all = marks.filter((mark) => mark.kind === 'tape-graduation');
  return all
    .filter(({ readingMm }, i) => all.findIndex((other) => other.readingMm === readingMm) === i)
    .sort((a, b) => a.readingMm - b.readingMm);
}

type Graduation = Extract<Mark, { readonly kind: 'tape-graduation' }>;

function spreadGraduations(marks: readonly Mark[]): readonly Graduation[] {
  const all = graduationsOf(marks);
  const count = Math.min(MOST_GRADUATIONS, all.length);
  return Array.from(
    { length: count },
    (_, i) => all[Math.round((i * (all.length - 1)) / Math.max(1, count - 1))] as Graduation,
  );
}

const apart = (a: Mark, b: Mark) => Math.hypot(a.xPx - b.xPx, a.yPx - b.yPx);
