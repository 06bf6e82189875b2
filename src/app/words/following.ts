/** Following the marks through a clip: what is said while it goes on, and why it came to nothing. */
import type { LengthUnit } from '../../basics/length-text.ts';
import type { MeasurementFailure } from '../../measurement/measurement.ts';
import type { FollowingFailure } from '../following/followings-store.ts';
import { captureFailureText } from './failures-captures.ts';
import { measurementFailureText } from './failures-measurement.ts';

export const FOLLOWING = {
  heading: 'The whole clip',
  begin: 'Follow through the clip',
  again: 'Follow anew',
  leftOut: 'The end of the camshaft is marked and not yet followed: follow the clip anew.',
  goOn: 'Go on',
  stop: 'Stop',
  measure: 'Measure with what is followed',
  needs: 'Mark chamber face and clevis pin first, then what the reference asks for.',
  why: 'The other picture and its marks come of it, frame by frame; marks of yours stay.',
  sway: 'Best filmed from the rod’s side, the clamp band’s rim in sight, the phone moved slowly a hand’s width to and fro, brake released and brake applied.',
  opening: 'Opening the clip …',
  underWay: (done: number, of: number) => `frame ${done} of ${of}`,
  left: (seconds: number) => `about ${seconds} s left`,
  measuring: 'Measuring every frame …',
  stopped: (done: number, of: number) => `Stopped at frame ${done} of ${of}. What is followed is kept.`,
  toPutRight:
    'The clip was followed and gave no stroke. Where the pin was lost or mistaken, it can be put right: look through the clip in step “Pictures”, find such a frame, and put it right there.',
  done: (frames: number, views: number) =>
    `${frames} frames followed; ${views} of them, seen from other places, count in the measurement.`,
};

export const PUT_RIGHT = {
  begin: 'Put right in this frame',
  sentence:
    'Drag each cross that is off to where the part is. What you leave alone stays as it was followed. Then it is followed from here, both ways.',
  follow: 'Follow from here',
  leave: 'Leave as it was',
  atSeed: 'This is the frame that you marked',
};

export function followingFailureText(failure: FollowingFailure, unit: LengthUnit): string {
  if (isMeasurementFailure(failure)) return measurementFailureText(failure, unit);
  switch (failure.code) {
    case 'follow/too-few-still':
      return `Too little that stands still is seen (${failure.found} places, ${failure.needed} needed). Film with chamber, bracket and axle in the picture, in better light.`;
    case 'follow/no-feature':
      return 'Nothing about a mark can be found again: the picture is flat, dark or out of focus there. Take another frame, or wipe the part and film again.';
    case 'follow/too-long':
      return `The clip has ${failure.frameCount} frames; up to ${failure.most} can be followed. Film the application alone, or cut the clip to it, and choose that.`;
    case 'follow/broke-off':
      return 'Following broke off. Try again; if it does so once more, take both pictures by hand.';
    case 'captures/codec-not-decoded':
      return `This browser shows ${failure.codec} in its player only and does not give every frame, so the clip cannot be followed. Mark a released and an applied frame by hand, or open the clip in another browser.`;
    case 'clip/no-application':
      return 'The rod does not move in this clip: the brake was never applied, or it was applied all through. No stroke can be read. Film from before the application until after it.';
    case 'clip/pin-lost':
      return `The clevis pin is seen in ${failure.seen} of ${failure.frames} frames only. Keep hands and hoses out of the view, or mark the pin on another frame.`;
    case 'clip/few-still':
      return `Too few things that stand still are seen both released and applied (${failure.found}, ${failure.needed} needed). Hold the phone on the same part while you film.`;
    case 'clip/seed-elsewhere':
      return `On the marked frame the brake is not at rest and ${failure.state}. Take a frame where it is, and mark that.`;
    case 'clip/one-state':
      return `The clip shows the brake at rest ${failure.phase === 'held' ? 'applied' : 'released'} only. Film it released and fully applied, a second each.`;
    case 'clip/too-short':
      return `The clip is too short: ${failure.frames} frames. Film a second before the application and a second while it is held.`;
    case 'wrench-clip/few-rests':
      return `The wrench is seen at rest between ${failure.applications} applications ${failure.rests} times only. Film from before the first application until after the last, the whole wrench in the picture, a second of rest after each.`;
    default:
      return captureFailureText(failure);
  }
}

const isMeasurementFailure = (failure: FollowingFailure): failure is MeasurementFailure =>
  failure.code.startsWith('measurement/');
