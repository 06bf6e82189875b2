/** What is guessed of a picture in which nothing is marked. */
import type { RoughThing } from '../assists/rough-asked.ts';

const NAMES: Readonly<Record<RoughThing, string>> = {
  tape: 'tape',
  band: 'clamp band',
  axis: 'chamber axis',
};

const sureness = (sure: boolean) => (sure ? 'sure' : 'perhaps');

export const ROUGH = {
  heading: 'Seen before marking',
  underWay: 'Tape and clamp band: looking …',
  drawn: (thing: RoughThing, sure: boolean) => `${NAMES[thing]}, ${sureness(sure)}`,
  seen: (things: readonly (readonly [RoughThing, boolean])[]) =>
    `Seen: ${things.map(([thing, sure]) => `${NAMES[thing]} (${sureness(sure)})`).join(', ')}.`,
  notSeen: (things: readonly RoughThing[]) => `Not seen: ${things.map((thing) => NAMES[thing]).join(', ')}.`,
  noMarks: 'Places to start from, no marks. Pin and camshaft: by hand.',
  byHand: 'Everything is marked by hand.',
  close: 'Bring it close',
};
