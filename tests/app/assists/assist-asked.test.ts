import { expect, test } from 'vitest';
import {
  assistAsked,
  faceAsked,
  marksFound,
  rimAsked,
  rodAsked,
} from '../../../src/app/assists/assist-asked.ts';
import { applyToMarks } from '../../../src/app/work/apply-to-marks.ts';
import { applyToMeasurement } from '../../../src/app/work/apply-to-measurement.ts';
import { askedMarks, missingOf } from '../../../src/app/work/asked-marks.ts';
import { newMeasurement } from '../../../src/app/work/new-record.ts';
import { BAND_UNKNOWN } from '../../../src/app/work/usual-references.ts';
import type { Mark } from '../../../src/marks/mark.ts';

const at = (id: string, xPx: number, yPx = 10) => ({ id, xPx, yPx, sigmaPx: 1, placedBy: 'hand' }) as const;
const graduation = (id: string, readingMm: number): Mark => ({
  kind: 'tape-graduation',
  readingMm,
  ...at(id, readingMm),
});
const face: Mark = { kind: 'chamber-face', ...at('face', 0) };
const pin: Mark = { kind: 'clevis-pin', ...at('pin', 200) };
const of = (marks: readonly Mark[]) => assistAsked({ marks }).map(({ question }) => question.of);

test('the tape is asked about between the graduations farthest apart, once two are named', () => {
  expect(of([graduation('a', 50)])).toEqual([]);
  const [asked] = assistAsked({
    marks: [graduation('a', 100), graduation('b', 250), graduation('c', 50)],
  });
  expect(asked?.question).toMatchObject({ of: 'tape', named: [{ readingMm: 50 }, { readingMm: 250 }] });
  expect(asked?.instead.map(({ id }) => id)).toEqual(['c', 'a', 'b']);
});

test('the pin is asked about once the face says how large things are; set several times, its settings stay', () => {
  expect(of([pin])).toEqual([]);
  expect(of([face, pin])).toEqual(['clevis-pin']);
  expect(of([face, pin, { ...pin, id: 'again' }])).toEqual([]);
});

test('in another picture than the released one the same points are asked for, where that shows them marked', () => {
  const shaft: Mark = { kind: 'camshaft-end', ...at('shaft', 200, 150) };
  const released = { marks: [face, { ...pin, id: 'known', xPx: 180, sigmaPx: 0.4 }] };
  const asked = assistAsked({ marks: [face, pin, shaft] }, released);
  expect(asked.map(({ question }) => question)).toMatchObject([
    {
      of: 'clevis-pin',
      same: {
        here: { facePx: [0, 10], pinPx: [200, 10], camshaftPx: [200, 150] },
        known: { facePx: [0, 10], pinPx: [180, 10], camshaftPx: null },
        knownSigmaPx: 0.4,
      },
    },
    { of: 'camshaft-end', same: null },
  ]);
  const found = [{ placePx: [7, 8], sigmaPx: 0.2, readingMm: null }] as const;
  const taken = asked.map((each) => marksFound(each, found, () => 'new')[0]);
  expect(taken[0]).toMatchObject({ id: 'pin', sigmaPx: 0.2, placedBy: 'assist', followedFrom: 'known' });
  expect(taken[1]).not.toHaveProperty('followedFrom');
  expect(assistAsked({ marks: [face, pin] })[0]?.question).toMatchObject({ same: null });
});

test('what is taken comes in place of the hand’s marks, as found by an assist, and is not asked for again', () => {
  const marks: readonly Mark[] = [face, pin, graduation('a', 50), graduation('b', 250)];
  const asked = assistAsked({ marks });
  let count = 0;
  const found = asked.flatMap((each) =>
    marksFound(
      each,
      [{ placePx: [7, 8], sigmaPx: 0.2, readingMm: each.question.of === 'tape' ? 75 : null }],
      () => `n${count++}`,
    ),
  );
  const taken = applyToMarks(marks, {
    type: 'take-found',
    state: 'released',
    marks: found,
    instead: asked.flatMap(({ instead }) => instead.map(({ id }) => id)),
  });
  const at78 = { xPx: 7, yPx: 8, sigmaPx: 0.2, placedBy: 'assist' };
  expect(taken).toEqual([
    face,
    { kind: 'clevis-pin', id: 'pin', ...at78 },
    { kind: 'clamp-band', id: 'n0', ...at78 },
    { kind: 'tape-graduation', readingMm: 75, id: 'n1', ...at78 },
  ]);
  expect(of(taken)).toEqual([]);
  const moved = applyToMarks(taken, {
    type: 'move-mark',
    state: 'released',
    markId: 'pin',
    point: { xPx: 1, yPx: 2, sigmaPx: 1 },
  });
  expect(moved[1]).toMatchObject({ placedBy: 'hand' });
});

