/** What is guessed of a picture in which nothing is marked. */
import type { RoughThing } from '../assists/rough-asked.ts';

const NAMES: Readonly<Record<RoughThing, string>> = {
  tape: 'tape',
  band: 'clamp band',
  axis: 'chamber axis',
  pin: 'clevis pin',
  camshaft: 'camshaft end',
};

const listed = (how: string, things: readonly RoughThing[]) =>
  things.length > 0 ? `${how}: ${things.map((thing) => NAMES[thing]).join(', ')}. ` : '';

export const ROUGH = {
  heading: 'Seen before marking',
  underWay: 'Tape, clamp band, pin and camshaft: looking …',
  drawn: (thing: RoughThing, likely: boolean) => `${NAMES[thing]}${likely ? '' : '?'}`,
  likely: (things: readonly RoughThing[]) => listed('Likely', things),
  perhaps: (things: readonly RoughThing[]) => listed('Perhaps', things),
  notSeen: (things: readonly RoughThing[]) => listed('Not seen', things),
  noMarks: 'Places to start from, no marks.',
  byHand: 'Everything is marked by hand.',
  close: 'Bring it close',
};
