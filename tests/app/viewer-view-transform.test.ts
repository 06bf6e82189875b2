import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  distanceCss,
  FOOT_CSS,
  fittedView,
  frameFromScreen,
  isFitted,
  middleOfScreen,
  panned,
  pinched,
  resized,
  revealed,
  type ScreenPoint,
  screenFromFrame,
  type View,
  viewOfPoints,
  zoomedAbout,
} from '../../src/app/viewer/view-transform.ts';

const FRAME = { widthPx: 4000, heightPx: 3000 };
const SCREEN = { widthCss: 1000, heightCss: 600 };

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const view = fc
  .record({
    widthPx: number(50, 8000),
    heightPx: number(50, 8000),
    widthCss: number(300, 2000),
    heightCss: number(300, 2000),
  })
  .chain((size) =>
    fc
      .record({
        zoom: number(1, 30),
        x: number(0, size.widthCss),
        y: number(0, size.heightCss),
        dx: number(-3000, 3000),
        dy: number(-3000, 3000),
      })
      .map(({ zoom, x, y, dx, dy }) => {
        const fitted = fittedView(
          { widthPx: size.widthPx, heightPx: size.heightPx },
          { widthCss: size.widthCss, heightCss: size.heightCss },
        );
        return panned(zoomedAbout(fitted, { xCss: x, yCss: y }, zoom), dx, dy);
      }),
  );

function expectNear(point: ScreenPoint, other: ScreenPoint, css = 1e-6): void {
  expect(distanceCss(point, other)).toBeLessThan(css);
}

test('fits the whole picture, centred (worked by hand)', () => {
  const fitted = fittedView(FRAME, SCREEN);
  expect(fitted.scale).toBeCloseTo(0.2, 12);
  expectNear(screenFromFrame(fitted, { xPx: 0, yPx: 0 }), { xCss: 100, yCss: 0 });
  expectNear(screenFromFrame(fitted, { xPx: 4000, yPx: 3000 }), { xCss: 900, yCss: 600 });
  expect(isFitted(fitted)).toBe(true);
});

test('shows every point asked for, no farther away than the whole picture, and close up clear of the buttons', () => {
  const share = number(0, 1);
  fc.assert(
    fc.property(view, fc.array(fc.tuple(share, share), { minLength: 2, maxLength: 9 }), (any, shares) => {
      const points = shares.map(([x, y]) => ({ xPx: x * any.frame.widthPx, yPx: y * any.frame.heightPx }));
      const shown = viewOfPoints(any.frame, any.screen, points);
      const whole = fittedView(any.frame, any.screen).scale;
      expect(shown.scale).toBeGreaterThanOrEqual(whole * (1 - 1e-12));
      const footCss = shown.scale >= 2 * whole ? FOOT_CSS : 0;
      for (const point of points) {
        const { xCss, yCss } = screenFromFrame(shown, point);
        expect(xCss).toBeGreaterThanOrEqual(-1e-6);
        expect(yCss).toBeGreaterThanOrEqual(-1e-6);
        expect(xCss).toBeLessThanOrEqual(any.screen.widthCss + 1e-6);
        expect(yCss).toBeLessThanOrEqual(any.screen.heightCss - footCss + 1e-6);
      }
    }),
  );
  expect(viewOfPoints(FRAME, SCREEN, [])).toEqual(fittedView(FRAME, SCREEN));
});

test('screen to frame and back is the same point', () => {
  fc.assert(
    fc.property(view, number(-500, 2500), number(-500, 2500), (at, xCss, yCss) => {
      expectNear(screenFromFrame(at, frameFromScreen(at, { xCss, yCss })), { xCss, yCss });
    }),
  );
});

