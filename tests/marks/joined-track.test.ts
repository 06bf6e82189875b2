import fc from 'fast-check';
import { expect, test } from 'vitest';
import { joinedTrack } from '../../src/marks/joined-track.ts';
import type { Mark } from '../../src/marks/mark.ts';
import { placeAt, type Track, type TrackPoint } from '../../src/marks/track.ts';

const FRAMES = 40;

/** Where the pin truly is; a spot lies a pixel beside it, what is taken for it by mistake 60 px to either side. */
const truth = (frame: number) => 500 + 3 * frame;
const BESIDE = 1;
const ELSEWHERE = 60;

type Span = readonly [from: number, to: number];

function pinPoint(
  markId: string,
  right: readonly Span[],
  wrong: readonly Span[],
  beside: number,
): TrackPoint {
  const isIn = (spans: readonly Span[], frame: number) =>
    spans.some(([from, to]) => from <= frame && frame <= to);
  const x = Array.from({ length: FRAMES }, (_, frame) => {
    if (isIn(wrong, frame)) return 100 * (truth(frame) + (markId === 'seed' ? ELSEWHERE : -ELSEWHERE));
    return isIn(right, frame) ? 100 * (truth(frame) + beside) : null;
  });
  const column = (value: number) => x.map((each) => (each === null ? null : value));
  return { kind: 'clevis-pin', markId, xCentiPx: x, yCentiPx: column(30_000), sigmaMilliPx: column(150) };
}

const frameAt = (index: number) => ({ index, timeTicks: 3000 * index });
const handMark = (id: string, frame: number): Mark => ({
  kind: 'clevis-pin',
  id,
  xPx: truth(frame),
  yPx: 300,
  sigmaPx: 1,
  placedBy: 'hand',
});

const SEED = 5;

function trackOf(point: TrackPoint): Track {
  const still = { ...pinPoint('s1', [[0, FRAMES - 1]], [], 0), kind: 'still' as const };
  return {
    id: 't',
    captureId: 'c',
    state: 'released',
    seed: frameAt(SEED),
    corrections: [],
    firstIndex: 0,
    timeTicks: Array.from({ length: FRAMES }, (_, index) => 3000 * index),
    points: [point, still],
  };
}

function joined(old: TrackPoint, fresh: TrackPoint, at: number): Track {
  const correction = { frame: frameAt(at), marks: [handMark(fresh.markId, at)] };
  return joinedTrack(trackOf(old), [handMark('seed', SEED)], correction, [fresh]);
}

/** The frames in which a point of the track is seen. */
function seenIn(track: Track, markId: string): readonly number[] {
  const point = track.points.find((each) => each.markId === markId);
  return point ? track.timeTicks.flatMap((_t, frame) => (placeAt(point, frame) ? [frame] : [])) : [];
}

const span = ([from, to]: Span) => Array.from({ length: to - from + 1 }, (_, i) => from + i);

test('a pin that was lost is followed from where it was put right, both ways', () => {
  const track = joined(pinPoint('seed', [[0, 15]], [], 0), pinPoint('new', [[12, 39]], [], BESIDE), 25);
  expect(seenIn(track, 'seed')).toEqual(span([0, 15]));
  expect(seenIn(track, 'new')).toEqual(span([12, 39]));
  expect(track.corrections).toHaveLength(1);
});

test('what went elsewhere without a gap is dropped back to where both agree', () => {
  const old = pinPoint('seed', [[0, 15]], [[16, 39]], 0);
  const track = joined(old, pinPoint('new', [[8, 39]], [], BESIDE), 25);
  expect(seenIn(track, 'seed')).toEqual(span([0, 15]));
  expect(seenIn(track, 'new')).toEqual(span([8, 39]));
});

test('after a gap it was found again in the wrong place: what lies before the gap stays', () => {
  const old = pinPoint('seed', [[0, 14]], [[18, 39]], 0);
  const track = joined(old, pinPoint('new', [[20, 39]], [], BESIDE), 25);
  expect(seenIn(track, 'seed')).toEqual(span([0, 14]));
  expect(seenIn(track, 'new')).toEqual(span([20, 39]));
});

test('where neither is vouched for there is a gap and no guess', () => {
  const old = pinPoint('seed', [[0, 14]], [[15, 39]], 0);
  const fresh = pinPoint('new', [[20, 39]], [[0, 19]], BESIDE);
  const track = joined(old, fresh, 25);
  expect(seenIn(track, 'seed')).toEqual(span([0, SEED]));
  expect(seenIn(track, 'new')).toEqual(span([25, 39]));
});

test('a new path that went elsewhere before it came to the seed is dropped there', () => {
  const track = joined(
    pinPoint('seed', [[0, 30]], [], 0),
    pinPoint('new', [[15, 39]], [[0, 14]], BESIDE),
    35,
  );
  expect(seenIn(track, 'seed')).toEqual(span([0, 30]));
  expect(seenIn(track, 'new')).toEqual(span([15, 39]));
});

test('beyond another hand mark its own path counts, and a frame put right once more is put right anew', () => {
  const first = joined(pinPoint('seed', [[0, 12]], [], 0), pinPoint('new', [[10, 39]], [], BESIDE), 20);
  const marks = [handMark('seed', SEED)];
  const put = (before: Track, id: string, at: number) =>
    joinedTrack(before, marks, { frame: frameAt(at), marks: [handMark(id, at)] }, [
      pinPoint(id, [[0, 39]], [], -BESIDE),
    ]);
  const second = put(first, 'later', 30);
  expect(seenIn(second, 'later')).toEqual(span([20, 39]));
  expect(seenIn(second, 'new')).toEqual(span([10, 39]));
  const again = put(second, 'once more', 30);
  expect(seenIn(again, 'later')).toEqual([]);
  expect(again.corrections.map(({ marks: [mark] }) => mark?.id)).toEqual(['new', 'once more']);
});

test('whatever both paths do: no frame shows two places that differ, hand marks stay, nothing is made up', () => {
  const spans = fc.array(fc.tuple(fc.nat(FRAMES - 1), fc.nat(12)), { maxLength: 4 });
  const at = fc.integer({ min: SEED + 1, max: FRAMES - 1 });
  fc.assert(
    fc.property(spans, spans, spans, spans, at, (oldRight, oldWrong, newRight, newWrong, frame) => {
      const list = (of: typeof oldRight) => of.map(([from, length]): Span => [from, from + length]);
      const without = (of: readonly Span[], hand: number) =>
        of.flatMap(([from, to]): Span[] => (from <= hand && hand <= to ? [] : [[from, to]]));
      const old = pinPoint('seed', [...list(oldRight), [SEED, SEED]], without(list(oldWrong), SEED), 0);
      const fresh = pinPoint(
        'new',
        [...list(newRight), [frame, frame]],
        without(list(newWrong), frame),
        BESIDE,
      );
      const track = joined(old, fresh, frame);
      const points = track.points.filter(({ kind }) => kind === 'clevis-pin');
      for (let i = 0; i < FRAMES; i++) {
        const places = points.flatMap((point) => placeAt(point, i)?.xPx ?? []);
        const before = [old, fresh].flatMap((point) => placeAt(point, i)?.xPx ?? []);
        expect(Math.max(...places, 0) - Math.min(...places, 1e4)).toBeLessThan(10);
        expect(places.every((place) => before.includes(place))).toBe(true);
      }
      expect(seenIn(track, 'seed')).toContain(SEED);
      expect(seenIn(track, 'new')).toContain(frame);
    }),
    { numRuns: 60 },
  );
});