test('the band is asked about from one touch of it, with face and pin; its points come in place of the hand’s', () => {
  const rim = (id: string): Mark => ({ kind: 'clamp-band', ...at(id, -60, 80) });
  expect(of([rim('a')])).toEqual([]);
  expect(of([face, pin])).not.toContain('clamp-band');
  const asked = assistAsked({ marks: [face, pin, rim('a'), rim('b')] }).at(-1);
  expect(asked?.question).toEqual({
    of: 'clamp-band',
    facePx: [0, 10],
    pinPx: [200, 10],
    nearPx: [-60, 80],
  });
  expect(asked?.instead.map(({ id }) => id)).toEqual(['a', 'b']);
  expect(of([face, pin, rim('a'), { ...rim('b'), placedBy: 'assist' }])).not.toContain('clamp-band');
});

test('the tape’s edge is asked about from one touch of it, with two graduations; its points come in place of the hand’s', () => {
  const touch: Mark = { kind: 'tape-edge', ...at('e', 40, 30) };
  const tape = [graduation('b', 150), graduation('a', 50)];
  expect(of([touch, graduation('a', 50)])).not.toContain('tape-edge');
  expect(of(tape)).not.toContain('tape-edge');
  const asked = assistAsked({ marks: [touch, ...tape] }).at(-1);
  const low = tape[1];
  expect(asked).toEqual({
    question: {
      of: 'tape-edge',
      fromPx: [low?.xPx, low?.yPx],
      toPx: [tape[0]?.xPx, tape[0]?.yPx],
      lengthMm: 100,
      nearPx: [40, 30],
    },
    instead: [touch],
    again: null,
  });
  expect(of([{ ...touch, placedBy: 'assist' }, ...tape])).not.toContain('tape-edge');
});

test('beside a tape the band is looked for without a touch; taken, its rim counts whatever its diameter', () => {
  const marks: readonly Mark[] = [face, pin, graduation('a', 50)];
  const asked = assistAsked({ marks }).at(-1);
  expect(asked?.question).toMatchObject({ of: 'clamp-band', nearPx: null });
  const view = { state: 'released', captureId: 'c', frame: null, marks } as const;
  const measurement = newMeasurement('m', 'as-found');
  const taken = applyToMeasurement(
    { ...measurement, views: [view] },
    {
      type: 'take-found',
      state: 'released',
      marks: [{ kind: 'clamp-band', ...at('r', -60) }],
      instead: [],
    },
  );
  expect(taken.references.clampBand).toEqual(BAND_UNKNOWN);
  const rim = taken.views
    .flatMap((each) => askedMarks(each, taken))
    .find(({ kind }) => kind === 'clamp-band');
  expect(rim && missingOf(rim)).toBe(0);
});

test('the rod is asked about once the tape tells its width, never where a point of it is marked; what is found are two points of it', () => {
  const tape = [25, 50, 75, 100].map((mm) => graduation(`g${mm}`, mm));
  const marks = [face, pin, ...tape];
  expect(rodAsked(marks.slice(0, -1), null)).toEqual([]);
  expect(rodAsked([pin, ...tape], null)).toEqual([]);
  expect(rodAsked([...marks, { kind: 'rod-line', ...at('r', 50) }], null)).toEqual([]);
  const [asked] = rodAsked(marks, null);
  if (!asked) throw new Error('not asked');
  expect(asked).toMatchObject({
    question: { of: 'rod-line', facePx: [0, 10], faceSigmaPx: 1, pinPx: [200, 10] },
    instead: [],
  });
  expect(asked.question.of === 'rod-line' && asked.question.tape).toHaveLength(4);
  let count = 0;
  const found = ([50, 90] as const).map((x) => ({
    placePx: [x, 10] as const,
    sigmaPx: 0.4,
    readingMm: null,
  }));
  expect(marksFound(asked, found, () => `n${count++}`)).toEqual([
    { kind: 'rod-line', id: 'n0', xPx: 50, yPx: 10, sigmaPx: 0.4, placedBy: 'assist' },
    { kind: 'rod-line', id: 'n1', xPx: 90, yPx: 10, sigmaPx: 0.4, placedBy: 'assist' },
  ]);
});

