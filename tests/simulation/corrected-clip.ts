/**
 * A simulated clip whose pin is lost from the seed on and put right by hand in another frame: what a follower would see from there. The
 * second spot lies from the first by what both hands missed; it is followed with noise of its own.
 */
import { drawFrom } from '../../src/basics/random.ts';
import { joinedTrack } from '../../src/marks/joined-track.ts';
import type { Mark } from '../../src/marks/mark.ts';
import { placeAt, type Track, type TrackPoint } from '../../src/marks/track.ts';
import type { ClipScene } from './clip-scene.ts';

export type Spells = {
  /** The followed frames, counted from the track's first: of the seed's pin, and of the one put right. */
  readonly ofSeed: readonly [from: number, to: number];
  readonly ofCorrection: readonly [from: number, to: number];
  /** Where the pin is put right. */
  readonly at: number;
};

export function correctedTrack(
  { track, input }: ClipScene,
  { ofSeed, ofCorrection, at }: Spells,
  seed: number,
  noisePx: number,
): Track {
  const draw = drawFrom(seed);
  const pin = track.points.find(({ kind }) => kind === 'clevis-pin');
  const marks = input.views[0]?.marks ?? [];
  const hand = marks.find(({ id }) => id === pin?.markId);
  if (!pin || !hand) throw new Error('no pin');
  const missed = () => draw.normal(0, hand.sigmaPx);
  // The one hand missed by so much, the other by so much.
  const off = { x: missed() - missed(), y: missed() - missed() };
  const seen = within(pin, ofCorrection, ({ xPx, yPx, sigmaPx }, frame) => ({
    xPx: xPx + off.x + (frame === at ? 0 : draw.normal(0, noisePx)),
    yPx: yPx + off.y + (frame === at ? 0 : draw.normal(0, noisePx)),
    sigmaPx: frame === at ? 0.02 : sigmaPx,
  }));
  const there = placeAt(seen, at);
  if (!there) throw new Error('it is put right where it is seen');
  const frame = { index: track.firstIndex + at, timeTicks: track.timeTicks[at] as number };
  const mark: Mark = {
    kind: 'clevis-pin',
    id: 'right',
    xPx: there.xPx,
    yPx: there.yPx,
    sigmaPx: hand.sigmaPx,
    placedBy: 'hand',
  };
  const lost: Track = {
    ...track,
    points: track.points.map((point) => (point === pin ? within(pin, ofSeed, (place) => place) : point)),
  };
  return joinedTrack(lost, marks, { frame, marks: [mark] }, [{ ...seen, markId: 'right' }]);
}

type Place = { readonly xPx: number; readonly yPx: number; readonly sigmaPx: number };

function within(
  point: TrackPoint,
  [from, to]: readonly [number, number],
  of: (place: Place, frame: number) => Place,
): TrackPoint {
  const places = point.xCentiPx.map((_x, frame) => {
    const place = frame >= from && frame <= to ? placeAt(point, frame) : null;
    return place && of(place, frame);
  });
  const column = (value: (place: Place) => number) =>
    places.map((place) => (place ? Math.round(value(place)) : null));
  return {
    ...point,
    xCentiPx: column(({ xPx }) => 100 * xPx),
    yCentiPx: column(({ yPx }) => 100 * yPx),
    sigmaMilliPx: column(({ sigmaPx }) => Math.max(1, 1000 * sigmaPx)),
  };
}
