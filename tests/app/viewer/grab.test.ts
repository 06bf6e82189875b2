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
