/** What the tool says of the over-stroke mark by itself: what it sees, why, how sure it is. */
import { inchesFromMm } from '../../basics/units.ts';
import type { BandColour, Sight } from '../../finding/over-stroke-mark.ts';
import type { PaintJudgement, PaintReason } from '../../vision/paint-judge.ts';
import type { Property } from '../../vision/paint-score.ts';
import type { PaintFramesFailure } from '../paint/paint-frames.ts';
import { PICTURE_LABELS } from './en.ts';
import { pictureFailureText } from './failures-pictures.ts';

export const PAINT = {
  underWay: 'Looking for paint on the rod …',
  needs: 'Mark chamber face and clevis pin on this picture: then the tool looks for paint by itself.',
  shown: (state: 'released' | 'applied') =>
    `${PICTURE_LABELS[state]}, enlarged: the rod where it leaves the chamber`,
  confirm: { seen: 'Confirm: seen', 'not-seen': 'Confirm: not seen' },
  agreed: 'You said the same. Both are recorded.',
  overruled: 'You said otherwise. Both are recorded.',
  colour: 'Colour of the band on this brake',
  colourNote:
    'By the trade the band is red or orange; rods with another one are about. Name it where you know it: the tool looks for that colour alone.',
};

const SAID: Readonly<Record<Sight, string>> = {
  seen: 'The tool sees paint',
  'not-seen': 'The tool sees no paint',
  'cannot-tell': 'The tool cannot tell',
};

/** What it sees and how sure it is; why stands below. */
export function proposalText({ sight, confidence }: Pick<PaintJudgement, 'sight' | 'confidence'>): string {
  return sight === 'cannot-tell' ? `${SAID[sight]}.` : `${SAID[sight]}: ${sureness(confidence)}.`;
}

function sureness(confidence: number): string {
  if (confidence >= 0.97) return 'quite sure';
  return confidence >= 0.85 ? 'fairly sure' : 'not very sure';
}

export function paintReasonText(reason: PaintReason): string {
  switch (reason.code) {
    case 'paint/band':
      return `A ${BAND_NAMES[reason.colour]} band across the rod, ${spanText(reason.fromMm, reason.toMm)}.`;
    case 'paint/bare':
      return 'The rod is bare where it leaves the chamber.';
    case 'paint/no-band':
      return `What is coloured on the rod up to ${reachText(reason.toMm)} from the face is no band: ${AGAINST[reason.against]}.`;
    case 'paint/doubtful':
      return `Something coloured lies on the rod up to ${reachText(reason.toMm)} from the face, but ${AGAINST[reason.against]}. Look at it yourself.`;
    case 'paint/too-dark':
      return 'The rod lies in the dark there. Take the picture again with a lamp.';
    case 'paint/glare':
      return 'The rod is burnt out by light there. Take the picture again without glare.';
    case 'paint/blurred':
      return 'The rod is blurred there. Hold the camera still and take the picture again.';
    case 'paint/too-small':
      return 'The rod is too small in the picture. Take it from nearer.';
    case 'paint/rod-hidden':
      return 'The rod cannot be made out where it leaves the chamber: something hides it, or the marks are off it.';
    case 'paint/outside-the-picture':
      return 'The place where the rod leaves the chamber lies at the edge of the picture.';
    case 'paint/no-colour':
      return 'The picture has no colours, so that paint is not told from metal. Look at it yourself.';
    case 'paint/white':
      return 'White paint and bare metal are too alike for the tool. Look at it yourself.';
    case 'paint/frames-differ':
      return `Frames beside this one say different things: paint in ${reason.seen} of ${reason.of}.`;
  }
}

export const BAND_CHOICES: Readonly<Record<BandColour, string>> = {
  'red or orange': 'Red or orange',
  yellow: 'Yellow',
  white: 'White',
  green: 'Green',
  blue: 'Blue',
};
export const ANY_BAND = 'Not known: any strong colour';

const BAND_NAMES: Readonly<Record<BandColour, string>> = {
  'red or orange': 'red or orange',
  yellow: 'yellow',
  white: 'white',
  green: 'green',
  blue: 'blue',
};

const AGAINST: Readonly<Record<Property, string>> = {
  edge: 'it has no clear edge',
  drop: 'it has no clear edge',
  'even-edge': 'its edge is clear in places only',
  'edge-across': 'its edge does not go all across the rod',
  slope: 'its edge is not square to the rod',
  aslant: 'its edge runs aslant over the rod',
  scatter: 'its edge is uneven',
  width: 'it fades out without an edge',
  hue: 'its colour is not clear of rust',
  amount: 'there is little of it',
  covered: 'it is patchy',
  'rusty-rod': 'the rest of the rod has nearly the same colour',
  'above-the-rod': 'parts of the rod farther out are as strongly coloured',
  'step-red': 'it is no brighter than rust',
  'step-green': 'it differs from the metal as a shadow does',
  'step-yellow': 'its colour is as yellow as rust',
  yellow: 'its colour is as yellow as rust',
  'step-hue': 'its colour differs little from the rod’s',
  'less-yellow': 'its colour is as yellow as the rust about',
  'red-past-it': 'the rod past it is as red',
  'yellow-past-it': 'the rod past it is of such a colour too',
  light: 'it is too dark or too bright for paint',
  'mottled-past-it': 'the rod past it is mottled',
  mottled: 'its colour is mottled like rust',
  'hue-on-rod': 'the rest of the rod has the same colour',
  'hue-beside': 'the same colour lies beside the rod',
  about: 'the same colour lies all about the rod',
  crosses: 'it crosses the rod',
  'same-beside': 'the same colour lies on both sides of the rod',
  edgeless: 'the rod’s own edges are not to be seen there: something lies over it',
  'at-face': 'the chamber face has the same colour',
  'goes-on-beside': 'it goes on beside the rod',
  'edge-beside': 'its edge goes on beside the rod',
  'red-light': 'all about lies in coloured light',
  rival: 'there are stronger edges farther out',
  'far-from-face': 'it lies far from the face',
  length: 'its length is not a band’s',
  change: 'its colour differs little from the rod’s',
  'even-change': 'its edge is clear in places only',
  'hue-change': 'its colour differs little from the rod’s',
  'even-hue-change': 'its edge is clear in places only',
  'change-across': 'its edge does not go all across the rod',
  'sharp-change': 'it fades out without an edge',
  'even-rival': 'there are clearer edges farther out',
  apart: 'the rest of the rod has nearly the same colour',
  streaky: 'its light is mottled like rust',
  'streaky-past-it': 'the rod past it is mottled',
  'carries-on': 'it crosses the rod and goes on beside it',
  'shaded-along': 'it is shaded as something that crosses the rod',
  'shaded-alike': 'it is not shaded as the rod past it',
  burnt: 'it is burnt out',
  'burnt-past-it': 'the rod past it is burnt out',
  'nearest-on-rod': 'parts of the rod have the same colour',
  'face-louder': 'the chamber face is more strongly coloured',
};

const reachText = (mm: number) => `${Math.round(mm)} mm (${inchesFromMm(mm).toFixed(1)} in)`;

const spanText = (fromMm: number, toMm: number) =>
  fromMm < 1.5
    ? `from the chamber face to ${reachText(toMm)} out`
    : `from ${reachText(fromMm)} to ${reachText(toMm)} out from the chamber face`;

export function paintFailureText(failure: PaintFramesFailure): string {
  return failure.code === 'paint/outside'
    ? 'The rod where it leaves the chamber is not in this picture.'
    : pictureFailureText(failure);
}
