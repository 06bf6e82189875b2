import { expect, test } from 'vitest';
import { grabbed } from '../../../src/app/viewer/grab.ts';
import { fittedView, screenFromFrame } from '../../../src/app/viewer/view-transform.ts';
import type { ViewerMark } from '../../../src/app/viewer/viewer-mark.ts';

const view = fittedView({ widthPx: 4000, heightPx: 3000 }, { widthCss: 1000, heightCss: 750 });
const mark = (id: string, over: Partial<ViewerMark>): ViewerMark => ({
  ...{ id, name: id, xPx: 2000, yPx: 1500, selected: false, automatic: false, doubtful: false, minor: false },
  ...over,
});

test('a found corner of the printed target is taken hold of, but not while a mark is asked for', () => {
  const corner = mark('corner', { automatic: true, minor: true });
  const at = screenFromFrame(view, corner);
  expect(grabbed(view, [corner], at, { hand: 'mouse', placing: false })?.id).toBe('corner');
  expect(grabbed(view, [corner], at, { hand: 'mouse', placing: true })).toBeNull();
  const pin = mark('pin', { xPx: 2004 });
  expect(grabbed(view, [corner, pin], at, { hand: 'mouse', placing: true })?.id).toBe('pin');
});

test('with the whole picture on a phone, a finger near a mark of another kind means a new one; near one of its own kind, that one', () => {
  const phone = fittedView({ widthPx: 4000, heightPx: 3000 }, { widthCss: 390, heightCss: 420 });
  const pin = mark('pin', {});
  const near = { xPx: 2000, yPx: 1500 - 80 };
  const by = { hand: 'finger', placing: true } as const;
  const at = screenFromFrame(phone, near);
  expect(grabbed(phone, [pin], at, by)).toBeNull();
  expect(grabbed(phone, [{ ...pin, asked: true }], at, by)?.id).toBe('pin');
  expect(grabbed(phone, [{ ...pin, selected: true }], at, by)?.id).toBe('pin');
  expect(grabbed(phone, [pin], at, { ...by, placing: false })?.id).toBe('pin');
  // Brought close, a touch as near on the screen is a touch of the pin.
  const close = { ...phone, scale: 4 * phone.scale };
  const onScreen = screenFromFrame(close, { xPx: 2000, yPx: 1500 - 20 });
  expect(grabbed(close, [pin], onScreen, by)?.id).toBe('pin');
});
