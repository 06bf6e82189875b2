import { expect, test } from 'vitest';
import { applyAction } from '../../../src/app/work/apply-action.ts';
import { askedMarks } from '../../../src/app/work/asked-marks.ts';
import { askingFor, markPlaced } from '../../../src/app/work/asking.ts';
import { type Current, currentOf } from '../../../src/app/work/current.ts';
import { startHistory } from '../../../src/app/work/history.ts';
import { firstPlace, type Place } from '../../../src/app/work/place.ts';
import type { Mark } from '../../../src/marks/mark.ts';
import type { References } from '../../../src/references/reference.ts';
import { graduation, pointMark, recordWithPair, TARGET } from './sample.ts';

const INCH = 25.4;

function current(
  references: Partial<References>,
  marks: readonly Mark[],
  place: Partial<Place> = {},
): Current {
  let record = applyAction(recordWithPair(), TARGET, { type: 'set-references', references });
  for (const mark of marks)
    record = applyAction(record, TARGET, { type: 'place-mark', state: 'released', mark });
  const first = firstPlace(record);
  const found = currentOf({
    history: startHistory(record),
    place: { ...first, step: 'marks-released', ...place },
  });
  if (!found) throw new Error('no measurement');
  return found;
}

const mechanism = [pointMark('f', 'chamber-face'), pointMark('p', 'clevis-pin')];

test('asks for face and pin first, then what the references need, then what can be left out', () => {
  const tape = { tape: { zeroAtFace: false, unmoved: false, touchesPin: false } };
  expect(askingFor(current(tape, []), 'released', INCH)).toEqual({ kind: 'chamber-face' });
  expect(askingFor(current(tape, mechanism.slice(0, 1)), 'released', INCH)).toEqual({ kind: 'clevis-pin' });
  expect(askingFor(current(tape, mechanism), 'released', INCH)?.kind).toBe('tape-graduation');
  expect(askingFor(current({}, mechanism), 'released', INCH)?.kind).toBe('camshaft-end');
  const passed = current({}, mechanism, { passedOver: ['camshaft-end', 'rod-line'] });
  expect(askingFor(passed, 'released', INCH)).toBeNull();
});

test('the edge of a tape is marked when it is picked, and never asked for', () => {
  const tape = { tape: { zeroAtFace: false, unmoved: false, touchesPin: false } };
  const all = [...mechanism, ...[1, 2, 3, 4].map((i) => graduation(`${i}`, i * INCH))];
  const passed = { passedOver: ['camshaft-end', 'rod-line'] as const };
  expect(askingFor(current(tape, all, passed), 'released', INCH)).toBeNull();
  const picked = current(tape, all, { ...passed, pickedKind: 'tape-edge' });
  expect(askingFor(picked, 'released', INCH)).toEqual({ kind: 'tape-edge' });
  expect(
    askedMarks({ state: 'released', captureId: 'c', frame: null, marks: all }, current({}, []).measurement),
  ).not.toContainEqual(expect.objectContaining({ kind: 'tape-edge' }));
});

test('asks nothing of the picture that is not at hand', () => {
  expect(askingFor(current({}, []), 'applied', INCH)).toBeNull();
});

test('two readings far apart are proposed; typed ones go on in their steps', () => {
  const tape = { tape: { zeroAtFace: false, unmoved: false, touchesPin: false } };
  const reading = (marks: readonly Mark[]) => {
    const asking = askingFor(current(tape, [...mechanism, ...marks]), 'released', INCH);
    return asking?.kind === 'tape-graduation' ? asking.readingMm : 'other';
  };
  expect(reading([])).toBeCloseTo(2 * INCH);
  expect(reading([graduation('1', 2 * INCH)])).toBeCloseTo(9 * INCH);
  expect(reading([graduation('1', 1 * INCH), graduation('2', 9 * INCH)])).toBeCloseTo(5 * INCH);
  expect(reading([graduation('1', 4 * INCH)])).toBeCloseTo(5 * INCH);
  expect(reading([graduation('1', 4 * INCH), graduation('2', 6 * INCH)])).toBeCloseTo(8 * INCH);
  expect(reading([graduation('1', 6 * INCH), graduation('2', 4 * INCH)])).toBeCloseTo(2 * INCH);
});

test('a reading that is still to be typed places nothing', () => {
  const now = current({ tape: { zeroAtFace: false, unmoved: false, touchesPin: false } }, mechanism);
  const point = { xPx: 1, yPx: 2, sigmaPx: 1 };
  expect(markPlaced(now, 'released', { kind: 'tape-graduation', readingMm: null }, point, 'n')).toBeNull();
});

test('marking the pin again moves the pin; a second rim point is a second mark', () => {
  const now = current({}, [...mechanism, pointMark('b', 'clamp-band')]);
  const point = { xPx: 1, yPx: 2, sigmaPx: 1 };
  expect(markPlaced(now, 'released', { kind: 'clevis-pin' }, point, 'n')?.id).toBe('p');
  expect(markPlaced(now, 'released', { kind: 'clamp-band' }, point, 'n')?.id).toBe('n');
});

test('the same kind again moves the mark, unless it is set once more', () => {
  const point = { xPx: 30, yPx: 40, sigmaPx: 1 };
  const pinOf = (place: Partial<Place>) =>
    markPlaced(current({}, mechanism, place), 'released', { kind: 'clevis-pin' }, point, 'new');
  expect(pinOf({})?.id).toBe('p');
  expect(pinOf({ onceMore: true })?.id).toBe('new');
});

test('tie points are placed when they are picked, by name, and not offered where the camera stood still', () => {
  const picked = current({}, mechanism, { pickedKind: 'tie-point' });
  expect(askingFor(picked, 'released', INCH)).toEqual({ kind: 'tie-point', tie: '1' });
  const { measurement } = picked;
  const [view] = measurement.views;
  if (!view) throw new Error('no view');
  const kindsOf = (cameraStill: boolean) =>
    askedMarks(view, { ...measurement, cameraStill }).map(({ kind }) => kind);
  expect(kindsOf(false)).toContain('tie-point');
  expect(kindsOf(true)).not.toContain('tie-point');
});
