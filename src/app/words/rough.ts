/** What is guessed of a picture in which nothing is marked. */
import type { RoughThing } from '../assists/rough-asked.ts';

const NAMES: Readonly<Record<RoughThing, string>> = {
  tape: 'tape',
  band: 'clamp band',
  axis: 'chamber axis',
  pin: 'clevis pin',
  camshaft: 'camshaft end',
};

const howLikely = (likely: boolean) => (likely ? 'likely' : 'perhaps');

export const ROUGH = {
  heading: 'Seen before marking',
  underWay: 'Tape, clamp band, pin and camshaft: looking …',
  drawn: (thing: RoughThing, likely: boolean) => `${NAMES[thing]}, ${howLikely(likely)}`,
  seen: (things: readonly (readonly [RoughThing, boolean])[]) =>
    `Seen: ${things.map(([thing, likely]) => `${NAMES[thing]} (${howLikely(likely)})`).join(', ')}.`,
  notSeen: (things: readonly RoughThing[]) => `Not seen: ${things.map((thing) => NAMES[thing]).join(', ')}.`,
  noMarks: 'Places to start from, no marks.',
  byHand: 'Everything is marked by hand.',
  close: 'Bring it close',
};