test('the picture cannot be lost: the middle of the screen is always over it, and it is never smaller than fitted', () => {
  fc.assert(
    fc.property(view, (at) => {
      const middle = frameFromScreen(at, middleOfScreen(at));
      const { widthPx, heightPx } = at.frame;
      const rounding = 1e-9;
      expect(Math.abs(middle.xPx / widthPx - 0.5)).toBeLessThanOrEqual(0.5 + rounding);
      expect(Math.abs(middle.yPx / heightPx - 0.5)).toBeLessThanOrEqual(0.5 + rounding);
      expect(at.scale).toBeGreaterThanOrEqual(fittedView(at.frame, at.screen).scale * (1 - 1e-12));
    }),
  );
});

test('zooming in from the fitted view about any point of the picture keeps that point still', () => {
  fc.assert(
    fc.property(view, number(0, 1), number(0, 1), number(1, 20), (any, shareX, shareY, factor) => {
      const fitted = fittedView(any.frame, any.screen);
      const point = { xPx: shareX * any.frame.widthPx, yPx: shareY * any.frame.heightPx };
      const still = screenFromFrame(fitted, point);
      expectNear(screenFromFrame(zoomedAbout(fitted, still, factor), point), still);
    }),
  );
});

test('zooming all the way out ends in the fitted view from anywhere', () => {
  fc.assert(
    fc.property(view, number(0, 500), number(0, 500), (at, xCss, yCss) => {
      const out = zoomedAbout(at, { xCss, yCss }, 1e-6);
      const fitted = fittedView(at.frame, at.screen);
      expect(out.scale).toBeCloseTo(fitted.scale, 10);
      expectNear(out.origin, fitted.origin);
    }),
  );
});

test('a pinch carries both fingers’ points along, where nothing is out of reach', () => {
  const start = zoomedAbout(fittedView(FRAME, SCREEN), { xCss: 500, yCss: 300 }, 4);
  fc.assert(
    fc.property(number(1, 2), number(-80, 80), number(-80, 80), (spread, dx, dy) => {
      const from = [
        { xCss: 400, yCss: 250 },
        { xCss: 600, yCss: 350 },
      ] as const;
      const to = from.map(({ xCss, yCss }) => ({
        xCss: 500 + dx + (xCss - 500) * spread,
        yCss: 300 + dy + (yCss - 300) * spread,
      })) as unknown as typeof from;
      const after = pinched(start, from, to);
      for (const index of [0, 1] as const)
        expectNear(screenFromFrame(after, frameFromScreen(start, from[index])), to[index]);
    }),
  );
});

test('a pan goes as far as the hand until the middle of the screen leaves the picture', () => {
  const start = zoomedAbout(fittedView(FRAME, SCREEN), { xCss: 500, yCss: 300 }, 4);
  expectNear(panned(start, 30, -20).origin, { xCss: start.origin.xCss + 30, yCss: start.origin.yCss - 20 });
  const far = panned(start, 1e6, 1e6);
  expectNear(screenFromFrame(far, { xPx: 0, yPx: 0 }), middleOfScreen(far));
});

test('a new size of the viewer keeps a fitted picture fitted and a zoomed one centred on the same point', () => {
  const fitted = fittedView(FRAME, SCREEN);
  const tall = { widthCss: 390, heightCss: 700 };
  expect(resized(fitted, tall)).toEqual(fittedView(FRAME, tall));
  const zoomed = panned(zoomedAbout(fitted, { xCss: 300, yCss: 200 }, 10), 40, 25);
  const before = frameFromScreen(zoomed, middleOfScreen(zoomed));
  const after = resized(zoomed, tall);
  expect(after.scale).toBe(zoomed.scale);
  expectNear(screenFromFrame(after, before), middleOfScreen(after));
});

test('a point off the screen is brought to the middle, one in sight leaves the view as it is', () => {
  const zoomed: View = zoomedAbout(fittedView(FRAME, SCREEN), { xCss: 500, yCss: 300 }, 10);
  expect(revealed(zoomed, { xPx: 2000, yPx: 1500 }, 24)).toBe(zoomed);
  const corner = { xPx: 100, yPx: 100 };
  const seen = revealed(zoomed, corner, 24);
  expectNear(screenFromFrame(seen, corner), middleOfScreen(seen));
});
