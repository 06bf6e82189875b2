import { expect, test } from 'vitest';
import { drawFrom } from '../../src/basics/random.ts';
import { findTies } from '../../src/vision/find-ties.ts';
import type { Gray } from '../../src/vision/gray.ts';
import type { TieQuestion, TieSight } from '../../src/vision/tie-sight.ts';
import { nodeOpencv } from './node-opencv.ts';
import { FIRST, FOCAL_PX, SECOND, shownAt, tiesPicture } from './ties-picture.ts';

const cv = await nodeOpencv();
const [first, second] = [tiesPicture(FIRST, false, 2, 1), tiesPicture(SECOND, true, 2, 2)];
/** A place of the board that hangs beside the moving one. */
const ABOUT = [-150, 20, 700] as const;
const QUESTION: TieQuestion = {
  first: { focalPx: 1.08 * FOCAL_PX, aboutPx: shownAt(FIRST, ABOUT), leaveOut: [] },
  second: { focalPx: 1.08 * FOCAL_PX, aboutPx: shownAt(SECOND, ABOUT), leaveOut: [] },
};

function sightOf(question: TieQuestion): TieSight {
  const found = findTies(cv, first.gray, second.gray, question);
  if (!found.ok) throw new Error(JSON.stringify(found.failure));
  return found.value;
}

test('boards at several distances are tied, none of the ties on the board that moved, as well as is stated', () => {
  const { ties, counts } = sightOf(QUESTION);
  expect(ties.length).toBeGreaterThanOrEqual(20);
  expect(ties.filter(({ firstPx }) => first.moves(firstPx))).toEqual([]);
  expect(new Set(ties.map(({ firstPx }) => first.seen(firstPx)[2])).size).toBeGreaterThanOrEqual(3);
  expect(counts.alike).toBeGreaterThan(counts.agreeing);
  const pulls = ties.flatMap(({ firstPx, secondPx, sigmaPx }) => {
    const truePx = shownAt(SECOND, first.seen(firstPx));
    return [0, 1].map((axis) => ((secondPx[axis] ?? 0) - (truePx[axis] ?? 0)) / (Math.SQRT2 * sigmaPx));
  });
  const rms = Math.sqrt(pulls.reduce((sum, pull) => sum + pull ** 2, 0) / pulls.length);
  expect(rms).toBeLessThan(1.2);
  expect(Math.max(...pulls.map(Math.abs))).toBeLessThan(4);
});

test('what is outlined is left out, in either picture', () => {
  const [x, y] = QUESTION.first.aboutPx;
  const left = [
    [0, 0],
    [x, 0],
    [x, 900],
    [0, 900],
  ] as const;
  const below = [
    [0, y],
    [1200, y],
    [1200, 900],
    [0, 900],
  ] as const;
  const { ties } = sightOf({
    first: { ...QUESTION.first, leaveOut: [left] },
    second: { ...QUESTION.second, leaveOut: [below] },
  });
  expect(ties.length).toBeGreaterThanOrEqual(6);
  expect(ties.filter(({ firstPx }) => firstPx[0] < x)).toEqual([]);
  expect(ties.filter(({ secondPx }) => secondPx[1] > y)).toEqual([]);
});

const plain = (level: (x: number, y: number) => number): Gray => ({
  widthPx: 1200,
  heightPx: 900,
  values: Uint8Array.from({ length: 1200 * 900 }, (_, i) => level(i % 1200, Math.floor(i / 1200))),
});
const noise = (seed: number) => {
  const draw = drawFrom(seed);
  return plain(() => Math.max(0, Math.min(255, Math.round(128 + draw.normal(0, 20)))));
};

const mirrored = ({ values, ...size }: Gray): Gray => ({
  ...size,
  values: values.map((_, i) => values[i - (i % 1200) + 1199 - (i % 1200)] ?? 0),
});

test.each<[string, Gray, Gray]>([
  ['blank pictures', plain(() => 90), plain(() => 90)],
  ['a blank picture and one of boards', plain(() => 90), second.gray],
  ['nothing but noise', noise(3), noise(4)],
  ['a picture and its mirror image', first.gray, mirrored(first.gray)],
])('%s: no tie is guessed, the counts are told', (_, one, other) => {
  const found = findTies(cv, one, other, QUESTION);
  expect(found).toMatchObject({ ok: false, failure: { code: 'ties/few' } });
  if (!found.ok && found.failure.code === 'ties/few') {
    expect(found.failure.found).toBeLessThan(6);
    expect(found.failure.counts.features).toHaveLength(2);
  }
});