test('graduations that wait to be taken count for the rod: it is offered with them, to be taken with the same tap', () => {
  const waiting = [25, 50, 75, 100].map((mm) => ({
    placePx: [mm, 40] as const,
    sigmaPx: 0.2,
    readingMm: mm,
  }));
  const [asked] = rodAsked([face, pin, graduation('a', 50)], waiting);
  expect(asked?.question.of === 'rod-line' && asked.question.tape).toEqual(waiting);
});

test('edges near the face are asked for where the rod’s middle line was found, taken or waiting; what a person takes comes in place of the hand’s mark', () => {
  const tape = [25, 50, 75, 100].map((mm) => graduation(`${mm}`, mm));
  const line = [90, 50].map((x) => ({ placePx: [x, 10] as const, sigmaPx: 0.4, readingMm: null }));
  const rod = line.map(
    ({ placePx: [x] }, i): Mark => ({ kind: 'rod-line', ...at(`r${i}`, x), sigmaPx: 0.4 }),
  );
  const foundRod = rod.map((mark): Mark => ({ ...mark, placedBy: 'assist' }));
  expect(faceAsked([face, pin, ...tape], null, null)).toEqual([]);
  expect(faceAsked([face, pin, ...tape, ...rod], null, null)).toEqual([]);
  expect(faceAsked([face, pin, ...foundRod], null, null)).toEqual([]);
  const [asked] = faceAsked([face, pin, ...tape], null, line);
  expect(asked).toMatchObject({
    question: {
      of: 'chamber-face',
      facePx: [0, 10],
      sigmaPx: 1,
      rod: [{ placePx: [50, 10] }, { placePx: [90, 10] }],
    },
    instead: [face],
  });
  // Taken, the line is the same: the edges are not looked for anew.
  expect(faceAsked([face, pin, ...tape, ...foundRod], null, null)).toEqual([asked]);
  const [taken] = asked
    ? marksFound(asked, [{ placePx: [2, 10], sigmaPx: 0.4, readingMm: null }], () => 'new')
    : [];
  expect(taken).toEqual({ ...face, xPx: 2, sigmaPx: 0.4, placedBy: 'assist' });
  if (taken) expect(faceAsked([taken, pin, ...tape, ...foundRod], null, null)).toEqual([]);
});

test('a face that was found says how large pin and camshaft end are, as a hand’s does', () => {
  expect(of([{ ...face, placedBy: 'assist' }, pin])).toEqual(['clevis-pin']);
});

test('beside a tape that was read and waits, the rim is looked for; not beside one without readings, nor where the band is marked', () => {
  const ends: readonly Mark[] = [
    { kind: 'chamber-face', ...at('f', 0) },
    { kind: 'clevis-pin', ...at('p', 200) },
  ];
  const read = [{ placePx: [50, 20] as const, sigmaPx: 0.3, readingMm: 25.4 }];
  const question = { of: 'clamp-band', facePx: [0, 10], pinPx: [200, 10], nearPx: null };
  expect(rimAsked(ends, read)).toEqual([{ question, instead: [], again: null }]);
  expect(
    rimAsked(
      ends,
      read.map((each) => ({ ...each, readingMm: null })),
    ),
  ).toEqual([]);
  expect(rimAsked(ends, null)).toEqual([]);
  expect(rimAsked([...ends, { kind: 'clamp-band', ...at('b', -50) }], read)).toEqual([]);
  expect(rimAsked(ends.slice(1), read)).toEqual([]);
});
